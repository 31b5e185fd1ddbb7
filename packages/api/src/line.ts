import { z } from "zod";

/** A line of text as an input gives it: no control characters, which the database would choke on. */
export function line(longest: number): z.ZodString {
  return z
    .string()
    .max(longest)
    .regex(/^\P{Cc}*$/u, "no control characters");
}
