import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";
import { rootDiameter, stressDiameter, type ThreadForm } from "./thread-form";

/** A link held off its bracket by a bolt through a stack of spacers, in single shear. SI. */
export interface SpacerStack {
  readonly thread: ThreadForm;
  /** Bracket face to link, all spacers and washers between them, m; 0 for a link hard against its bracket. */
  readonly stackLength: number;
  /** Width of the link's eye or ball housing along the bolt, m: the force acts in its middle. */
  readonly eyeWidth: number;
  /** Across the bolt, N. */
  readonly force: number;
  /** What the bolt is at the bracket's face. */
  readonly section: "thread" | "shank";
  /** Plain shank, m; the thread's nominal diameter when left out. */
  readonly shankDiameter?: number | undefined;
  /** Clamp force, N; 0 when left out. */
  readonly preload?: number | undefined;
}

/** Stresses Pa, lengths m, forces N. */
export interface SpacerStackResult {
  /** Bracket face to the middle of the eye. */
  readonly arm: number;
  /** N·m. */
  readonly moment: number;
  /** Diameter that is judged: stress diameter in the thread, or the shank. */
  readonly diameter: number;
  /** Of the thread; for comparison. */
  readonly rootDiameter: number;
  readonly bending: number;
  /** Of the preload. */
  readonly tension: number;
  /** Mean, F/A. */
  readonly shear: number;
  /** √((σ_b + σ_t)² + 3τ²). */
  readonly stress: number;
  /** Moment over that of the same link hard against its bracket. */
  readonly momentRatio: number;
  /** Of the eye's middle, F·e³/(3·E·I), bolt alone. */
  readonly deflection: number;
}

/**
 * Bending of the bolt as a cantilever built in at the bracket's face: M = F·e, e = stack + half of the eye. The spacers
 * are not counted on: as soon as the stack opens on one side they carry nothing there.
 * @param youngModulus of the bolt, Pa
 * @throws CalcRefusal when a number is not finite or not physical, or a shank is thinner than the thread's root
 */
export function spacerStack(stack: SpacerStack, youngModulus: number): SpacerStackResult {
  const { thread, section, preload = 0 } = stack;
  const eye = positive(stack.eyeWidth, "eyeWidth") / 2;
  const arm = notNegative(stack.stackLength, "stackLength") + eye;
  const moment = notNegative(stack.force, "force") * arm;
  const diameter = section === "thread" ? stressDiameter(thread) : shankOf(stack);
  const area = (Math.PI * diameter ** 2) / 4;
  const bending = (32 * moment) / (Math.PI * diameter ** 3);
  const tension = notNegative(preload, "preload") / area;
  const shear = stack.force / area;
  const secondMoment = (Math.PI * diameter ** 4) / 64;
  return {
    arm,
    moment,
    diameter,
    rootDiameter: rootDiameter(thread),
    bending,
    tension,
    shear,
    stress: Math.sqrt((bending + tension) ** 2 + 3 * shear ** 2),
    momentRatio: arm / eye,
    deflection: (stack.force * arm ** 3) / (3 * positive(youngModulus, "youngModulus") * secondMoment),
  };
}

/**
 * Force at which the bolt begins to take a set, N: where √((σ_b + σ_t)² + 3τ²) reaches the yield strength, the preload
 * as it is.
 * @throws CalcRefusal (`PRELOAD_YIELDS`) when the preload alone does
 */
export function yieldForce(stack: Omit<SpacerStack, "force">, yieldStrength: number): number {
  const one = spacerStack({ ...stack, force: 1 }, 1);
  const room = positive(yieldStrength, "yieldStrength") ** 2 - one.tension ** 2;
  if (room <= 0)
    throw new CalcRefusal(
      "PRELOAD_YIELDS",
      `the preload alone stresses the bolt to ${written(one.tension, "pressure", "MPa")}, its yield strength is ${written(yieldStrength, "pressure", "MPa")}`,
      "preload",
    );
  const square = one.bending ** 2 + 3 * one.shear ** 2;
  const half = one.bending * one.tension;
  return (Math.sqrt(half * half + square * room) - half) / square;
}

/**
 * Force at which a clamped stack begins to open on one side, N: M = F_v·(D² + d²)/(8·D), from F_v/A = M/Z of the
 * spacers. Below it the stack stiffens and relieves the bolt; above it the bolt stands alone.
 * @param outer outside diameter of the spacers, m
 * @param bore of the spacers, m
 */
export function stackOpeningForce(
  { preload, arm }: { readonly preload: number; readonly arm: number },
  { outer, bore }: { readonly outer: number; readonly bore: number },
): number {
  if (!(positive(bore, "bore") < positive(outer, "outer")))
    throw new CalcRefusal(
      "NO_SPACER",
      `a spacer of ${written(outer, "length")} has no bore of ${written(bore, "length")}`,
      "outer",
    );
  const moment = (notNegative(preload, "preload") * (outer ** 2 + bore ** 2)) / (8 * outer);
  return moment / positive(arm, "arm");
}

/**
 * Stress amplitude that a rolled thread stands for ever, Pa: 0.85·(150/d + 45) MPa, d in mm (VDI 2230, from memory;
 * classes 8.8 to 12.9, rolled before heat treatment, M6 to M40).
 */
export function threadEnduranceAmplitude(majorDiameter: number): number {
  const millimetres = positive(majorDiameter, "majorDiameter") * 1000;
  return 0.85 * (150 / millimetres + 45) * 1e6;
}

function shankOf({ thread, shankDiameter }: SpacerStack): number {
  const shank = positive(shankDiameter ?? thread.majorDiameter, "shankDiameter");
  const root = rootDiameter(thread);
  if (shank >= root) return shank;
  throw new CalcRefusal(
    "SHANK_TOO_THIN",
    `a shank of ${written(shank, "length")} is thinner than the thread's root, ${written(root, "length")}`,
    "shankDiameter",
  );
}
