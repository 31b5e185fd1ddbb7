import { z } from "zod";
import { assemblies, sides } from "../characteristic/characteristic";
import { comparedVerdicts, verdicts } from "../deviation/deviation";
import { type Condition, knowables } from "./condition";

/** Limits of a condition: it is read by people and run over every car. */
export const conditionLimits = { depth: 12, nodes: 200, list: 100 } as const;

/** Text as a database keeps it: no control characters, no half of a surrogate pair. */
const text = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, "no control characters");
const key = text;
const day = z.iso.date();
const comparison = z.enum(["eq", "ne", "lt", "le", "gt", "ge"]);
const of = { characteristic: key, side: z.enum(sides).exactOptional() };
const list = <T extends z.ZodType>(item: T) => z.array(item).min(1).max(conditionLimits.list);

const node: z.ZodType<Condition> = z.lazy(() =>
  z.discriminatedUnion("op", [
    z.strictObject({ op: z.literal("always") }),
    z.strictObject({ op: z.literal("all"), of: list(node) }),
    z.strictObject({ op: z.literal("any"), of: list(node) }),
    z.strictObject({ op: z.literal("not"), of: node }),
    z.strictObject({ op: z.literal("series"), in: list(text) }),
    z.strictObject({ op: z.literal("status"), in: list(text) }),
    z.strictObject({ op: z.literal("built"), from: day.exactOptional(), to: day.exactOptional() }),
    z.strictObject({ op: z.literal("known"), what: z.enum(knowables) }),
    z.strictObject({ op: z.literal("anyVerdict"), in: list(z.enum(comparedVerdicts)) }),
    z.strictObject({ op: z.literal("modified"), in: list(z.enum(assemblies)) }),
    z.strictObject({ op: z.literal("recorded"), ...of }),
    z.strictObject({ op: z.literal("absent"), ...of }),
    z.strictObject({ op: z.literal("number"), ...of, is: comparison, si: z.number() }),
    z.strictObject({ op: z.literal("code"), ...of, in: list(text) }),
    z.strictObject({ op: z.literal("textHas"), ...of, text }),
    z.strictObject({
      op: z.literal("date"),
      ...of,
      is: comparison,
      date: z.union([day, z.literal("eventDay")]),
    }),
    z.strictObject({ op: z.literal("verdict"), ...of, in: list(z.enum(verdicts)) }),
    z.strictObject({
      op: z.literal("against"),
      ...of,
      measure: z.enum(["ratio", "difference"]),
      is: comparison,
      si: z.number(),
    }),
    z.strictObject({
      op: z.literal("sidesDiffer"),
      characteristic: key,
      by: z.number().min(0).exactOptional(),
    }),
    z.strictObject({
      op: z.literal("readingOlderThan"),
      characteristic: key,
      days: z.int().min(1).max(36_500),
    }),
  ]),
);

function partsOf(condition: Condition): readonly Condition[] {
  if (condition.op === "all" || condition.op === "any") return condition.of;
  return condition.op === "not" ? [condition.of] : [];
}

/** Every node of a condition, itself first. */
export function nodesOf(condition: Condition): readonly Condition[] {
  return [condition, ...partsOf(condition).flatMap(nodesOf)];
}

/** Counts a raw condition's parts without trusting its shape; stops at the first limit that is passed. */
function tooLarge(raw: unknown): string | undefined {
  let nodes = 0;
  const within = (part: unknown, level: number): string | undefined => {
    if (part === null || typeof part !== "object") return undefined;
    nodes += 1;
    if (level > conditionLimits.depth) return `a condition has at most ${conditionLimits.depth} levels`;
    if (nodes > conditionLimits.nodes) return `a condition has at most ${conditionLimits.nodes} parts`;
    const { of: inner } = part as { readonly of?: unknown };
    for (const each of Array.isArray(inner) ? inner : [inner]) {
      const problem = within(each, level + 1);
      if (problem !== undefined) return problem;
    }
    return undefined;
  };
  return within(raw, 1);
}

/** Reads a condition; refuses one that is nested too deep or has too many parts before looking further. */
export const conditionSchema: z.ZodType<Condition> = z
  .unknown()
  .superRefine((raw, context) => {
    const message = tooLarge(raw);
    if (message !== undefined) context.addIssue({ code: "custom", message });
  })
  .pipe(node);

/** Keys of the characteristics a condition looks at. */
export function characteristicsOf(condition: Condition): readonly string[] {
  const keys = nodesOf(condition).flatMap((one) => ("characteristic" in one ? [one.characteristic] : []));
  return [...new Set(keys)];
}
