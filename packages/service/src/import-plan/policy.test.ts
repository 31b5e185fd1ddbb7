import { expect, test } from "vitest";
import { groupDoubts } from "./policy";

const misfit = (line: number) => ({
  line,
  text: `WK-${line} does not begin with S1-, as the numbers of Series 1 do`,
});
const early = { line: 30, text: "kept since 1950, before it was built (1968)" };
const later = { line: 31, text: "kept since 3/60, before it was built (c. 1971)" };

test("doubts of a kind stand together, the rarest kind first, and of many only the first are told", () => {
  const lines = Array.from({ length: 40 }, (_, index) => index + 2);
  const groups = groupDoubts([...lines.map(misfit), early, later]);
  expect(groups).toEqual([
    { rows: 2, first: [early, later] },
    { rows: 40, first: [2, 3, 4, 5, 6].map(misfit) },
  ]);
});

test("none are no group", () => {
  expect(groupDoubts([])).toEqual([]);
});
