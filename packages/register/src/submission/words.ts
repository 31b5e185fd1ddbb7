import type { FigureChange } from "../consequence/index";

const times = new Intl.NumberFormat("en-GB", { maximumSignificantDigits: 3 });
const percent = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 1 });

/** Within a quarter either way a change is told in per cent, beyond as a multiple. */
function sayRatio(ratio: number): string {
  if (ratio === 1) return "as before";
  if (ratio > 0.8 && ratio < 1.25)
    return `${percent.format(Math.abs(ratio - 1) * 100)} % ${ratio > 1 ? "up" : "down"}`;
  return `${times.format(ratio)} times what it was`;
}

/** After over before: of a computation that compares by itself and tells a ratio alone, its answer is the ratio. */
export function ratioOfFigure({ ratio, onlyRatio, numberAfter }: FigureChange): number | undefined {
  return ratio ?? (onlyRatio ? numberAfter : undefined);
}

/**
 * What became of a figure, in words that stand alone: for reading aloud, and for who does not read tables.
 *
 * @example sayConsequenceFigure({ label: "Front bar at the wheel", output: "wheelRate", before: "4 N/mm", after: "9.77 N/mm", ratio: 2.4414, onlyRatio: false })
 * // => "Front bar at the wheel: 2.44 times what it was, 9.77 N/mm instead of 4 N/mm"
 */
export function sayConsequenceFigure(figure: FigureChange): string {
  const { label, before, after, onlyRatio } = figure;
  const ratio = ratioOfFigure(figure);
  if (ratio !== undefined) {
    const told = sayRatio(ratio);
    if (onlyRatio || before === undefined || after === undefined || before === after)
      return `${label}: ${told}`;
    return `${label}: ${told}, ${after} instead of ${before}`;
  }
  if (after === undefined) return `${label}: cannot be worked out after the change`;
  if (before === undefined) return `${label}: ${after}`;
  return before === after ? `${label}: ${after}, as before` : `${label}: ${after} instead of ${before}`;
}
