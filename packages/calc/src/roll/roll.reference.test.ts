import { describe, expect, test } from "vitest";
import type { RollAxle, RollCar } from "./car";
import { rollGradient } from "./gradient";
import { longitudinalAxleLoads } from "./longitudinal";
import { rollAt } from "./transfer";

const within = (found: number, expected: number, tolerance: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);

/** A roll rate, N·m/rad, as the wheel rate of independent springs on a track. */
const asSprings = (rollRate: number, track: number): number => (2 * rollRate) / track ** 2;

describe("worked example of 'Automotive Chassis Engineering' (Springer 2018; authors from memory: Barton & Fieldhouse), ch. 3, p. 174", () => {
  // The book's axle split of the roll rate, 70 to 30, is inferred from its printed parts; its rear roll centre is not
  // in the rows and cancels out of every one of them.
  const sprung = 1280;
  const [frontUnsprung, rearUnsprung, rearRollCentre] = [140, 180, 0.12];
  const axle = (given: Partial<RollAxle>): RollAxle => ({
    track: 1.46,
    mass: 0,
    unsprungMass: 0,
    unsprungHeight: 0,
    rollCentreHeight: 0,
    springWheelRate: 0,
    barWheelRate: 0,
    ...given,
  });
  const front = axle({
    mass: sprung * 0.54 + frontUnsprung,
    unsprungMass: frontUnsprung,
    unsprungHeight: 0.28,
    rollCentreHeight: 0.07,
    springWheelRate: asSprings(28650 * 0.7, 1.46),
  });
  const rear = axle({
    mass: sprung * 0.46 + rearUnsprung,
    unsprungMass: rearUnsprung,
    unsprungHeight: 0.3,
    rollCentreHeight: rearRollCentre,
    springWheelRate: asSprings(28650 * 0.3, 1.46),
  });
  const sprungHeight = 0.54 * 0.07 + 0.46 * rearRollCentre + 0.365;
  const moments = sprung * sprungHeight + frontUnsprung * 0.28 + rearUnsprung * 0.3;
  const car: RollCar = { front, rear, cgHeight: moments / (front.mass + rear.mass) };
  const { axles } = rollAt(car, 0.6 * 9.81);

  test("LDT-01: 195 N of the sprung mass go through the front roll centre", () =>
    within(axles.front.geometric, 195, 0.5));
  test("LDT-03: the front unsprung mass moves 158 N", () => within(axles.front.unsprung, 158, 0.5));
  test("LDT-04: the rear unsprung mass moves 218 N", () => within(axles.rear.unsprung, 218, 0.5));
  test("LDT-05: the front total is the sum of its parts, 1909 N, where the book prints 1919", () => {
    expect(1556 + 195 + 158).toBe(1909);
    const { elastic, geometric, unsprung, total } = axles.front;
    expect(total).toBeCloseTo(elastic + geometric + unsprung, 9);
    within(total / 1909, 1, 0.01);
  });
  test("LDT-07, LDT-08: the roll gradient is 0.0194 rad per m/s², 10.9° per g", () => {
    const { gradient } = rollGradient(car);
    within(gradient, 0.0194, 5e-5);
    within(((gradient * 180) / Math.PI) * 9.81, 10.9, 0.05);
  });
  test("LDT-09: front and rear elastic transfers add to 2227 N, within 1 % (plausibility: split inferred)", () =>
    within((axles.front.elastic + axles.rear.elastic) / 2227, 1, 0.01));
});

test.each([0.1, 0.35, 0.5, 0.8, 0.95])(
  "LDT-11: axle transfers add to W·h/t whatever the roll-rate split, here %d (Milliken, Race Car Vehicle Dynamics, eq. 18.4, from memory)",
  (split) => {
    // Milliken's equation leaves the weight of the leaning body out: so stiff a car that it does not lean.
    const [weight, share, track] = [9000, 0.52, 1.35];
    const stiff = 1e13;
    const axle = (part: number, rollCentreHeight: number, rate: number): RollAxle => ({
      track,
      mass: (weight * part) / 9.80665,
      unsprungMass: 0,
      unsprungHeight: 0,
      rollCentreHeight,
      springWheelRate: asSprings(rate, track),
      barWheelRate: 0,
    });
    const car = {
      front: axle(share, 0.05, stiff * split),
      rear: axle(1 - share, 0.15, stiff * (1 - split)),
      cgHeight: 0.48,
    };
    const { transfer } = rollGradient(car);
    within((transfer.front + transfer.rear) * 9.80665, 3200, 0.01);
    const lever = 0.48 - 0.52 * 0.05 - 0.48 * 0.15;
    within(transfer.front * 9.80665, (weight / track) * (lever * split + share * 0.05), 0.01);
  },
);

describe("axle loads (licence exam bank of a national council of engineers, ME13 Dynamics of Vehicles; wording inferred)", () => {
  const still = { cgHeight: 0.5, acceleration: 0 };
  test("LDT-12: 5500 and 4500 N on a wheelbase of 2.5 m belong to a centre of gravity 1.125 m behind the front axle", () => {
    const { front, rear } = longitudinalAxleLoads({
      ...still,
      mass: 10_000 / 9.80665,
      wheelbase: 2.5,
      cgFromFront: 1.125,
    });
    within(front, 5500, 0.0005 * 4000);
    within(rear, 4500, 0.0005 * 4000);
  });
  test("LDT-13: 6 to 4 on 2.7 m belongs to one 1.62 m before the rear axle", () => {
    const { front, rear } = longitudinalAxleLoads({
      ...still,
      mass: 1000,
      wheelbase: 2.7,
      cgFromFront: 2.7 - 1.62,
    });
    within((front / (front + rear)) * 2.7, 1.62, 0.0005);
  });
  test("LDT-14: 1000 kg, 55 % in front, 0.4 m high on 2.5 m, has 4600 N in front at 5 m/s²", () => {
    const car = { mass: 1000, wheelbase: 2.5, cgFromFront: 0.45 * 2.5, cgHeight: 0.4 };
    within(longitudinalAxleLoads({ ...car, acceleration: 5 }).front, 4600, 10);
  });
  test("LDT-15: 1200 kg, 40 % at the rear, 0.35 m high on 2.7 m, has 5330 N at the rear at 4 m/s²", () => {
    const car = { mass: 1200, wheelbase: 2.7, cgFromFront: 0.4 * 2.7, cgHeight: 0.35 };
    within(longitudinalAxleLoads({ ...car, acceleration: 4 }).rear, 5330, 5);
  });
});
