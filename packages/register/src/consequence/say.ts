import type { FigureChange } from "./consequence";

const times = new Intl.NumberFormat("en-GB", { maximumSignificantDigits: 3 });
const percent = new Intl.NumberFormat("en-GB", { maximumFractionDigits: 1, signDisplay: "exceptZero" });

/** Within a quarter either way a change is told in per cent, beyond as a multiple. */
function sayRatio(ratio: number): string {
  if (ratio > 0.8 && ratio < 1.25) return `${percent.format((ratio - 1) * 100).replace("-", "−")} %`;
  return `× ${times.format(ratio)}`;
}

/**
 * How a figure changed, beside its two texts: "× 2.44", "+3.1 %"; empty where there is nothing to compare.
 *
 * @example sayFigureChange({ label: "Rate", output: "rate", ratio: 2.4414, onlyRatio: false }) // => "× 2.44"
 */
export function sayFigureChange({ ratio, numberBefore, numberAfter }: FigureChange): string {
  if (ratio !== undefined) return ratio === 1 ? "as before" : sayRatio(ratio);
  if (numberBefore === undefined || numberAfter === undefined) return "";
  if (numberBefore === numberAfter) return "as before";
  return numberAfter === 0 ? "gone" : "";
}
