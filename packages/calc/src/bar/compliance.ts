import { CalcRefusal } from "../catalogue/refusal";
import { positive, written } from "../spring/guard";
import type { ElasticModuli } from "../spring/material";
import { type BarSection, barPolarSecondMoment, barSecondMoment } from "./section";

/** A U-shaped anti-roll bar: a straight middle and two straight arms of the same section. Metres, Pa. */
export interface Bar {
  readonly section: BarSection;
  /** Length of the middle that twists, from bend to bend. */
  readonly middleLength: number;
  /** Lever: distance of the drop link's centre from the middle's axis, square to it. */
  readonly leverLength: number;
  /** Length of the arm from the bend to the drop link's centre; the lever itself where the arm is square to the middle. */
  readonly armLength: number;
  /** Distance between the centres of the two mounting bushes. Left out: bending of the middle is not counted. */
  readonly bushSpacing?: number | undefined;
  readonly moduli: ElasticModuli;
}

/** What gives beside the bar. Rates in N/m; a part left out is taken as rigid. */
export interface BarFlexibility {
  /** Rate of one drop link with its bushes, in the link's direction. */
  readonly linkRate?: number | undefined;
  /** Radial rate of one mounting bush, in the direction of the load. Needs `bushSpacing`. */
  readonly bushRate?: number | undefined;
}

/** Movement of one end per force at each end, the ends loaded oppositely, m/N, part by part. */
export interface BarCompliance {
  readonly torsion: number;
  readonly armBending: number;
  readonly middleBending: number;
  readonly bushes: number;
  readonly links: number;
  readonly total: number;
}

/** How far the arm leans out sideways from bend to end: √(arm² − lever²), m. */
export function armOutset({ armLength, leverLength }: Bar): number {
  if (armLength >= leverLength) return Math.sqrt(armLength ** 2 - leverLength ** 2);
  throw new CalcRefusal(
    "ARM_SHORTER_THAN_LEVER",
    `arm length ${written(armLength, "length")} must be at least the lever ${written(leverLength, "length")}: the lever is measured square to the bar`,
    "armLength",
  );
}

/**
 * Compliance of a U-shaped bar whose ends move oppositely (as in roll), by Castigliano's theorem on one half:
 * torsion of the middle A²B/2GJ, bending of the arm C³/3EI and, where the bush spacing S is known, bending of the
 * middle over its overhang e and between the bushes [(s+e)³ − s³]/3EI + (s+e)²S/6EI. With G = 3E/8 this is the
 * stabiliser-bar formula of the SAE Spring Design Manual (from memory); without S it is Puhn's, twice as stiff
 * because he holds one end. Bushes and links are in series. Small movements; arms taken as leaning outwards.
 *
 * @throws CalcRefusal for lengths that are not positive, an arm shorter than its lever, bushes further apart than
 * the middle is long, or a bush rate without a bush spacing
 */
export function barCompliance(bar: Bar, flexibility: BarFlexibility = {}): BarCompliance {
  const { section, middleLength, leverLength, armLength, moduli } = bar;
  for (const place of ["middleLength", "leverLength", "armLength"] as const) positive(bar[place], place);
  const twistStiffness = positive(moduli.shear, "shearModulus") * barPolarSecondMoment(section);
  const bendStiffness = positive(moduli.young, "youngModulus") * barSecondMoment(section);
  const parts = {
    torsion: (leverLength ** 2 * middleLength) / (2 * twistStiffness),
    armBending: armLength ** 3 / (3 * bendStiffness),
    middleBending: middleBendingShape(bar) / bendStiffness,
    bushes: bushCompliance(bar, flexibility),
    links: flexibility.linkRate === undefined ? 0 : 1 / positive(flexibility.linkRate, "linkRate"),
  };
  const total = parts.torsion + parts.armBending + parts.middleBending + parts.bushes + parts.links;
  return { ...parts, total };
}

/** Bending of the middle, as a cube of lengths (m³) to be divided by EI. */
function middleBendingShape(bar: Bar): number {
  const outset = armOutset(bar);
  if (bar.bushSpacing === undefined) return 0;
  const reach = outset + overhang(bar, bar.bushSpacing);
  return (reach ** 3 - outset ** 3) / 3 + (reach ** 2 * bar.bushSpacing) / 6;
}

/** How far the middle runs out beyond each bush, m. */
function overhang({ middleLength }: Bar, bushSpacing: number): number {
  if (positive(bushSpacing, "bushSpacing") <= middleLength) return (middleLength - bushSpacing) / 2;
  throw new CalcRefusal(
    "BUSHES_TOO_FAR_APART",
    `bush spacing ${written(bushSpacing, "length")} must not exceed the middle's length ${written(middleLength, "length")}`,
    "bushSpacing",
  );
}

function bushCompliance(bar: Bar, { bushRate }: BarFlexibility): number {
  if (bushRate === undefined) return 0;
  positive(bushRate, "bushRate");
  if (bar.bushSpacing === undefined) {
    throw new CalcRefusal(
      "BUSH_SPACING_NEEDED",
      "a bush rate counts by its lever: give the distance between the mounting bushes too",
      "bushSpacing",
    );
  }
  const endSpacing = bar.middleLength + 2 * armOutset(bar);
  return (endSpacing / bar.bushSpacing) ** 2 / bushRate;
}

/** Sideways distance from the mounting bush (the bend, where the bush is unknown) to the drop link, m. */
export function loadReach(bar: Bar): number {
  const outset = armOutset(bar);
  return bar.bushSpacing === undefined ? outset : outset + overhang(bar, bar.bushSpacing);
}
