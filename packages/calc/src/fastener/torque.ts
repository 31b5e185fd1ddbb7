import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive } from "../spring/guard";
import { halfFlankAngle, pitchDiameter, stressArea, stressDiameter, type ThreadForm } from "./thread-form";

/** Torque, N·m, for a preload by the nut factor: T = K·d·F. */
export function torqueByNutFactor(preload: number, nutFactor: number, majorDiameter: number): number {
  return (
    positive(nutFactor, "nutFactor") *
    positive(majorDiameter, "majorDiameter") *
    notNegative(preload, "preload")
  );
}

/** Preload, N, of a torque by the nut factor: F = T/(K·d). */
export function preloadByNutFactor(torque: number, nutFactor: number, majorDiameter: number): number {
  return (
    notNegative(torque, "torque") /
    (positive(nutFactor, "nutFactor") * positive(majorDiameter, "majorDiameter"))
  );
}

/** Nut factor K by condition of the bolt (Shigley, Mechanical Engineering Design, 9th ed., table 8-15). */
export const nutFactors = {
  black: { label: "black, not plated, dry", factor: 0.3 },
  zinc: { label: "zinc plated", factor: 0.2 },
  lubricated: { label: "lubricated", factor: 0.18 },
  cadmium: { label: "cadmium plated", factor: 0.16 },
  antiSeize: { label: "anti-seize compound", factor: 0.12 },
} as const;

/** Where friction acts when a nut is turned. */
export interface TighteningFriction {
  readonly thread: number;
  /** Under the head or nut that is turned. */
  readonly head: number;
  /** Mean diameter of the turned face on its seat, m: about 1.3 d for a hexagon. */
  readonly headDiameter: number;
}

/**
 * Torque in the thread per newton of preload, m: d₂/2·(P + π·μ·d₂/cos α)/(π·d₂ − μ·P/cos α), α half of the flank angle
 * (Shigley eq. 8-5 with inclined flanks).
 * @throws CalcRefusal when the friction is so high that the nut cannot be turned
 */
export function threadTorquePerForce(thread: ThreadForm, friction: number): number {
  const d2 = pitchDiameter(thread);
  const drag = notNegative(friction, "friction.thread") / Math.cos(halfFlankAngle(thread.system));
  const room = Math.PI * d2 - drag * thread.pitch;
  if (room > 0) return (d2 / 2) * ((thread.pitch + Math.PI * drag * d2) / room);
  throw new CalcRefusal(
    "NO_TURN",
    `at a thread friction of ${friction} the nut does not turn`,
    "friction.thread",
  );
}

/** Torque at the spanner per newton of preload, m: thread, and the turned face μ·D/2. */
export function torquePerForce(thread: ThreadForm, friction: TighteningFriction): number {
  const face =
    (notNegative(friction.head, "friction.head") * positive(friction.headDiameter, "friction.headDiameter")) /
    2;
  return threadTorquePerForce(thread, friction.thread) + face;
}

/** Nut factor that the frictions amount to, K = T/(F·d). */
export function nutFactorOf(thread: ThreadForm, friction: TighteningFriction): number {
  return torquePerForce(thread, friction) / thread.majorDiameter;
}

/** Mean diameter of a turned hexagon face on its seat, m, where only the thread is known: 1.3 d (common practice). */
export function usualHeadDiameter(majorDiameter: number): number {
  return 1.3 * positive(majorDiameter, "majorDiameter");
}

/**
 * Stress in the bolt while it is tightened, Pa: tension and the torque in the thread together, √(σ² + 3τ²) on the
 * stress diameter (VDI 2230, from memory). The torsion fades when the spanner comes off.
 */
export function tighteningStress(thread: ThreadForm, preload: number, threadFriction: number): number {
  const tension = notNegative(preload, "preload") / stressArea(thread);
  const twist = threadTorquePerForce(thread, threadFriction) * preload;
  const shear = (16 * twist) / (Math.PI * stressDiameter(thread) ** 3);
  return Math.sqrt(tension ** 2 + 3 * shear ** 2);
}
