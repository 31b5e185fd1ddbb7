import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  adhesionUsed,
  axleLoadsUnderBraking,
  type BrakedCar,
  criticalDeceleration,
  firstLock,
  idealForceShares,
  idealFrontShare,
} from "./balance";
import { pistonArea } from "./hydraulic";
import {
  type BrakeSystem,
  balanceBar,
  brakedStop,
  brakingAt,
  lockPoint,
  pedalForceOf,
  rodForceOf,
  tandemCylinder,
} from "./system";

const g = 9.80665;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A valve's slope as anyone could set it: finer than a millionth, the arithmetic ends before the brakes do. */
const slope = between(0, 1).map((value) => Math.round(value * 1e6) / 1e6);
const car: BrakedCar = { frontMass: 470, rearMass: 510, wheelbase: 2.3, cgHeight: 0.46 };
/** None of them lifts its rear wheels below 1 g. */
const cars: fc.Arbitrary<BrakedCar> = fc.record({
  frontMass: between(300, 700),
  rearMass: between(300, 700),
  wheelbase: between(2, 3),
  cgHeight: between(0.3, 0.55),
});
const plain: BrakeSystem = {
  pedalRatio: 5,
  pressurePerForce: tandemCylinder(0.01778),
  front: { torquePerPressure: 3.2e-4, tyreRadius: 0.29 },
  rear: { torquePerPressure: 1.3e-4, tyreRadius: 0.29 },
};
const systems: fc.Arbitrary<BrakeSystem> = fc.record({
  pedalRatio: between(3, 7),
  pressurePerForce: between(0.012, 0.026).map(tandemCylinder),
  servo: fc.option(fc.record({ gain: between(1, 4), assistLimit: between(0, 3000) }), { nil: undefined }),
  valve: fc.option(fc.record({ cutIn: between(0, 8e6), slope }), { nil: undefined }),
  front: fc.record({
    torquePerPressure: between(1e-4, 8e-4),
    thresholdPressure: between(0, 2e5),
    tyreRadius: between(0.25, 0.33),
  }),
  rear: fc.record({
    torquePerPressure: between(2e-5, 5e-4),
    thresholdPressure: between(0, 6e5),
    tyreRadius: between(0.25, 0.33),
  }),
});

describe("balance", () => {
  test("loads add up to the weight at every deceleration, and the rear empties where it lifts", () => {
    fc.assert(
      fc.property(cars, between(0, 1), (of, share) => {
        const lift = (of.rearMass * of.wheelbase) / ((of.frontMass + of.rearMass) * of.cgHeight);
        const loads = axleLoadsUnderBraking(of, lift * share * 0.999999);
        expect((loads.front + loads.rear) / ((of.frontMass + of.rearMass) * g)).toBeCloseTo(1, 12);
        expect(loads.rear).toBeGreaterThan(0);
        expect(() => axleLoadsUnderBraking(of, lift * 1.0001)).toThrow(/rear wheels leave the ground/);
      }),
    );
  });

  test("on the ideal curve both axles use the same adhesion: z itself", () => {
    fc.assert(
      fc.property(cars, between(0.05, 0.9), (of, z) => {
        const { front, rear } = idealForceShares(of, z);
        const weight = (of.frontMass + of.rearMass) * g;
        const used = adhesionUsed(of, { front: front * weight, rear: rear * weight });
        expect(used.front).toBeCloseTo(z, 10);
        expect(used.rear).toBeCloseTo(z, 10);
      }),
    );
  });

  test("at the critical deceleration the fixed share is the ideal one, and both lock together there", () => {
    fc.assert(
      fc.property(cars, between(0.1, 0.9), (of, z) => {
        const share = idealFrontShare(of, z);
        expect(criticalDeceleration(of, share)).toBeCloseTo(z, 10);
        const lock = firstLock(of, share, z);
        expect(lock.axle).toBe("together");
        expect(lock.deceleration).toBeCloseTo(z, 8);
      }),
    );
  });

  test("more share at the front than the ideal locks the front first, less the rear; neither beats the adhesion", () => {
    fc.assert(
      fc.property(cars, between(0.1, 0.9), between(0.01, 0.09), (of, k, more) => {
        const ideal = idealFrontShare(of, k);
        if (ideal + more < 1) expect(firstLock(of, ideal + more, k).axle).toBe("front");
        if (ideal - more > 0) expect(firstLock(of, ideal - more, k).axle).toBe("rear");
        for (const share of [0, 0.3, 0.7, 1])
          expect(firstLock(of, share, k).deceleration).toBeLessThanOrEqual(k * (1 + 1e-12));
      }),
    );
  });

  test("an axle without brakes does not lock", () => {
    expect(firstLock(car, 0, 0.8).axle).toBe("rear");
    expect(firstLock(car, 1, 0.8).axle).toBe("front");
  });

  test("nothing from NaN or from a car without mass", () => {
    expect(() => idealFrontShare({ ...car, cgHeight: Number.NaN }, 0.5)).toThrow(/cgHeight/);
    expect(() => firstLock({ ...car, rearMass: 0 }, 0.5, 0.5)).toThrow(/rearMass/);
    expect(() => firstLock(car, 1.2, 0.5)).toThrow(/between 0 and 1/);
    expect(() => firstLock(car, 0.5, 0)).toThrow(/adhesion/);
    expect(() => idealFrontShare(car, -0.1)).toThrow(/deceleration/);
  });
});

describe("the whole system", () => {
  test("without thresholds or valve it locks as the fixed share says", () => {
    const share = 3.2 / 4.5;
    const whole = lockPoint(plain, car, 0.8);
    const fixed = firstLock(car, share, 0.8);
    expect(whole?.axle).toBe(fixed.axle);
    expect(whole?.deceleration).toBeCloseTo(fixed.deceleration, 12);
  });

  test("at the lock point the axle that locks uses exactly the adhesion, the other no more", () => {
    fc.assert(
      fc.property(systems, cars, between(0.2, 1), (system, of, k) => {
        const lock = lockPoint(system, of, k);
        if (lock === undefined) return;
        const used = adhesionUsed(of, brakingAt(system, lock.rodForce).force);
        expect(Math.max(used.front, used.rear)).toBeCloseTo(k, 8);
        if (lock.axle !== "together") expect(used[lock.axle]).toBeCloseTo(k, 8);
        expect(lock.deceleration).toBeLessThanOrEqual(k * (1 + 1e-9));
      }),
    );
  });

  test("below the lock point nothing locks; at and above it, something does", () => {
    fc.assert(
      fc.property(systems, cars, between(0.2, 1), between(0.01, 0.99), (system, of, adhesion, part) => {
        const lock = lockPoint(system, of, adhesion);
        if (lock === undefined) return;
        const at = (pedalForce: number) => brakedStop(system, of, { pedalForce, adhesion });
        expect(at(lock.pedalForce * part).locks).toBe(false);
        const above = at(lock.pedalForce / part);
        expect(above.locks).toBe(true);
        expect(above.deceleration).toBeCloseTo(lock.deceleration, 12);
      }),
    );
  });

  test("deceleration never falls with the pedal force", () => {
    fc.assert(
      fc.property(systems, cars, between(0, 1500), between(0, 500), (system, of, pedalForce, more) => {
        const at = (force: number) =>
          brakedStop(system, of, { pedalForce: force, adhesion: 0.9 }).deceleration;
        expect(at(pedalForce + more)).toBeGreaterThanOrEqual(at(pedalForce) - 1e-12);
      }),
    );
  });

  test("bigger pistons, discs and pads brake harder at the same pedal; bigger tyres less", () => {
    const gentle = { pedalForce: 100, adhesion: 1.2 };
    const base = brakedStop(plain, car, gentle).deceleration;
    const times = (change: Partial<BrakeSystem["front"]>) =>
      brakedStop({ ...plain, front: { ...plain.front, ...change } }, car, gentle).deceleration;
    expect(times({ torquePerPressure: 4e-4 })).toBeGreaterThan(base);
    expect(times({ tyreRadius: 0.31 })).toBeLessThan(base);
    const both = {
      ...plain,
      front: { ...plain.front, tyreRadius: 0.58 },
      rear: { ...plain.rear, tyreRadius: 0.58 },
    };
    expect(brakedStop(both, car, gentle).deceleration / base).toBeCloseTo(0.5, 12);
  });

  test("a limiting valve keeps the rear from locking first, at a higher deceleration than without", () => {
    const strongRear = { ...plain, rear: { ...plain.rear, torquePerPressure: 2.6e-4 } };
    const without = lockPoint(strongRear, car, 0.9);
    const withValve = lockPoint({ ...strongRear, valve: { cutIn: 2e6, slope: 0.3 } }, car, 0.9);
    expect(without?.axle).toBe("rear");
    expect(withValve?.axle).toBe("front");
    expect(withValve?.deceleration).toBeGreaterThan(without?.deceleration ?? Number.NaN);
  });

  test("a rear that comes on only behind a closed valve never brakes", () => {
    const rear = { ...plain.rear, thresholdPressure: 3e6 };
    const shut = { ...plain, rear, valve: { cutIn: 2e6, slope: 0 } };
    expect(brakingAt(shut, 1e4).force.rear).toBe(0);
    expect(lockPoint(shut, car, 0.9)?.axle).toBe("front");
    const opens = { ...shut, valve: { cutIn: 2e6, slope: 0.5 } };
    const start = (2e6 + 1e6 / 0.5) / plain.pressurePerForce.rear;
    expect(brakingAt(opens, start * 0.999).force.rear).toBe(0);
    expect(brakingAt(opens, start * 1.001).force.rear).toBeGreaterThan(0);
  });

  test("a tall car whose unbraked rear lifts before the front locks is refused", () => {
    const unbraked = { ...plain, rear: { ...plain.rear, torquePerPressure: 0 } };
    expect(() => lockPoint(unbraked, { ...car, cgHeight: 2 }, 1.2)).toThrow(
      /rear wheels leave the ground at 0.598/,
    );
    expect(lockPoint(unbraked, car, 0.9)?.axle).toBe("front");
  });

  test("brakes that are held too low by a valve never lock, and say so", () => {
    const limited = {
      ...plain,
      front: { ...plain.front, torquePerPressure: 0 },
      valve: { cutIn: 1e6, slope: 0 },
    };
    expect(lockPoint(limited, car, 0.9)).toBeUndefined();
    expect(brakedStop(limited, car, { pedalForce: 900, adhesion: 0.9 }).locks).toBe(false);
    const still = brakedStop(plain, car, { pedalForce: 0, adhesion: 0.9 });
    expect(still).toMatchObject({ locks: false, deceleration: 0 });
    expect(still.frontShare).toBeUndefined();
  });

  test("a balance bar at its middle with like bores gives each circuit half of a single cylinder's pressure", () => {
    const even = balanceBar({ front: 0.0159, rear: 0.0159 }, 0.5);
    expect(even.front).toBe(even.rear);
    expect(even.front).toBeCloseTo(tandemCylinder(0.0159).front / 2, 9);
    const forward = balanceBar({ front: 0.0159, rear: 0.0178 }, 0.6);
    expect(forward.front * pistonArea(0.0159) + forward.rear * pistonArea(0.0178)).toBeCloseTo(1, 12);
    expect(() => balanceBar({ front: 0.0159, rear: 0.0159 }, 1.01)).toThrow(/between 0 and 1/);
  });

  test("pedal force and push-rod force are each other's inverse, with a servo too", () => {
    fc.assert(
      fc.property(systems, between(0, 2000), (system, pedalForce) => {
        expect(pedalForceOf(system, rodForceOf(system, pedalForce))).toBeCloseTo(pedalForce, 8);
      }),
    );
  });
});
