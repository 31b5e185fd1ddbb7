import { expect, test } from "vitest";
import { sayFigureChange } from "./say";

const figure = { label: "Rate", output: "rate", onlyRatio: false };

test.each([
  [2.4414, "× 2.44", "a multiple beyond a quarter"],
  [0.4, "× 0.4", "less is a multiple too"],
  [1.031, "+3.1 %", "per cent within a quarter"],
  [0.971, "−2.9 %", "with a true minus"],
  [1, "as before", "nothing is said to have changed"],
])("a ratio of %d is %s: %s", (ratio, text) => {
  expect(sayFigureChange({ ...figure, ratio })).toBe(text);
});

test("what fell to nothing is gone, what has no other side says nothing", () => {
  expect(sayFigureChange({ ...figure, numberBefore: 12, numberAfter: 0 })).toBe("gone");
  expect(sayFigureChange({ ...figure, numberAfter: 12 })).toBe("");
  expect(sayFigureChange({ ...figure, numberBefore: -1, numberAfter: 2 })).toBe("");
});
