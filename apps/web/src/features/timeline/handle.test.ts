import { describe, expect, test } from "vitest";
import { askedDay, dayAt, dayByKey, placeOf, snapped } from "./handle";
import { timeScale } from "./scale";

const scale = timeScale("1968-01-01", "2026-11-25");
const key = (name: string, shiftKey = false) => ({ key: name, shiftKey });

describe("the handle by keys", () => {
  test.each([
    ["ArrowLeft", false, "2004-08-30", "a month earlier"],
    ["ArrowLeft", true, "2004-09-29", "with Shift a day"],
    ["ArrowRight", false, "2004-10-30", "a month later"],
    ["PageDown", false, "2003-09-30", "a year earlier"],
    ["PageUp", true, "2004-10-07", "with Shift a week"],
    ["Home", false, "1968-01-01", "the beginning"],
    ["End", false, "2026-11-25", "today"],
  ])("%s, Shift %s: to %s, %s", (name, shift, expected) => {
    expect(dayByKey(scale, "2004-09-30", key(name, shift))).toBe(expected);
  });

  test("stays on the last day of a shorter month, and within the life", () => {
    expect(dayByKey(scale, "2004-03-31", key("ArrowLeft"))).toBe("2004-02-29");
    expect(dayByKey(scale, "1968-01-15", key("PageDown"))).toBe("1968-01-01");
    expect(dayByKey(scale, "2026-11-24", key("ArrowRight"))).toBe("2026-11-25");
  });

  test("leaves every other key alone", () => {
    expect(dayByKey(scale, "2004-09-30", key("Tab"))).toBeUndefined();
  });
});

test("places and days belong together, and stop at the edges", () => {
  for (const day of ["1968-01-01", "1972-02-29", "2026-11-25"])
    expect(dayAt(scale, placeOf(scale, day))).toBe(day);
  expect(placeOf(scale, "1900-01-01")).toBe(0);
  expect(dayAt(scale, 1e9)).toBe("2026-11-25");
});

test("a dragged handle is caught by the nearest event within reach, and by none beyond", () => {
  const turns = ["2004-09-30", "2004-10-09"];
  expect(snapped("2004-09-25", turns, 6)).toBe("2004-09-30");
  expect(snapped("2004-10-06", turns, 6)).toBe("2004-10-09");
  expect(snapped("2004-09-20", turns, 6)).toBe("2004-09-20");
});

test.each([
  ["2004-09-30", "2004-09-30"],
  ["2004-02-30", undefined],
  ["1899-12-31", undefined],
  ["2026-11-26", undefined],
  ["30.9.2004", undefined],
  ["", undefined],
  [undefined, undefined],
])("an address that asks for %s gets %s", (text, expected) => {
  expect(askedDay(text, "1900-01-01", "2026-11-25")).toBe(expected);
});
