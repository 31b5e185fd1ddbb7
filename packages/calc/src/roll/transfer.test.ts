import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { atMost } from "../property-runs.fixture";
import { axleRollRate, type RollCar } from "./car";
import { rollGradient } from "./gradient";
import { cars, sampleCar } from "./sample-car.fixture";
import { liftAcceleration, rollAt, wheelLoads } from "./transfer";

const g = 9.80665;
const accelerations = fc.double({ min: 0.05, max: 6, noNaN: true });

/** Runs a check on cars whose wheels all stay down at the acceleration. */
function onGround(check: (car: RollCar, acceleration: number) => void): void {
  fc.assert(
    fc.property(cars, accelerations, (car, acceleration) => {
      const lift = liftAcceleration(car, 7);
      fc.pre(lift === null || lift.acceleration > acceleration);
      check(car, acceleration);
    }),
  );
}

describe("wheel loads in a bend", () => {
  test("add up to the weight, front and rear each to their own", () => {
    onGround((car, a) => {
      const loads = wheelLoads(car, a);
      expect((loads.frontLeft + loads.frontRight) / (car.front.mass * g)).toBeCloseTo(1, 12);
      expect((loads.rearLeft + loads.rearRight) / (car.rear.mass * g)).toBeCloseTo(1, 12);
    });
  });

  test("balance the overturning moment of every mass about the ground, weights displaced by the lean included", () => {
    onGround((car, a) => {
      const { angle, axles } = rollAt(car, a);
      const parts = [car.front, car.rear] as const;
      const sprung = parts.map(({ mass, unsprungMass }) => mass - unsprungMass);
      const sprungMass = sprung.reduce((sum, one) => sum + one, 0);
      const axis = parts.reduce(
        (sum, { rollCentreHeight }, i) => sum + ((sprung[i] ?? 0) * rollCentreHeight) / sprungMass,
        0,
      );
      const unsprungMoment = parts.reduce((sum, one) => sum + one.unsprungMass * one.unsprungHeight, 0);
      const height = (car.cgHeight * (car.front.mass + car.rear.mass) - unsprungMoment) / sprungMass;
      const lever = height - axis;
      const resisting = axles.front.total * car.front.track + axles.rear.total * car.rear.track;
      // Each axle leans on its tyres by its own moment over k_t·t²/2 and carries its share of the body with it.
      const leaning = parts.reduce((sum, one, i) => {
        if (one.tyreRate === undefined) return sum;
        const moment = (i === 0 ? axles.front : axles.rear).total * one.track;
        const lean = moment / ((one.tyreRate * one.track ** 2) / 2);
        return (
          sum + g * lean * ((sprung[i] ?? 0) * one.rollCentreHeight + one.unsprungMass * one.unsprungHeight)
        );
      }, 0);
      const body = sprungMass * (a * (axis + lever * Math.cos(angle)) + g * lever * Math.sin(angle));
      expect(resisting / (body + unsprungMoment * a + leaning)).toBeCloseTo(1, 9);
    });
  });

  test("mirror: turning the bend round exchanges left and right and the sign of roll", () => {
    onGround((car, a) => {
      const [to, fro] = [wheelLoads(car, a), wheelLoads(car, -a)];
      expect([fro.frontLeft, fro.frontRight, fro.rearLeft, fro.rearRight]).toEqual([
        to.frontRight,
        to.frontLeft,
        to.rearRight,
        to.rearLeft,
      ]);
      expect(rollAt(car, -a).angle).toBe(-rollAt(car, a).angle);
    });
  });

  test("a left-hand bend loads the right wheels and rolls the body to the right (ISO 8855)", () => {
    const loads = wheelLoads(sampleCar, 5);
    expect(loads.frontRight).toBeGreaterThan(loads.frontLeft);
    expect(loads.rearRight).toBeGreaterThan(loads.rearLeft);
    expect(rollAt(sampleCar, 5).angle).toBeGreaterThan(0);
  });

  test("transfer is half the difference between outer and inner wheel, and the sum of its parts", () => {
    onGround((car, a) => {
      for (const axle of Object.values(rollAt(car, a).axles)) {
        expect(axle.total).toBeCloseTo((axle.outer - axle.inner) / 2, 6);
        expect(axle.total).toBeCloseTo(axle.elastic + axle.geometric + axle.unsprung + axle.tipping, 6);
      }
    });
  });

  test("at rest nothing moves and there is no share to speak of", () => {
    const { angle, axles, frontTransferShare } = rollAt(sampleCar, 0);
    expect([angle, axles.front.total, axles.rear.total, frontTransferShare]).toEqual([0, 0, 0, null]);
  });
});

describe("roll angle", () => {
  test("its slope at rest is the roll gradient, and so is the transfer's", () => {
    fc.assert(
      fc.property(cars, (car) => {
        const { gradient, transfer, frontTransferShare } = rollGradient(car);
        const step = 1e-4;
        const state = rollAt(car, step);
        expect((rollAt(car, step).angle - rollAt(car, -step).angle) / (2 * step) / gradient).toBeCloseTo(
          1,
          6,
        );
        expect(state.axles.front.total / step / transfer.front).toBeCloseTo(1, 4);
        expect(state.axles.rear.total / step / transfer.rear).toBeCloseTo(1, 4);
        expect(state.frontTransferShare).toBeCloseTo(frontTransferShare, 4);
      }),
    );
  });

  test("balances K·φ = m·h·(a·cos φ + g·sin φ) on rigid tyres", () => {
    const { angle } = rollAt(sampleCar, 7);
    const rate = axleRollRate(sampleCar.front).total + axleRollRate(sampleCar.rear).total;
    const lever = (820 * 0.45 - 135 * 0.29) / 685 - (340 * 0.05 + 345 * 0.12) / 685;
    expect(rate * angle).toBeCloseTo(685 * lever * (7 * Math.cos(angle) + g * Math.sin(angle)), 6);
  });

  test("grows with acceleration, and less with stiffer springs or bars", () => {
    onGround((car, a) => {
      const lever = Math.sign(rollGradient(car).gradient);
      fc.pre(lever > 0 && car.front.tyreRate === undefined && car.rear.tyreRate === undefined);
      const angle = rollAt(car, a).angle;
      expect(rollAt(car, a * 0.9).angle).toBeLessThan(angle);
      const stiffer = { ...car, front: { ...car.front, springWheelRate: car.front.springWheelRate * 1.1 } };
      expect(Math.abs(rollGradient(stiffer).gradient)).toBeLessThan(rollGradient(car).gradient);
      const barred = { ...car, rear: { ...car.rear, barWheelRate: car.rear.barWheelRate + 1000 } };
      expect(Math.abs(rollGradient(barred).gradient)).toBeLessThan(rollGradient(car).gradient);
    });
  });
});

describe("a wheel off the ground", () => {
  test("is refused beyond the acceleration at which it lifts, which is named", () => {
    const narrow = { ...sampleCar, front: { ...sampleCar.front, barWheelRate: 60_000 } };
    const lift = liftAcceleration(narrow);
    expect(lift?.axle).toBe("front");
    const at = lift?.acceleration ?? 0;
    expect(rollAt(narrow, at - 1e-6).axles.front.inner).toBeGreaterThanOrEqual(0);
    expect(rollAt(narrow, at - 1e-6).axles.front.inner).toBeLessThan(0.01);
    expect(() => rollAt(narrow, at + 1e-3)).toThrow(
      /the inner front wheel leaves the ground at 1\.01 g; beyond it/,
    );
    expect(() => rollAt(narrow, at + 1e-3)).toThrow(
      expect.objectContaining({ code: "WHEEL_LIFTS", place: "acceleration" }),
    );
    // Far beyond what the search for the limit goes to, the wheel is named without it.
    expect(() => rollAt({ ...sampleCar, cgHeight: 0.3 }, 60)).toThrow(
      /the inner \w+ wheel leaves the ground/,
    );
  });

  test("is found at the rear too, and nowhere below a limit that is low enough", () => {
    const stiffRear = { ...sampleCar, rear: { ...sampleCar.rear, barWheelRate: 90_000 } };
    expect(liftAcceleration(stiffRear)?.axle).toBe("rear");
    expect(liftAcceleration(stiffRear, 1)).toBeNull();
    const at = liftAcceleration(stiffRear)?.acceleration ?? 0;
    expect(liftAcceleration(stiffRear, 2 * at)?.acceleration).toBeCloseTo(at, 9);
    expect(() => liftAcceleration(sampleCar, 0)).toThrow(/upTo/);
  });

  test("the first of two axles that lift is the one named", () => {
    fc.assert(
      fc.property(cars, (car) => {
        const lift = liftAcceleration(car);
        fc.pre(lift !== null);
        const state = rollAt(car, (lift?.acceleration ?? 0) * (1 - 1e-9));
        expect(Math.min(state.axles.front.inner, state.axles.rear.inner)).toBeCloseTo(0, 3);
      }),
      atMost(30),
    );
  });

  test("an acceleration that is no number is refused", () => {
    expect(() => rollAt(sampleCar, Number.NaN)).toThrow(/acceleration must be a finite number/);
  });
});
