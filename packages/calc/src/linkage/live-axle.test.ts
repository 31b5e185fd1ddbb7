import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { atMost } from "../property-runs.fixture";
import { exampleLiveAxle, exampleWattAxle } from "./example";
import { type LiveAxleHardpoints, liveAxle, readLiveAxle } from "./index";

const travel = fc.double({ min: -0.08, max: 0.08, noNaN: true });

/** Links level and straight ahead, so that in bump the axle is guided by its lateral device alone. */
const straight = (lateral: LiveAxleHardpoints["lateral"]): LiveAxleHardpoints => ({
  ...exampleLiveAxle,
  location: {
    kind: "three-link",
    links: [
      { chassis: { x: -1.75, y: 0.5, z: 0.3 }, axle: { x: -2.25, y: 0.5, z: 0.3 } },
      { chassis: { x: -1.75, y: -0.5, z: 0.3 }, axle: { x: -2.25, y: -0.5, z: 0.3 } },
      { chassis: { x: -1.75, y: 0, z: 0.42 }, axle: { x: -2.25, y: 0, z: 0.42 } },
    ],
  },
  lateral,
});
const levelRod = {
  kind: "panhard" as const,
  chassis: { x: -2.25, y: -0.4, z: 0.3 },
  axle: { x: -2.25, y: 0.45, z: 0.3 },
};

describe("Panhard rod", () => {
  test("a level rod of length L pulls the axle across by L − √(L² − z² − x²)", () => {
    const axle = liveAxle(straight(levelRod));
    fc.assert(
      fc.property(travel, (bump) => {
        axle.moveTo(bump, bump);
        const reading = readLiveAxle(axle);
        // The rod's axle end lies to the left of its chassis end, so it is pulled to the right. The trailing links pull
        // the axle forward as well, which slants the rod in plan.
        const forward = reading.left.forwardShift;
        expect(reading.lateralShift).toBeCloseTo(Math.sqrt(0.85 ** 2 - bump ** 2 - forward ** 2) - 0.85, 12);
        expect(forward).toBeCloseTo(0.5 - Math.sqrt(0.5 ** 2 - bump ** 2 - reading.lateralShift ** 2), 12);
        expect(reading.left.camber).toBeCloseTo(0, 11);
        expect(reading.left.trackChange).toBeCloseTo(reading.lateralShift, 11);
        expect(reading.right.trackChange).toBeCloseTo(-reading.lateralShift, 11);
      }),
    );
  });

  test("the roll centre is where the rod crosses the centre plane", () => {
    // Construction: Gillespie (1992) ch. 7, from memory. Rod from 345 mm at −430 to 305 mm at +440.
    const { rollCentreHeight } = readLiveAxle(liveAxle(straight(exampleLiveAxle.lateral)));
    expect(rollCentreHeight).toBeCloseTo(0.345 - (0.04 * 0.43) / 0.87, 10);
  });
});

describe("Watt linkage", () => {
  test.each(["axle", "chassis"] as const)(
    "bellcrank on the %s: the axle goes up and down very nearly straight",
    (pivotOn) => {
      const watt = { ...exampleWattAxle.lateral, pivotOn } as LiveAxleHardpoints["lateral"];
      const axle = liveAxle(straight(watt));
      fc.assert(
        fc.property(fc.double({ min: -0.05, max: 0.05, noNaN: true }), (bump) => {
          axle.moveTo(bump, bump);
          // A Panhard rod of the same room would shift it by 1.5 mm at 50 mm.
          expect(Math.abs(readLiveAxle(axle).lateralShift)).toBeLessThan(2e-5);
        }),
      );
    },
  );

  test.each(["axle", "chassis"] as const)(
    "bellcrank on the %s: the roll centre is the bellcrank's pivot",
    (pivotOn) => {
      const watt = { ...exampleWattAxle.lateral, pivotOn } as LiveAxleHardpoints["lateral"];
      expect(readLiveAxle(liveAxle(straight(watt))).rollCentreHeight).toBeCloseTo(0.3, 10);
    },
  );

  test("carried by the axle the roll centre rises with it, carried by the chassis it stays with the chassis", () => {
    const at = (pivotOn: "axle" | "chassis") => {
      const axle = liveAxle(
        straight({ ...exampleWattAxle.lateral, pivotOn } as LiveAxleHardpoints["lateral"]),
      );
      axle.moveTo(0.03, 0.03);
      return readLiveAxle(axle).rollCentreHeight ?? Number.NaN;
    };
    // Heights over the ground, which rises under the car by the same 30 mm.
    expect(at("axle")).toBeCloseTo(0.3, 2);
    expect(at("chassis")).toBeCloseTo(0.27, 2);
  });
});

test("distances on axle and links are kept to a nanometre over bump and roll", () => {
  const axle = liveAxle(exampleLiveAxle);
  const { location, lateral } = exampleLiveAxle;
  if (location.kind !== "three-link" || lateral.kind !== "panhard")
    throw new Error("the example has links and a Panhard rod");
  fc.assert(
    fc.property(travel, travel, (left, right) => {
      axle.moveTo(left, right);
      const reading = readLiveAxle(axle);
      const end = { x: 0, y: 0, z: 0 };
      for (const rod of [...location.links, lateral]) {
        axle.locate(end, rod.axle);
        const { chassis, axle: design } = rod;
        const now = Math.hypot(end.x - chassis.x, end.y - chassis.y, end.z - chassis.z);
        expect(
          Math.abs(now - Math.hypot(design.x - chassis.x, design.y - chassis.y, design.z - chassis.z)),
        ).toBeLessThan(1e-9);
      }
      const { left: l, right: r } = reading;
      const { x, y, z } = l.wheelCentre;
      expect(Math.hypot(x - r.wheelCentre.x, y - r.wheelCentre.y, z - r.wheelCentre.z)).toBeCloseTo(1.28, 11);
      expect(z).toBeCloseTo(0.3 + left, 11);
      expect(r.wheelCentre.z).toBeCloseTo(0.3 + right, 11);
    }),
  );
});

test("the wheels of a live axle stay square to the ground however the car rolls", () => {
  const axle = liveAxle(exampleWattAxle);
  fc.assert(
    fc.property(travel, travel, (left, right) => {
      axle.moveTo(left, right);
      const reading = readLiveAxle(axle);
      // The car rolls left side up by as much as both wheels lean to the left against it.
      expect(reading.left.camber).toBeCloseTo(-reading.right.camber, 9);
      expect(reading.left.camber).toBeCloseTo(reading.roll, 4);
    }),
  );
});

test("spring ratios equal finite differences, in bump and in roll", () => {
  const axle = liveAxle(exampleLiveAxle);
  const step = 1e-5;
  const length = (left: number, right: number, side: "left" | "right") => {
    axle.moveTo(left, right);
    return readLiveAxle(axle)[side].spring?.length ?? Number.NaN;
  };
  fc.assert(
    fc.property(travel, travel, fc.constantFrom("left" as const, "right" as const), (left, right, side) => {
      const sign = side === "left" ? 1 : -1;
      const bump =
        (length(left - step, right - step, side) - length(left + step, right + step, side)) / (2 * step);
      const a = length(left - sign * step, right + sign * step, side);
      const roll = (a - length(left + sign * step, right - sign * step, side)) / (2 * step);
      axle.moveTo(left, right);
      const { spring } = readLiveAxle(axle)[side];
      expect(spring?.bumpRatio).toBeCloseTo(bump, 6);
      expect(spring?.rollRatio).toBeCloseTo(roll, 6);
    }),
    atMost(30),
  );
});

test("roll steer equals the change of heading over the change of roll", () => {
  const axle = liveAxle(exampleLiveAxle);
  const at = (left: number, right: number) => {
    axle.moveTo(left, right);
    return readLiveAxle(axle);
  };
  fc.assert(
    fc.property(travel, (bump) => {
      const step = 1e-4;
      const before = at(bump + step, bump - step);
      const after = at(bump - step, bump + step);
      // Thrust is positive to the right, roll steer to the left.
      const slope = -(after.thrust - before.thrust) / (after.roll - before.roll);
      expect(at(bump, bump).rollSteer).toBeCloseTo(slope, 4);
    }),
    atMost(30),
  );
});

test("a torque tube keeps its ball where it is", () => {
  const ball = { x: -1.4, y: 0, z: 0.32 };
  const axle = liveAxle({ ...exampleLiveAxle, location: { kind: "torque-tube", ball } });
  fc.assert(
    fc.property(travel, travel, (left, right) => {
      axle.moveTo(left, right);
      const now = { x: 0, y: 0, z: 0 };
      axle.locate(now, ball);
      expect(Math.hypot(now.x - ball.x, now.y - ball.y, now.z - ball.z)).toBeLessThan(1e-9);
    }),
  );
});

describe("refusals", () => {
  test("out of reach, saying how far it gets", () => {
    const axle = liveAxle(exampleLiveAxle);
    expect(() => axle.moveTo(0.9, 0.9)).toThrow(
      /cannot reach 900\.0 mm left and 900\.0 mm right: on the way there it reaches \d+\.\d mm and \d+\.\d mm/,
    );
    expect(() => axle.moveTo(Number.NaN, 0)).toThrow("travel must be finite numbers of metres");
    axle.moveTo(0.02, 0.02);
    expect(axle.bumpLeft).toBe(0.02);
  });

  test("an axle that nothing holds sideways is refused rather than solved", () => {
    const along = {
      kind: "panhard" as const,
      chassis: { x: -1.8, y: 0.1, z: 0.3 },
      axle: { x: -2.25, y: 0.1, z: 0.3 },
    };
    expect(() => liveAxle(straight(along))).toThrow("the axle is not held");
    expect(() => liveAxle(straight(along))).toThrow(CalcRefusal);
  });

  test("rods without length are named", () => {
    expect(() => liveAxle(straight({ ...levelRod, axle: levelRod.chassis }))).toThrow(
      "the rod panhard has no length",
    );
    const watt = exampleWattAxle.lateral;
    if (watt.kind !== "watt") throw new Error("the example has a Watt linkage");
    expect(() => liveAxle(straight({ ...watt, firstEnd: watt.firstArm }))).toThrow(
      "the rod watt.first has no length",
    );
    expect(() => liveAxle(straight({ ...watt, axis: { x: 0, y: 0, z: 0 } }))).toThrow(
      "the rod watt.axis has no length",
    );
  });
});
