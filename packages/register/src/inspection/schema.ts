import { z } from "zod";
import { sides } from "../characteristic/characteristic";
import { decisionOutcomes, findingResults, inspectionLimits } from "./inspection";

const prose = (longest: number) =>
  z
    .string()
    .trim()
    .max(longest, `at most ${longest} characters`)
    .regex(/^(?:\P{Cc}|[\n\t])*$/u, "no control characters");

const added = {
  key: z.uuid("a key the device made"),
  entryId: z.uuid(),
  replaces: z.array(z.uuid()).max(inspectionLimits.replaces).readonly().default([]),
  /** By the device's clock, ISO instant. */
  at: z.iso.datetime(),
  note: prose(inspectionLimits.note).default(""),
};

const others = ({ key, replaces }: { readonly key: string; readonly replaces: readonly string[] }) =>
  !replaces.includes(key);

/** Reads a finding that a device sends. */
export const findingInput = z
  .object({
    ...added,
    check: prose(80).min(1),
    result: z.enum(findingResults),
    readings: z
      .array(
        z.object({
          characteristic: prose(120).min(1),
          side: z.enum(sides).default("whole"),
          entered: prose(inspectionLimits.reading).min(1),
          /** What it was read with, an instrument of the club; missing where nobody said. */
          instrument: z.uuid().exactOptional(),
        }),
      )
      .max(inspectionLimits.readings)
      .readonly()
      .default([]),
  })
  .refine(others, { path: ["replaces"], message: "a finding cannot take its own place" });
export type FindingInput = z.input<typeof findingInput>;

/** Reads a decision that a device sends. */
export const decisionInput = z
  .object({
    ...added,
    outcome: z.enum(decisionOutcomes),
    signedBy: prose(inspectionLimits.signedBy).default(""),
    signature: z
      .string()
      .max(inspectionLimits.signature)
      .regex(/^(?:[ML] ?-?\d{1,4}(?:\.\d)? -?\d{1,4}(?:\.\d)? ?)*$/, "strokes of M and L only")
      .default(""),
  })
  .refine(others, { path: ["replaces"], message: "a decision cannot take its own place" });
export type DecisionInput = z.input<typeof decisionInput>;
