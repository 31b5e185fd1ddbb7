import { describe, expect, test } from "vitest";
import { builtInBook as book } from "../characteristic/book";
import { type Consequence, consequencesOf } from "./consequence";
import { fullCar, stateWith } from "./sample-state.fixture";

const change = (entries: Readonly<Record<string, string>>, from: Readonly<Record<string, string>>) =>
  consequencesOf(stateWith(from), stateWith({ ...from, ...entries }), book);

const find = (list: readonly Consequence[], id: string) => {
  const found = list.find((one) => one.id === id);
  if (!found) throw new Error(`${id} is not among ${list.map((one) => one.id).join(", ")}`);
  return found;
};

describe("a suspension of another kind", () => {
  const points = (axle: string, places: Readonly<Record<string, readonly number[]>>) =>
    Object.fromEntries(
      Object.entries(places).flatMap(([point, at]) =>
        ["x", "y", "z"].map((one, index) => [`${axle}.hardpoint.${point}.${one} left`, `${at[index]} mm`]),
      ),
    );
  const car = { ...fullCar, "chassis.centreOfGravityHeight": "480 mm" };
  const swing = {
    ...car,
    "rear.layout": "swing axle",
    ...points("rear", { halfAxleJoint: [0, 95, 300], radiusArm: [400, 160, 275] }),
  };
  const strut: Readonly<Record<string, string>> = {
    ...car,
    "front.layout": "strut",
    ...points("front", {
      lowerArmFront: [40, 300, 205],
      lowerArmRear: [-260, 310, 215],
      lowerJoint: [8, 622, 182],
      strutTop: [-42, 540, 790],
      strutFoot: [-6, 590, 330],
      tieRodInner: [-135, 290, 245],
      tieRodOuter: [-128, 628, 232],
      upperArmFront: [80, 310, 402],
      upperArmRear: [-110, 312, 395],
      upperJoint: [-12, 568, 418],
    }),
  };

  test("is worked out by its own linkage and by no other, even where another's pivots are on the record", () => {
    const told = change({ "front.hardpoint.strutTop.y left": "535 mm" }, strut);
    expect(find(told, "front.strutLinkage").refused).toBeUndefined();
    expect(find(told, "front.strutLinkage").figures).toContainEqual(
      expect.objectContaining({ output: "castor", numberAfter: expect.any(Number) }),
    );
    const lower = change({ "front.hardpoint.lowerJoint.y left": "625 mm" }, strut);
    expect(lower.map(({ id }) => id)).toContain("front.strutLinkage");
    expect(lower.map(({ id }) => id)).not.toContain("front.linkage");
  });

  test("gives its roll centre to the roll of the car, in place of the one taken for granted", () => {
    const told = change({ "front.spring.rate": "35 N/mm" }, { ...strut, ...swing, "front.layout": "strut" });
    const { raw } = find(told, "roll.cornering");
    const rear = (raw as { readonly rear: { readonly rollCentreHeight: number } }).rear;
    // The roll centre of a swing axle stands well above its joint (common practice, no source).
    expect(rear.rollCentreHeight).toBeGreaterThan(0.3);
    const live = change({ "front.spring.rate": "35 N/mm" }, { ...strut, "rear.layout": "live axle" });
    expect(find(live, "roll.cornering").raw).toMatchObject({ rear: { rollCentreHeight: 0.12 } });
  });

  test("that lacks its pivots says which, not that it is another kind", () => {
    const { "front.hardpoint.strutTop.x left": _top, ...lacking } = strut;
    const told = change({ "front.spring.rate": "35 N/mm" }, lacking);
    expect(find(told, "roll.cornering").missing.map(({ label }) => label)).toEqual([
      "Front strut top mount x, left",
    ]);
  });
});
