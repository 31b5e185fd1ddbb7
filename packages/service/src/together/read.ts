import { type Association, association, type Fourfold, holdsUp, smallExpected } from "@trunnion/calc";
import { type Assembly, type CharacteristicBook, sayKept } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { chosenFleet, countedBy, type FleetChoice } from "../fleet-choice";
import { sayCommonest } from "../prevalence";
import { characteristicOf } from "../spread";
import { commonestSql, type First, firstCountSql, fourfoldSql, SAMPLE } from "./policy";

/** What shall be there, over which cars. */
export interface TogetherInput extends FleetChoice {
  readonly key: string;
  /** A choice's code or a designation that the car has; left out: it differs from factory there. */
  readonly value?: string;
}

/** Another characteristic that differs from factory on the cars that have the first property, or does not. */
export interface TogetherRow extends Fourfold, Association {
  readonly key: string;
  readonly label: string;
  readonly assembly: Assembly;
  /** What cars with both have there most often; missing where no car has both. */
  readonly commonest?: string;
  /** So few cars that phi and odds swing with single ones. */
  readonly small: boolean;
  /** Stands out even once it is remembered how many were looked for. */
  readonly holdsUp: boolean;
}

/** What goes with a property of a car. */
export interface Together {
  /** "differs from factory", or what it is. */
  readonly first: string;
  /** Cars of which the first property is known, and how many of those were looked at: fewer while very many wait to be counted. */
  readonly known: number;
  readonly lookedAt: number;
  /** How many connections were looked for. */
  readonly looked: number;
  /** The least probable without a connection first. */
  readonly rows: readonly TogetherRow[];
}

type Found = Fourfold & { readonly characteristic: string };

interface Commonest {
  readonly characteristic: string;
  readonly kind: string;
  readonly text: string | null;
  readonly entered: string;
}

/** Most connections named. */
const NAMED = 12;

/** A table without a margin says nothing: every car has the property, or none. */
const telling = ({ both, firstOnly, secondOnly, neither }: Fourfold) =>
  [both + firstOnly, secondOnly + neither, both + secondOnly, firstOnly + neither].every((sum) => sum > 0);

interface Judged extends Association {
  readonly table: Found;
}

async function rowsOf(
  ctx: Context,
  first: First,
  {
    judged,
    looked,
    book,
  }: { readonly judged: readonly Judged[]; readonly looked: number; readonly book: CharacteristicBook },
): Promise<readonly TogetherRow[]> {
  const keys = judged.map(({ table }) => table.characteristic);
  const common = await ctx.db.$queryRaw<Commonest[]>(commonestSql(first, keys));
  return judged.map(({ table, ...measure }) => {
    const { characteristic: key, ...counts } = table;
    const characteristic = book.find(key);
    const often = common.find((one) => one.characteristic === key);
    return {
      key,
      label: characteristic?.label ?? key,
      assembly: characteristic?.assembly ?? "chassis",
      ...counts,
      ...measure,
      ...(often === undefined || characteristic === undefined
        ? {}
        : { commonest: sayCommonest(characteristic, often, ctx.club.unitSystem) }),
      small: measure.leastExpected < smallExpected,
      holdsUp: holdsUp(measure, looked),
    };
  });
}

/**
 * What goes with a property of a car: for every other characteristic, of the cars of which both are known, how many have
 * both, one or neither, with phi, the ratio of odds and Fisher's exact probability. That they go together does not say that
 * one is because of the other.
 *
 * @throws Refusal CHARACTERISTIC_NOT_FOUND, SERIES_NOT_FOUND, FILTER_NOT_FOUND
 */
export async function together(ctx: Context, input: TogetherInput): Promise<Together> {
  const book = await bookOf(ctx);
  const characteristic = characteristicOf(book, input.key);
  const counted = await countedBy(ctx, await chosenFleet(ctx, input, book), book, { byBlocks: true });
  const { key, value } = input;
  const first: First = { key, counted, ...(value === undefined ? {} : { value }) };
  const [{ cars: known } = { cars: 0 }] = await ctx.db.$queryRaw<{ cars: number }[]>(firstCountSql(first));
  const found = (await ctx.db.$queryRaw<Found[]>(fourfoldSql(first))).filter(telling);
  const judged = found
    .map((table) => ({ table, ...association(table) }))
    .sort((a, b) => a.exactProbability - b.exactProbability)
    .slice(0, NAMED);
  return {
    first: value === undefined ? "differs from factory" : `is ${sayKept(characteristic, value)}`,
    known,
    lookedAt: counted.bits === undefined ? Math.min(known, SAMPLE) : known,
    looked: found.length,
    rows: judged.length === 0 ? [] : await rowsOf(ctx, first, { judged, looked: found.length, book }),
  };
}
