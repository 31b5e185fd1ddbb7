import type { ImportMapping } from "@trunnion/register";
import type { Context } from "../context";
import { keyOf } from "./read";

export interface KeepMappingInput {
  readonly headings: readonly string[];
  readonly mapping: ImportMapping;
  /** Name of the file it was made for. */
  readonly file: string;
}

/** Remembers what the columns of a file with these headings are taken for; the latest counts. For those who may import. */
export async function keepMapping(
  ctx: Context,
  { headings, mapping, file }: KeepMappingInput,
): Promise<void> {
  const headingKey = keyOf(headings);
  const kept = {
    fileName: file,
    mapping: { columns: mapping.columns.map((column) => ({ ...column })) },
    madeById: ctx.actor.personId,
    usedAt: ctx.now,
  };
  await ctx.db.importMapping.upsert({
    where: { clubId_headingKey: { clubId: ctx.club.id, headingKey } },
    create: { headingKey, ...kept },
    update: kept,
  });
}
