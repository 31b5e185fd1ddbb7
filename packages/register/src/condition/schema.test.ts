import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Condition } from "./condition";
import { sayCondition } from "./say";
import { characteristicsOf, conditionLimits, conditionSchema, nodesOf } from "./schema";

const always: Condition = { op: "always" };
const nested = (levels: number): Condition => (levels === 1 ? always : { op: "not", of: nested(levels - 1) });
const wide = (parts: number): Condition => ({
  op: "all",
  of: [0, 1].map(() => ({ op: "any" as const, of: Array.from({ length: parts }, () => always) })),
});
const messages = (raw: unknown) =>
  conditionSchema.safeParse(raw).error?.issues.map(({ message }) => message) ?? [];

const bar: Condition = { op: "number", characteristic: "rear.antiRollBar.diameter", is: "gt", si: 0.016 };

describe("the schema of conditions", () => {
  test("reads every operator and gives it back unchanged", () => {
    const all: Condition = {
      op: "all",
      of: [
        { op: "any", of: [always, { op: "not", of: bar }] },
        { op: "series", in: ["series-2"] },
        { op: "status", in: ["inUse"] },
        { op: "built", from: "1971-01-01" },
        { op: "recorded", characteristic: "front.camber", side: "left" },
        { op: "absent", characteristic: "oil.cooler" },
        { op: "code", characteristic: "body.style", in: ["coupe"] },
        { op: "textHas", characteristic: "front.caliper.source", text: "alloy" },
        { op: "date", characteristic: "safety.harness.expires", is: "lt", date: "eventDay" },
        { op: "verdict", characteristic: "front.camber", in: ["outsideLimits"] },
        { op: "against", characteristic: "rear.antiRollBar.diameter", measure: "ratio", is: "ge", si: 1.2 },
        { op: "sidesDiffer", characteristic: "front.camber", by: 0.01 },
        { op: "readingOlderThan", characteristic: "front.camber", days: 365 },
      ],
    };
    expect(conditionSchema.parse(all)).toEqual(all);
    expect(characteristicsOf(all)).toEqual([
      "rear.antiRollBar.diameter",
      "front.camber",
      "oil.cooler",
      "body.style",
      "front.caliper.source",
      "safety.harness.expires",
    ]);
    expect(nodesOf(all)).toHaveLength(17);
  });

  test("is bounded in depth and in parts, at the limit itself still inside", () => {
    expect(conditionSchema.safeParse(nested(conditionLimits.depth)).success).toBe(true);
    expect(messages(nested(conditionLimits.depth + 1))).toEqual(["a condition has at most 12 levels"]);
    expect(conditionSchema.safeParse(wide(98)).success).toBe(true);
    expect(messages(wide(99))).toEqual(["a condition has at most 200 parts"]);
  });

  test("a hostile depth is refused without running out of stack", () => {
    let raw: unknown = always;
    for (let level = 0; level < 100_000; level += 1) raw = { op: "not", of: raw };
    expect(messages(raw)).toEqual(["a condition has at most 12 levels"]);
  });

  test.each([
    [{ op: "sometimes" }],
    [{ op: "all", of: [] }],
    [{ op: "always", sql: "1 = 1" }],
    [{ ...bar, si: Number.NaN }],
    [{ ...bar, is: "like" }],
    [{ op: "date", characteristic: "safety.harness.expires", is: "lt", date: "2026-02-30" }],
    [{ op: "readingOlderThan", characteristic: "front.camber", days: 0 }],
    [null],
    ["always"],
  ])("refuses %o", (raw) => {
    expect(conditionSchema.safeParse(raw).success).toBe(false);
  });
});

describe("a condition in words", () => {
  const camber = "front.camber";
  test.each<[Condition, string]>([
    [always, "every car"],
    [bar, "rear anti-roll bar diameter is above 16 mm"],
    [
      { op: "not", of: { op: "any", of: [bar, always] } },
      "not (rear anti-roll bar diameter is above 16 mm or every car)",
    ],
    [
      { op: "all", of: [bar, { op: "any", of: [{ op: "absent", characteristic: "oil.cooler" }, always] }] },
      "rear anti-roll bar diameter is above 16 mm and (oil cooler is not fitted or every car)",
    ],
    [{ op: "series", in: ["series-2", "series-3"] }, "the series is Series 2 or series-3"],
    [{ op: "status", in: ["underRestoration"] }, "the status is under restoration"],
    [{ op: "built", from: "1971-01-01", to: "1971-12-31" }, "built from 1 Jan 1971 to 31 Dec 1971"],
    [
      { op: "code", characteristic: "body.style", in: ["coupe", "roadster"] },
      "body style is coupé or roadster",
    ],
    [{ op: "recorded", characteristic: camber, side: "left" }, "left front camber is recorded"],
    [
      { op: "date", characteristic: "safety.harness.expires", is: "lt", date: "eventDay" },
      "harness valid until is before the day of the event",
    ],
    [
      { op: "verdict", characteristic: camber, in: ["outsideLimits", "cannotTell"] },
      "front camber against specification is outside limits or cannot tell",
    ],
    [
      { op: "against", characteristic: "rear.antiRollBar.diameter", measure: "ratio", is: "gt", si: 1.2 },
      "rear anti-roll bar diameter is more than 1.2 times as specified",
    ],
    [
      { op: "sidesDiffer", characteristic: camber, by: Math.PI / 360 },
      "front camber differs from left to right by more than 0.5°",
    ],
    [
      { op: "readingOlderThan", characteristic: camber, days: 365 },
      "the latest reading of front camber is more than 365 days old on the day of the event",
    ],
  ])("%o", (condition, words) => {
    expect(sayCondition(condition, builtInBook, { series: new Map([["series-2", "Series 2"]]) })).toBe(words);
  });
});
