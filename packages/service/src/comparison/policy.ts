import { z } from "zod";

/** Fewest and most cars that are compared one against the other. */
export const FEWEST = 2;
/** Most cars of a series held against one reference: a fleet, not a register. */
export const MOST = 40;
/** Most cars that stand in columns of their own. */
export const COLUMNS = 6;

const reference = z.string().trim().min(1).max(60);

/** Some cars by their references, or all of a series against one of them. */
export const comparisonInput = z.object({
  cars: z.array(reference).max(MOST).default([]),
  series: z.string().trim().max(60).exactOptional(),
  /** The car the others are held against; what most have when left out. */
  against: reference.exactOptional(),
});
export type ComparisonInput = z.output<typeof comparisonInput>;
