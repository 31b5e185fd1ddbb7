import { CalcRefusal } from "../catalogue/refusal";
import { checkedSeries } from "../measurement/series";
import { finite } from "../spring/guard";

/**
 * Quantile of a series: definition 7 of Hyndman and Fan, "Sample quantiles in statistical packages", The American
 * Statistician 50 (1996) 361-365: linear between the ordered values, at (n − 1)·share. It is what PostgreSQL's
 * `percentile_cont` gives, so that a figure worked out in the database and one worked out here are the same.
 *
 * @param share 0 to 1: 0.25 for the lower quartile
 * @throws CalcRefusal for an empty series, a value that is not finite, or a share outside 0 to 1
 * @example quantileOf([1, 2, 3, 4], 0.25) // => 1.75
 */
export function quantileOf(values: readonly number[], share: number): number {
  if (finite(share, "share") < 0 || share > 1)
    throw new CalcRefusal("OUT_OF_RANGE", `share must be between 0 and 1, but is ${share}`, "share");
  const sorted = [...checkedSeries(values)].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
}
