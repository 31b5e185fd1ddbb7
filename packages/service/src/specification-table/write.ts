import {
  checkSpecification,
  entryChangeLine,
  headingProblem,
  readSpecificationTable,
  refused,
  specificationDifference,
  specificationHeadings,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import { seriesFacts } from "../series";
import { listSources } from "../source";
import {
  applyChanges,
  countRevision,
  openDraft,
  requireRoom,
  sourceIds,
  sourcesOf,
} from "../specification/store";
import { readTableFile, type Table } from "../table";
import { mergedEntries, type SpecificationImport } from "./policy";

/** Largest file that is read, in bytes: a full specification is a tenth of it. */
export const SPECIFICATION_FILE_LIMIT = 600_000;

export const importSpecificationInput = z.object({
  series: lineInput(60).min(1),
  version: z.coerce.number().int().min(1),
  /** Revision of the draft that was looked at. */
  revision: z.coerce.number().int().min(1),
  /** `replace`: the table is all the draft says; `merge`: its rows take the place of what holds for the same cars. */
  mode: z.enum(["merge", "replace"]),
  dryRun: z.boolean(),
});
export type ImportSpecificationInput = z.infer<typeof importSpecificationInput> & {
  readonly file: string;
  readonly bytes: Uint8Array;
};

function refuseHeadings(table: Table, file: string): void {
  const wrong = headingProblem(table);
  if (wrong === undefined) return;
  const found = table.headings;
  if (wrong.kind === "missing") throw refused("HEADING_MISSING", { file, wanted: wrong.wanted, found });
  if (wrong.kind === "twice")
    throw refused("HEADING_TWICE", { file, heading: wrong.heading, columns: wrong.columns });
  throw refused("SPECIFICATION_HEADING_UNKNOWN", {
    file,
    heading: wrong.heading,
    known: specificationHeadings,
  });
}

/**
 * Reads a table (CSV, XLSX, ODS) into a draft. One cell that is wrong keeps everything out, and all are told by line and
 * column; a dry run tells what would change and writes nothing. Contradictions between entries are told, and may go into
 * a draft: they only keep it from being made current.
 *
 * @throws Refusal ROLE_NEEDED, SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND, SPECIFICATION_NOT_DRAFT, SPECIFICATION_MOVED_ON,
 * those of reading a table, HEADING_MISSING, HEADING_TWICE, SPECIFICATION_HEADING_UNKNOWN, SPECIFICATION_TOO_LONG
 */
export async function importSpecification(
  ctx: Context,
  input: ImportSpecificationInput,
): Promise<SpecificationImport> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { file, bytes, mode, dryRun } = input;
  if (bytes.length > SPECIFICATION_FILE_LIMIT) {
    throw refused("FILE_TOO_LARGE", { file, bytes: bytes.length, limit: SPECIFICATION_FILE_LIMIT });
  }
  const table = await readTableFile({ bytes, file });
  refuseHeadings(table, file);
  const { series, draft } = await openDraft(ctx, input);
  if (draft.revision !== input.revision && !dryRun) {
    throw refused("SPECIFICATION_MOVED_ON", { series: series.slug, version: draft.version, what: "draft" });
  }
  const book = await bookOf(ctx);
  const facts = seriesFacts(series);
  const read = readSpecificationTable(table, { book, series: facts, newId: () => uuid() });
  const wanted = mergedEntries(draft.entries, read.entries, mode);
  requireRoom(wanted.length);
  const changes = specificationDifference(draft.entries, wanted);
  const words = { book, system: ctx.club.unitSystem, pattern: series.pattern };
  const known = new Set((await listSources(ctx)).map(({ title }) => title));
  const written = read.problems.length === 0 && !dryRun && changes.length > 0;
  const report = {
    file,
    rows: table.rows.length,
    before: draft.entries.length,
    after: wanted.length,
    problems: read.problems,
    changes: changes.map((change) => entryChangeLine(change, words)),
    contradictions: checkSpecification({ entries: wanted }, book, facts).map(({ message }) => message),
    newSources: read.sources.map(({ title }) => title).filter((title) => !known.has(title)),
    written,
  };
  if (!written) return { ...report, revision: draft.revision };
  await applyChanges(ctx, draft.id, changes, await sourceIds(ctx, [...read.sources, ...sourcesOf(wanted)]));
  const revision = await countRevision(ctx, draft.id);
  const count = (kind: string) => changes.filter((change) => change.kind === kind).length;
  await writeJournal(ctx, [
    {
      action: "specification.import",
      noun: "specification",
      nounId: draft.id,
      before: { entries: draft.entries.length },
      after: {
        file,
        mode,
        entries: wanted.length,
        added: count("added"),
        changed: count("changed"),
        removed: count("removed"),
      },
    },
  ]);
  return { ...report, revision };
}
