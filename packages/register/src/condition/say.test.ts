import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Condition } from "./condition";
import { sayBriefly, sayCondition } from "./say";

const series = new Map([["series-2", "Series 2"]]);

describe("a part of a condition in few words", () => {
  test.each<[Condition, string, string]>([
    [{ op: "series", in: ["series-2"] }, "Series 2", "the series is Series 2"],
    [{ op: "status", in: ["laidUp"] }, "laid up", "the status is laid up"],
    [
      { op: "verdict", characteristic: "front.antiRollBar.diameter", in: ["outsideLimits"] },
      "front anti-roll bar diameter outside limits",
      "front anti-roll bar diameter against specification is outside limits",
    ],
    [
      { op: "built", from: "1970-01-01", to: "1979-12-31" },
      "built in the 1970s",
      "built from 1 Jan 1970 to 31 Dec 1979",
    ],
    [{ op: "built", from: "1971-01-01" }, "built on or after 1 Jan 1971", "built on or after 1 Jan 1971"],
    [
      { op: "anyVerdict", in: ["outsideLimits", "missing"] },
      "something outside limits or missing",
      "something recorded is outside limits or missing",
    ],
    [
      { op: "modified", in: ["brakes", "wheels"] },
      "brakes or wheels and tyres modified",
      "a modification of brakes or wheels and tyres is recorded",
    ],
    [
      { op: "not", of: { op: "known", what: "decade" } },
      "decade of building not known",
      "the decade of building is not known",
    ],
    [{ op: "known", what: "status" }, "status known", "the status is known"],
    [
      { op: "not", of: { op: "series", in: ["series-2"] } },
      "not (the series is Series 2)",
      "not (the series is Series 2)",
    ],
  ])("%j is said as %s, in a sentence as %s", (condition, few, sentence) => {
    expect(sayBriefly(condition, builtInBook, { series })).toBe(few);
    expect(sayCondition(condition, builtInBook, { series })).toBe(sentence);
  });
});
