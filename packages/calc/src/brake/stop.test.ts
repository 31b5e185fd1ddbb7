import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { atMost } from "../property-runs.fixture";
import {
  brakingEnergy,
  coolingTimeOf,
  heatPerBrake,
  seriesTemperatures,
  settledTemperature,
  stopLimit,
  temperatureRise,
} from "./heat";
import { meanFullyDevelopedDeceleration, stoppingDistance } from "./stop";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stops = fc.record({
  speed: between(1, 80),
  deceleration: between(0.5, 12),
  buildUpTime: between(0, 2),
  reactionTime: between(0, 2),
});

/** Steps through a stop with the force as it is at each moment: distance, time and work per kilogram. */
function march({
  speed,
  deceleration,
  buildUpTime,
}: {
  speed: number;
  deceleration: number;
  buildUpTime: number;
}) {
  const step = 1e-4;
  let [v, distance, work, time] = [speed, 0, 0, 0];
  while (v > 0) {
    const middle = time + step / 2;
    const a = middle < buildUpTime ? (deceleration * middle) / buildUpTime : deceleration;
    const next = v - a * step;
    const share = next < 0 ? v / (v - next) : 1;
    const moved = ((v + Math.max(0, next)) / 2) * step * share;
    distance += moved;
    work += a * moved;
    time += step * share;
    v = next;
  }
  return { distance, work, time };
}

describe("the energy balance of a braking stop", () => {
  test("the work of the brakes over the distance is the energy the car had", () => {
    fc.assert(
      fc.property(stops, between(500, 2500), ({ speed, deceleration }, mass) => {
        const { brakingDistance } = stoppingDistance({ speed, deceleration });
        const energy = brakingEnergy(mass, { fromSpeed: speed });
        expect((mass * deceleration * brakingDistance) / energy).toBeCloseTo(1, 12);
      }),
    );
  });

  test("also while the force builds up: stepped through, work is energy, distance and time are the formula's", () => {
    fc.assert(
      fc.property(stops, (stop) => {
        const marched = march(stop);
        const formula = stoppingDistance(stop);
        expect(marched.work / (stop.speed ** 2 / 2)).toBeCloseTo(1, 3);
        expect(marched.distance / formula.brakingDistance).toBeCloseTo(1, 3);
        expect(marched.time / (formula.time - stop.reactionTime)).toBeCloseTo(1, 3);
      }),
      atMost(40),
    );
  });

  test("the heat of the four brakes is the energy, and the iron's gain gives it back", () => {
    fc.assert(
      fc.property(
        between(500, 2500),
        between(1, 70),
        between(0, 1),
        between(1, 12),
        (mass, speed, front, iron) => {
          const energy = brakingEnergy(mass, { fromSpeed: speed });
          const heats = [front, front, 1 - front, 1 - front].map((axle) => heatPerBrake(energy, axle));
          expect(heats.reduce((sum, heat) => sum + heat, 0) / energy).toBeCloseTo(1, 12);
          const sink = { mass: iron, specificHeat: 450 };
          const gained = heats.reduce((sum, heat) => sum + temperatureRise(heat, sink) * iron * 450, 0);
          expect(gained / energy).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  test("a slowing and a stop from there lose together what one stop loses", () => {
    const whole = brakingEnergy(900, { fromSpeed: 40, rotatingShare: 0.04 });
    const first = brakingEnergy(900, { fromSpeed: 40, toSpeed: 17, rotatingShare: 0.04 });
    expect(first + brakingEnergy(900, { fromSpeed: 17, rotatingShare: 0.04 })).toBeCloseTo(whole, 6);
  });
});

describe("stopping distance", () => {
  test("the two formulas meet where the stop ends with the build-up", () => {
    const at = (buildUpTime: number) =>
      stoppingDistance({ speed: 5, deceleration: 10, buildUpTime }).brakingDistance;
    expect(at(1 - 1e-9)).toBeCloseTo(at(1 + 1e-9), 6);
    expect(at(1)).toBeCloseTo(10 / 3, 12);
  });

  test("grows with speed and every delay, falls with deceleration", () => {
    fc.assert(
      fc.property(stops, between(1.001, 2), (stop, more) => {
        const { distance } = stoppingDistance(stop);
        expect(stoppingDistance({ ...stop, speed: stop.speed * more }).distance).toBeGreaterThan(distance);
        expect(stoppingDistance({ ...stop, deceleration: stop.deceleration * more }).distance).toBeLessThan(
          distance,
        );
        const later = {
          ...stop,
          buildUpTime: stop.buildUpTime + 0.01,
          reactionTime: stop.reactionTime + 0.01,
        };
        expect(stoppingDistance(later).distance).toBeGreaterThan(distance);
      }),
    );
  });

  test("reaction is covered at full speed", () => {
    const stop = stoppingDistance({ speed: 20, deceleration: 8, reactionTime: 1.5 });
    expect(stop).toMatchObject({ reactionDistance: 30, brakingDistance: 25, distance: 55, time: 4 });
    expect(stoppingDistance({ speed: 0, deceleration: 8, buildUpTime: 0.3 })).toMatchObject({
      distance: 0,
      time: 0,
    });
  });

  test("a mean fully developed deceleration gives back a constant one", () => {
    expect(meanFullyDevelopedDeceleration(16, 2, (16 ** 2 - 2 ** 2) / (2 * 7))).toBeCloseTo(7, 12);
    expect(() => meanFullyDevelopedDeceleration(2, 16, 10)).toThrow(/must be the greater/);
    expect(() => meanFullyDevelopedDeceleration(16, 2, 0)).toThrow(/distance/);
  });

  test("nothing is answered from what is not a number, or no deceleration", () => {
    expect(() => stoppingDistance({ speed: Number.NaN, deceleration: 8 })).toThrow(/speed/);
    expect(() => stoppingDistance({ speed: 20, deceleration: 0 })).toThrow(/deceleration must be greater/);
    expect(() => stoppingDistance({ speed: 20, deceleration: 8, buildUpTime: -1 })).toThrow(/buildUpTime/);
    expect(() => stoppingDistance({ speed: 20, deceleration: 8, reactionTime: -1 })).toThrow(/reactionTime/);
  });
});

describe("a series of stops", () => {
  const series = { count: 15, rise: 40, ambient: 293, interval: 25, coolingTime: 200 };

  test("gives the peak right after each stop, the closed form of the geometric series", () => {
    const q = Math.exp(-25 / 200);
    seriesTemperatures(series).forEach((temperature, index) => {
      expect(temperature - 293).toBeCloseTo((40 * (1 - q ** (index + 1))) / (1 - q), 9);
    });
  });

  test("rises towards the settled temperature and never passes it", () => {
    fc.assert(
      fc.property(between(1, 200), between(1, 100), between(20, 900), (rise, interval, coolingTime) => {
        const given = { count: 60, rise, ambient: 290, interval, coolingTime };
        const settled = settledTemperature(given) ?? Number.NaN;
        const temperatures = seriesTemperatures(given);
        temperatures.forEach((temperature, index) => {
          expect(temperature).toBeGreaterThanOrEqual((temperatures[index - 1] ?? 0) - 1e-9);
          expect(temperature).toBeLessThanOrEqual(settled + 1e-6);
        });
      }),
    );
  });

  test("without cooling every stop adds its rise, and nothing settles", () => {
    const { coolingTime: _left, ...hot } = series;
    expect(seriesTemperatures({ ...hot, count: 3, start: 350 })).toEqual([390, 430, 470]);
    expect(settledTemperature(hot)).toBeUndefined();
    expect(settledTemperature({ ...series, interval: 0 })).toBeUndefined();
  });

  test("begins at the temperature the disc has, without cooling first", () => {
    expect(seriesTemperatures({ ...series, start: 393 })[0]).toBe(433);
  });

  test("refuses no stop, half a stop and endless ones", () => {
    for (const count of [0, 1.5, -1, stopLimit + 1, Number.NaN])
      expect(() => seriesTemperatures({ ...series, count })).toThrow(/count|stops/);
  });
});

test("cooling time is heat capacity over heat loss", () => {
  expect(coolingTimeOf({ mass: 5, specificHeat: 450 }, 50, 0.1)).toBeCloseTo(450, 9);
});

test("a car does not brake to a higher speed", () => {
  expect(() => brakingEnergy(900, { fromSpeed: 10, toSpeed: 11 })).toThrow(/from 10 to 11/);
});
