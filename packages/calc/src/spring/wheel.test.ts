import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratesInParallel, ratesInSeries } from "./combine";
import {
  frequencyOfDeflection,
  naturalFrequency,
  rateForFrequency,
  rideRate,
  springRateForWheelRate,
  staticDeflection,
  wheelHopFrequency,
  wheelRate,
} from "./wheel";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("springs together", () => {
  const rates = fc.array(between(1000, 1e6), { minLength: 1, maxLength: 6 });
  test("in series they are softer than the softest, side by side stiffer than the stiffest", () => {
    fc.assert(
      fc.property(rates, (each) => {
        expect(ratesInSeries(each)).toBeLessThanOrEqual(Math.min(...each) * (1 + 1e-12));
        expect(ratesInParallel(each)).toBeGreaterThanOrEqual(Math.max(...each));
        expect(ratesInSeries([...each].reverse()) / ratesInSeries(each)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("n alike are n times or 1/n of one", () => {
    expect(ratesInSeries([9000, 9000, 9000])).toBeCloseTo(3000, 9);
    expect(ratesInParallel([9000, 9000, 9000])).toBe(27_000);
  });

  test("none, or one without stiffness, is refused by its place in the list", () => {
    expect(() => ratesInSeries([])).toThrow(/at least one spring is needed/);
    expect(() => ratesInParallel([1000, 0])).toThrow(/rates\.1 must be greater than zero, but is 0/);
    expect(() => ratesInSeries([-1])).toThrow(/rates\.0/);
  });
});

describe("wheel rate", () => {
  /** A rocker: spring compression as a function of wheel rise, with its first two derivatives. */
  const rocker = (z: number) => ({ s: 0.7 * z + 0.8 * z ** 2, ratio: 0.7 + 1.6 * z, change: 1.6 });

  test("is the derivative of the wheel's load, the term of the changing ratio included", () => {
    fc.assert(
      fc.property(between(10_000, 80_000), between(-0.05, 0.08), between(0.02, 0.08), (rate, z, preload) => {
        const wheelLoad = (at: number) => rate * (preload + rocker(at).s) * rocker(at).ratio;
        const step = 1e-5;
        const difference = (wheelLoad(z + step) - wheelLoad(z - step)) / (2 * step);
        const { s, ratio, change } = rocker(z);
        fc.pre(preload + s > 0);
        const springForce = rate * (preload + s);
        expect(
          wheelRate(rate, { motionRatio: ratio, motionRatioChange: change, springForce }) / difference,
        ).toBeCloseTo(1, 6);
      }),
    );
  });

  test("wants the spring's force only where the ratio changes", () => {
    expect(wheelRate(20_000, { motionRatio: 0.5 })).toBe(5000);
    expect(wheelRate(20_000, { motionRatio: 0.5, springForce: 2000 })).toBe(5000);
    expect(wheelRate(20_000, { motionRatio: 0.5, motionRatioChange: -0.5, springForce: 2000 })).toBe(4000);
    expect(() => wheelRate(20_000, { motionRatio: 0.5, motionRatioChange: 0.1 })).toThrow(
      /give the spring's force too/,
    );
    expect(() => wheelRate(20_000, { motionRatio: 0.5, motionRatioChange: 0.1, springForce: -1 })).toThrow(
      /springForce/,
    );
    expect(() => wheelRate(0, { motionRatio: 0.5 })).toThrow(/springRate/);
    expect(() => wheelRate(1, { motionRatio: 0 })).toThrow(/motionRatio must be/);
    expect(() => wheelRate(1, { motionRatio: 1, motionRatioChange: Number.NaN })).toThrow(
      /motionRatioChange/,
    );
  });

  test("and the spring for a wheel rate gives it back", () => {
    fc.assert(
      fc.property(between(1000, 1e5), between(0.3, 1.2), (wanted, motionRatio) => {
        expect(wheelRate(springRateForWheelRate(wanted, motionRatio), { motionRatio }) / wanted).toBeCloseTo(
          1,
          12,
        );
      }),
    );
    expect(() => springRateForWheelRate(0, 1)).toThrow(/wheelRate/);
    expect(() => springRateForWheelRate(1, 0)).toThrow(/motionRatio/);
  });
});

describe("ride", () => {
  test("a tyre softens it; without one the wheel rate is the ride rate", () => {
    expect(rideRate(20_000)).toBe(20_000);
    expect(rideRate(20_000, 180_000)).toBeCloseTo(18_000, 9);
    expect(() => rideRate(0)).toThrow(/wheelRate/);
    expect(() => rideRate(1, 0)).toThrow(/tyreRate/);
  });

  test("frequency, rate and deflection belong together", () => {
    fc.assert(
      fc.property(between(5000, 60_000), between(80, 500), (rate, mass) => {
        const frequency = naturalFrequency(rate, mass);
        expect(rateForFrequency(frequency, mass) / rate).toBeCloseTo(1, 12);
        expect(frequencyOfDeflection(staticDeflection(rate, mass)) / frequency).toBeCloseTo(1, 12);
        expect(naturalFrequency(4 * rate, mass) / frequency).toBeCloseTo(2, 12);
      }),
    );
    for (const bad of [() => naturalFrequency(0, 1), () => staticDeflection(0, 1)])
      expect(bad).toThrow(/rate must/);
    for (const bad of [
      () => naturalFrequency(1, 0),
      () => staticDeflection(1, 0),
      () => rateForFrequency(1, 0),
    ])
      expect(bad).toThrow(/mass must/);
    expect(() => rateForFrequency(0, 1)).toThrow(/frequency/);
    expect(() => frequencyOfDeflection(0)).toThrow(/deflection/);
  });

  test("a wheel of 25 kg between 20 and 180 N/mm hops at 14.2 Hz", () => {
    const hop = { wheelRate: 20_000, tyreRate: 180_000, unsprungMass: 25 };
    expect(wheelHopFrequency(hop)).toBeCloseTo(Math.sqrt(8000) / (2 * Math.PI), 12);
    for (const place of ["wheelRate", "tyreRate", "unsprungMass"] as const)
      expect(() => wheelHopFrequency({ ...hop, [place]: 0 })).toThrow(place);
  });
});
