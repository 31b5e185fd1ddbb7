import { expect, test } from "vitest";
import { staleFigures } from "./short";
import { starterChecks } from "./starter";

const tread = {
  text: "Tread where the organiser asks for it.",
  criterion: { kind: "measured" as const, text: "1.6 mm or more over the width" },
};

test.each([
  ["the same limit, whatever its decimals", "Tread: 1.60 mm", []],
  ["a limit that the criterion no longer has", "Tread: 2 mm", ["2"]],
  ["no figure at all", "Tread where asked", []],
])("a sheet's wording with %s", (_what, short, stale) => {
  expect(staleFigures({ ...tread, short })).toEqual(stale);
});

test("a small number may be a figure in one and a word in the other", () => {
  const text = "Count the fixings: four are two rear and two side, a fifth goes between the legs.";
  const criterion = { kind: "document" as const };
  expect(staleFigures({ text, criterion, short: "Fixings: 2 rear, 2 side; 5th legs" })).toEqual([]);
  expect(staleFigures({ text, criterion, short: "Fixings: 3 rear" })).toEqual(["3"]);
});

test("no starter check asks on the sheet for a figure that its full words do not have", () => {
  const stale = starterChecks.map((check) => [check.id, ...staleFigures(check)]);
  expect(stale.filter(({ length }) => length > 1)).toEqual([]);
});
