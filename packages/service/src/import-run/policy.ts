import type { ImportStatus } from "@trunnion/db";
import { type ImportMapping, importMappingSchema } from "@trunnion/register";
import { z } from "zod";
import { readStored } from "../stored-row";

/** Milliseconds without a sign of life after which a running import counts as interrupted. */
export const STALE = 60_000;

const line = z.strictObject({ what: z.string(), before: z.string(), after: z.string() });

/** How a file is read and how far that is; kept with the run. */
const schema = z.strictObject({
  kind: z.enum(["csv", "xlsx", "ods"]),
  bytes: z.int(),
  sheet: z.string().exactOptional(),
  /** Line of the headings, and what stands above them and is passed over. */
  head: z.int().exactOptional(),
  above: z.array(z.string()).readonly().exactOptional(),
  sheets: z
    .array(z.strictObject({ name: z.string(), hidden: z.boolean() }))
    .readonly()
    .exactOptional(),
  /** ISO day the file tells of. */
  asOf: z.iso.date(),
  /** `mapping` until the columns are settled, `looking` while the file is looked through, `looked` once it was. */
  stage: z.enum(["mapping", "looking", "looked"]),
  headings: z.array(z.string()).readonly(),
  mapping: importMappingSchema.exactOptional(),
  unknownHeadings: z.array(z.string()).readonly().exactOptional(),
  /** First rows, for proposing what the columns hold; taken away when the import begins. May hold personal data. */
  sample: z.array(z.array(z.string()).readonly()).readonly().exactOptional(),
  /** What would change on the first cars; taken away when the import begins. May hold personal data. */
  preview: z
    .array(
      z.strictObject({ line: z.int(), car: z.string(), added: z.boolean(), lines: z.array(line).readonly() }),
    )
    .readonly()
    .exactOptional(),
});
export type RunOptions = z.infer<typeof schema>;

/** The options of a run; nothing for one of before there were any. */
export function optionsOf(run: { readonly id: string; readonly options: unknown }): RunOptions | undefined {
  return run.options === null
    ? undefined
    : readStored(schema, run.options, `the options of import ${run.id}`);
}

const problem = z.strictObject({
  line: z.int(),
  column: z.string(),
  found: z.string(),
  expected: z.string(),
});
const doubt = z.strictObject({
  line: z.int(),
  column: z.string().exactOptional(),
  found: z.string().exactOptional(),
  text: z.string(),
});
export const storedProblems = z.array(problem).nullable();
export const storedDoubts = z.array(doubt).nullable();

/** Rows of problems, and of doubts, that are kept with a run; all are counted. */
export const KEPT = 20_000;

/** Where a run stands: as it is kept, and interrupted once nothing has been heard of it for a while. */
export function statusOf(
  run: { readonly status: ImportStatus; readonly beatAt: Date | null },
  now: Date,
): ImportStatus {
  if (run.status !== "running") return run.status;
  const silent = now.getTime() - (run.beatAt?.getTime() ?? 0);
  return silent > STALE ? "interrupted" : "running";
}

/** Where a run stands, to follow "The import of cars.csv …". */
export const statusWords: Readonly<Record<ImportStatus, string>> = {
  planned: "has not begun",
  running: "is under way",
  interrupted: "was interrupted",
  done: "is done",
  failed: "failed",
  undone: "was undone",
};

/** A mapping as plain JSON. */
export const plainMapping = ({ columns }: ImportMapping) => ({
  columns: columns.map((column) => ({ ...column })),
});
