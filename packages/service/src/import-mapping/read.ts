import { createHash } from "node:crypto";
import { headingKey, type ImportMapping, importMappingSchema } from "@trunnion/register";
import type { Context } from "../context";
import { readStored } from "../stored-row";

/** Longest key that is kept as it is: an index takes no longer text. */
const KEY = 1_000;

/** What a file's headings are kept under. */
export function keyOf(headings: readonly string[]): string {
  const key = headingKey(headings);
  return key.length <= KEY ? key : createHash("sha256").update(key).digest("hex");
}

/** What the columns of a file with these headings were taken for the last time; nothing when there was none. */
export async function rememberedMapping(
  { db, club }: Context,
  headings: readonly string[],
): Promise<ImportMapping | undefined> {
  const row = await db.importMapping.findUnique({
    where: { clubId_headingKey: { clubId: club.id, headingKey: keyOf(headings) } },
    select: { mapping: true, fileName: true },
  });
  return row ? readStored(importMappingSchema, row.mapping, `the mapping of "${row.fileName}"`) : undefined;
}
