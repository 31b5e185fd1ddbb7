import { positive } from "../spring/guard";
import { halfFlankAngle, pitchDiameter, stressArea, type ThreadForm } from "./thread-form";
import { ordinaryFit } from "./thread-limit";

/** Shear strength taken as half the tensile strength, as the handbook's formula for engagement does. */
export const stripShare = 0.5;

/** Shear area of a thread per length of engagement, m²/m, and how it was found. */
export interface StripAreas {
  /** At the nut's hole: the bolt's thread strips. */
  readonly bolt: number;
  /** At the bolt's outside: the tapped thread strips. */
  readonly tapped: number;
  /** Class of fit, or "pitch line" where the fit is not known. */
  readonly basis: string;
}

/**
 * Areas along which threads strip, per length of engagement, at the loosest of the ordinary fit: bolt
 * π·D₁·(1/2 + tan α·(d₂ − D₁)/P), tapped thread π·d·(1/2 + tan α·(d − D₂)/P) (Machinery's Handbook 24th ed.). For
 * Whitworth and BA both at the pitch line, π·d₂/2, which is less.
 */
export function stripAreas(thread: ThreadForm): StripAreas {
  const limits = ordinaryFit(thread);
  if (limits === undefined) {
    const area = pitchLineArea(thread);
    return { bolt: area, tapped: area, basis: "pitch line" };
  }
  const { boltMajorLeast, boltPitchLeast, nutMinorGreatest, nutPitchGreatest, fit } = limits;
  return {
    bolt: stripArea(thread, { at: nutMinorGreatest, overlap: boltPitchLeast - nutMinorGreatest }),
    tapped: stripArea(thread, { at: boltMajorLeast, overlap: boltMajorLeast - nutPitchGreatest }),
    basis: fit,
  };
}

/**
 * Shear area per length on a cylinder, m²/m: π·D·(1/2 + tan α·x/P), x the overlap in diameter beyond mid-flank.
 * @param at diameter of the cylinder, m
 */
export function stripArea(thread: ThreadForm, { at, overlap }: { at: number; overlap: number }): number {
  const share = 0.5 + (Math.tan(halfFlankAngle(thread.system)) * overlap) / positive(thread.pitch, "pitch");
  return Math.PI * positive(at, "at") * share;
}

/** Half of the pitch-line cylinder, m²/m: the rule of guides, Le = 2·A_s/(π·d₂/2) at equal strengths. */
export function pitchLineArea(thread: ThreadForm): number {
  return (Math.PI * pitchDiameter(thread)) / 2;
}

/** Engagement so that the bolt breaks before a thread strips, m. */
export interface Engagement {
  readonly againstBolt: number;
  readonly againstTapped: number;
  /** The greater. */
  readonly needed: number;
  readonly basis: string;
}

/**
 * Length of full thread needed so that the bolt breaks first: A_s·R_m over shear area per length × ½·R_m of whichever
 * thread strips. Incomplete threads at the bolt's point and the hole's mouth do not count: about a pitch more.
 * @param boltTensile R_m of the bolt, Pa
 * @param tappedTensile R_m of what it is screwed into, Pa
 */
export function engagementNeeded(thread: ThreadForm, boltTensile: number, tappedTensile: number): Engagement {
  const load = stressArea(thread) * positive(boltTensile, "boltTensile");
  const { bolt, tapped, basis } = stripAreas(thread);
  const againstBolt = load / (stripShare * boltTensile * bolt);
  const againstTapped = load / (stripShare * positive(tappedTensile, "tappedTensile") * tapped);
  return { againstBolt, againstTapped, needed: Math.max(againstBolt, againstTapped), basis };
}

/** What a bolt may be screwed into, for the rule of thumb. */
export const tappedMaterials = {
  steel: { label: "steel", diameters: 1 },
  castIron: { label: "cast iron, brass, bronze", diameters: 1.5 },
  aluminium: { label: "aluminium, zinc", diameters: 2 },
} as const;
export type TappedMaterial = keyof typeof tappedMaterials;

/** Rule of thumb for engagement, m: 1 d in steel, 1½ d in cast iron, brass and bronze, 2 d in aluminium and zinc. */
export function engagementByRule(majorDiameter: number, material: TappedMaterial): number {
  return positive(majorDiameter, "majorDiameter") * tappedMaterials[material].diameters;
}
