import type { z } from "zod";

/**
 * Lets a field take at once what it would hand on unchanged, without the union, the pipe and the results that zod makes
 * on the way. `passes` must be true only for values that the field accepts and leaves as they are; all else, and every
 * error, goes the field's own way. Last in the chain: a later `.meta()` or `.refine()` copies the field without this.
 */
export function quickly<F extends z.ZodType>(field: F, passes: (value: unknown) => boolean): F {
  const { run } = field._zod;
  field._zod.run = (payload, context) =>
    context.direction !== "backward" && passes(payload.value) ? payload : run(payload, context);
  return field;
}
