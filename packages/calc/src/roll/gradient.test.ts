import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { axleRollRate, type RollAxle, type RollCar } from "./car";
import { barFittings, compareBars, withBars } from "./compare";
import { rollGradient } from "./gradient";
import { cars, sampleCar } from "./sample-car.fixture";

describe("roll rate of an axle", () => {
  test("springs at the track, bar at the track; springs of a live axle at their own base", () => {
    const independent = axleRollRate({ track: 1.3, springWheelRate: 20_000, barWheelRate: 10_000 });
    expect(independent.springs).toBeCloseTo(16_900, 9);
    expect(independent.bar).toBeCloseTo(8450, 9);
    expect(independent.total).toBeCloseTo(25_350, 9);
    expect(independent.barShare).toBeCloseTo(1 / 3, 12);
    const live = axleRollRate({ track: 1.3, springWheelRate: 20_000, springBase: 0.9, barWheelRate: 0 });
    expect(live).toEqual({ springs: 8100.000000000001, bar: 0, total: 8100.000000000001, barShare: 0 });
  });

  test("no springs, no track or a negative bar is refused", () => {
    const axle = { track: 1.3, springWheelRate: 20_000, barWheelRate: 0 };
    expect(() => axleRollRate({ ...axle, springWheelRate: 0 })).toThrow(/springWheelRate/);
    expect(() => axleRollRate({ ...axle, springBase: 0 })).toThrow(/springBase/);
    expect(() => axleRollRate({ ...axle, barWheelRate: -1 })).toThrow(/wheelRate must not be negative/);
    expect(() => axleRollRate({ ...axle, track: 0 })).toThrow(/track/);
  });
});

describe("roll gradient", () => {
  test("with the leaning weight is larger than without, by K/(K − m·g·h)", () => {
    const { gradient, gradientWithoutWeight, frontRollRateShare } = rollGradient(sampleCar);
    const [front, rear] = [axleRollRate(sampleCar.front).total, axleRollRate(sampleCar.rear).total];
    const body = 820 * 0.45 - 135 * 0.29 - 340 * 0.05 - 345 * 0.12; // sprung mass × lever
    expect(gradientWithoutWeight).toBeCloseTo(body / (front + rear), 12);
    expect(gradient).toBeCloseTo(body / (front + rear - 9.80665 * body), 12);
    expect(frontRollRateShare).toBeCloseTo(front / (front + rear), 12);
  });

  test("stiffer at one end: less roll, and a larger share of the transfer there", () => {
    fc.assert(
      fc.property(cars, fc.double({ min: 500, max: 20_000, noNaN: true }), (car, more) => {
        fc.pre(car.front.tyreRate === undefined && car.rear.tyreRate === undefined);
        const base = rollGradient(car);
        fc.pre(base.gradient > 1e-4);
        const front = rollGradient({
          ...car,
          front: { ...car.front, barWheelRate: car.front.barWheelRate + more },
        });
        expect(front.gradient).toBeLessThan(base.gradient);
        expect(front.frontTransferShare).toBeGreaterThan(base.frontTransferShare);
        expect(front.frontRollRateShare).toBeGreaterThan(base.frontRollRateShare);
        const rear = rollGradient({
          ...car,
          rear: { ...car.rear, barWheelRate: car.rear.barWheelRate + more },
        });
        expect(rear.frontTransferShare).toBeLessThan(base.frontTransferShare);
      }),
    );
  });

  test("soft tyres add roll; ever stiffer ones come to the rigid figure", () => {
    const on = (tyreRate: number): number =>
      rollGradient({
        ...sampleCar,
        front: { ...sampleCar.front, tyreRate },
        rear: { ...sampleCar.rear, tyreRate },
      }).gradient;
    const rigid = rollGradient(sampleCar).gradient;
    expect(on(180_000)).toBeGreaterThan(rigid * 1.1);
    expect(on(1e12) / rigid).toBeCloseTo(1, 6);
  });

  test("front and rear exchange roles when the car is turned round", () => {
    fc.assert(
      fc.property(cars, (car) => {
        const [there, back] = [rollGradient(car), rollGradient({ ...car, front: car.rear, rear: car.front })];
        expect(back.gradient).toBeCloseTo(there.gradient, 12);
        expect(back.frontTransferShare).toBeCloseTo(1 - there.frontTransferShare, 9);
      }),
    );
  });
});

describe("what is refused", () => {
  const front = (given: Partial<RollAxle>): RollCar => ({
    ...sampleCar,
    front: { ...sampleCar.front, ...given },
  });
  test.each<[string, RollCar, string, string | undefined]>([
    ["no track", front({ track: 0 }), "NOT_POSITIVE", "front.track"],
    ["no mass", front({ mass: 0 }), "NOT_POSITIVE", "front.mass"],
    ["a negative unsprung mass", front({ unsprungMass: -1 }), "NEGATIVE", "front.unsprungMass"],
    ["a negative height", front({ unsprungHeight: -0.1 }), "NEGATIVE", "front.unsprungHeight"],
    [
      "a roll centre nowhere",
      front({ rollCentreHeight: Number.NaN }),
      "NOT_FINITE",
      "front.rollCentreHeight",
    ],
    ["nothing sprung", front({ unsprungMass: 400 }), "NOTHING_SPRUNG", "front.unsprungMass"],
    ["a tyre without stiffness", front({ tyreRate: 0 }), "NOT_POSITIVE", "front.tyreRate"],
    [
      "tyres that cannot hold the axle",
      front({ tyreRate: 100, rollCentreHeight: 0.3 }),
      "TYRES_TOO_SOFT",
      "front.tyreRate",
    ],
    [
      "a rear axle without track",
      { ...sampleCar, rear: { ...sampleCar.rear, track: -1 } },
      "NOT_POSITIVE",
      "rear.track",
    ],
    ["no height", { ...sampleCar, cgHeight: 0 }, "NOT_POSITIVE", "cgHeight"],
    ["a body below the road", { ...sampleCar, cgHeight: 0.01 }, "CG_TOO_LOW", "cgHeight"],
    ["a body that falls over", { ...sampleCar, cgHeight: 8 }, "FALLS_OVER", undefined],
  ])("%s", (_title, car, code, place) => {
    let caught: unknown;
    try {
      rollGradient(car);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(CalcRefusal);
    expect(caught).toMatchObject({ code });
    expect((caught as CalcRefusal).place).toBe(place);
  });

  test("the one that falls over is told by how much", () => {
    expect(() => rollGradient({ ...sampleCar, cgHeight: 8 })).toThrow(
      /springs and bars hold 6\d\d\.?\d* N·m\/°, but the body's weight tips it by 1\d\d\d/,
    );
  });
});

describe("the same car with and without its bars", () => {
  test("taking a bar off takes only its rate", () => {
    expect(withBars(sampleCar, "both")).toEqual(sampleCar);
    const { barWheelRate: _, ...kept } = withBars(sampleCar, "rearOnly").front;
    expect(sampleCar.front).toMatchObject(kept);
    expect(withBars(sampleCar, "rearOnly").front.barWheelRate).toBe(0);
    expect(withBars(sampleCar, "rearOnly").rear.barWheelRate).toBe(3000);
    expect(withBars(sampleCar, "frontOnly").rear.barWheelRate).toBe(0);
    expect(withBars(sampleCar, "frontOnly").front.barWheelRate).toBe(8000);
    expect(
      withBars(sampleCar, "none").front.barWheelRate + withBars(sampleCar, "none").rear.barWheelRate,
    ).toBe(0);
  });

  test("each comparison is the car it names: least roll with both, most with none", () => {
    const compared = compareBars(sampleCar);
    for (const fitting of barFittings)
      expect(compared[fitting]).toEqual(rollGradient(withBars(sampleCar, fitting)));
    const { both, frontOnly, rearOnly, none } = compared;
    expect(both.gradient).toBeLessThan(frontOnly.gradient);
    expect(frontOnly.gradient).toBeLessThan(rearOnly.gradient);
    expect(rearOnly.gradient).toBeLessThan(none.gradient);
    expect(frontOnly.frontTransferShare).toBeGreaterThan(both.frontTransferShare);
    expect(rearOnly.frontTransferShare).toBeLessThan(none.frontTransferShare);
  });
});
