import type { z } from "zod";
import { NotationError } from "../quantity/notation-error";

/** What `read` makes of a text; where it is no notation, an issue of the field that quotes it and says what would be. */
export function readAsField<T>(read: () => T, context: z.RefinementCtx): T | undefined {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    const { code, place, understood, entered, message } = error;
    context.addIssue({ code: "custom", message, params: { code, place, understood, entered } });
    return undefined;
  }
}
