import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { dayColumn } from "../day";
import { writeJournal } from "../journal";
import { requireRole } from "../role";

/** Adds a marque and tells its id. */
export async function addMarque(
  ctx: Context,
  input: { readonly slug: string; readonly name: string },
): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const id = uuid();
  await ctx.db.marque.create({ data: { id, ...input } });
  await writeJournal(ctx, [{ action: "marque.add", noun: "marque", nounId: id, after: { ...input } }]);
  return id;
}

export interface AddSeriesInput {
  readonly marqueId: string;
  readonly slug: string;
  readonly name: string;
  readonly ordinal: number;
  readonly numberPrefix: string;
  readonly numberDigits: number;
  readonly firstSerial: number;
  readonly lastSerial: number;
  readonly numberSuffixes: readonly string[];
  /** ISO days. */
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly builtCount?: number;
  readonly options: readonly { readonly code: string; readonly label: string }[];
}

/** Adds a series with its number pattern and options, and tells its id. */
export async function addSeries(ctx: Context, input: AddSeriesInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { options, builtFrom, builtTo, builtCount, numberSuffixes, ...rest } = input;
  const id = uuid();
  await ctx.db.series.create({
    data: {
      ...rest,
      id,
      numberSuffixes: [...numberSuffixes],
      builtFrom: dayColumn(builtFrom),
      builtTo: dayColumn(builtTo),
      builtCount: builtCount ?? null,
    },
  });
  await ctx.db.seriesOption.createMany({ data: options.map((option) => ({ ...option, seriesId: id })) });
  const after = { ...rest, options: options.length };
  await writeJournal(ctx, [{ action: "series.add", noun: "series", nounId: id, after }]);
  return id;
}
