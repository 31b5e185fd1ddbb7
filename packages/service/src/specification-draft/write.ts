import { insertRows, SourceKind } from "@trunnion/db";
import {
  alternativeRoles,
  type CharacteristicBook,
  type EntryText,
  entryText,
  type FieldProblem,
  Invalid,
  readEntryText,
  refused,
  type SpecificationEntry,
  specificationLimits,
  type TableSource,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput, proseInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { findSeries, seriesFacts } from "../series";
import { listSources } from "../source";
import { specificationOf } from "../specification/read";
import {
  countRevision,
  deleteEntries,
  insertEntries,
  nextVersionOf,
  openDraft,
  requireRoom,
  sourceIds,
  sourcesOf,
  updateEntry,
} from "../specification/store";
import { entryDifferences, journalEntry } from "./policy";

export const startDraftInput = z.object({
  series: lineInput(60).min(1),
  /** `empty`, or the short name of the series whose specification is copied; its current one where no version is said. */
  from: lineInput(60).min(1),
  version: z.coerce.number().int().min(1).optional(),
});
export type StartDraftInput = z.infer<typeof startDraftInput>;

/** Copies entries and alternatives row by row; within a series, also what supports each. */
async function copyEntries(
  ctx: Context,
  { from, to, evidence }: { readonly from: string; readonly to: string; readonly evidence: boolean },
): Promise<number> {
  const entries = await ctx.db.specificationEntry.findMany({
    where: { specificationId: from },
    include: { alternatives: { orderBy: { id: "asc" } }, evidenceLinks: true },
    orderBy: { id: "asc" },
  });
  const copies = entries.map(({ alternatives, evidenceLinks, ...row }) => {
    const id = uuid();
    return {
      row: { ...row, id, specificationId: to },
      alternatives: alternatives.map((one) => ({ ...one, id: uuid(), entryId: id })),
      links: evidenceLinks.map((link) => ({
        ...link,
        id: uuid(),
        specificationEntryId: id,
        recordedAt: ctx.now,
      })),
    };
  });
  await insertRows(
    ctx.db,
    "specificationEntry",
    copies.map(({ row }) => row),
  );
  await insertRows(
    ctx.db,
    "specificationAlternative",
    copies.flatMap(({ alternatives }) => alternatives),
  );
  if (evidence)
    await insertRows(
      ctx.db,
      "evidenceLink",
      copies.flatMap(({ links }) => links),
    );
  return entries.length;
}

/**
 * Begins the next version of a series' specification: empty, as a copy of its current or an earlier version, or as a
 * copy of another series'. Tells its number.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND for what is to be copied, SPECIFICATION_DRAFT_EXISTS
 */
export async function startDraft(ctx: Context, input: StartDraftInput): Promise<number> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const series = await findSeries(ctx, input.series);
  const version = await nextVersionOf(ctx, series.id);
  const open = await ctx.db.specification.findFirst({ where: { seriesId: series.id, status: "draft" } });
  if (open) throw refused("SPECIFICATION_DRAFT_EXISTS", { series: series.slug, version: open.version });
  const origin = input.from === "empty" ? undefined : await findSeries(ctx, input.from);
  const copied =
    origin &&
    (await specificationOf(ctx, {
      series: origin,
      ...(input.version === undefined ? {} : { version: input.version }),
    }));
  const id = uuid();
  const { personId: madeById } = ctx.actor;
  await ctx.db.specification.create({
    data: { id, seriesId: series.id, version, status: "draft", madeById, copiedFromId: copied?.id ?? null },
  });
  const entries = copied
    ? await copyEntries(ctx, { from: copied.id, to: id, evidence: origin?.id === series.id })
    : 0;
  const from = copied ? { from: `${origin?.slug}, version ${copied.version}` } : {};
  const after = { series: series.slug, version, entries, ...from };
  await writeJournal(ctx, [{ action: "specification.begin", noun: "specification", nounId: id, after }]);
  return version;
}

const draftFields = {
  series: lineInput(60).min(1),
  version: z.coerce.number().int().min(1),
  /** Revision of the draft the form was opened with. */
  revision: z.coerce.number().int().min(1),
} as const;

const entryFields = {
  /** What the entry's fields said when the form was opened. */
  opened: z.record(z.string().max(40), z.string().max(200_000)).default({}),
} as const;

const long = z.string().max(specificationLimits.value * 2);
const short = lineInput(specificationLimits.source * 2).default("");

export const putEntryInput = z.object({
  ...draftFields,
  ...entryFields,
  /** Id of the entry; left out for a new one. */
  entry: z.uuid().optional(),
  characteristic: lineInput(120).min(1, "choose a characteristic"),
  side: short,
  nominal: long.default(""),
  lower: short,
  upper: short,
  alternatives: z
    .array(
      z.object({
        role: z.enum(alternativeRoles),
        value: long.default(""),
        note: long.default(""),
        source: short,
        locus: short,
        trust: short,
      }),
    )
    .max(specificationLimits.alternatives * 2)
    .default([]),
  serialFrom: short,
  serialTo: short,
  builtFrom: short,
  builtTo: short,
  option: short,
  /** Title of one of the club's sources. */
  source: short,
  /** Title of a source the club does not have yet. */
  newSource: lineInput(specificationLimits.source).default(""),
  newSourceKind: z.enum(SourceKind).default("other"),
  locus: short,
  trust: short,
  note: long.default(""),
});
export type PutEntryInput = z.infer<typeof putEntryInput>;

/** Rows of alternatives that were left empty are none; the form shows some to write in. `rows` tells where each stood. */
function textOf(input: PutEntryInput): { readonly text: EntryText; readonly rows: readonly number[] } {
  const { newSource, alternatives } = input;
  const rows = [...alternatives.keys()].filter((row) => {
    const { value = "", note = "" } = alternatives[row] ?? {};
    return value.trim() !== "" || note.trim() !== "";
  });
  const said = rows.flatMap((row) => alternatives[row] ?? []);
  return {
    text: { ...input, alternatives: said, source: newSource === "" ? input.source : newSource },
    rows,
  };
}

/** What is wrong, at the rows of the form. */
function atRows(problems: readonly FieldProblem[], rows: readonly number[]): Invalid {
  const place = (field: string) =>
    field.replace(/^alternatives\.(\d+)/, (_, index) => `alternatives.${rows[Number(index)] ?? index}`);
  return new Invalid(problems.map(({ field, message }) => ({ field: place(field), message })));
}

/** Sources a form names: the club's by their titles, and the new one. */
async function sourcesFor(ctx: Context, input: PutEntryInput): Promise<readonly TableSource[]> {
  const { source, newSource, newSourceKind: kind } = input;
  if (source !== "" && newSource !== "") {
    throw new Invalid([{ field: "newSource", message: "Choose a source or name a new one, not both." }]);
  }
  const known = new Set((await listSources(ctx)).map(({ title }) => title));
  const named = [
    { field: "source", title: source },
    ...input.alternatives.map((one, index) => ({ field: `alternatives.${index}.source`, title: one.source })),
  ];
  const strange = named.filter(({ title }) => title !== "" && title !== newSource && !known.has(title));
  if (strange.length > 0) {
    throw new Invalid(
      strange.map(({ field, title }) => ({ field, message: `"${title}" is none of the club's sources` })),
    );
  }
  return newSource === "" ? [] : [{ title: newSource, kind }];
}

interface OpenedForm {
  readonly draft: OpenDraft["draft"];
  readonly revision: number;
  readonly opened: Readonly<Record<string, string>>;
  readonly book: CharacteristicBook;
}

/**
 * Refuses a form over an entry that somebody else changed or took out meanwhile. Another revision of the draft alone
 * stops nobody: two people may work on different entries.
 */
function refuseIfChanged(form: OpenedForm, entry: SpecificationEntry, yours: EntryText): void {
  const { draft, revision, opened, book } = form;
  if (draft.revision === revision) return;
  const differences = entryDifferences({ opened, theirs: entryText(entry, book), yours });
  if (differences.length === 0) return;
  throw refused("CHANGED_MEANWHILE", { what: "this entry", version: draft.revision, differences });
}

type OpenDraft = Awaited<ReturnType<typeof openDraft>>;

function entryIn({ series, draft }: OpenDraft, id: string): SpecificationEntry {
  const found = draft.entries.find((entry) => entry.id === id);
  if (found) return found;
  throw refused("SPECIFICATION_ENTRY_NOT_FOUND", { series: series.slug, version: draft.version });
}

/**
 * Adds an entry to a draft, or gives one another content; tells the entry's id and the draft's revision.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT,
 * SPECIFICATION_ENTRY_NOT_FOUND, SPECIFICATION_TOO_LONG, CHANGED_MEANWHILE with what both made of the entry; Invalid for
 * what cannot be read or contradicts itself. Then nothing is written.
 */
export async function putEntry(ctx: Context, input: PutEntryInput) {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { series, draft } = await openDraft(ctx, input);
  const book = await bookOf(ctx);
  const before = input.entry === undefined ? undefined : entryIn({ series, draft }, input.entry);
  const { text, rows } = textOf(input);
  const added = await sourcesFor(ctx, input);
  const read = readEntryText(text, { id: before?.id ?? uuid(), book, series: seriesFacts(series) });
  if (!read.ok) throw atRows(read.problems, rows);
  if (before) refuseIfChanged({ ...input, draft, book }, before, text);
  else requireRoom(draft.entries.length + 1);
  const { entry } = read;
  const sources = await sourceIds(ctx, [...added, ...sourcesOf([entry])]);
  if (before) await updateEntry(ctx, entry, sources);
  else await insertEntries(ctx, draft.id, [entry], sources);
  const revision = await countRevision(ctx, draft.id);
  await writeJournal(ctx, [
    {
      action: before ? "specification.changeEntry" : "specification.addEntry",
      noun: "specification",
      nounId: draft.id,
      ...(before ? { before: journalEntry(before, book) } : {}),
      after: journalEntry(entry, book),
    },
  ]);
  return { entry: entry.id, revision };
}

export const removeEntryInput = z.object({ ...draftFields, ...entryFields, entry: z.uuid() });
export type RemoveEntryInput = z.infer<typeof removeEntryInput>;

/**
 * Takes an entry out of a draft; tells the draft's revision.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT,
 * SPECIFICATION_ENTRY_NOT_FOUND, CHANGED_MEANWHILE. Then nothing is written.
 */
export async function removeEntry(ctx: Context, input: RemoveEntryInput): Promise<number> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { series, draft } = await openDraft(ctx, input);
  const book = await bookOf(ctx);
  const entry = entryIn({ series, draft }, input.entry);
  refuseIfChanged({ ...input, draft, book }, entry, entryText(entry, book));
  await deleteEntries(ctx, [entry.id]);
  const revision = await countRevision(ctx, draft.id);
  const before = journalEntry(entry, book);
  await writeJournal(ctx, [
    { action: "specification.removeEntry", noun: "specification", nounId: draft.id, before },
  ]);
  return revision;
}

export const discardDraftInput = z.object({ ...draftFields, reason: proseInput(500).default("") });
export type DiscardDraftInput = z.infer<typeof discardDraftInput>;

/**
 * Discards a draft with everything in it. The journal keeps that it was there.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT, SPECIFICATION_MOVED_ON
 */
export async function discardDraft(ctx: Context, input: DiscardDraftInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { series, draft } = await openDraft(ctx, input);
  if (draft.revision !== input.revision) {
    throw refused("SPECIFICATION_MOVED_ON", { series: series.slug, version: draft.version, what: "draft" });
  }
  const { id, version, entries } = draft;
  await deleteEntries(
    ctx,
    entries.map((entry) => entry.id),
  );
  await ctx.db.specification.delete({ where: { clubId_id: { clubId: ctx.club.id, id } } });
  await writeJournal(ctx, [
    {
      action: "specification.discard",
      noun: "specification",
      nounId: id,
      ...(input.reason === "" ? {} : { reason: input.reason }),
      before: { series: series.slug, version, entries: entries.length },
    },
  ]);
}
