import type { Verdict } from "@trunnion/db";
import {
  type Assembly,
  assemblies,
  type Characteristic,
  type CharacteristicBook,
  enteredBeside,
  printBeside,
  type Side,
  sayKept,
  type UnitSystem,
} from "@trunnion/register";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { type ChosenFleet, chosenFleet, countedBy, type FleetChoice } from "../fleet-choice";
import { type Counted as CountedBy, carsSql } from "../tally";
import { type ValueColumns, valueFrom, valueSql } from "../value-columns";
import { changedSql, commonestDifferentSql, prevalenceSql, readInOrderSql } from "./policy";

/** How common it is that a characteristic differs from factory. */
export interface PrevalenceRow {
  readonly key: string;
  readonly label: string;
  readonly assembly: Assembly;
  /** A setting rather than a part. */
  readonly setting: boolean;
  /** Cars of which it is known, those of them that could be compared with factory, and those that differ. */
  readonly known: number;
  readonly compared: number;
  readonly differs: number;
  /** What differing cars have most often, and how many; missing where none differs. */
  readonly commonest?: { readonly said: string; readonly cars: number };
  /** Cars with a recorded change by year, and those whose year is in doubt. */
  readonly changed: readonly { readonly year: number; readonly cars: number }[];
  readonly undated: number;
}

/** What has been changed on how many of how many known cars. */
export interface Prevalence {
  readonly club: ClubFacts;
  readonly choice: Omit<ChosenFleet, "where">;
  readonly cars: number;
  /** In walking order, within an assembly the most often changed first. */
  readonly rows: readonly PrevalenceRow[];
}

interface Counted {
  readonly characteristic: string;
  readonly known: number;
  readonly compared: number;
  readonly differs: number;
}
interface Commonest {
  readonly characteristic: string;
  readonly kind: string;
  readonly text: string | null;
  readonly entered: string;
  readonly cars: number;
}
interface Changed {
  readonly characteristic: string;
  readonly year: number | null;
  readonly cars: number;
}

/** What most have, in words that one page has for all. */
export function sayCommonest(
  characteristic: Characteristic,
  { kind, text, entered }: Pick<Commonest, "kind" | "text" | "entered">,
  system: UnitSystem,
): string {
  if (kind === "absent") return "not fitted";
  if (characteristic.kind === "quantity" || text === null)
    return enteredBeside(characteristic, entered, system);
  return sayKept(characteristic, text);
}

/** Groups rows by characteristic. */
function byKey<T extends { readonly characteristic: string }>(
  rows: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const map = new Map<string, T[]>();
  for (const row of rows) {
    const same = map.get(row.characteristic);
    if (same === undefined) map.set(row.characteristic, [row]);
    else same.push(row);
  }
  return map;
}

/** Share that differ, among those compared; what nobody compared comes last. */
const share = ({ compared, differs }: Pick<PrevalenceRow, "compared" | "differs">) =>
  compared === 0 ? -1 : differs / compared;

async function rowsOf(
  ctx: Context,
  source: CountedBy,
  book: CharacteristicBook,
): Promise<readonly PrevalenceRow[]> {
  if (source.kept === undefined && source.bits === undefined) await ctx.db.$queryRaw(readInOrderSql);
  const counted = await ctx.db.$queryRaw<Counted[]>(prevalenceSql(source));
  const commonest = byKey(await ctx.db.$queryRaw<Commonest[]>(commonestDifferentSql(source)));
  const changed = byKey(await ctx.db.$queryRaw<Changed[]>(changedSql(source)));
  const rows = counted.flatMap(({ characteristic: key, ...counts }) => {
    const characteristic = book.find(key);
    if (!characteristic) return [];
    const { label, assembly, setting } = characteristic;
    const [often] = commonest.get(key) ?? [];
    const dated = (changed.get(key) ?? []).flatMap(({ year, cars }) =>
      year === null ? [] : [{ year, cars }],
    );
    return [
      {
        key,
        label,
        assembly,
        setting,
        ...counts,
        ...(often === undefined
          ? {}
          : {
              commonest: { said: sayCommonest(characteristic, often, ctx.club.unitSystem), cars: often.cars },
            }),
        changed: dated.sort((a, b) => a.year - b.year),
        undated: (changed.get(key) ?? []).find(({ year }) => year === null)?.cars ?? 0,
      },
    ];
  });
  const place = (assembly: Assembly) => assemblies.indexOf(assembly);
  return rows.sort(
    (a, b) => place(a.assembly) - place(b.assembly) || share(b) - share(a) || (a.label < b.label ? -1 : 1),
  );
}

/**
 * What has been changed on how many of how many known cars, and when. Cars of which a characteristic is not recorded are in
 * none of its counts: unknown is no sign of originality.
 *
 * @throws Refusal SERIES_NOT_FOUND, FILTER_NOT_FOUND
 */
export async function prevalence(ctx: Context, input: FleetChoice): Promise<Prevalence> {
  const book = await bookOf(ctx);
  const fleet = await chosenFleet(ctx, input, book);
  const { where: _, ...choice } = fleet;
  const source = await countedBy(ctx, fleet, book);
  const [{ cars } = { cars: 0 }] = await ctx.db.$queryRaw<{ cars: number }[]>(carsSql(source));
  return { club: ctx.club, choice, cars, rows: await rowsOf(ctx, source, book) };
}

/** What other cars of the series have, beside what this one has. */
export interface OthersRow extends PrevalenceRow {
  /** What is recorded of this car, side by side; empty where nothing is. */
  readonly own: readonly { readonly side: Side; readonly value: string; readonly differs: boolean }[];
}

/** What other owners of a car's series run. */
export interface Others {
  readonly club: ClubFacts;
  readonly car: { readonly reference: string; readonly chassis: string };
  /** Missing while the car's series is not settled: then there is nothing to compare with. */
  readonly series?: { readonly slug: string; readonly name: string };
  /** Cars of the series, this one among them. */
  readonly cars: number;
  /** Most often changed first. */
  readonly rows: readonly OthersRow[];
}

const telling: ReadonlySet<string> = new Set(["outsideLimits", "differentPart", "added", "missing"]);

interface OwnRow extends ValueColumns {
  readonly characteristic: string;
  readonly side: Side;
  readonly verdict: Verdict;
}

async function ownValues(ctx: Context, carId: string, book: CharacteristicBook) {
  const rows = await ctx.db.$queryRaw<OwnRow[]>`
    SELECT v.characteristic, v.side::text AS side, v.verdict::text AS verdict, ${valueSql}
    FROM current_value v WHERE v.car_id = ${carId}::uuid ORDER BY v.side`;
  const own = new Map<string, OthersRow["own"][number][]>();
  for (const row of rows) {
    const characteristic = book.find(row.characteristic);
    if (!characteristic) continue;
    const value = printBeside(characteristic, valueFrom(row), ctx.club.unitSystem);
    const line = { side: row.side, value, differs: telling.has(row.verdict) };
    own.set(row.characteristic, [...(own.get(row.characteristic) ?? []), line]);
  }
  return own;
}

/**
 * What other owners of this car's series run, as the register knows it: the characteristics that differ on some car of the
 * series, beside what this one has. No car is named.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function others(ctx: Context, reference: string): Promise<Others> {
  const book = await bookOf(ctx);
  const { id, series, chassis, reference: own } = await findCar(ctx, reference);
  const head = { club: ctx.club, car: { reference: own, chassis } };
  if (series === null) return { ...head, cars: 0, rows: [] };
  const source = await countedBy(ctx, await chosenFleet(ctx, { series: series.slug }, book), book);
  const [{ cars } = { cars: 0 }] = await ctx.db.$queryRaw<{ cars: number }[]>(carsSql(source));
  const values = await ownValues(ctx, id, book);
  const rows = (await rowsOf(ctx, source, book)).filter(({ differs }) => differs > 0);
  return {
    ...head,
    series: { slug: series.slug, name: series.name },
    cars,
    rows: rows
      .map((row) => ({ ...row, own: values.get(row.key) ?? [] }))
      .sort((a, b) => share(b) - share(a) || (a.label < b.label ? -1 : 1)),
  };
}
