import { CalcRefusal } from "../catalogue/refusal";
import { positive, written } from "../spring/guard";

/** Thread systems, told apart by flank angle and profile. */
export type ThreadSystem = "metric" | "unified" | "whitworth" | "BA";

/** What strength needs to know of a thread. A parsed designation is one. Lengths m. */
export interface ThreadForm {
  readonly system: ThreadSystem;
  readonly majorDiameter: number;
  readonly pitch: number;
}

/** A profile, in pitches; diameters are the major one less so many pitches. */
interface Profile {
  /** Half of the flank angle, rad. */
  readonly halfAngle: number;
  readonly pitchDrop: number;
  /** Root of the bolt. */
  readonly rootDrop: number;
  /** Crest of the nut. */
  readonly nutMinorDrop: number;
}

const degrees = Math.PI / 180;
const sixty = { halfAngle: 30 * degrees, pitchDrop: 0.649519, nutMinorDrop: 1.082532 };

/**
 * Basic profiles: metric ISO 68-1 with the rounded root of ISO 898-1 (d₃ = d − 1.226869 P); unified ASME B1.1 with the
 * root that its stress area D − 0.9743/n goes by (Shigley table 8-2); Whitworth BS 84; BA BS 93.
 */
const profiles: Readonly<Record<ThreadSystem, Profile>> = {
  metric: { ...sixty, rootDrop: 1.226869 },
  unified: { ...sixty, rootDrop: 1.299038 },
  whitworth: { halfAngle: 27.5 * degrees, pitchDrop: 0.640327, rootDrop: 1.280654, nutMinorDrop: 1.280654 },
  BA: { halfAngle: 23.75 * degrees, pitchDrop: 0.6, rootDrop: 1.2, nutMinorDrop: 1.2 },
};

/** Half of the flank angle, rad: 30° metric and unified, 27½° Whitworth, 23¾° BA. */
export function halfFlankAngle(system: ThreadSystem): number {
  return profiles[system].halfAngle;
}

/** Diameter at mid-flank, m: d − 0.649519 P for 60° threads. */
export function pitchDiameter(thread: ThreadForm): number {
  return lessPitches(thread, profiles[thread.system].pitchDrop);
}

/** Diameter at the root of the bolt, m. */
export function rootDiameter(thread: ThreadForm): number {
  return lessPitches(thread, profiles[thread.system].rootDrop);
}

/** Diameter of the hole in the nut, m: D − 1.082532 P for 60° threads. */
export function nutMinorDiameter(thread: ThreadForm): number {
  return lessPitches(thread, profiles[thread.system].nutMinorDrop);
}

/** Diameter of the tensile stress area, m: mean of pitch and root diameter. */
export function stressDiameter(thread: ThreadForm): number {
  return (pitchDiameter(thread) + rootDiameter(thread)) / 2;
}

/**
 * Tensile stress area, m²: π/4·((d₂ + d₃)/2)² (ISO 898-1; ASME B1.1 π/4·(D − 0.9743/n)²).
 * @throws CalcRefusal unless diameter and pitch are greater than zero, and the thread leaves a core
 */
export function stressArea(thread: ThreadForm): number {
  return (Math.PI * stressDiameter(thread) ** 2) / 4;
}

function lessPitches({ majorDiameter, pitch }: ThreadForm, drop: number): number {
  const diameter = positive(majorDiameter, "majorDiameter") - drop * positive(pitch, "pitch");
  if (diameter > 0) return diameter;
  throw new CalcRefusal(
    "NO_CORE",
    `a pitch of ${written(pitch, "length")} leaves nothing of a thread of ${written(majorDiameter, "length")}`,
    "pitch",
  );
}
