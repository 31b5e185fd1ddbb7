import type { Prisma } from "@trunnion/db";
import {
  chassisKey,
  decisionOutcomeWords,
  endsOf,
  type FindingResult,
  findingResultWords,
  type KnownTime,
  sayDay,
  sayNumberKind,
  standing,
  type TimelineDetail,
  type TimelineEvent,
} from "@trunnion/register";
import { knownTime, type LifeNumber, type LoadedLife } from "../car-life";
import type { Context } from "../context";
import { dayOf, dayOrNothing } from "../day";
import { maySeeKeepers } from "../keeper/policy";
import { sourceFields, sourceOf } from "../source-columns";

/** Recorded up to an instant, or at any time. */
type Until = string | undefined;
const by = (until: Until) => (until === undefined ? {} : { recordedAt: { lte: new Date(until) } });

const exactly = (day: string): KnownTime => ({ text: day, earliest: day, latest: day });

async function keeperEvents(ctx: Context, carId: string, until: Until): Promise<readonly TimelineEvent[]> {
  const { membershipId } = ctx.actor;
  const all = maySeeKeepers(ctx);
  if (!all && membershipId === null) return [];
  const rows = await ctx.db.keepership.findMany({
    where: { carId, ...by(until), ...(all ? {} : { keeper: { membershipId } }) },
    select: {
      id: true,
      fromText: true,
      fromEarliest: true,
      fromLatest: true,
      to: true,
      ...sourceFields,
      keeper: { select: { name: true, erasedAt: true } },
    },
    orderBy: { id: "asc" },
  });
  const spans = rows.map((row) => {
    const [from, to] = [knownTime(row.fromText, row.fromEarliest, row.fromLatest), dayOrNothing(row.to)];
    return { ...(from ? { from } : {}), ...(to === undefined ? {} : { to }) };
  });
  const ends = endsOf(spans);
  return rows.map((row, index) => {
    const from = spans[index]?.from;
    return {
      id: row.id,
      lane: "keeper",
      title: row.keeper.erasedAt === null ? (row.keeper.name ?? "name not recorded") : "erased",
      ...(from ? { when: from } : {}),
      until: ends[index] ?? "open",
      source: sourceOf(row),
    };
  });
}

const capital = (word: string) => `${word[0]?.toUpperCase()}${word.slice(1)}`;

const tellingResults: ReadonlySet<FindingResult> = new Set(["advise", "refuse"]);
const keyed = <T extends { readonly clientKey: string }>(row: T) => ({ ...row, key: row.clientKey });

const entryFields = (until: Until) =>
  ({
    id: true,
    runningNumber: true,
    withdrawnAt: true,
    event: { select: { name: true, on: true, ruleSetId: true } },
    findings: {
      where: by(until),
      select: {
        clientKey: true,
        replaces: true,
        checkCode: true,
        result: true,
        note: true,
        readings: { select: { entered: true }, orderBy: { id: "asc" } },
      },
      orderBy: { foundAt: "asc" },
    },
    decisions: {
      where: by(until),
      select: { clientKey: true, replaces: true, outcome: true, note: true },
      orderBy: { decidedAt: "desc" },
    },
  }) satisfies Prisma.EntrySelect;

type EntryRow = Prisma.EntryGetPayload<{ select: ReturnType<typeof entryFields> }>;

/** What the checks ask, by rule set and code. */
async function checkTexts(ctx: Context, entries: readonly EntryRow[]): Promise<ReadonlyMap<string, string>> {
  const codes = entries.flatMap(({ findings }) => findings.map(({ checkCode }) => checkCode));
  if (codes.length === 0) return new Map();
  const rows = await ctx.db.ruleCheck.findMany({
    where: { code: { in: codes }, ruleSetId: { in: entries.map(({ event }) => event.ruleSetId) } },
    select: { ruleSetId: true, code: true, text: true },
  });
  return new Map(rows.map(({ ruleSetId, code, text }) => [`${ruleSetId} ${code}`, text]));
}

function entryEvent(
  { id, runningNumber, withdrawnAt, event, ...entry }: EntryRow,
  texts: ReadonlyMap<string, string>,
) {
  const decisions = standing(entry.decisions.map(keyed));
  const outcome = decisions.flatMap(({ outcome: word, note }) => [
    capital(decisionOutcomeWords[word]),
    note ?? "",
  ]);
  if (outcome.length === 0) outcome.push("No decision recorded");
  const told = withdrawnAt ? ["Withdrawn"] : outcome;
  const telling = standing(entry.findings.map(keyed)).filter(({ result }) => tellingResults.has(result));
  const details = telling.map(({ checkCode, result, readings, note }): TimelineDetail => {
    const parts = [findingResultWords[result], ...readings.map(({ entered }) => entered), note ?? ""];
    const said = parts.filter((part) => part !== "");
    return { label: texts.get(`${event.ruleSetId} ${checkCode}`) ?? checkCode, after: said.join("; ") };
  });
  return {
    id,
    lane: "event" as const,
    title: `${event.name}, no. ${runningNumber}`,
    text: told.filter((part) => part !== "").join(": "),
    when: exactly(dayOf(event.on)),
    ...(details.length === 0 ? {} : { details }),
  };
}

async function entryEvents(ctx: Context, carId: string, until: Until): Promise<readonly TimelineEvent[]> {
  const entries = await ctx.db.entry.findMany({
    where: { carId, ...by(until) },
    select: entryFields(until),
    orderBy: { id: "asc" },
  });
  const texts = await checkTexts(ctx, entries);
  return entries.map((entry) => entryEvent(entry, texts));
}

const outcomeWords = {
  oneHolds: "held to be another car's",
  allStand: "held to be rightly on several cars",
  sameCar: "held to be of one and the same car",
  undecided: "left undecided",
} as const;

/** The car, and the numbers it bore as far as they are, or were, known. */
export interface Bearer {
  readonly car: LoadedLife["car"];
  readonly numbers: readonly LifeNumber[];
}

async function decisionEvents(
  ctx: Context,
  { car, numbers }: Bearer,
  until: Until,
): Promise<readonly TimelineEvent[]> {
  const borne = [
    { kind: "chassis" as const, numberKey: car.chassisKey, number: car.chassis },
    ...numbers
      .map(({ kind, number }) => ({ kind, number, numberKey: chassisKey(number) }))
      .filter(({ kind, numberKey }) => kind !== "chassis" || numberKey !== car.chassisKey),
  ];
  const rows = await ctx.db.numberDecision.findMany({
    where: { ...by(until), OR: borne.map(({ kind, numberKey }) => ({ kind, numberKey })) },
    orderBy: { recordedAt: "asc" },
  });
  return rows.map((row): TimelineEvent => {
    const number = borne.find(({ kind, numberKey }) => kind === row.kind && numberKey === row.numberKey);
    const outcome = row.holderId === car.id ? "held to be this car's" : outcomeWords[row.outcome];
    const over =
      row.supersededAt === null
        ? ""
        : ` (a later decision took its place on ${sayDay(dayOf(row.supersededAt))})`;
    return {
      id: row.id,
      lane: "number",
      title: `Decision on ${sayNumberKind(row.kind)} ${number?.number ?? row.numberKey}`,
      text: `${outcome.charAt(0).toUpperCase()}${outcome.slice(1)}: ${row.reason}${over}`,
      when: exactly(dayOf(row.recordedAt)),
    };
  });
}

const ofCar = (carId: string): Prisma.EvidenceLinkWhereInput => ({
  OR: [
    { carId },
    { asBuiltValue: { carId } },
    { modification: { carId } },
    { settingSheet: { carId } },
    { carIdentity: { carId } },
    { carStatusSpan: { carId } },
    { historyNote: { carId } },
    { finding: { entry: { carId } } },
  ],
});

async function evidenceEvents(ctx: Context, carId: string, until: Until): Promise<readonly TimelineEvent[]> {
  const standing = until === undefined ? null : { gt: new Date(until) };
  const rows = await ctx.db.evidence.findMany({
    where: {
      links: { some: { ...by(until), ...ofCar(carId) } },
      OR: [{ withdrawnAt: null }, ...(standing === null ? [] : [{ withdrawnAt: standing }])],
    },
    select: {
      id: true,
      mediaType: true,
      fileName: true,
      caption: true,
      takenText: true,
      takenEarliest: true,
      takenLatest: true,
    },
    orderBy: { id: "asc" },
  });
  return rows.map((row) => {
    const when = knownTime(row.takenText, row.takenEarliest, row.takenLatest);
    return {
      id: row.id,
      lane: "note",
      title: row.mediaType.startsWith("image/") ? "Photograph" : "Document",
      text: row.caption ?? row.fileName,
      ...(when ? { when } : {}),
    };
  });
}

/** What is told of a car outside its own record. */
export interface Elsewhere {
  readonly events: readonly TimelineEvent[];
  /** Whether every keeper is among them. */
  readonly keepersShown: boolean;
}

/** Keepers for who may see them, events with what was found, decisions about its numbers, evidence. */
export async function recordedElsewhere(ctx: Context, bearer: Bearer, until: Until): Promise<Elsewhere> {
  return {
    events: [
      ...(await keeperEvents(ctx, bearer.car.id, until)),
      ...(await entryEvents(ctx, bearer.car.id, until)),
      ...(await decisionEvents(ctx, bearer, until)),
      ...(await evidenceEvents(ctx, bearer.car.id, until)),
    ],
    keepersShown: maySeeKeepers(ctx),
  };
}
