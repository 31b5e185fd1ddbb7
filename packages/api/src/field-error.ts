import type { Invalid } from "@trunnion/register";
import { ZodError } from "zod";

/** What is wrong, by the name of the form's field: `built`, `numbers.2.from`. */
export type FieldErrors = Readonly<Record<string, readonly string[]>>;

/** Problems by field, whether a schema found them or the service did. What is wrong with the whole has no field. */
export function fieldErrorsOf(error: ZodError | Invalid): FieldErrors {
  const problems =
    error instanceof ZodError
      ? error.issues.map(({ path, message }) => ({ field: path.map(String).join("."), message }))
      : error.problems;
  const errors: Record<string, string[]> = {};
  for (const { field, message } of problems) {
    if (field === "") continue;
    const list = errors[field] ?? [];
    list.push(message);
    errors[field] = list;
  }
  return errors;
}
