import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CalcRefusal } from "../catalogue/refusal";
import { rollGradient } from "./gradient";
import { cars, sampleCar } from "./sample-car.fixture";
import { type RollAim, type RollChange, reachRoll, rollChanges } from "./target";

const axlesOf = (change: RollChange) => ({
  front: !change.startsWith("rear"),
  rear: !change.startsWith("front"),
  part: change.toLowerCase().includes("bar") ? ("barWheelRate" as const) : ("springWheelRate" as const),
});

describe("reaching an aim", () => {
  test.each(rollChanges)(
    "%s: what a car does is reached again from the same car set up otherwise",
    (change) => {
      const { front, rear, part } = axlesOf(change);
      const rates = fc.double({ min: 12_000, max: 50_000, noNaN: true });
      fc.assert(
        fc.property(cars, rates, rates, fc.boolean(), (car, frontRate, rearRate, byGradient) => {
          const { gradient, frontTransferShare } = rollGradient(car);
          fc.pre(gradient > 1e-3 && frontTransferShare > 0.05 && frontTransferShare < 0.95);
          const other = {
            ...car,
            ...(front ? { front: { ...car.front, [part]: frontRate } } : {}),
            ...(rear ? { rear: { ...car.rear, [part]: rearRate } } : {}),
          };
          const one: RollAim = byGradient ? { gradient } : { frontTransferShare };
          const aim = front && rear ? { gradient, frontTransferShare } : one;
          const reached = reachRoll(other, { change, aim });
          expect(Math.abs(reached.front[part] - car.front[part])).toBeLessThan(0.01);
          expect(Math.abs(reached.rear[part] - car.rear[part])).toBeLessThan(0.01);
          const found = rollGradient(reached);
          if (aim.gradient !== undefined) expect(found.gradient / gradient).toBeCloseTo(1, 9);
          if (aim.frontTransferShare !== undefined)
            expect(found.frontTransferShare).toBeCloseTo(frontTransferShare, 9);
        }),
      );
    },
  );

  test("changes nothing but the part asked for", () => {
    const frontTransferShare = rollGradient(sampleCar).frontTransferShare - 0.05;
    const reached = reachRoll(sampleCar, { change: "rearBar", aim: { frontTransferShare } });
    expect(reached.front).toEqual(sampleCar.front);
    expect({ ...reached.rear, barWheelRate: 3000 }).toEqual(sampleCar.rear);
    expect(reached.rear.barWheelRate).toBeGreaterThan(3000);
    expect(rollGradient(reached).frontTransferShare).toBeCloseTo(frontTransferShare, 12);
  });

  test("less roll and more of it in front: a stiffer front bar, a softer rear one", () => {
    const { gradient, frontTransferShare } = rollGradient(sampleCar);
    const aim = { gradient: gradient * 0.98, frontTransferShare: frontTransferShare + 0.03 };
    const reached = reachRoll(sampleCar, { change: "bars", aim });
    expect(reached.front.barWheelRate).toBeGreaterThan(8000);
    expect(reached.rear.barWheelRate).toBeLessThan(3000);
  });
});

test("an axle that leans further on its tyres than the body rolls is reached all the same", () => {
  // Its springs push back, so their moment and their roll are both negative: the rate is not.
  const car = {
    front: { ...sampleCar.front, track: 1.68, rollCentreHeight: 0, springWheelRate: 50_000, barWheelRate: 0 },
    rear: {
      ...sampleCar.rear,
      track: 1.13,
      mass: 683,
      rollCentreHeight: 0.3,
      springWheelRate: 50_000,
      springBase: 0.7,
      tyreRate: 120_000,
    },
    cgHeight: 0.35,
  };
  const { gradient } = rollGradient(car);
  const lean = (1 / (60_000 * 1.13 ** 2)) * (608 * 0.3 + 75 * 0.29);
  expect(gradient).toBeLessThan(lean);
  const other = { ...car, rear: { ...car.rear, barWheelRate: 16_000 } };
  expect(reachRoll(other, { change: "rearBar", aim: { gradient } }).rear.barWheelRate).toBeCloseTo(3000, 3);
});

describe("what cannot be reached", () => {
  const { gradient, frontTransferShare } = rollGradient(sampleCar);
  const attempt = (change: RollChange, aim: RollAim, car = sampleCar): unknown => {
    try {
      return reachRoll(car, { change, aim });
    } catch (error) {
      return error;
    }
  };
  test.each<[string, RollChange, RollAim, string, string, RegExp]>([
    ["two axles want two aims", "bars", { gradient }, "AIM_DOES_NOT_FIT", "gradient", /give both/],
    [
      "two axles want two aims, this one too",
      "bars",
      { frontTransferShare },
      "AIM_DOES_NOT_FIT",
      "gradient",
      /give both/,
    ],
    [
      "one axle wants one",
      "rearBar",
      { gradient, frontTransferShare },
      "AIM_DOES_NOT_FIT",
      "gradient",
      /give one of them/,
    ],
    ["one axle wants any", "rearBar", {}, "AIM_DOES_NOT_FIT", "gradient", /give one of them/],
    [
      "no share above 1",
      "bars",
      { gradient, frontTransferShare: 1 },
      "SHARE_OUT_OF_RANGE",
      "frontTransferShare",
      /but is 1/,
    ],
    [
      "no share of 0",
      "frontBar",
      { frontTransferShare: 0 },
      "SHARE_OUT_OF_RANGE",
      "frontTransferShare",
      /but is 0/,
    ],
    ["no gradient of 0", "bars", { gradient: 0, frontTransferShare }, "NOT_POSITIVE", "gradient", /gradient/],
    ["no gradient of 0 at one axle", "frontBar", { gradient: 0 }, "NOT_POSITIVE", "gradient", /gradient/],
    [
      "springs already too stiff",
      "bars",
      { gradient: gradient * 1.5, frontTransferShare },
      "OUT_OF_REACH",
      "rear",
      /rear springs alone give .*°, the aim wants .*°/,
    ],
    [
      "a share the rear springs forbid",
      "rearBar",
      { frontTransferShare: 0.9 },
      "OUT_OF_REACH",
      "rear",
      /would have to push the rear the wrong way/,
    ],
    [
      "bars already too stiff for springs",
      "frontSprings",
      { gradient: gradient * 1.9 },
      "OUT_OF_REACH",
      "front",
      /front bar alone gives 118 N·m\/°, the aim wants 65.08 N·m\/°/,
    ],
  ])("%s", (_title, change, aim, code, place, message) => {
    const error = attempt(change, aim);
    expect(error).toBeInstanceOf(CalcRefusal);
    expect(error).toMatchObject({ code, place });
    expect(String(error)).toMatch(message);
  });

  test("tyres that roll further than the aim by themselves", () => {
    const tyreRate = 40_000;
    const soft = {
      ...sampleCar,
      front: { ...sampleCar.front, tyreRate },
      rear: { ...sampleCar.rear, tyreRate },
    };
    const error = attempt("bars", { gradient: 0.002, frontTransferShare: 0.5 }, soft);
    expect(String(error)).toContain("tyres alone roll further than that");
  });

  test("a share only springs that push the wrong way would give", () => {
    const error = attempt("bars", { gradient, frontTransferShare: 0.02 });
    expect(String(error)).toContain("springs and bar would have to push the front the wrong way");
  });

  test("a share that only a car would have that falls over, or rolls inwards", () => {
    const weakRear = {
      front: { ...sampleCar.front, barWheelRate: 0 },
      rear: { ...sampleCar.rear, springWheelRate: 1000, barWheelRate: 0 },
      cgHeight: 0.6,
    };
    expect(attempt("frontSprings", { frontTransferShare: 0.3 }, weakRear)).toMatchObject({
      code: "FALLS_OVER",
    });
    const inwards = attempt("frontSprings", { frontTransferShare: 0.95 }, weakRear);
    expect(String(inwards)).toContain("the body would have to roll inwards");
  });

  test("a bar may come out as none at all", () => {
    const bare = rollGradient({ ...sampleCar, rear: { ...sampleCar.rear, barWheelRate: 0 } });
    const reached = reachRoll(sampleCar, {
      change: "rearBar",
      aim: { gradient: bare.gradient * (1 - 1e-12) },
    });
    expect(reached.rear.barWheelRate).toBeCloseTo(0, 3);
  });
});
