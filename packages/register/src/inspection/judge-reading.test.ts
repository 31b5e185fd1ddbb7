import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { judgeReading } from "./judge-reading";

const camber = builtInBook.find("front.camber");
if (!camber) throw new Error("the dictionary has no front camber");
const degree = Math.PI / 180;
const limits = { lower: -1 * degree, upper: 0 };

describe("a reading as it is typed", () => {
  // ISO 14253-1: proven inside from the limit less the uncertainty on; a step of 1' leaves 2 · 1' / √12 = 0.58' (k = 2).
  test.each([
    ["-0°30'", "inside limits", false],
    ["-0°59'", "inside limits", false],
    ["-1°00'", "too near the limit to tell", false],
    ["-1°02'", "outside limits", true],
  ])("%s is %s", (entered, text, outside) => {
    expect(judgeReading(camber, entered, limits)).toMatchObject({ state: "read", text, outside });
  });

  test("has the uncertainty of what it was read with where that is known", () => {
    const told = judgeReading(camber, "-0°55'", limits, (6 / 60) * degree);
    expect(told).toMatchObject({ text: "too near the limit to tell", outside: false });
  });

  test("that is none says what it was and what would be one", () => {
    const told = judgeReading(camber, "a bit", limits);
    expect(told.state).toBe("unread");
    expect(told.text).toContain("a bit");
  });

  test("without limits is read, and called neither", () => {
    expect(judgeReading(camber, "-0°30'", undefined)).toEqual({
      state: "read",
      text: "no limits known",
      outside: false,
    });
  });
});
