import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vector } from "../alignment/index";
import { CalcRefusal } from "../catalogue/refusal";
import { atMost } from "../property-runs.fixture";
import { exampleWishbone } from "./example";
import {
  doubleWishbone,
  mirrorHardpoints,
  readCorner,
  sweepBump,
  sweepRack,
  type WishboneHardpoints,
  type WishbonePoint,
} from "./index";

const travel = fc.double({ min: -0.08, max: 0.08, noNaN: true });
const rackTravel = fc.double({ min: -0.05, max: 0.05, noNaN: true });
const apart = (a: Vector, b: Vector) => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/** The example with every hardpoint moved by up to 15 mm: believable cars that nobody drew. */
const anyCar: fc.Arbitrary<WishboneHardpoints> = fc
  .array(fc.double({ min: -0.015, max: 0.015, noNaN: true }), { minLength: 24, maxLength: 24 })
  .map((by) => {
    const names: WishbonePoint[] = [
      "lowerArmFront",
      "lowerArmRear",
      "lowerJoint",
      "upperArmFront",
      "upperArmRear",
      "upperJoint",
      "tieRodInner",
      "tieRodOuter",
    ];
    const moved = names.map((name, index) => {
      const [x = 0, y = 0, z = 0] = by.slice(3 * index, 3 * index + 3);
      const { x: px, y: py, z: pz } = exampleWishbone[name];
      return [name, { x: px + x, y: py + y, z: pz + z }];
    });
    return { ...exampleWishbone, ...Object.fromEntries(moved) };
  });

describe("positions", () => {
  test("every link keeps its length to a nanometre over bump and steer", () => {
    fc.assert(
      fc.property(anyCar, travel, rackTravel, (car, bump, rack) => {
        const corner = doubleWishbone(car);
        corner.moveTo(bump, rack);
        const { lowerJoint, upperJoint, tieRodInner, tieRodOuter, wheelCentre } = corner.joints();
        const links: [Vector, Vector, Vector, Vector][] = [
          [lowerJoint, car.lowerArmFront, car.lowerJoint, car.lowerArmFront],
          [lowerJoint, car.lowerArmRear, car.lowerJoint, car.lowerArmRear],
          [upperJoint, car.upperArmFront, car.upperJoint, car.upperArmFront],
          [upperJoint, car.upperArmRear, car.upperJoint, car.upperArmRear],
          [upperJoint, lowerJoint, car.upperJoint, car.lowerJoint],
          [tieRodOuter, lowerJoint, car.tieRodOuter, car.lowerJoint],
          [tieRodOuter, upperJoint, car.tieRodOuter, car.upperJoint],
          [tieRodOuter, tieRodInner, car.tieRodOuter, car.tieRodInner],
          [wheelCentre, lowerJoint, car.wheelCentre, car.lowerJoint],
          [wheelCentre, upperJoint, car.wheelCentre, car.upperJoint],
          [wheelCentre, tieRodOuter, car.wheelCentre, car.tieRodOuter],
        ];
        for (const [a, b, c, d] of links) expect(Math.abs(apart(a, b) - apart(c, d))).toBeLessThan(1e-9);
        expect(wheelCentre.z).toBeCloseTo(car.wheelCentre.z + bump, 11);
        expect(tieRodInner.y).toBeCloseTo(car.tieRodInner.y + rack, 15);
      }),
    );
  });

  test("the answer does not depend on where the linkage was before", () => {
    fc.assert(
      fc.property(travel, rackTravel, travel, rackTravel, (bump, rack, before, rackBefore) => {
        const fresh = doubleWishbone(exampleWishbone);
        const used = doubleWishbone(exampleWishbone);
        used.moveTo(before, rackBefore);
        fresh.moveTo(bump, rack);
        used.moveTo(bump, rack);
        expect(apart(fresh.joints().tieRodOuter, used.joints().tieRodOuter)).toBeLessThan(1e-11);
        expect(readCorner(used).toeIn).toBeCloseTo(readCorner(fresh).toeIn, 10);
      }),
    );
  });

  test("the mirrored corner shows the same angles, and its rack works the other way", () => {
    fc.assert(
      fc.property(anyCar, travel, rackTravel, (car, bump, rack) => {
        const left = doubleWishbone(car);
        const right = doubleWishbone(mirrorHardpoints(car));
        left.moveTo(bump, rack);
        right.moveTo(bump, -rack);
        const l = readCorner(left);
        const r = readCorner(right);
        for (const name of [
          "camber",
          "toeIn",
          "castor",
          "kingpin",
          "scrub",
          "trail",
          "trackChange",
          "camberGain",
        ] as const) {
          expect(r[name]).toBeCloseTo(l[name] ?? Number.NaN, 10);
        }
        expect(r.steerGain).toBeCloseTo(l.steerGain ?? Number.NaN, 8);
        expect(r.rollCentreHeight).toBeCloseTo(l.rollCentreHeight ?? Number.NaN, 8);
        expect(r.wheelCentre.y).toBeCloseTo(-l.wheelCentre.y, 11);
        expect(r.bar?.ratio).toBeCloseTo(l.bar?.ratio ?? Number.NaN, 9);
        expect(r.bar?.angle).toBeCloseTo(l.bar?.angle ?? Number.NaN, 9);
      }),
    );
  });

  test("the design position shows what was put in", () => {
    const reading = readCorner(doubleWishbone(exampleWishbone));
    expect(reading.camber).toBeCloseTo(exampleWishbone.camber, 12);
    expect(reading.toeIn).toBeCloseTo(exampleWishbone.toeIn, 12);
    expect(reading.trackChange).toBeCloseTo(0, 12);
    expect(reading.bump).toBe(0);
  });
});

test("castor, kingpin, scrub and trail are those of the drawing", () => {
  // Steering axis from (10, 600, 160) to (−14, 570, 420), wheel upright and straight ahead, 650 mm out.
  const car: WishboneHardpoints = {
    ...exampleWishbone,
    camber: 0,
    toeIn: 0,
    lowerJoint: { x: 0.01, y: 0.6, z: 0.16 },
    upperJoint: { x: -0.014, y: 0.57, z: 0.42 },
  };
  for (const side of [car, mirrorHardpoints(car)]) {
    const reading = readCorner(doubleWishbone(side));
    expect(reading.castor).toBeCloseTo(Math.atan(24 / 260), 12);
    expect(reading.kingpin).toBeCloseTo(Math.atan(30 / 260), 12);
    // Down to the ground the axis runs on forwards and outboard.
    expect(reading.trail).toBeCloseTo(0.01 + (0.16 * 24) / 260, 12);
    expect(reading.scrub).toBeCloseTo(0.65 - (0.6 + (0.16 * 30) / 260), 12);
  }
});

test("on sloping ground the contact point's own motion is told, not that on level ground", () => {
  const corner = doubleWishbone(exampleWishbone);
  const step = 1e-5;
  fc.assert(
    fc.property(travel, fc.double({ min: -0.1, max: 0.1, noNaN: true }), (bump, roll) => {
      const up = { x: 0, y: Math.sin(roll), z: Math.cos(roll) };
      const at = (travelled: number) => {
        corner.moveTo(travelled);
        return readCorner(corner, up);
      };
      const slope = (at(bump + step).trackChange - at(bump - step).trackChange) / (2 * step);
      expect(at(bump).trackGain).toBeCloseTo(slope, 6);
      // Square to the ground the contact lies one loaded radius below the spin axis, along the wheel.
      const { contact, wheelCentre } = at(bump);
      expect(apart(contact, wheelCentre)).toBeCloseTo(0.285, 12);
    }),
  );
});

describe("derivatives equal finite differences", () => {
  const step = 1e-5;
  const central = (before: number | null | undefined, after: number | null | undefined) =>
    ((after ?? Number.NaN) - (before ?? Number.NaN)) / (2 * step);

  test("per metre of bump: camber, toe, track, spring, bar", () => {
    fc.assert(
      fc.property(anyCar, travel, rackTravel, (car, bump, rack) => {
        const corner = doubleWishbone(car);
        const at = (travelled: number) => {
          corner.moveTo(travelled, rack);
          return readCorner(corner);
        };
        const before = at(bump - step);
        const after = at(bump + step);
        const here = at(bump);
        expect(here.camberGain).toBeCloseTo(central(before.camber, after.camber), 6);
        expect(here.toeGain).toBeCloseTo(central(before.toeIn, after.toeIn), 6);
        expect(here.trackGain).toBeCloseTo(central(before.trackChange, after.trackChange), 6);
        expect(here.spring?.ratio).toBeCloseTo(-central(before.spring?.length, after.spring?.length), 6);
        const turn = Math.abs(central(before.bar?.angle, after.bar?.angle));
        // The bar's arm in the example is 190 mm long and rises by 8 mm.
        expect(here.bar?.ratio).toBeCloseTo(turn * Math.hypot(0.19, 0.008), 6);
      }),
    );
  });

  test("per metre of rack: steer, with the wheel centre's height held", () => {
    fc.assert(
      fc.property(anyCar, travel, rackTravel, (car, bump, rack) => {
        const corner = doubleWishbone(car);
        const [before, here, after] = sweepRack(
          corner,
          { from: rack - step, to: rack + step, positions: 3 },
          bump,
        );
        // A left wheel heads to the left as its toe-in falls.
        expect(here?.steerGain).toBeCloseTo(-central(before?.toeIn, after?.toeIn), 5);
        expect(after?.wheelCentre.z).toBeCloseTo(before?.wheelCentre.z ?? Number.NaN, 11);
      }),
    );
  });
});

describe("roll centre", () => {
  test("a wheel that does not steer moves square to the line to its instant centre", () => {
    // The tie rod in the lower arm's plane and parallel to it. Virtual work on the tyre's point gives the same height.
    const car: WishboneHardpoints = {
      ...exampleWishbone,
      toeIn: 0,
      lowerArmFront: { x: 0.12, y: 0.26, z: 0.19 },
      lowerArmRear: { x: -0.12, y: 0.26, z: 0.19 },
      lowerJoint: { x: 0, y: 0.6, z: 0.165 },
      upperArmFront: { x: 0.1, y: 0.31, z: 0.4 },
      upperArmRear: { x: -0.1, y: 0.31, z: 0.4 },
      upperJoint: { x: 0, y: 0.57, z: 0.42 },
      tieRodInner: { x: -0.13, y: 0.26, z: 0.19 },
      tieRodOuter: { x: -0.13, y: 0.6, z: 0.165 },
    };
    const corner = doubleWishbone(car);
    fc.assert(
      fc.property(travel, (bump) => {
        corner.moveTo(bump);
        const { contact, wheelCentre, rollCentreHeight } = readCorner(corner);
        const velocity = { x: 0, y: 0, z: 0 };
        corner.centreVelocity(velocity);
        const turn = corner.bumpTurn;
        expect(turn.z).toBeCloseTo(0, 12);
        const y = velocity.y - turn.x * (contact.z - wheelCentre.z);
        const z = velocity.z + turn.x * (contact.y - wheelCentre.y);
        expect(rollCentreHeight).toBeCloseTo((contact.y * y) / z, 10);
      }),
    );
  });
});

describe("out of reach", () => {
  // Without its bar, whose drop link would give up first.
  const { bar: _, ...bare } = exampleWishbone;
  const corner = doubleWishbone(bare);

  test("refuses in words, with the travel that can be reached", () => {
    expect(() => corner.moveTo(0.5)).toThrow(CalcRefusal);
    expect(() => corner.moveTo(0.5)).toThrow(
      /cannot reach 500\.0 mm of travel: it reaches -\d+\.\d mm to \d+\.\d mm there/,
    );
    expect(() => corner.moveTo(0.02, 0.4)).toThrow(
      /with the rack at 400\.0 mm: its parts do not meet there even at design height/,
    );
  });

  test("reaches what it says it reaches, and not a millimetre more", () => {
    const reach = corner.reach(0);
    expect(reach).not.toBeNull();
    const { bump, droop } = reach ?? { bump: 0, droop: 0 };
    expect(bump).toBeGreaterThan(0.1);
    expect(droop).toBeLessThan(-0.1);
    corner.moveTo(bump - 1e-5);
    expect(
      Object.values(readCorner(corner))
        .filter((value) => typeof value === "number")
        .every(Number.isFinite),
    ).toBe(true);
    corner.moveTo(droop + 1e-5);
    expect(() => corner.moveTo(bump + 1e-3)).toThrow(CalcRefusal);
    expect(() => corner.moveTo(droop - 1e-3)).toThrow(CalcRefusal);
  });

  test("works on after a refusal", () => {
    expect(() => corner.moveTo(0.5, 0.3)).toThrow(CalcRefusal);
    corner.moveTo(0.03);
    const fresh = doubleWishbone(exampleWishbone);
    fresh.moveTo(0.03);
    expect(readCorner(corner).camber).toBeCloseTo(readCorner(fresh).camber, 11);
  });

  test("never answers with a number that is none, wherever it is sent", () => {
    const far = fc.double({ min: -0.6, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(anyCar, far, far, (car, bump, rack) => {
        let numbers: unknown[] = [];
        try {
          const somewhere = doubleWishbone(car);
          somewhere.moveTo(bump, rack);
          numbers = Object.values(readCorner(somewhere)).filter((value) => typeof value === "number");
          expect(numbers.length).toBeGreaterThan(12);
        } catch (error) {
          expect(error).toBeInstanceOf(CalcRefusal);
        }
        expect(numbers.every(Number.isFinite)).toBe(true);
      }),
      atMost(60),
    );
  });

  test("travel that is not a number is a mistake of the caller", () => {
    expect(() => corner.moveTo(Number.NaN)).toThrow(
      "travel and rack must be finite numbers of metres, but are NaN and 0",
    );
  });
});

describe("hardpoints that cannot work are refused by name", () => {
  const refusal = (change: Partial<WishboneHardpoints>): CalcRefusal => {
    try {
      doubleWishbone({ ...exampleWishbone, ...change });
    } catch (error) {
      if (error instanceof CalcRefusal) return error;
      throw error;
    }
    throw new Error("no refusal");
  };

  test.each<[Partial<WishboneHardpoints>, string, string]>([
    [{ lowerArmRear: exampleWishbone.lowerArmFront }, "lower arm", "its two pivots lie on the same spot"],
    [{ upperJoint: exampleWishbone.upperArmFront }, "upper arm", "lies on the line through its pivots"],
    [{ wheelCentre: { x: 0, y: -0.65, z: 0.3 } }, "wheelCentre", "the left wheel centre has y = -0.65 m"],
    [{ loadedRadius: 0 }, "loadedRadius", "must be above 0 m, but is 0"],
    [{ camber: 1 }, "camber", "must lie within ±45°, but is 1 rad"],
    [
      { tieRodInner: { x: Number.NaN, y: 0.2, z: 0.2 } },
      "tieRodInner",
      "tieRodInner.x must be a finite number, but is NaN",
    ],
    [{ tieRodOuter: exampleWishbone.lowerJoint }, "tieRodOuter", "dead centre"],
    [
      {
        upperArmFront: { x: 0.1, y: 0.31, z: 0.4 },
        upperArmRear: { x: -0.1, y: 0.31, z: 0.4 },
        // Half way from the pivots to the lower joint, seen along the pivots.
        upperJoint: { x: 0, y: 0.455, z: 0.2825 },
      },
      "upperJoint",
      "the upper arm stands at a dead centre",
    ],
  ])("%o", (change, place, words) => {
    const found = refusal(change);
    expect(found.place).toBe(place);
    expect(found.message).toContain(words);
  });
});

describe("held by a toe link instead of a rack", () => {
  const held = doubleWishbone({ ...exampleWishbone, steers: false });

  test("moves just as it does on a rack that stands still, and tells no steering axis", () => {
    const steered = doubleWishbone(exampleWishbone);
    for (const bump of [-0.06, 0, 0.05]) {
      held.moveTo(bump);
      steered.moveTo(bump);
      const none = { castor: null, kingpin: null, scrub: null, trail: null, steerGain: null };
      expect(readCorner(held)).toEqual({ ...readCorner(steered), ...none });
    }
  });

  test("has no rack to be moved", () => {
    expect(() => held.moveTo(0, 0.01)).toThrow(/does not steer/);
  });
});

describe("sweeps", () => {
  test("give both ends and even steps, in order", () => {
    const readings = sweepBump(doubleWishbone(exampleWishbone), { from: -0.05, to: 0.05, positions: 5 });
    expect(readings.map(({ bump }) => Math.round(bump * 1e6))).toEqual([-50_000, -25_000, 0, 25_000, 50_000]);
    expect(() => sweepBump(doubleWishbone(exampleWishbone), { from: 0, to: 1, positions: 1 })).toThrow(
      "from 2 to 10001, but is 1",
    );
  });

  test("toe-in moves with the rack in one direction only", () => {
    const readings = sweepRack(doubleWishbone(exampleWishbone), { from: -0.06, to: 0.06, positions: 41 });
    for (const [index, reading] of readings.entries()) {
      const next = readings[index + 1];
      if (next !== undefined) expect(next.toeIn).toBeGreaterThan(reading.toeIn);
    }
  });
});
