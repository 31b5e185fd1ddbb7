import type { Trust } from "@trunnion/db";
import type { Problems } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import type { Provenance } from "../entry-input";
import { writeJournal } from "../journal";

/** Source, locus and trust as every table of statements keeps them, with the title for the journal. */
export interface ProvenanceColumns {
  readonly sourceId: string | null;
  readonly locus: string | null;
  readonly trust: Trust;
}

/** Where a statement comes from, ready to be written once everything else of its form is right. */
export interface ReadProvenance {
  readonly title: string;
  /** Writes the source where it is new; call it only once nothing is refused any more. */
  readonly columns: () => Promise<ProvenanceColumns>;
}

const uuidShape = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

async function addSource(
  ctx: Context,
  { newSource: title, newSourceKind: kind }: Provenance,
): Promise<string> {
  const id = uuid();
  await ctx.db.source.create({ data: { id, title, kind } });
  await writeJournal(ctx, [{ action: "source.add", noun: "source", nounId: id, after: { title, kind } }]);
  return id;
}

/**
 * Reads where a statement comes from: a source chosen, or a new one by its title; one that the club has already under
 * that title is taken. Called inside a use case that has asked for the role.
 */
export async function provenanceOf(
  ctx: Context,
  entered: Provenance,
  problems: Problems,
): Promise<ReadProvenance> {
  const { source, newSource, trust } = entered;
  const locus = entered.locus === "" ? null : entered.locus;
  const as = (title: string, sourceId: () => Promise<string | null>): ReadProvenance => ({
    title,
    columns: async () => ({ sourceId: await sourceId(), locus, trust }),
  });
  if (source !== "" && newSource !== "") {
    problems.add("newSource", "Choose a source or name a new one, not both.");
    return as("", async () => null);
  }
  if (newSource !== "") {
    const known = await ctx.db.source.findFirst({
      where: { title: { equals: newSource, mode: "insensitive" } },
      select: { id: true, title: true },
    });
    return known ? as(known.title, async () => known.id) : as(newSource, () => addSource(ctx, entered));
  }
  if (source === "") return as("", async () => null);
  const chosen = uuidShape.test(source)
    ? await ctx.db.source.findFirst({ where: { id: source }, select: { id: true, title: true } })
    : null;
  if (chosen) return as(chosen.title, async () => chosen.id);
  problems.add("source", "This source is not the club's: choose one of the list.");
  return as("", async () => null);
}
