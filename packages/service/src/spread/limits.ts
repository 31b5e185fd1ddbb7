import type { CharacteristicBook } from "@trunnion/register";
import {
  entryLine,
  limitsBeside,
  printBeside,
  type QuantityCharacteristic,
  type Side,
  type ValueAxis,
} from "@trunnion/register";
import type { Context } from "../context";
import { listSeriesDetails } from "../series";
import { currentSpecifications } from "../specification/read";

/** What one entry of a specification wants, ready to be drawn beside the values. */
export interface SpreadLimits {
  readonly series: string;
  /** Which of its cars; empty for every one. */
  readonly cars: string;
  readonly side: Side;
  /** Nominal and limits in words, in the notation of the values beside. */
  readonly nominal: string;
  readonly limits: string;
  /** Along the axis, where there are any. */
  readonly lower?: number;
  readonly upper?: number;
  readonly at?: number;
}

export interface SpreadLimitsInput {
  readonly key: string;
  readonly book: CharacteristicBook;
  /** Short name of one series; every series when left out. */
  readonly series?: string;
  readonly side?: Side;
  readonly axis?: ValueAxis;
}

const along = (axis: ValueAxis | undefined, si: number | undefined) =>
  axis === undefined || si === undefined ? undefined : axis.toAxis(si);

/** What the current specifications want of a characteristic, series by series in their order. */
export async function spreadLimits(
  ctx: Context,
  { key, book, series: slug, side, axis }: SpreadLimitsInput,
): Promise<readonly SpreadLimits[]> {
  const all = (await listSeriesDetails(ctx)).filter((one) => slug === undefined || one.slug === slug);
  const specifications = await currentSpecifications(
    ctx,
    all.map(({ id }) => id),
  );
  const characteristic = book.find(key);
  const { unitSystem: system } = ctx.club;
  return all.flatMap(({ id, name, pattern, options }) => {
    const entries = (specifications.get(id)?.entries ?? []).filter(
      (entry) =>
        entry.characteristic === key && (side === undefined || entry.side === side || entry.side === "whole"),
    );
    const codes = Object.fromEntries(options.map(({ code, label }) => [code, label]));
    return entries.map((entry) => {
      const line = entryLine(entry, { book, system, pattern, options: codes });
      const places = {
        lower: along(axis, entry.limits?.lower),
        upper: along(axis, entry.limits?.upper),
        at: along(axis, entry.nominal?.kind === "quantity" ? entry.nominal.si : undefined),
      };
      const known = Object.fromEntries(Object.entries(places).filter(([, place]) => place !== undefined));
      return {
        series: name,
        cars: line.cars,
        side: entry.side,
        nominal:
          entry.nominal && characteristic ? printBeside(characteristic, entry.nominal, system) : line.nominal,
        limits:
          entry.limits && characteristic ? limitsBeside(characteristic, entry.limits, system) : line.limits,
        ...known,
      };
    });
  });
}

export const isQuantity = (one: { readonly kind: string }): one is QuantityCharacteristic =>
  one.kind === "quantity";
