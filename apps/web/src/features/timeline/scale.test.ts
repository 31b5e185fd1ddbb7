import type { TimelineEvent } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { inRows, lifeScale, shiftMonths, timeScale, yearTicks } from "./scale";

const event = (parts: Partial<TimelineEvent>): TimelineEvent => ({
  id: "1",
  lane: "life",
  title: "",
  ...parts,
});
const year = (of: number) => ({ text: String(of), earliest: `${of}-01-01`, latest: `${of}-12-31` });

describe("the scale of a life", () => {
  test("begins with the year in which the life does, and ends today", () => {
    expect(lifeScale([event({ when: year(1971) })], "2026-11-25")).toMatchObject({
      from: "1971-01-01",
      to: "2026-11-25",
    });
  });

  test("is not drawn out to 1900 by a 'before'", () => {
    const before = { text: "before March 1972", earliest: "1900-01-01", latest: "1972-02-29" };
    expect(lifeScale([event({ when: before })], "2026-11-25").from).toBe("1972-01-01");
  });

  test("of a life without a date is this year", () => {
    expect(lifeScale([event({})], "2026-11-25").from).toBe("2026-01-01");
  });

  test("puts a day in the middle in the middle, and one beyond an edge at it", () => {
    const scale = timeScale("2000-01-01", "2000-01-11");
    expect([scale.at("2000-01-06"), scale.at("1990-01-01"), scale.at("2030-01-01")]).toEqual([50, 0, 100]);
  });

  test.each([
    ["1968-01-01", "2026-11-25", [1970, 1975, 1980, 1985, 1990, 1995, 2000, 2005, 2010, 2015, 2020, 2025]],
    ["2024-01-01", "2026-11-25", [2024, 2025, 2026]],
  ])("from %s to %s has round years: %j", (from, to, expected) => {
    const ticks = yearTicks(timeScale(from, to));
    expect(ticks.map((tick) => tick.year)).toEqual(expected);
  });
});

test("what overlaps in time lies in rows of its own, what follows shares one", () => {
  const scale = timeScale("1970-01-01", "2026-01-01");
  const marks = [
    event({ id: "first mark", when: year(1970), until: year(1985) }),
    event({ id: "engine", until: "open" }),
    event({ id: "second mark", when: year(1986), until: "open" }),
  ];
  expect(inRows(marks, scale).map(({ row }) => row)).toEqual([0, 1, 0]);
  const decision = event({ id: "a decision", when: year(1990) });
  expect(inRows([...marks, decision], scale).map(({ row }) => row)).toEqual([1, 2, 1, 0]);
});

test("a month on from the last of January is the last of February", () => {
  expect([shiftMonths("2023-01-31", 1), shiftMonths("2024-01-31", 1), shiftMonths("2024-01-31", -2)]).toEqual(
    ["2023-02-28", "2024-02-29", "2023-11-30"],
  );
});
