import { z } from "zod";
import type { WorkingStep } from "../catalogue/computation";
import type { Dimension } from "../quantity/dimension";

/** Symbol of each field in the formulas; a field without one is shown under its own name. */
export type Symbols = Readonly<Record<string, string>>;

/**
 * The inputs of a computation as the first lines of its working, in the schema's order, labelled by the schema.
 * Fields that were not given, and fields that hold objects or lists, are left out: they are for the computation to say.
 * @param prefix goes before each label, for one of several like objects ("Front: track")
 */
export function givenSteps(
  schema: z.ZodObject,
  input: Readonly<Record<string, unknown>>,
  { symbols = {}, prefix = "" }: { symbols?: Symbols; prefix?: string } = {},
): WorkingStep[] {
  return Object.entries(schema.shape).flatMap(([name, field]) => {
    const value = input[name];
    if (typeof value !== "number" && typeof value !== "string") return [];
    const { title = name, dimension, unit } = describedBy(field);
    const step = { symbol: symbols[name] ?? name, label: `${prefix}${title}`, value };
    return [
      { ...step, ...(dimension === undefined ? {} : { dimension }), ...(unit === undefined ? {} : { unit }) },
    ];
  });
}

interface FieldMeta {
  readonly title?: string | undefined;
  readonly dimension?: Dimension | undefined;
  readonly unit?: string | undefined;
}

/** What a field says of itself, whether or not it is wrapped as optional. */
function describedBy(field: unknown): FieldMeta {
  const inner = field instanceof z.ZodOptional ? field.unwrap() : field;
  return inner instanceof z.ZodType ? (inner.meta() ?? {}) : {};
}
