import {
  type CharacteristicBook,
  changedCharacteristics,
  countMoves,
  type Deviation,
  deviationLine,
  type MovedVerdict,
  movedVerdicts,
  type Specification,
  specificationDifference,
  type Verdict,
  type VerdictMove,
} from "@trunnion/register";
import { assess } from "../assessment";
import type { Context } from "../context";
import { type CarRecord, recordsOf } from "../record";
import { standingRecord } from "../standing-record";

/** Cars in one go: what is held in memory does not grow with the series. */
const CARS = 200;

/** One characteristic of one car that another version judges differently, in words. */
export interface MovedLine {
  /** Reference of the car. */
  readonly car: string;
  readonly chassis: string;
  readonly claim: number;
  readonly characteristic: string;
  readonly label: string;
  readonly side?: "left" | "right";
  /** What the car has; empty where nothing is recorded. */
  readonly actual: string;
  /** What is specified for it, before and after; empty where nothing is. */
  readonly specifiedBefore: string;
  readonly specifiedAfter: string;
  /** Missing where that version does not speak of it. */
  readonly before?: Verdict;
  readonly after?: Verdict;
}

/** What a change of specification does to the verdicts on a series' cars. */
export interface Moves {
  /** Cars of the series that were looked at. */
  readonly cars: number;
  /** Cars of which at least one verdict moves. */
  readonly carsMoved: number;
  /** How often what became what; all moves, also those not listed. */
  readonly counts: readonly VerdictMove[];
  /** By chassis, as many as were asked for. */
  readonly lines: readonly MovedLine[];
  /** Moves in all. */
  readonly total: number;
}

export interface MovedInput {
  readonly seriesId: string;
  /** Missing where the series has no current version yet. */
  readonly before?: Specification;
  readonly after: Specification;
  readonly book: CharacteristicBook;
  /** Most lines that are told; the counts are of all. */
  readonly keep: number;
}

/** The part of a specification that speaks of some characteristics: the engines judge each by itself. */
function narrowed(
  specification: Specification | undefined,
  keys: ReadonlySet<string>,
): Specification | undefined {
  if (specification === undefined) return undefined;
  return {
    ...specification,
    entries: specification.entries.filter(({ characteristic }) => keys.has(characteristic)),
  };
}

function narrowedRecord(record: CarRecord, keys: ReadonlySet<string>): CarRecord {
  const here = ({ characteristic }: { readonly characteristic: string }) => keys.has(characteristic);
  return {
    ...record,
    asBuilt: record.asBuilt.filter(here),
    modifications: record.modifications.map((one) => ({ ...one, changes: one.changes.filter(here) })),
    readings: record.readings.filter(here),
  };
}

function sayMove(ctx: Context, record: CarRecord, move: MovedVerdict, book: CharacteristicBook): MovedLine {
  const words = (deviation: Deviation | undefined) =>
    deviation === undefined ? undefined : deviationLine(deviation, book, ctx.club.unitSystem);
  const [before, after] = [words(move.before), words(move.after)];
  const told = after ?? before;
  return {
    car: record.reference,
    chassis: record.chassis,
    claim: record.claim,
    characteristic: move.characteristic,
    label: told?.label ?? move.characteristic,
    ...(move.side === "whole" ? {} : { side: move.side }),
    actual: told?.actual ?? "",
    specifiedBefore: before?.specified ?? "",
    specifiedAfter: after?.specified ?? "",
    ...(before === undefined ? {} : { before: before.verdict }),
    ...(after === undefined ? {} : { after: after.verdict }),
  };
}

/**
 * Which verdicts move when a series' cars are held against another version of its specification, worked out by the
 * engines that judge them on their pages, over all cars of the series, some at a time. Nothing is written.
 */
export async function movesOf(
  ctx: Context,
  { seriesId, before, after, book, keep }: MovedInput,
): Promise<Moves> {
  const keys = changedCharacteristics(specificationDifference(before?.entries ?? [], after.entries));
  const cars = await ctx.db.car.findMany({
    where: { ...standingRecord, seriesId },
    select: { id: true },
    orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
  });
  const [was, is] = [narrowed(before, keys), narrowed(after, keys)];
  const counts = new Map<string, VerdictMove>();
  const lines: MovedLine[] = [];
  let [carsMoved, total] = [0, 0];
  for (let start = 0; keys.size > 0 && start < cars.length; start += CARS) {
    const ids = cars.slice(start, start + CARS).map(({ id }) => id);
    const records = new Map((await recordsOf(ctx, ids)).map((record) => [record.id, record]));
    for (const id of ids) {
      const whole = records.get(id);
      if (whole === undefined) continue;
      const record = narrowedRecord(whole, keys);
      const moves = movedVerdicts(
        assess(record, was, book, ctx.today).deviations,
        assess(record, is, book, ctx.today).deviations,
      );
      if (moves.length > 0) carsMoved += 1;
      total += moves.length;
      for (const move of countMoves(moves)) {
        const key = `${move.before} ${move.after}`;
        counts.set(key, { ...move, count: move.count + (counts.get(key)?.count ?? 0) });
      }
      for (const move of moves.slice(0, keep - lines.length)) lines.push(sayMove(ctx, record, move, book));
    }
  }
  const most = [...counts.values()].sort((one, other) => other.count - one.count);
  return { cars: cars.length, carsMoved, counts: most, lines, total };
}
