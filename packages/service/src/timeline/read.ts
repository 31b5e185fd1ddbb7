import {
  type AcceptedModification,
  type AsBuiltValue,
  type CarEntry,
  type Characteristic,
  endOfDay,
  entriesFor,
  inLifeOrder,
  type KnownTime,
  type Reading,
  type TimelineEvent,
} from "@trunnion/register";
import { loadLife } from "../car-life";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import { recordedElsewhere } from "./elsewhere";
import { leanData } from "./lean";
import { lifeEvents, sideWordsOf } from "./policy";

/** What the engines need to tell the car's state on any day, sent to the browser once. */
export interface EngineData {
  readonly entries: readonly CarEntry[];
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly AcceptedModification[];
  readonly readings: readonly Reading[];
  /** The club's own characteristics among them; built-in ones the browser has. */
  readonly own: readonly Characteristic[];
}

/** A car's whole life, and what its state on any day is worked out from. */
export interface CarTimeline {
  readonly club: ClubFacts;
  /** ISO day. */
  readonly today: string;
  /** ISO day that the record is told as of; missing for now. */
  readonly believed?: string;
  readonly car: {
    readonly reference: string;
    readonly chassis: string;
    readonly claim: number;
    readonly version: number;
    readonly marque: string;
    readonly series: string;
    readonly built?: KnownTime;
  };
  /** False where the register did not know of the car on that day: then nothing is told. */
  readonly known: boolean;
  /** Version of the specification the car is compared with; missing where there is, or was, none. */
  readonly specification?: number;
  readonly events: readonly TimelineEvent[];
  readonly data: EngineData;
  /** What was changed since in a way that the journal does not keep, in words. */
  readonly lost: readonly string[];
  /** False where the reader may not see who kept it. */
  readonly keepersShown: boolean;
}

const nothing: EngineData = { entries: [], asBuilt: [], modifications: [], readings: [], own: [] };

export interface TimelineInput {
  /** The car's reference. */
  readonly car: string;
  /** ISO day: what was believed then; left out: now. */
  readonly believed?: string;
}

/**
 * A car's whole life in order, and the data that its state on any day follows from by the register's engines. With
 * `believed`, all of it as the record told it when that day ended in UTC.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carTimeline(
  ctx: Context,
  { car: reference, believed }: TimelineInput,
): Promise<CarTimeline> {
  const book = await bookOf(ctx);
  const { car, life, specification, known } = await loadLife(ctx, reference, believed);
  const wording = { book, sides: sideWordsOf(ctx.club.sideWords) };
  const until = believed === undefined ? undefined : endOfDay(believed);
  const elsewhere = await recordedElsewhere(ctx, { car, numbers: life.numbers }, until);
  const entries = entriesFor(specification, life.basis, book);
  return {
    club: ctx.club,
    today: ctx.today,
    ...(believed === undefined ? {} : { believed }),
    car: {
      reference: car.reference,
      chassis: car.chassis,
      claim: car.claim,
      version: car.version,
      marque: life.series?.marque.name ?? "",
      series: life.series?.name ?? "series not settled",
      ...(life.built ? { built: life.built } : {}),
    },
    known,
    ...(specification ? { specification: specification.version } : {}),
    events: known ? inLifeOrder([...lifeEvents(life, wording), ...elsewhere.events]) : [],
    data: known ? leanData(life, entries, book) : nothing,
    lost: life.lost,
    keepersShown: elsewhere.keepersShown,
  };
}
