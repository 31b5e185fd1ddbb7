import { distanceAtRim } from "../alignment/rim";
import { printQuantity } from "./print";
import type { ToeShare } from "./toe";

/** How toe is printed. */
export interface ToePrintOptions {
  readonly share: ToeShare;
  /** Diameter (m) a distance is measured over; left out, an angle is printed. */
  readonly rimDiameter?: number;
  /** A unit of angle, or with a rim of length; left out, degrees and minutes, or millimetres. */
  readonly unit?: string;
  /** Step one wheel's toe is known to, rad. */
  readonly resolution?: number;
  /** Print vulgar fractions of the unit. Needs a resolution. */
  readonly fractions?: boolean;
}

/**
 * Prints the toe-in (rad) of one wheel as {@link parseToe} reads it, "1/16 in toe-out per side"; nought has no
 * direction.
 * @throws RangeError for a value that is not finite or beyond ±90°, or a unit that does not fit
 */
export function printToe(perWheel: number, options: ToePrintOptions): string {
  const { share, rimDiameter, resolution, fractions } = options;
  const wheels = share === "total" ? 2 : 1;
  const measure = (angle: number) =>
    rimDiameter === undefined ? wheels * angle : wheels * distanceAtRim(angle, rimDiameter);
  const size = printQuantity(Math.abs(measure(perWheel)), {
    dimension: rimDiameter === undefined ? "angle" : "length",
    unit: options.unit ?? (rimDiameter === undefined ? "°'" : "mm"),
    resolution: resolution === undefined ? undefined : measure(resolution),
    fractions,
  });
  const nought = !/[1-9]/.test(size);
  const direction = nought ? "" : perWheel > 0 ? " toe-in" : " toe-out";
  return `${size}${direction} ${share === "total" ? "total" : "per side"}`;
}
