import { z } from "zod";
import { sides } from "../characteristic/characteristic";
import { submissionLimits as limit, type SubmissionContent } from "./content";

const text = (longest: number) =>
  z
    .string()
    .max(longest, `at most ${longest} characters`)
    // Kept as typed but for what no database takes; line ends become those of one kind.
    .transform((typed) => typed.replace(/\r\n?/g, "\n"))
    .pipe(z.string().regex(/^(?:\P{Cc}|[\n\t])*$/u, "no control characters"))
    .default("");

const yesNo = z.enum(["", "yes", "no"]).default("");

const change = z.strictObject({
  characteristic: z.string().min(1).max(80),
  side: z.enum(sides),
  before: text(limit.value),
  after: text(limit.value),
});

const fastener = z.strictObject({
  place: text(limit.line),
  thread: text(limit.line),
  grade: text(limit.line),
  length: text(limit.line),
  spacerStack: text(limit.line),
  count: text(limit.line),
  note: text(limit.line),
});

const modification = z.strictObject({
  fitted: text(limit.line),
  odometer: text(limit.line),
  reason: text(limit.prose),
  donor: text(limit.line),
  note: text(limit.prose),
  reversible: yesNo,
  oldPartKept: yesNo,
  changes: z.array(change).max(limit.changes, `at most ${limit.changes} changes at once`).default([]),
  fasteners: z.array(fastener).max(limit.fasteners, `at most ${limit.fasteners} fasteners`).default([]),
});

const reading = z.strictObject({
  characteristic: z.string().min(1).max(80),
  side: z.enum(sides),
  repeat: z.int().min(1).max(20).default(1),
  entered: text(limit.line),
  instrument: text(limit.line),
});

const sheet = z.strictObject({
  on: text(limit.line),
  loadState: z.enum(["kerb", "driver", "driverAndPassenger", "unknown"]).default("unknown"),
  note: text(limit.prose),
  readings: z.array(reading).max(limit.readings, `at most ${limit.readings} readings`).default([]),
});

/** A submission as a form sends it and the database keeps it; says only what can be kept, not what is right. */
export const submissionContentSchema: z.ZodType<SubmissionContent> = z.strictObject({
  units: z.enum(["metric", "imperial"]).default("metric"),
  modifications: z.array(modification).max(limit.modifications).default([]),
  sheets: z.array(sheet).max(limit.sheets).default([]),
  word: text(limit.message).unwrap().optional(),
});
