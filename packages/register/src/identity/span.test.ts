import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type BorneSpan, type Overlap, spanOverlap } from "./span";

const day = fc
  .integer({ min: 0, max: 60 })
  .map((n) => `19${String(60 + Math.floor(n / 4)).padStart(2, "0")}-0${1 + (n % 4)}-01`);
const ordered = fc.array(day, { minLength: 4, maxLength: 4 }).map((days) => days.sort());
/** A span with some of its ends unknown, and days on which it truly was borne that fit it. */
const truth = fc.tuple(ordered, fc.boolean(), fc.boolean()).map(([days, knowsFrom, knowsTo]) => {
  const [a = "", b = "", c = "", d = ""] = days;
  const span: BorneSpan = {
    ...(knowsFrom ? { fromEarliest: a, fromLatest: b } : {}),
    ...(knowsTo ? { toEarliest: c, toLatest: d } : {}),
  };
  return { span, first: b, last: c };
});

describe("whether two spans overlap", () => {
  test.each<readonly [BorneSpan, BorneSpan, Overlap, string]>([
    [{}, {}, "possible", "nothing is known"],
    [
      { toLatest: "1975-03-31" },
      { fromEarliest: "1975-04-01" },
      "none",
      "the one ends before the other begins",
    ],
    [
      { toLatest: "1975-03-31" },
      { fromEarliest: "1975-03-31" },
      "none",
      "it goes from car to car within a day",
    ],
    [
      {
        fromEarliest: "1970-01-01",
        fromLatest: "1970-12-31",
        toEarliest: "1975-01-01",
        toLatest: "1975-12-31",
      },
      {
        fromEarliest: "1972-01-01",
        fromLatest: "1972-12-31",
        toEarliest: "1980-01-01",
        toLatest: "1980-12-31",
      },
      "certain",
      "both surely bore it in 1974",
    ],
    [
      {
        fromEarliest: "1970-01-01",
        fromLatest: "1970-12-31",
        toEarliest: "1972-01-01",
        toLatest: "1972-12-31",
      },
      { fromEarliest: "1972-01-01", fromLatest: "1972-12-31" },
      "possible",
      "both say 1972 and no more",
    ],
  ])("of %o and %o is %s: %s (%s)", (one, other, expected) => {
    expect(spanOverlap(one, other)).toBe(expected);
  });

  test("is the same whichever comes first", () => {
    fc.assert(
      fc.property(truth, truth, (a, b) => spanOverlap(a.span, b.span) === spanOverlap(b.span, a.span)),
    );
  });

  test("is never denied where days that fit both do overlap, nor claimed where they do not", () => {
    fc.assert(
      fc.property(truth, truth, (a, b) => {
        const share = a.first < b.last && b.first < a.last;
        const said = spanOverlap(a.span, b.span);
        expect(share ? said !== "none" : said !== "certain").toBe(true);
      }),
    );
  });
});
