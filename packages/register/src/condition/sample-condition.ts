import fc from "fast-check";
import { assemblies, sides } from "../characteristic/characteristic";
import { comparedVerdicts, verdicts } from "../deviation/deviation";
import { type Comparison, type Condition, knowables } from "./condition";
import { conditionSchema } from "./schema";

const text = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 });
const texts = fc.uniqueArray(text, { minLength: 1, maxLength: 4 });
const day = fc
  .integer({ min: 0, max: 40_000 })
  .map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10));
// Nought has no sign in a comparison, and loses it on the way.
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((si) => si + 0);
const comparison = fc.constantFrom<Comparison>("eq", "ne", "lt", "le", "gt", "ge");
const about = fc.record(
  { characteristic: text, side: fc.constantFrom(...sides) },
  { requiredKeys: ["characteristic"] },
);
const op = <O extends Condition["op"]>(name: O) => fc.constant(name);

const leaf = fc.oneof(
  fc.record({ op: op("always") }),
  fc.record({ op: fc.constantFrom("series", "status"), in: texts }),
  fc.record({ op: op("known"), what: fc.constantFrom(...knowables) }),
  fc.record({ op: op("anyVerdict"), in: fc.subarray([...comparedVerdicts], { minLength: 1 }) }),
  fc.record({ op: op("modified"), in: fc.subarray([...assemblies], { minLength: 1 }) }),
  fc.record({ op: op("built"), from: day, to: day }, { requiredKeys: ["op"] }),
  fc.tuple(about, fc.record({ op: fc.constantFrom("recorded", "absent") })),
  fc.tuple(about, fc.record({ op: op("number"), is: comparison, si: number })),
  fc.tuple(about, fc.record({ op: op("code"), in: texts })),
  fc.tuple(about, fc.record({ op: op("textHas"), text })),
  fc.tuple(
    about,
    fc.record({ op: op("date"), is: comparison, date: fc.oneof(day, fc.constant("eventDay")) }),
  ),
  fc.tuple(about, fc.record({ op: op("verdict"), in: fc.subarray([...verdicts], { minLength: 1 }) })),
  fc.tuple(
    about,
    fc.record({
      op: op("against"),
      measure: fc.constantFrom("ratio", "difference"),
      is: comparison,
      si: number,
    }),
  ),
  fc.record(
    { op: op("sidesDiffer"), characteristic: text, by: fc.double({ min: 0, max: 10, noNaN: true }) },
    { requiredKeys: ["op", "characteristic"] },
  ),
  fc.record({ op: op("readingOlderThan"), characteristic: text, days: fc.integer({ min: 1, max: 36_500 }) }),
);

/** Any condition the schema reads, of every operator, nested. For tests. */
export const anyCondition: fc.Arbitrary<Condition> = fc
  .letrec<{ readonly node: unknown }>((tie) => ({
    node: fc.oneof(
      { depthSize: "small", withCrossShrink: true },
      leaf.map((parts) => (Array.isArray(parts) ? Object.assign({}, ...parts) : parts)),
      fc.record({
        op: fc.constantFrom("all", "any"),
        of: fc.array(tie("node"), { minLength: 1, maxLength: 4 }),
      }),
      fc.record({ op: op("not"), of: tie("node") }),
    ),
  }))
  .node.map((raw) => conditionSchema.safeParse(raw))
  .filter((read) => read.success)
  .map((read) => read.data as Condition);
