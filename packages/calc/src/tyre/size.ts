import { positive } from "../spring/guard";

/** A tyre's nominal section, metres; the aspect ratio as a plain ratio, e.g. 0.7. */
export interface TyreSection {
  readonly sectionWidth: number;
  readonly aspect: number;
  readonly rimDiameter: number;
}

/** Section height, m: width × aspect ratio. */
export function tyreSectionHeight({
  sectionWidth,
  aspect,
}: Pick<TyreSection, "sectionWidth" | "aspect">): number {
  return positive(sectionWidth, "sectionWidth") * positive(aspect, "aspect");
}

/** Design overall diameter of the unloaded tyre, m: rim + 2 × section height, unrounded. */
export function tyreOverallDiameter(section: TyreSection): number {
  return positive(section.rimDiameter, "rimDiameter") + 2 * tyreSectionHeight(section);
}

/**
 * Design overall diameter as UN R30 6.1.2 and the tables write it, m: section height and rim each rounded to whole
 * millimetres first (from memory; 13, 14, 15 in rims count 330, 356, 381 mm).
 * @example tyreTableDiameter({ sectionWidth: 0.185, aspect: 0.7, rimDiameter: 0.3302 }) // => 0.59
 */
export function tyreTableDiameter(section: TyreSection): number {
  const height = Math.round(millimetres(tyreSectionHeight(section)));
  return (Math.round(millimetres(positive(section.rimDiameter, "rimDiameter"))) + 2 * height) / 1000;
}

/** Millimetres without the last bits of a conversion, so that 129.5 rounds up as on paper. */
function millimetres(length: number): number {
  return Number((length * 1000).toFixed(6));
}

export const tyreConstructions = ["radial", "crossPly"] as const;
export type TyreConstruction = (typeof tyreConstructions)[number];

/**
 * Rolling circumference over overall diameter: 3.05 for radials, 2.99 for cross-plies (ETRTO and WdK guideline, from
 * memory, weak), against π for a rigid wheel. Two tyres of one construction compare without it.
 */
export const rollingFactors: Readonly<Record<TyreConstruction, number>> = { radial: 3.05, crossPly: 2.99 };

/** Rolling circumference estimated from the overall diameter, m. A measured one is better. */
export function rollingCircumference(overallDiameter: number, construction: TyreConstruction): number {
  return positive(overallDiameter, "overallDiameter") * rollingFactors[construction];
}

/** Change of section width per change of rim width (UN R30 6.1.1.1: K = 0.4); about 5 mm for half an inch. */
const widthPerRimWidth = 0.4;

/** A tyre on a rim that is not the measuring rim; metres. */
export interface RimFit {
  readonly sectionWidth: number;
  readonly rimWidth: number;
  /** Rim the nominal width is measured on. */
  readonly measuringRimWidth: number;
}

/** Section width on a given rim, m: S + 0.4·(rim − measuring rim) (UN R30 6.1.1.1). */
export function sectionWidthOnRim({ sectionWidth, rimWidth, measuringRimWidth }: RimFit): number {
  const beyond = positive(rimWidth, "rimWidth") - positive(measuringRimWidth, "measuringRimWidth");
  return positive(sectionWidth, "sectionWidth") + widthPerRimWidth * beyond;
}
