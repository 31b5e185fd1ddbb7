import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { parseValue } from "../value/parse";
import type { Value } from "../value/value";
import { carHasPart, featureDifferences } from "./feature";
import { mixWarnings } from "./mix";
import type { PartFeature } from "./part";

function value(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  const read = characteristic && parseValue(characteristic, entered);
  if (!read?.ok) throw new Error(`${key}: ${entered}`);
  return read.value;
}
const thread = (entered: string) => value("front.caliper.boltThread", entered);
const length = (entered: string) => value("front.spring.freeLength", entered);
const feature = (characteristic: string, entered: string): PartFeature => ({
  kind: "characteristic",
  characteristic,
  label: characteristic,
  tells: true,
  value: value(characteristic, entered),
});
const at = (label: string, entered: string): PartFeature => ({
  kind: "thread",
  label,
  tells: false,
  value: thread(entered),
});

describe("whether a car has a part", () => {
  const caliper = [
    feature("front.caliper.boltThread", "M10x1.25"),
    feature("front.caliper.pistonDiameter", "54 mm"),
    feature("front.caliper.source", "Hedmar 1300"),
  ];
  const recorded = (values: Readonly<Record<string, string>>) => (key: string) =>
    values[key] === undefined ? [] : [value(key, values[key])];
  const whole = {
    "front.caliper.boltThread": "M10x1.25",
    "front.caliper.pistonDiameter": "54.2 mm",
    "front.caliper.source": "from a HEDMAR 1300, overhauled",
  };
  test.each([
    ["all it tells by is recorded: yes", whole, "yes"],
    ["one of it is recorded otherwise: no", { ...whole, "front.caliper.boltThread": "1/2-20 UNF" }, "no"],
    ["one of it is not recorded: unknown", { "front.caliper.boltThread": "M10x1.25" }, "unknown"],
    [
      "a number further off than half a step: no",
      { ...whole, "front.caliper.pistonDiameter": "55 mm" },
      "no",
    ],
  ])("%s", (_, values, use) => {
    expect(carHasPart(caliper, recorded(values))).toBe(use);
  });

  test("a part that nothing tells is on no car for certain", () => {
    expect(carHasPart([at("bolt to upright", "M10x1.25")], recorded(whole))).toBe("unknown");
  });

  test("either side of the car tells", () => {
    const mount = [feature("front.damper.lowerMount", "pin")];
    const sides = [value("front.damper.lowerMount", "eye"), value("front.damper.lowerMount", "pin")];
    expect(carHasPart(mount, () => sides)).toBe("yes");
  });
});

describe("two parts of one place", () => {
  test("differ in what both say and only one says, and what looks alike is told", () => {
    const found = featureDifferences(
      [at("bolt to upright", "M12x1.25"), feature("front.caliper.pistons", "2")],
      [at("Bolt  to  Upright", "1/2-20 UNF"), feature("front.caliper.pistonDiameter", "54 mm")],
    );
    expect(found.map(({ label, here, there }) => [label, here?.entered, there?.entered])).toEqual([
      ["bolt to upright", "M12x1.25", "1/2-20 UNF"],
      ["front.caliper.pistons", "2", undefined],
      ["front.caliper.pistonDiameter", undefined, "54 mm"],
    ]);
    // 1/2-20 UNF: 12.700 mm, pitch 1.270 mm (ASME B1.1); M12x1.25: 12 mm, 1.25 mm (ISO 724).
    expect(found[0]?.alike).toMatch(/starts in .* does not hold: never mix them/);
  });
});

describe("a recorded combination", () => {
  const on = (what: string, spot: string | undefined, entered: Value) => ({
    what,
    assembly: "brakes" as const,
    ...(spot === undefined ? {} : { spot }),
    value: entered,
  });
  test.each([
    ["threads that meet and start in one another", "bolt", "M12x1.25", "1/2-20 UNF", ["mixed"]],
    ["threads that meet and do not start", "bolt", "M8", "3/8-24 UNF", ["mixed"]],
    ["one thread written in two ways", "bolt", "M10 x 1.5", "M10", []],
    ["look-alikes elsewhere in the assembly", undefined, "M12x1.25", "1/2-20 UNF", ["confusable"]],
    ["unlike threads elsewhere", undefined, "M8", "3/8-24 UNF", []],
  ])("%s", (_, spot, one, other, kinds) => {
    const warnings = mixWarnings([on("caliper", spot, thread(one)), on("upright", spot, thread(other))]);
    expect(warnings.map(({ kind }) => kind)).toEqual(kinds);
  });

  test.each([
    ["2 1/2 in", "65 mm", 1],
    ["63.5 mm", "2 1/2 in", 0],
    ["60 mm", "80 mm", 0],
  ])("a length of %s and one of %s for one spot: %d warning", (one, other, count) => {
    expect(
      mixWarnings([on("old bolt", "link", length(one)), on("new bolt", "link", length(other))]),
    ).toHaveLength(count);
  });

  test("that meet are told across assemblies: a caliper of the brakes, an upright of the suspension", () => {
    const upright = { ...on("upright", "bolt", thread("1/2-20 UNF")), assembly: "frontSuspension" as const };
    const warnings = mixWarnings([on("caliper", "bolt", thread("M12x1.25")), upright]);
    expect(warnings.map(({ kind }) => kind)).toEqual(["mixed"]);
  });

  test("in another assembly is no danger, and is told once", () => {
    const caliper = on("caliper", undefined, thread("M12x1.25"));
    const upright = on("upright", undefined, thread("1/2-20 UNF"));
    expect(mixWarnings([caliper, { ...upright, assembly: "steering" }])).toEqual([]);
    expect(mixWarnings([caliper, upright, upright])).toHaveLength(1);
  });
});
