import { niceStep } from "@trunnion/calc";
import type { ValueAxis } from "@trunnion/register";

/** What a plot needs of an axis: widths that read well, and how a place is said. */
export type PlotAxis = Pick<ValueAxis, "widths" | "say">;

/** Ticks of an axis that do not run into each other: fewer where what is said there is long. */
export function axisTicks(
  axis: PlotAxis,
  [least, most]: readonly [number, number],
  room = 44,
): readonly { readonly place: number; readonly label: string }[] {
  const longest = Math.max(
    ...[least, most].map(
      (end) => axis.say(end, niceStep(Math.max((most - least) / 4, 1e-9), axis.widths)).length,
    ),
  );
  const count = Math.max(1, Math.floor(room / Math.max(7, longest + 2)));
  const step = niceStep(Math.max((most - least) / count, Math.abs(most) * 1e-9, 1e-12), axis.widths);
  const first = Math.ceil(least / step - 1e-9);
  const last = Math.floor(most / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => {
    const place = (first + index) * step;
    return { place, label: axis.say(place, step) };
  });
}
