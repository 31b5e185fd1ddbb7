import { z } from "zod";

/** One thing wrong with an input, as zod hands it over before it has words. */
type RawIssue = z.core.$ZodRawIssue;

/** How much of what was entered is quoted. */
const mostQuoted = 40;

/**
 * What is wrong with an input and what would be right, for everything that fields do not say themselves: an object, a
 * list or a choice that is missing or of another kind, a field that there is not. Zod puts the place before it.
 */
export function issueWords(issue: RawIssue): string | undefined {
  switch (issue.code) {
    case "invalid_type":
      return `${wantedType(issue.expected, issue.inst)} wanted, ${found(issue.input)}`;
    case "invalid_value":
      return `${choice(issue.values)} wanted, ${found(issue.input)}`;
    case "invalid_union":
      return `${optionsOf(issue)} wanted, ${found(issue.input)}`;
    case "unrecognized_keys":
      return `there is no field ${issue.keys.map(quoted).join(", ")}${known(issue.inst)}`;
    case "too_small":
      return `at least ${issue.minimum}${unitOf(issue.origin)} wanted`;
    case "too_big":
      return `at most ${issue.maximum}${unitOf(issue.origin)} wanted`;
    default:
      return undefined;
  }
}

function wantedType(expected: string, field: unknown): string {
  if (expected === "object") {
    const names = fieldNames(field);
    return names.length === 0 ? "an object is" : `an object with ${names.join(", ")} is`;
  }
  const names: Readonly<Record<string, string>> = {
    array: "a list is",
    string: "a text is",
    number: "a number is",
    int: "a whole number is",
    boolean: "true or false is",
    nonoptional: "a value is",
  };
  return names[expected] ?? `${expected} is`;
}

function fieldNames(field: unknown): readonly string[] {
  return field instanceof z.ZodObject ? Object.keys(field.shape) : [];
}

function known(field: unknown): string {
  const names = fieldNames(field);
  return names.length === 0 ? "" : `; there are ${names.join(", ")}`;
}

function choice(values: readonly unknown[]): string {
  const texts = values.map(quoted);
  return `${texts.length > 1 ? "one of " : ""}${texts.join(", ")} is`;
}

/** The kinds that a field of several shapes tells apart, or the values it takes; its title where it has neither. */
function optionsOf(issue: RawIssue & { readonly code: "invalid_union" }): string {
  const { options, inst } = issue as { readonly options?: readonly unknown[]; readonly inst?: unknown };
  if (Array.isArray(options) && options.length > 0) return choice(options);
  const values = issue.errors.flatMap(([first]) => (first?.code === "invalid_value" ? first.values : []));
  if (values.length > 0) return choice(values);
  const title = inst instanceof z.ZodType ? inst.meta()?.title : undefined;
  return title === undefined ? "another value is" : `${title} is`;
}

function unitOf(origin: string): string {
  if (origin === "array") return " of them is";
  return origin === "string" ? " characters are" : " is";
}

function quoted(value: unknown): string {
  return typeof value === "string" ? `"${value.slice(0, mostQuoted)}"` : String(value);
}

function found(input: unknown): string {
  if (input === undefined) return "and nothing is given";
  if (input === null) return "not null";
  if (Array.isArray(input)) return "not a list";
  if (typeof input === "object") return "not an object";
  return `not ${quoted(input)}`;
}
