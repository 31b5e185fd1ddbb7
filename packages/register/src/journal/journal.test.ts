import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { fieldChanges, sayAction } from "./index";

const wording = { book: builtInBook, sides: { left: "nearside", right: "offside" } };
const told = (before: unknown, after: unknown) =>
  fieldChanges(before, after, wording).map((change) => `${change.label}: ${change.before} → ${change.after}`);

describe("what an entry changed, in words", () => {
  test.each([
    [{ built: "1971" }, { built: "3/72" }, ["Built: 1971 → 3/72"], "a field by its label"],
    [undefined, { chassis: "M1-001" }, ["Chassis number:  → M1-001"], "what was made"],
    [
      { characteristic: "Front camber", lower: "-0°30'" },
      { characteristic: "Front camber", lower: "-1°30'" },
      ["Characteristic:  → Front camber", "Lower: -0°30' → -1°30'"],
      "of what it is, where only a part of it changed",
    ],
    [undefined, { outcome: "sameCar" }, ["Outcome:  → the records are of one car"], "a decision in words"],
    [{ number: "GV 1" }, undefined, ["Number: GV 1 → "], "what was taken away"],
    [{ status: "laidUp" }, { status: "inUse" }, ["Status: Laid up → In use"], "codes as people say them"],
    [{ on: "1998-03-12" }, { on: "" }, ["Day: 12 Mar 1998 → "], "days as people read them"],
    [{ open: false }, { open: true }, ["Open: no → yes"], "yes and no"],
    [{ claim: 1 }, { claim: 2 }, ["Claim to the number: 1 → 2"], "numbers"],
    [
      {},
      { numbers: ["engine KM1", "registration GV 1"] },
      ["Numbers added:  → engine KM1, registration GV 1"],
      "lists",
    ],
    [
      { now: { "front.camber left": "-1°" } },
      { now: { "front.camber left": "-0°30'" } },
      ["Front camber, nearside: -1° → -0°30'"],
      "values by characteristic and side, in the club's words",
    ],
    [
      { asBuilt: {}, now: {} },
      { asBuilt: { "rear.antiRollBar.diameter": "none" }, now: { "rear.antiRollBar.diameter": "16 mm" } },
      ["Rear anti-roll bar diameter, as built:  → none", "Rear anti-roll bar diameter:  → 16 mm"],
      "as built and now apart",
    ],
    [
      { somethingNew: "a" },
      { somethingNew: "b" },
      ["Something new: a → b"],
      "a field without a label by its name",
    ],
    [{ built: "1971", remarks: "x" }, { built: "1971", remarks: "x" }, [], "nothing where nothing differs"],
    [
      { seriesId: "01900000-0000-7000-8000-000000000001" },
      { seriesId: "01900000-0000-7000-8000-000000000002" },
      [],
      "no keys of rows",
    ],
    [
      { built: "1971" },
      { built: "3/72", chassis: "M1-001", claim: 1, keeper: "none" },
      ["Built: 1971 → 3/72"],
      "a change says which car it was of, and that the keeper is the same: neither is a change",
    ],
    [null, null, [], "nothing of nothing"],
    ["text", 5, [], "nothing of what is no record"],
  ])("%j → %j is %j: %s", (before, after, expected, _why) => {
    expect(told(before, after)).toEqual(expected);
  });
});

test.each([
  ["car.add", "Car added"],
  ["datedItem.replace", "Dated item: replace"],
  ["tidy", "Tidy"],
])("the action %s is %s, with a wording of its own or by its parts", (action, expected) => {
  expect(sayAction(action)).toBe(expected);
});
