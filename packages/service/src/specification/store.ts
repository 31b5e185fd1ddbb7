import { insertRows } from "@trunnion/db";
import {
  type EntryChange,
  noSourceTitle,
  refused,
  type SpecificationEntry,
  specificationLimits,
  type TableSource,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { writeJournal } from "../journal";
import { findSeries } from "../series";
import { alternativeRow, entryColumns, type SourceIds } from "./policy";
import { specificationOf } from "./read";

/** Sources an entry and its alternatives rest on, by title. */
export function sourcesOf(entries: readonly SpecificationEntry[]): readonly TableSource[] {
  const titles = new Set(
    entries.flatMap(({ source, alternatives }) => [
      source.title,
      ...alternatives.map((one) => one.source.title),
    ]),
  );
  titles.delete(noSourceTitle);
  return [...titles].map((title) => ({ title }));
}

/**
 * Ids of sources by title. One the club does not have yet is added, as `other` where its kind is not said; of several
 * of one title the first counts.
 */
export async function sourceIds(ctx: Context, named: readonly TableSource[]): Promise<SourceIds> {
  const sources = named.filter(({ title }, at) => named.findIndex((one) => one.title === title) === at);
  const titles = sources.map(({ title }) => title);
  const known = await ctx.db.source.findMany({
    where: { title: { in: titles } },
    select: { id: true, title: true },
  });
  const ids = new Map(known.map(({ id, title }) => [title, id]));
  const lacking = sources.filter(({ title }) => !ids.has(title));
  const rows = lacking.map(({ title, kind = "other", edition }) => ({
    id: uuid(),
    title,
    kind,
    edition: edition ?? null,
  }));
  await insertRows(ctx.db, "source", rows);
  const lines = rows.map(({ id, title, kind }) => ({
    action: "source.add",
    noun: "source",
    nounId: id,
    after: { title, kind },
  }));
  if (lines.length > 0) await writeJournal(ctx, lines);
  for (const { id, title } of rows) ids.set(title, id);
  return ids;
}

/** Refuses more entries than a specification may have. */
export function requireRoom(entries: number): void {
  const limit = specificationLimits.entries;
  if (entries > limit) throw refused("SPECIFICATION_TOO_LONG", { entries, limit });
}

/** Writes entries with their alternatives into a version; ids as the entries have them. */
export async function insertEntries(
  ctx: Context,
  specificationId: string,
  entries: readonly SpecificationEntry[],
  sources: SourceIds,
): Promise<void> {
  const rows = entries.map((entry) => ({ id: entry.id, specificationId, ...entryColumns(entry, sources) }));
  await insertRows(ctx.db, "specificationEntry", rows);
  const alternatives = entries.flatMap((entry) =>
    entry.alternatives.map((one) => alternativeRow(one, entry.id, sources)),
  );
  await insertRows(ctx.db, "specificationAlternative", alternatives);
}

/** Takes entries out of a draft, with their alternatives and what pointed to evidence for them. */
export async function deleteEntries(ctx: Context, ids: readonly string[]): Promise<void> {
  const entryId = { in: [...ids] };
  await ctx.db.specificationAlternative.deleteMany({ where: { entryId } });
  await ctx.db.evidenceLink.deleteMany({ where: { specificationEntryId: entryId } });
  await ctx.db.specificationEntry.deleteMany({ where: { id: entryId } });
}

/** Gives an entry of a draft another content; its id, and the evidence that supports it, stay. */
export async function updateEntry(
  ctx: Context,
  entry: SpecificationEntry,
  sources: SourceIds,
): Promise<void> {
  await ctx.db.specificationEntry.update({
    where: { clubId_id: { clubId: ctx.club.id, id: entry.id } },
    data: entryColumns(entry, sources),
  });
  await ctx.db.specificationAlternative.deleteMany({ where: { entryId: entry.id } });
  const rows = entry.alternatives.map((one) => alternativeRow(one, entry.id, sources));
  await insertRows(ctx.db, "specificationAlternative", rows);
}

/** Brings a draft from what it says to what it should say, entry by entry. */
export async function applyChanges(
  ctx: Context,
  specificationId: string,
  changes: readonly EntryChange[],
  sources: SourceIds,
): Promise<void> {
  const removed = changes.flatMap((change) => (change.kind === "removed" ? [change.before.id] : []));
  await deleteEntries(ctx, removed);
  for (const change of changes) {
    if (change.kind === "changed") await updateEntry(ctx, { ...change.after, id: change.before.id }, sources);
  }
  const added = changes.flatMap((change) => (change.kind === "added" ? [change.after] : []));
  await insertEntries(ctx, specificationId, added, sources);
}

/** Lets nobody else begin, change or switch a version of the series until the transaction ends; tells the next number. */
export async function nextVersionOf(ctx: Context, seriesId: string): Promise<number> {
  await ctx.db
    .$queryRaw`SELECT id FROM series WHERE club_id = ${ctx.club.id}::uuid AND id = ${seriesId}::uuid FOR UPDATE`;
  const latest = await ctx.db.specification.findFirst({ where: { seriesId }, orderBy: { version: "desc" } });
  return (latest?.version ?? 0) + 1;
}

/** Takes a draft for changing: nobody else gets in until the transaction ends, and it is one. */
export async function openDraft(
  ctx: Context,
  reference: { readonly series: string; readonly version: number },
) {
  const series = await findSeries(ctx, reference.series);
  await nextVersionOf(ctx, series.id);
  const draft = await specificationOf(ctx, { series, version: reference.version });
  if (draft.status !== "draft") {
    throw refused("SPECIFICATION_NOT_DRAFT", { ...reference, status: draft.status });
  }
  return { series, draft };
}

/** Counts a draft's revision up, once per accepted change, and tells it. */
export async function countRevision(ctx: Context, id: string): Promise<number> {
  const { revision } = await ctx.db.specification.update({
    where: { clubId_id: { clubId: ctx.club.id, id } },
    data: { revision: { increment: 1 } },
    select: { revision: true },
  });
  return revision;
}
