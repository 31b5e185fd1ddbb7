import { z } from "zod";

/**
 * Reads what the database keeps against its schema. A row that does not read is a bug, and must not look like a
 * mistake of whoever asked: so no ZodError comes out of here, which an edge would tell at a field and not log.
 *
 * @param what names the row: `check "wheel-nuts"`
 */
export function readStored<T>(schema: z.ZodType<T>, row: unknown, what: string): T {
  const read = schema.safeParse(row);
  if (read.success) return read.data;
  throw new Error(`${what} is kept as something that is none: ${z.prettifyError(read.error)}`);
}
