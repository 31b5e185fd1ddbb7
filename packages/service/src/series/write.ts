import {
  checkSpecification,
  explainNumber,
  type FieldDifference,
  Invalid,
  Problems,
  refused,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { dayColumn, dayOf } from "../day";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { currentSpecifications } from "../specification/read";
import {
  type AddMarqueInput,
  type AddSeriesForm,
  fallsOutside,
  readSeries,
  type SeriesCar,
  type SeriesFactsRead,
  seriesFacts,
  seriesFields,
  slugOf,
} from "./policy";
import { listMarques, listSeriesDetails, type SeriesPage, seriesPage } from "./read";

/** Refuses a short name that is taken, and one that could not be made of the name. */
function freeSlug(wanted: string, name: string, taken: readonly string[]): string {
  const slug = wanted === "" ? slugOf(name) : wanted;
  const message = slug === "" ? "give a short name of plain letters and digits" : `"${slug}" is taken`;
  if (slug === "" || taken.includes(slug)) throw new Invalid([{ field: "slug", message }]);
  return slug;
}

/**
 * Adds a marque and tells its id.
 *
 * @throws Refusal ROLE_NEEDED; Invalid for a short name that is taken
 */
export async function addMarque(ctx: Context, { slug: wanted, name }: AddMarqueInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const slug = freeSlug(
    wanted,
    name,
    (await listMarques(ctx)).map((marque) => marque.slug),
  );
  const id = uuid();
  await ctx.db.marque.create({ data: { id, slug, name } });
  await writeJournal(ctx, [{ action: "marque.add", noun: "marque", nounId: id, after: { slug, name } }]);
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

function columnsOf({ pattern, builtFrom, builtTo, builtCount }: SeriesFactsRead) {
  return {
    name: pattern.series,
    numberPrefix: pattern.prefix,
    numberDigits: pattern.digits,
    firstSerial: pattern.first,
    lastSerial: pattern.last,
    numberSuffixes: [...pattern.suffixes],
    builtFrom,
    builtTo,
    builtCount,
  };
}

/**
 * Adds a series from its form, as the last of the club's, and tells its short name.
 *
 * @throws Refusal ROLE_NEEDED; Invalid for everything that cannot be read, and a short name that is taken
 */
export async function foundSeries(ctx: Context, form: AddSeriesForm): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const problems = new Problems();
  const facts = readSeries(form, problems);
  const marque = (await listMarques(ctx)).find(({ slug }) => slug === form.marque);
  if (!marque) problems.add("marque", "choose one of the club's marques");
  problems.throwIfAny();
  const known = await listSeriesDetails(ctx);
  const slug = freeSlug(
    form.slug,
    form.name,
    known.map((series) => series.slug),
  );
  const { builtCount, ...columns } = columnsOf(facts);
  const last = await ctx.db.series.aggregate({ _max: { ordinal: true } });
  await addSeries(ctx, {
    ...columns,
    marqueId: marque?.id ?? "",
    slug,
    ordinal: form.ordinal > 0 ? form.ordinal : (last._max.ordinal ?? 0) + 1,
    ...(builtCount === null ? {} : { builtCount }),
    options: facts.options,
  });
  return slug;
}

export const changeSeriesInput = z.object({
  series: lineInput(60).min(1),
  /** Version of the series the form was opened with. */
  version: z.coerce.number().int().min(0),
  /** What the fields said when the form was opened. */
  opened: z.record(z.string().max(40), z.string().max(4_000)).default({}),
  reason: lineInput(500).default(""),
  ...seriesFields,
});
export type ChangeSeriesInput = z.infer<typeof changeSeriesInput>;

/** What the form of a series shows, as text; the same is sent along as `opened`. */
export function seriesTexts(series: SeriesPage): Readonly<Record<string, string>> {
  const { name, ordinal, pattern, builtFrom, builtTo, builtCount, options } = series;
  return {
    name,
    ordinal: String(ordinal),
    numberPrefix: pattern.prefix,
    numberDigits: String(pattern.digits),
    firstSerial: String(pattern.first),
    lastSerial: String(pattern.last),
    numberSuffixes: pattern.suffixes.join(", "),
    builtFrom,
    builtTo,
    builtCount: builtCount === undefined ? "" : String(builtCount),
    options: options.map(({ code, label }) => `${code}: ${label}`).join("; "),
  };
}

const labels: Readonly<Record<string, string>> = {
  name: "Name",
  ordinal: "Place in lists",
  numberPrefix: "Prefix",
  numberDigits: "Digits",
  firstSerial: "First serial",
  lastSerial: "Last serial",
  numberSuffixes: "Endings",
  builtFrom: "Built from",
  builtTo: "Built to",
  builtCount: "How many were built",
  options: "Options",
};

function refuseIfChanged(
  input: ChangeSeriesInput,
  series: SeriesPage,
  wanted: Readonly<Record<string, string>>,
): void {
  if (input.version === series.version) return;
  const now = seriesTexts(series);
  const differences: readonly FieldDifference[] = Object.entries(now).flatMap(([field, theirs]) => {
    const was = input.opened[field] ?? "";
    const yours = wanted[field] ?? "";
    return was === theirs ? [] : [{ field, label: labels[field] ?? field, was, theirs, yours }];
  });
  throw refused("CHANGED_MEANWHILE", { what: "this series", version: series.version, differences });
}

async function carsOf(ctx: Context, seriesId: string) {
  const rows = await ctx.db.car.findMany({
    where: { seriesId },
    select: {
      id: true,
      chassis: true,
      serial: true,
      builtEarliest: true,
      builtLatest: true,
      options: { select: { code: true } },
    },
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
  });
  return rows.map(({ builtEarliest, builtLatest, options, ...car }) => ({
    ...car,
    options: options.map(({ code }) => code),
    ...(builtEarliest === null || builtLatest === null
      ? {}
      : { built: { earliest: dayOf(builtEarliest), latest: dayOf(builtLatest) } }),
  })) satisfies readonly SeriesCar[];
}

/** Cars told by name in a refusal. */
const TOLD = 10;

function refuseCarsOutside(cars: readonly SeriesCar[], now: SeriesPage, wanted: SeriesPage): void {
  const outside = cars.flatMap((car) => fallsOutside(car, now, wanted) ?? []);
  if (outside.length === 0) return;
  throw refused("SERIES_LEAVES_CARS_OUT", {
    series: now.name,
    count: outside.length,
    cars: outside.slice(0, TOLD),
  });
}

/** Refuses a change that would make the current specification speak of cars or options there are none of. */
async function refuseContradictions(ctx: Context, now: SeriesPage, wanted: SeriesPage): Promise<void> {
  const specification = (await currentSpecifications(ctx, [now.id])).get(now.id);
  if (!specification) return;
  const book = await bookOf(ctx);
  const before = new Set(
    checkSpecification(specification, book, seriesFacts(now)).map(({ message }) => message),
  );
  const problems = checkSpecification(specification, book, seriesFacts(wanted))
    .map(({ message }) => message)
    .filter((message) => !before.has(message));
  if (problems.length > 0) throw refused("SPECIFICATION_CONTRADICTS", { problems: problems.slice(0, TOLD) });
}

/** Reads every car's serial by the new pattern; tells which cars' serials changed. */
async function readSerials(ctx: Context, cars: Awaited<ReturnType<typeof carsOf>>, wanted: SeriesPage) {
  const changed: string[] = [];
  for (const { id, chassis, serial } of cars) {
    const explained = explainNumber(chassis, wanted.pattern);
    const read = explained.ok ? explained.serial : null;
    if (read === serial) continue;
    await ctx.db.car.update({
      where: { clubId_id: { clubId: ctx.club.id, id } },
      data: { serial: read, version: { increment: 1 } },
    });
    changed.push(id);
  }
  return changed;
}

/**
 * Changes a series' name, number pattern, build dates and options; cars' serials are read again and the values of those
 * whose serial changed worked out again.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, CHANGED_MEANWHILE; SERIES_LEAVES_CARS_OUT where cars that fit now would
 * not any more; SPECIFICATION_CONTRADICTS where the current specification would. Invalid for what cannot be read. Then
 * nothing is written.
 */
export async function changeSeries(ctx: Context, input: ChangeSeriesInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const slug = input.series;
  await ctx.db
    .$queryRaw`SELECT id FROM series WHERE club_id = ${ctx.club.id}::uuid AND slug = ${slug} FOR UPDATE`;
  const now = await seriesPage(ctx, slug);
  const problems = new Problems();
  const facts = readSeries(input, problems);
  problems.throwIfAny();
  const { builtCount: _, ...kept } = now;
  const wanted: SeriesPage = {
    ...kept,
    name: input.name,
    ordinal: input.ordinal,
    pattern: facts.pattern,
    builtFrom: facts.builtFrom,
    builtTo: facts.builtTo,
    options: [...facts.options].sort((a, b) => (a.code < b.code ? -1 : 1)),
    ...(facts.builtCount === null ? {} : { builtCount: facts.builtCount }),
  };
  const [before, after] = [seriesTexts(now), seriesTexts(wanted)];
  refuseIfChanged(input, now, after);
  const fields = Object.keys(after).filter((field) => before[field] !== after[field]);
  if (fields.length === 0) return;
  const cars = await carsOf(ctx, now.id);
  refuseCarsOutside(cars, now, wanted);
  await refuseContradictions(ctx, now, wanted);
  const { builtFrom, builtTo, ...columns } = columnsOf(facts);
  await ctx.db.series.update({
    where: { clubId_id: { clubId: ctx.club.id, id: now.id } },
    data: {
      ...columns,
      ordinal: input.ordinal,
      builtFrom: dayColumn(builtFrom),
      builtTo: dayColumn(builtTo),
    },
  });
  await ctx.db.seriesOption.deleteMany({ where: { seriesId: now.id } });
  await ctx.db.seriesOption.createMany({
    data: facts.options.map((option) => ({ ...option, seriesId: now.id })),
  });
  const changed = await readSerials(ctx, cars, wanted);
  await rebuildCurrentValues(ctx, changed, await bookOf(ctx));
  const only = (texts: Readonly<Record<string, string>>) =>
    Object.fromEntries(fields.map((field) => [field, texts[field] ?? ""]));
  await writeJournal(ctx, [
    {
      action: "series.change",
      noun: "series",
      nounId: now.id,
      ...(input.reason === "" ? {} : { reason: input.reason }),
      before: only(before),
      after: { ...only(after), carsRenumbered: changed.length },
    },
  ]);
}
