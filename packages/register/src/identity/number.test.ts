import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { likeness, lookalikeKey, nearMisses, numberText } from "./near-miss";
import {
  chassisKey,
  explainNumber,
  type NumberPattern,
  numberPatternSchema,
  serialGaps,
  serialText,
} from "./number";

const series2: NumberPattern = {
  series: "Series 2",
  prefix: "SV2-",
  digits: 4,
  first: 121,
  last: 398,
  suffixes: ["C", "R"],
};

function problemOf(number: string) {
  const reading = explainNumber(number, series2);
  return reading.ok ? undefined : reading.problem;
}

describe("a number held against its series", () => {
  test.each([
    ["SV2-0398", 398, ""],
    ["sv2 0121c", 121, "C"],
    ["SV2.0200/R", 200, "R"],
  ])("%s is serial %d", (number, serial, suffix) => {
    expect(explainNumber(number, series2)).toEqual({ ok: true, serial, suffix });
  });

  test.each([
    ["SV2-0421", "0421 lies above the last of Series 2, which is 0398"],
    ["SV2-0399", "0399 lies above the last of Series 2, which is 0398"],
    ["SV2-0120", "0120 lies below the first of Series 2, which is 0121"],
    ["SV2-389", "389 has 3 digits where Series 2 has 4"],
    ["SV3-0389", "SV3-0389 does not begin with SV2-, as the numbers of Series 2 do"],
    ["SV2-X", "SV2-X has no serial after SV2-; Series 2 has 4 digits there"],
    ["SV2-0389X", "SV2-0389X ends in X; Series 2 has C, R"],
    ["SV2-O389", "SV2-O389 has no serial after SV2-; Series 2 has 4 digits there"],
  ])("%s: %s", (number, problem) => {
    expect(problemOf(number)).toBe(problem);
  });

  test("puts no letter right silently: O is not 0 in the key that numbers are filed by", () => {
    expect(chassisKey("SV2-O389")).toBe("SV2O389");
    expect(lookalikeKey("SV2-O389")).toBe(lookalikeKey("SV2-0389"));
  });
});

describe("near misses", () => {
  test.each([
    ["SV2-O389", "SV2-0389", "letters for digits, or digits for letters"],
    ["5V2-0389C", "SV2-0389C", "letters for digits, or digits for letters"],
    ["SV2-389", "SV2-0389", "leading zeros"],
    ["0389", "SV2-0389", "the prefix left out"],
    ["SV2-0938", "SV2-0398", "two digits exchanged"],
    ["SV2-0389X", "SV2-0389", "another ending"],
  ])("%s may be %s: %s", (number, proposed, because) => {
    expect(nearMisses(number, series2)).toContainEqual({
      number: proposed,
      serial: Number(proposed.slice(4, 8)),
      because,
    });
  });

  test("of a number that fits are none, and what is far off has none", () => {
    expect(nearMisses("SV2-0389", series2)).toEqual([]);
    expect(nearMisses("SV2-9999", series2)).toEqual([]);
    expect(nearMisses("", series2)).toEqual([]);
  });

  test.each([
    ["SV2-0389", "sv2 0389", "same"],
    ["SV2-0389", "SV2-O389", "lookalike"],
    ["SV2-0389", "SV2-0398", "transposed"],
    ["SV2-0389", "SV2-0388", "oneCharacter"],
    ["SV2-0389", "SV2-389", "oneCharacter"],
    ["SV2-0389", "SV2-0217", undefined],
  ])("%s and %s are %s", (one, other, expected) => {
    expect(likeness(one, other)).toBe(expected);
    expect(likeness(other, one)).toBe(expected);
  });
});

describe("by property", () => {
  const serial = fc.integer({ min: 121, max: 398 });
  const suffix = fc.constantFrom("", "C", "R");

  test("every number the pattern writes reads back, however it is spaced and capitalised", () => {
    fc.assert(
      fc.property(serial, suffix, fc.boolean(), (number, ending, small) => {
        const written = numberText(series2, number, ending).replace("-", " - ");
        const reading = explainNumber(small ? written.toLowerCase() : written, series2);
        expect(reading).toEqual({ ok: true, serial: number, suffix: ending });
      }),
    );
  });

  test("every near miss fits the pattern, and a number with two digits exchanged proposes the right one", () => {
    fc.assert(
      fc.property(serial, fc.integer({ min: 0, max: 2 }), (number, at) => {
        const digits = serialText(series2, number);
        const swapped = `${digits.slice(0, at)}${digits.charAt(at + 1)}${digits.charAt(at)}${digits.slice(at + 2)}`;
        const wrong = `SV2-${swapped}`;
        const proposals = nearMisses(wrong, series2);
        for (const { number: proposed } of proposals) expect(explainNumber(proposed, series2).ok).toBe(true);
        if (!explainNumber(wrong, series2).ok) {
          expect(proposals.map((proposal) => proposal.serial)).toContain(number);
        }
      }),
    );
  });

  test("gaps and held serials make up the whole series, without overlap", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 100, max: 420 })), (serials) => {
        const gaps = serialGaps(serials, series2);
        const missing = gaps.flatMap(({ from, to }) =>
          Array.from({ length: to - from + 1 }, (_, step) => from + step),
        );
        const held = [...new Set(serials)].filter((one) => one >= 121 && one <= 398);
        expect([...missing, ...held].sort((a, b) => a - b)).toEqual(
          Array.from({ length: 278 }, (_, step) => 121 + step),
        );
      }),
    );
  });
});

describe("the schema of patterns", () => {
  test("refuses a pattern that no number could fit", () => {
    expect(numberPatternSchema.safeParse(series2).success).toBe(true);
    expect(numberPatternSchema.safeParse({ ...series2, first: 399 }).success).toBe(false);
    expect(numberPatternSchema.safeParse({ ...series2, last: 10_000 }).success).toBe(false);
  });
});
