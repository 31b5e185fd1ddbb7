import { extractParts } from "@trunnion/register";
import { z } from "zod";

/** Characteristics one extract may show, at most. */
export const EXTRACT_CHARACTERISTICS = 60;
/** Cars on one page of an extract. */
export const EXTRACT_PAGE = 100;

/** What a club shows to everybody. */
export const publicExtractInput = z.object({
  /** Version of the choice the form was opened with; 0 where none was made yet. */
  version: z.coerce.number().int().min(0),
  open: z.enum(["yes", "no"]),
  parts: z.array(z.enum(extractParts)).max(extractParts.length).default([]),
  characteristics: z.array(z.string().max(200)).max(EXTRACT_CHARACTERISTICS).default([]),
  series: z.array(z.string().max(60)).max(200).default([]),
  lead: z.string().max(600),
});
export type PublicExtractInput = z.infer<typeof publicExtractInput>;
