import type { SourceKind } from "@trunnion/db";
import {
  type AlternativeRole,
  type Applicability,
  blankEntry,
  type CharacteristicBook,
  checkSpecification,
  type EntryText,
  Invalid,
  readEntryText,
  refused,
  type Side,
  type SpecificationEntry,
  type Trust,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildCurrentValues } from "../current-value";
import { lineInput, proseInput } from "../entry-input";
import { writeJournal } from "../journal";
import { type Moves, movesOf } from "../moved-verdict";
import { requireRole } from "../role";
import { listSeriesDetails, type SeriesDetail, seriesFacts } from "../series";
import { currentSpecifications } from "./read";
import { insertEntries, nextVersionOf, openDraft, requireRoom, sourceIds, sourcesOf } from "./store";

/** A publication or record that a specification rests on. */
export interface SourceInput {
  readonly title: string;
  readonly kind: SourceKind;
  readonly edition?: string;
}

/** One line of a specification, in the trade's notation. */
export interface SpecificationLine {
  readonly characteristic: string;
  readonly side?: Side;
  readonly nominal?: string;
  readonly lower?: string;
  readonly upper?: string;
  readonly alternatives?: readonly {
    readonly role: AlternativeRole;
    readonly value: string;
    readonly note?: string;
  }[];
  readonly applicability?: Applicability;
  readonly locus?: string;
  readonly trust?: Trust;
  readonly note?: string;
}

export interface AddSpecificationInput {
  readonly seriesId: string;
  readonly source: SourceInput;
  readonly lines: readonly SpecificationLine[];
  readonly note?: string;
  readonly book: CharacteristicBook;
}

const serial = (number: number | undefined) => (number === undefined ? "" : String(number));

/** A line as a form would have it; what comes out of a publication is documented where nothing else is said. */
function textOf(line: SpecificationLine, source: SourceInput): EntryText {
  const { applicability = {}, alternatives = [], side, ...said } = line;
  return {
    ...blankEntry,
    ...said,
    side: side === undefined || side === "whole" ? "" : side,
    alternatives: alternatives.map(({ role, value, note = "" }) => ({
      role,
      value,
      note,
      source: "",
      locus: "",
      trust: "",
    })),
    serialFrom: serial(applicability.serialFrom),
    serialTo: serial(applicability.serialTo),
    builtFrom: applicability.builtFrom ?? "",
    builtTo: applicability.builtTo ?? "",
    option: applicability.option ?? "",
    source: source.title,
    trust: line.trust ?? "documented",
  };
}

/** Most problems told at once. */
const TOLD = 50;

function refuseContradictions(problems: readonly string[]): void {
  if (problems.length > 0) throw refused("SPECIFICATION_CONTRADICTS", { problems: problems.slice(0, TOLD) });
}

/** Reads the lines and refuses a specification that contradicts itself, telling everything that is wrong. */
function entriesOf(input: AddSpecificationInput, series: SeriesDetail): readonly SpecificationEntry[] {
  const { book, lines, source } = input;
  const facts = seriesFacts(series);
  const problems: string[] = [];
  const entries = lines.flatMap((line) => {
    const read = readEntryText(textOf(line, source), { id: uuid(), book, series: facts });
    if (read.ok) return [read.entry];
    problems.push(...read.problems.map(({ message }) => message));
    return [];
  });
  const between = checkSpecification({ entries }, book, facts).map(({ message }) => message);
  refuseContradictions([...problems, ...between]);
  return entries;
}

interface Switched {
  readonly id: string;
  readonly series: SeriesDetail;
  readonly version: number;
  readonly entries: readonly SpecificationEntry[];
  readonly reason: string | null;
  readonly book: CharacteristicBook;
  readonly action: string;
}

/**
 * The one way a version becomes current: the one before is superseded, the values of the series' cars are worked out
 * again, and the journal says what moved. In the caller's transaction, with the version's entries written already.
 */
async function switchTo(ctx: Context, switched: Switched): Promise<Moves> {
  const { id, series, version, entries, reason, book, action } = switched;
  const before = (await currentSpecifications(ctx, [series.id])).get(series.id);
  const after = { id, version, entries };
  const moves = await movesOf(ctx, {
    seriesId: series.id,
    ...(before === undefined ? {} : { before }),
    after,
    book,
    keep: 0,
  });
  await ctx.db.specification.updateMany({
    where: { seriesId: series.id, status: "current" },
    data: { status: "superseded", supersededAt: ctx.now },
  });
  await ctx.db.specification.update({
    where: { clubId_id: { clubId: ctx.club.id, id } },
    data: { status: "current", madeCurrentAt: ctx.now, note: reason },
  });
  const cars = await ctx.db.car.findMany({ where: { seriesId: series.id }, select: { id: true } });
  await rebuildCurrentValues(
    ctx,
    cars.map((car) => car.id),
    book,
  );
  await writeJournal(ctx, [
    {
      action,
      noun: "specification",
      nounId: id,
      ...(reason === null ? {} : { reason }),
      ...(before === undefined
        ? {}
        : { before: { version: before.version, entries: before.entries.length } }),
      after: {
        series: series.slug,
        version,
        entries: entries.length,
        cars: moves.cars,
        carsMoved: moves.carsMoved,
        verdictsMoved: moves.total,
      },
    },
  ]);
  return moves;
}

/**
 * Adds the next version of a series' specification, makes it the current one and works the series' cars out again.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND; SPECIFICATION_CONTRADICTS with every line that is wrong, and then nothing is written
 */
export async function addSpecification(ctx: Context, input: AddSpecificationInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const all = await listSeriesDetails(ctx);
  const series = all.find((one) => one.id === input.seriesId);
  if (!series) {
    throw refused("SERIES_NOT_FOUND", { series: input.seriesId, known: all.map(({ slug }) => slug) });
  }
  const entries = entriesOf(input, series);
  requireRoom(entries.length);
  const version = await nextVersionOf(ctx, series.id);
  const id = uuid();
  const { personId: madeById } = ctx.actor;
  await ctx.db.specification.create({
    data: { id, seriesId: series.id, version, status: "draft", madeById },
  });
  const sources = await sourceIds(ctx, [input.source, ...sourcesOf(entries)]);
  await insertEntries(ctx, id, entries, sources);
  const { book, note: reason = null } = input;
  await switchTo(ctx, { id, series, version, entries, reason, book, action: "specification.add" });
  return id;
}

/** What making a draft current needs: the draft as it was looked at, what it was compared with, and why. */
export const makeCurrentInput = z.object({
  series: lineInput(60).min(1),
  version: z.coerce.number().int().min(1),
  /** Revision of the draft that was looked at. */
  revision: z.coerce.number().int().min(1),
  /** Version that was current when it was looked at; 0 for none. */
  current: z.coerce.number().int().min(0),
  reason: proseInput(2_000),
});
export type MakeCurrentInput = z.infer<typeof makeCurrentInput>;

/**
 * Makes a draft the current version, with a reason, and tells which verdicts moved (as counts).
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT; SPECIFICATION_MOVED_ON when
 * the draft or the current version is not the one that was looked at; SPECIFICATION_SAYS_NOTHING, SPECIFICATION_CONTRADICTS.
 * Invalid without a reason. Then nothing is written.
 */
export async function makeCurrent(ctx: Context, input: MakeCurrentInput): Promise<Moves> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { series, draft } = await openDraft(ctx, input);
  if (input.reason === "")
    throw new Invalid([{ field: "reason", message: "Say why: the journal keeps it." }]);
  const current = (await currentSpecifications(ctx, [series.id])).get(series.id);
  if (draft.revision !== input.revision || (current?.version ?? 0) !== input.current) {
    const what = draft.revision === input.revision ? "current" : "draft";
    throw refused("SPECIFICATION_MOVED_ON", { series: series.slug, version: draft.version, what });
  }
  const { id, version, entries } = draft;
  if (entries.length === 0) throw refused("SPECIFICATION_SAYS_NOTHING", { series: series.slug, version });
  const book = await bookOf(ctx);
  refuseContradictions(
    checkSpecification({ entries }, book, seriesFacts(series)).map(({ message }) => message),
  );
  const { reason } = input;
  return switchTo(ctx, { id, series, version, entries, reason, book, action: "specification.makeCurrent" });
}
