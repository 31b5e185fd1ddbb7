import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { discTorque, evenPressureRadius, padRadius } from "./disc";
import { drumBrakeFactor, drumTorque, type Shoe, shoeFactor } from "./drum";
import {
  linePressure,
  pedalTravel,
  pistonArea,
  servoInput,
  servoOutput,
  vacuumAssist,
  valveOutput,
} from "./hydraulic";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("servo", () => {
  const servo = { gain: 2, assistLimit: 1000 };
  test.each([
    [0, 0],
    [500, 1000],
    [1000, 2000],
    [1500, 2500],
  ])("%d N in gives %d N out: gain 2 up to 1000 N of help", (input, output) => {
    expect(servoOutput(input, servo)).toBe(output);
    expect(servoInput(output, servo)).toBe(input);
  });

  test("without vacuum it is a rod", () => expect(servoOutput(700, { gain: 3, assistLimit: 0 })).toBe(700));

  test("never gives less than it gets, and refuses to weaken", () => {
    fc.assert(
      fc.property(between(0, 1e4), between(1, 5), between(0, 5e3), (input, gain, assistLimit) => {
        expect(servoOutput(input, { gain, assistLimit })).toBeGreaterThanOrEqual(input);
      }),
    );
    expect(() => servoOutput(1, { gain: 0.9, assistLimit: 10 })).toThrow(
      /1 \(no servo\) or more, but is 0.9/,
    );
    expect(() => servoOutput(-1, servo)).toThrow(/input/);
    expect(() => servoInput(Number.NaN, servo)).toThrow(/output/);
  });

  test("7 in of diaphragm at 0.7 bar help with about 1740 N (area × depression)", () => {
    expect(vacuumAssist(0.1778, 0.7e5)).toBeCloseTo(((Math.PI * 0.1778 ** 2) / 4) * 0.7e5, 9);
  });

  test("raises the line pressure by its gain below the knee", () => {
    const line = { pedalForce: 100, pedalRatio: 4, masterBore: 0.02 };
    expect(linePressure({ ...line, servo }) / linePressure(line)).toBeCloseTo(2, 12);
  });
});

describe("rear valve", () => {
  const valve = { cutIn: 3e6, slope: 0.3 };
  test("passes all up to the cut-in and the slope beyond; a slope of nought limits", () => {
    expect([2e6, 3e6, 5e6].map((pressure) => valveOutput(pressure, valve))).toEqual([2e6, 3e6, 3.6e6]);
    expect(valveOutput(9e6, { ...valve, slope: 0 })).toBe(3e6);
    expect(valveOutput(9e6, { ...valve, slope: 1 })).toBe(9e6);
  });
  test("refuses a slope that would amplify", () => {
    expect(() => valveOutput(5e6, { ...valve, slope: 1.1 })).toThrow(
      /slope must lie between 0 and 1, but is 1.1/,
    );
    expect(() => valveOutput(5e6, { ...valve, cutIn: -1 })).toThrow(/cutIn/);
  });
});

describe("disc", () => {
  const disc = { pistonArea: 2290e-6, friction: 0.38, effectiveRadius: 0.115 };
  test("torque is proportional to each of pressure, area, friction and radius", () => {
    const base = discTorque(5e6, disc);
    expect(discTorque(1e7, disc) / base).toBeCloseTo(2, 12);
    for (const key of ["pistonArea", "friction", "effectiveRadius"] as const)
      expect(discTorque(5e6, { ...disc, [key]: disc[key] * 1.5 }) / base, key).toBeCloseTo(1.5, 12);
  });
  test("nothing below the threshold, and only the rest above it", () => {
    expect(discTorque(1e5, { ...disc, thresholdPressure: 2e5 })).toBe(0);
    expect(discTorque(5e6, { ...disc, thresholdPressure: 2e5 })).toBeCloseTo(discTorque(4.8e6, disc), 9);
  });
  test("an evenly pressed pad acts a little further out than an evenly worn one; both agree for a narrow one", () => {
    fc.assert(
      fc.property(between(0.08, 0.2), between(0.05, 0.9), (outer, part) => {
        const [worn, pressed] = [padRadius(outer, outer * part), evenPressureRadius(outer, outer * part)];
        expect(pressed).toBeGreaterThan(worn);
        expect(pressed).toBeLessThan(outer);
      }),
    );
    expect(evenPressureRadius(0.12, 1e-6)).toBeCloseTo(padRadius(0.12, 1e-6), 9);
    // 2/3·(R³ − r³)/(R² − r²) with R 120, r 80 mm: 2/3 · 1216000/8000 = 101.333 mm.
    expect(evenPressureRadius(0.12, 0.04)).toBeCloseTo(0.101333333, 9);
    expect(() => padRadius(0.1, 0.1)).toThrow(/does not fit a disc of 100 mm radius/);
  });
});

describe("drum", () => {
  const shoe: Shoe = { drumRadius: 0.1, pinDistance: 0.08, tipArm: 0.16, liningStart: 0.35, liningEnd: 2.3 };
  test("a leading shoe does more than a trailing one, more so with more friction", () => {
    fc.assert(
      fc.property(between(0.1, 0.4), (friction) => {
        const gain = (mu: number) => shoeFactor("leading", mu, shoe) / shoeFactor("trailing", mu, shoe);
        expect(gain(friction)).toBeGreaterThan(1);
        expect(gain(friction * 1.05)).toBeGreaterThan(gain(friction));
      }),
    );
  });
  test("two leading shoes beat one of each, and an ordinary simplex has a factor of about 2 at 0.35", () => {
    expect(drumBrakeFactor("duplex", 0.35, shoe)).toBe(2 * shoeFactor("leading", 0.35, shoe));
    expect(drumBrakeFactor("duplex", 0.35, shoe)).toBeGreaterThan(drumBrakeFactor("simplex", 0.35, shoe));
    expect(drumBrakeFactor("simplex", 0.35, shoe)).toBeGreaterThan(1.5);
    expect(drumBrakeFactor("simplex", 0.35, shoe)).toBeLessThan(3);
  });
  test("turned end for end in friction's sign, the two kinds are one formula: their inverses add up without friction", () => {
    const inverse = (kind: "leading" | "trailing", mu: number) => mu / shoeFactor(kind, mu, shoe);
    expect(inverse("leading", 0.3) + inverse("trailing", 0.3)).toBeCloseTo(
      inverse("leading", 0.1) + inverse("trailing", 0.1),
      12,
    );
  });
  test("a shoe that would lock by itself, a pin outside the drum and a lining that is none are refused", () => {
    expect(() => shoeFactor("leading", 2, shoe)).toThrow(/friction of 2 this shoe locks by itself/);
    expect(() => shoeFactor("leading", 0.3, { ...shoe, pinDistance: 0.1 })).toThrow(
      /pin must lie inside the drum/,
    );
    expect(() => shoeFactor("leading", 0.3, { ...shoe, liningEnd: 0.3 })).toThrow(/lining must run/);
    expect(() => shoeFactor("leading", 0.3, { ...shoe, liningStart: -0.1 })).toThrow(/lining must run/);
    expect(() => shoeFactor("leading", 0.3, { ...shoe, liningEnd: Math.PI })).toThrow(/lining must run/);
  });
  test("torque is factor × pressure beyond the threshold × area × radius", () => {
    const drum = { pistonArea: 3e-4, brakeFactor: 2, drumRadius: 0.1, thresholdPressure: 4e5 };
    expect(drumTorque(3.4e6, drum)).toBeCloseTo(2 * 3e6 * 3e-4 * 0.1, 9);
    expect(drumTorque(3e5, drum)).toBe(0);
  });
});

test("bigger wheel cylinders make a longer pedal, a bigger master cylinder a shorter one", () => {
  const pads = { cylinderArea: 8 * pistonArea(0.048), padMovement: 0.0001 };
  const travel = pedalTravel({ pedalRatio: 5, masterBore: 0.01778 }, pads);
  expect(travel).toBeCloseTo(8 * (0.048 / 0.01778) ** 2 * 0.0001 * 5, 12);
  expect(pedalTravel({ pedalRatio: 5, masterBore: 0.0191 }, pads)).toBeLessThan(travel);
  expect(() => pedalTravel({ pedalRatio: 5, masterBore: 0 }, pads)).toThrow(/diameter/);
});
