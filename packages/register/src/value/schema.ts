import { z } from "zod";
import type { Value } from "./value";

/** Longest entry that is kept. */
const enteredLimit = 2000;

const entered = z.string().max(enteredLimit);
const content = z.string().min(1).max(enteredLimit);

/** Reads a value as the archive and the interface exchange it; refuses what a value cannot be (NaN, no resolution). */
export const valueSchema: z.ZodType<Value> = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("quantity"), si: z.number(), resolution: z.number().positive(), entered }),
  z.strictObject({ kind: z.literal("choice"), code: content, entered }),
  z.strictObject({ kind: z.literal("designation"), canonical: content, entered }),
  z.strictObject({ kind: z.literal("text"), text: content, entered }),
  z.strictObject({ kind: z.literal("date"), date: z.iso.date(), entered }),
  z.strictObject({ kind: z.literal("absent"), entered }),
]);
