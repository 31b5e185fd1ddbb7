import type { Tyre } from "./tyre";

/** The section height over the width of a tyre, and whether its size states it. */
export interface TyreAspect {
  readonly ratio: number;
  /** True when the size states none and a default of the trade is taken. */
  readonly assumed: boolean;
  /** What was taken and why; shown wherever an assumed ratio was used. */
  readonly note: string;
}

/** Widths (in) and rims (in) of the cross-ply sizes whose section is nearly round. */
const roundSectionWidths = [5.2, 5.6, 5.9, 6.4, 6.7];

/**
 * The aspect ratio of a tyre. Where the size states none: 0.80 for a metric radial (sources of the trade say 0.80 to
 * 0.82; at 165 R 13 that is 596 to 601 mm), 0.95 for the common imperial cross-ply widths 5.20, 5.60, 5.90, 6.40 and
 * 6.70 on 12 to 15 in rims (common practice, no source). Otherwise `undefined`: measure the tyre.
 */
export function tyreAspect(tyre: Tyre): TyreAspect | undefined {
  if (tyre.aspect !== null) return { ratio: tyre.aspect, assumed: false, note: "stated in the size" };
  if (tyre.system === "metric") {
    if (tyre.construction === "crossPly") return undefined;
    return {
      ratio: 0.8,
      assumed: true,
      note: "no aspect ratio stated: 0.80 assumed, the trade says 0.80 to 0.82",
    };
  }
  const width = tyre.sectionWidth / 0.0254;
  const rim = tyre.rimDiameter / 0.0254;
  const common = roundSectionWidths.some((each) => Math.abs(each - width) < 1e-6) && rim > 11.5 && rim < 15.5;
  if (!common || tyre.construction !== "crossPly") return undefined;
  return {
    ratio: 0.95,
    assumed: true,
    note: "no aspect ratio stated: 0.95 assumed for an imperial cross-ply",
  };
}

/** An unloaded tyre's design diameter, m. */
export interface OverallDiameter {
  readonly diameter: number;
  readonly assumed: boolean;
  readonly note: string;
}

/**
 * Overall diameter from the size: rim + 2 × width × aspect (UN R30, 6.1.2; its tables round the section height to
 * whole millimetres and the rim to 330, 356, 381 mm, so differ by up to a millimetre). `undefined` where
 * {@link tyreAspect} is.
 */
export function overallDiameter(tyre: Tyre): OverallDiameter | undefined {
  const aspect = tyreAspect(tyre);
  if (aspect === undefined) return undefined;
  const { ratio, assumed, note } = aspect;
  return { diameter: tyre.rimDiameter + 2 * tyre.sectionWidth * ratio, assumed, note };
}
