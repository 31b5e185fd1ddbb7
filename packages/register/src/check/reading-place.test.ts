import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Criterion } from "./check";
import { measuredNote, readingPlaces, sayPlace } from "./reading-place";

const find = (key: string) => builtInBook.find(key);
const measured = (more: object): Criterion => ({ kind: "measured", text: "it is right", ...more });
const placesOf = (criterion: Criterion) =>
  readingPlaces(criterion, find).map(
    ({ label, characteristic, side }) => `${label} ${characteristic} ${side}`,
  );

describe("where a check is read", () => {
  test("per corner it is each wheel, with the rear axle's own characteristic", () => {
    expect(placesOf(measured({ perCorner: true, characteristic: "tyres.front.pressure" }))).toEqual([
      "FL tyres.front.pressure left",
      "FR tyres.front.pressure right",
      "RL tyres.rear.pressure left",
      "RR tyres.rear.pressure right",
    ]);
  });

  test.each([
    [measured({ characteristic: "front.camber" }), ["L front.camber left", "R front.camber right"]],
    [measured({ characteristic: "oil.catchTank" }), [" oil.catchTank whole"]],
    [measured({}), ["  whole"]],
    [measured({ characteristic: "no.such" }), ["  whole"]],
    [measured({ perCorner: true }), ["FL  left", "FR  right", "RL  left", "RR  right"]],
    [
      { kind: "datedItem", characteristic: "safety.harness.expires", text: "" } as const,
      [" safety.harness.expires whole"],
    ],
    [{ kind: "datedItem", text: "" } as const, []],
    [{ kind: "seen" } as const, []],
  ])("%j: %j", (criterion, places) => {
    expect(placesOf(criterion as Criterion)).toEqual(places);
  });

  test("a figure that no characteristic is named for stands in the note, with its corner", () => {
    const [corner] = readingPlaces(measured({ perCorner: true }), find);
    const loose = [{ place: corner ? sayPlace(corner) : "", entered: "11.2 mm" }];
    expect(measuredNote("left pad low", loose)).toBe("left pad low\nMeasured front left 11.2 mm");
    expect(measuredNote("", [])).toBe("");
  });
});
