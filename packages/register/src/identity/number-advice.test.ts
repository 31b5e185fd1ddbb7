import { describe, expect, test } from "vitest";
import { adviseOnNumber } from "./number-advice";

const pattern = (series: string, prefix: string, last: number) => ({
  series,
  prefix,
  digits: 4,
  first: 1,
  last,
  suffixes: [],
});
const series = [
  { slug: "series-1", pattern: pattern("Series 1", "S1-", 180) },
  { slug: "series-2", pattern: pattern("Series 2", "S2-", 398) },
];

describe("advice on a number", () => {
  test("of a series chosen says its serial where it fits", () => {
    expect(adviseOnNumber("s2 0145", series, "series-2")).toEqual({
      fits: ["series-2"],
      proposals: [],
      serial: 145,
    });
  });

  test("says what is wrong in words, and proposes what could be meant", () => {
    const advice = adviseOnNumber("S2-0421", series, "series-2");
    expect(advice.problem).toBe("0421 lies above the last of Series 2, which is 0398");
    expect(advice.proposals.map(({ number }) => number)).toEqual(["S2-0241"]);
    expect(advice.serial).toBeUndefined();
  });

  test("finds letters taken for digits", () => {
    expect(adviseOnNumber("S2-O145", series, "series-2").proposals[0]?.number).toBe("S2-0145");
  });

  test("names the series it fits when another is chosen", () => {
    expect(adviseOnNumber("S1-0033", series, "series-2")).toMatchObject({
      fits: ["series-1"],
      problem: "S1-0033 does not begin with S2-, as the numbers of Series 2 do",
    });
  });

  test("says what is wrong in the words of the one series whose beginning it bears, where none is chosen", () => {
    const { problem, fits } = adviseOnNumber("S2-0421", series);
    expect(fits).toEqual([]);
    expect(problem).toBe("0421 lies above the last of Series 2, which is 0398");
  });

  test("takes the series it fits where none is chosen, and says so where it fits none", () => {
    expect(adviseOnNumber("S2-0007", series)).toMatchObject({ serial: 7, fits: ["series-2"] });
    const { problem, proposals } = adviseOnNumber("0007", series);
    expect(problem).toBe("0007 fits no series of this club");
    expect(proposals.slice(0, 2).map(({ number }) => number)).toEqual(["S1-0007", "S2-0007"]);
  });

  test("says nothing of nothing, nor where the club has no series", () => {
    expect(adviseOnNumber(" - ", series)).toEqual({ fits: [], proposals: [] });
    expect(adviseOnNumber("S2-0007", [])).toEqual({ fits: [], proposals: [] });
  });
});
