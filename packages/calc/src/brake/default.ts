import { z } from "zod";

/**
 * A quantity field with the value taken when nothing is given, in trade notation. Schema, form and working all show
 * it; the plain `.prefault()` loses the field's label on the way to the working.
 */
export function withDefault<F extends z.ZodType<number, number | string>>(
  field: F,
  entry: number | string,
): z.ZodPrefault<F> {
  return z.prefault(field, entry as z.input<F>).meta(field.meta() ?? {});
}
