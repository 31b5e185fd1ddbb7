import { SourceKind, Trust } from "@trunnion/db";
import { z } from "zod";

/** One line of text as a form gives it: trimmed, no control characters, which the database would choke on. */
export const lineInput = (longest: number) =>
  z
    .string()
    .trim()
    .max(longest, `at most ${longest} characters`)
    .regex(/^\P{Cc}*$/u, "no control characters");

/** Several lines of text: as a line, with line breaks and tabs. Line ends become those of one kind. */
export const proseInput = (longest: number) =>
  z
    .string()
    .transform((text) => text.replace(/\r\n?/g, "\n").trim())
    .pipe(
      z
        .string()
        .max(longest, `at most ${longest} characters`)
        .regex(/^(?:\P{Cc}|[\n\t])*$/u, "no control characters"),
    );

/** A date as far as it is known, as a person writes it; empty for not known. */
export const dateInput = lineInput(60);

/** What every form over something that others may change carries. */
export const openedFields = {
  /** Version the form was opened with. */
  version: z.coerce.number().int().min(1),
  /** What the fields said when the form was opened, to show beside what somebody else made of them. */
  opened: z.record(z.string().max(40), z.string().max(4_000)).default({}),
} as const;

/** What every form over a car's record carries. */
export const carEditFields = {
  /** Reference of the car. */
  car: lineInput(60).min(1),
  ...openedFields,
  /** Place in the journal when the form was opened: what came after it is shown. */
  openedAt: z.coerce.number().int().min(0).default(0),
  /** Why, for the journal. */
  reason: lineInput(500).default(""),
  /** Doubts that were told, word for word, and are to stand: it is saved with these, and with no others. */
  sure: z.string().max(4_000).exactOptional(),
} as const;

/** Where a statement comes from, and how far it is trusted. */
export const provenanceFields = {
  /** A source of the club by its id; empty for none, or for the new one. */
  source: lineInput(36).default(""),
  /** Title of a source that the club does not have yet. */
  newSource: lineInput(200).default(""),
  newSourceKind: z.enum(SourceKind).default("other"),
  locus: lineInput(120).default(""),
  trust: z.enum(Trust).default("unknown"),
} as const;
export type Provenance = z.infer<z.ZodObject<typeof provenanceFields>>;
