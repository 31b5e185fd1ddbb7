import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ballastMass, ballastPlace, frontShareAt, together } from "./ballast";
import { centreInPlan, cgHeight, cgHeightUncertainty, type RaisedAxle } from "./centre";
import { cornerNames, cornerSums, unwarpedCorners } from "./corner";
import { seatLiftForCross, seatLiftLoads, type WarpCar } from "./cross";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const corner = between(80, 500);
const corners = fc.record({ leftFront: corner, rightFront: corner, leftRear: corner, rightRear: corner });

describe("corner weights", () => {
  test("axles, sides and diagonals each add up to the total, and shares to one", () => {
    fc.assert(
      fc.property(corners, (of) => {
        const s = cornerSums(of);
        for (const sum of [s.front + s.rear, s.left + s.right, s.cross + s.otherCross])
          expect(sum / s.total).toBeCloseTo(1, 12);
        expect(s.frontShare + s.rearShare).toBeCloseTo(1, 12);
      }),
    );
  });

  test("unwarped corners keep total, axles and sides", () => {
    fc.assert(
      fc.property(corners, (of) => {
        const [before, after] = [cornerSums(of), cornerSums(unwarpedCorners(of))];
        for (const key of ["total", "front", "rear", "left", "right"] as const)
          expect(after[key] / before[key]).toBeCloseTo(1, 12);
        expect(cornerSums(unwarpedCorners(unwarpedCorners(of))).crossShare).toBeCloseTo(after.crossShare, 12);
      }),
    );
  });

  test("mirrored left to right the cross weight becomes the other diagonal", () => {
    fc.assert(
      fc.property(corners, (of) => {
        const mirrored = {
          leftFront: of.rightFront,
          rightFront: of.leftFront,
          leftRear: of.rightRear,
          rightRear: of.leftRear,
        };
        expect(cornerSums(mirrored).crossShare).toBeCloseTo(1 - cornerSums(of).crossShare, 12);
      }),
    );
  });

  test("a negative, unknown or empty scale is refused", () => {
    const of = { leftFront: 250, rightFront: 250, leftRear: 280, rightRear: 280 };
    expect(() => cornerSums({ ...of, leftRear: -1 })).toThrow(/leftRear must not be negative, but is -1/);
    expect(() => cornerSums({ ...of, rightRear: Number.NaN })).toThrow(/rightRear/);
    expect(() => cornerSums({ leftFront: 0, rightFront: 0, leftRear: 0, rightRear: 0 })).toThrow(
      /show nothing/,
    );
  });
});

describe("a spring seat moved at one corner", () => {
  const rate = between(5e3, 6e4);
  const cars: fc.Arbitrary<WarpCar> = fc.record({
    wheelRates: fc.record({ leftFront: rate, rightFront: rate, leftRear: rate, rightRear: rate }),
    frontTrack: between(1.1, 1.6),
    rearTrack: between(1.1, 1.6),
  });

  test("keeps the weight of each axle and the moment about the car's length", () => {
    fc.assert(
      fc.property(cars, fc.constantFrom(...cornerNames), between(-0.03, 0.03), (car, which, lift) => {
        const d = seatLiftLoads(car, which, lift);
        expect(d.leftFront + d.rightFront).toBeCloseTo(0, 9);
        expect(d.leftRear + d.rightRear).toBeCloseTo(0, 9);
        const moment =
          ((d.leftFront - d.rightFront) * car.frontTrack + (d.leftRear - d.rightRear) * car.rearTrack) / 2;
        expect(moment).toBeCloseTo(0, 9);
        if (lift > 1e-6) expect(d[which]).toBeGreaterThan(0);
      }),
    );
  });

  test("fits the rigid chassis: spring movements and the lift lie in one warped plane", () => {
    fc.assert(
      fc.property(cars, fc.constantFrom(...cornerNames), between(-0.03, 0.03), (car, which, lift) => {
        const d = seatLiftLoads(car, which, lift);
        // Height of the chassis over each wheel: the lift there, less what the spring gives under the change of load.
        const height = (name: (typeof cornerNames)[number]) =>
          (name === which ? lift : 0) - d[name] / car.wheelRates[name];
        const frontRoll = (height("leftFront") - height("rightFront")) / car.frontTrack;
        const rearRoll = (height("leftRear") - height("rightRear")) / car.rearTrack;
        expect(frontRoll).toBeCloseTo(rearRoll, 9);
      }),
    );
  });

  test("with four like wheels each corner changes by k·x/4", () => {
    const k = 2e4;
    const like = {
      wheelRates: { leftFront: k, rightFront: k, leftRear: k, rightRear: k },
      frontTrack: 1.3,
      rearTrack: 1.3,
    };
    expect(seatLiftLoads(like, "rightFront", 0.004).rightFront).toBeCloseTo((k * 0.004) / 4, 9);
  });

  test("the lift that is asked for brings the cross weight where it was wanted, at any corner", () => {
    fc.assert(
      fc.property(
        cars,
        corners,
        fc.constantFrom(...cornerNames),
        between(0.45, 0.55),
        (car, of, which, crossShare) => {
          const lift = seatLiftForCross(car, of, { corner: which, crossShare });
          const d = seatLiftLoads(car, which, lift);
          const total = cornerSums(of).total;
          const reached = cornerSums(of).crossShare + (d.rightFront + d.leftRear) / 9.80665 / total;
          expect(reached).toBeCloseTo(crossShare, 9);
        },
      ),
    );
  });

  test("refuses a rate of nought and a cross weight that is none", () => {
    const k = 2e4;
    const like = {
      wheelRates: { leftFront: k, rightFront: k, leftRear: k, rightRear: k },
      frontTrack: 1.3,
      rearTrack: 1.3,
    };
    const of = { leftFront: 250, rightFront: 250, leftRear: 280, rightRear: 280 };
    expect(() =>
      seatLiftLoads({ ...like, wheelRates: { ...like.wheelRates, leftRear: 0 } }, "leftRear", 0.01),
    ).toThrow(/wheelRates.leftRear/);
    expect(() => seatLiftLoads({ ...like, rearTrack: 0 }, "leftRear", 0.01)).toThrow(/rearTrack/);
    expect(() => seatLiftForCross(like, of, { corner: "leftFront", crossShare: 1 })).toThrow(
      /between 0 and 100 %/,
    );
  });
});

describe("centre of gravity", () => {
  /** Weighs a rigid car whose centre of gravity is known, as the scales would: by turning its points. */
  function weigh(truth: {
    mass: number;
    wheelbase: number;
    behind: number;
    height: number;
    frontRadius: number;
    rearRadius: number;
    lift: number;
    raised: "front" | "rear";
  }): RaisedAxle {
    const { mass, wheelbase, behind, height, frontRadius, rearRadius, lift, raised } = truth;
    const rise = rearRadius - frontRadius;
    const blocks = raised === "rear" ? lift : -lift;
    const angle = Math.asin((rise + blocks) / Math.hypot(wheelbase, rise)) - Math.atan2(rise, wheelbase);
    // Points from the front hub, x rearwards, z up, turned so that the rear end rises.
    const turned = (x: number, z: number) => x * Math.cos(angle) - z * Math.sin(angle);
    const rearLoad = (mass * turned(behind, height - frontRadius)) / turned(wheelbase, rise);
    const rearMass = (mass * behind) / wheelbase;
    return {
      frontMass: mass - rearMass,
      rearMass,
      wheelbase,
      frontRadius,
      rearRadius,
      raised,
      lift,
      lowMass: raised === "rear" ? mass - rearLoad : rearLoad,
    };
  }
  const truths = fc.record({
    mass: between(500, 1500),
    wheelbase: between(2, 2.8),
    behind: between(0.8, 1.3),
    height: between(0.3, 0.7),
    frontRadius: between(0.24, 0.34),
    rearRadius: between(0.24, 0.34),
    lift: between(0.2, 0.8),
    raised: fc.constantFrom("front" as const, "rear" as const),
  });

  test("a car built with a known height gives it back, wheels of any two radii, either end raised", () => {
    fc.assert(
      fc.property(truths, (truth) => {
        expect(cgHeight(weigh(truth)).height).toBeCloseTo(truth.height, 9);
      }),
    );
  });

  test("more load gained means a higher centre of gravity; leaving out a difference of radii is wrong", () => {
    const truth = {
      mass: 900,
      wheelbase: 2.4,
      behind: 1.25,
      height: 0.5,
      frontRadius: 0.28,
      rearRadius: 0.31,
      lift: 0.5,
      raised: "rear" as const,
    };
    const weighing = weigh(truth);
    expect(cgHeight({ ...weighing, lowMass: weighing.lowMass + 1 }).height).toBeGreaterThan(0.5);
    expect(
      Math.abs(cgHeight({ ...weighing, frontRadius: 0.28, rearRadius: 0.28 }).height - 0.5),
    ).toBeGreaterThan(0.005);
  });

  test("its uncertainty is a finite difference away: 1 kg more moves it by the sensitivity", () => {
    fc.assert(
      fc.property(truths, (truth) => {
        const weighing = weigh(truth);
        const moved =
          cgHeight({ ...weighing, lowMass: weighing.lowMass + 0.01 }).height - cgHeight(weighing).height;
        expect(cgHeightUncertainty(weighing, { gain: 0.01 })).toBeCloseTo(Math.abs(moved), 7);
        const all = cgHeightUncertainty(weighing, { gain: 1, lift: 0.002, wheelbase: 0.005, radius: 0.003 });
        expect(all).toBeGreaterThan(cgHeightUncertainty(weighing, { gain: 1 }));
        expect(cgHeightUncertainty(weighing, {})).toBe(0);
      }),
    );
  });

  test("figures that cannot be are refused, quoting them", () => {
    const good: RaisedAxle = {
      frontMass: 430,
      rearMass: 470,
      wheelbase: 2.4,
      frontRadius: 0.29,
      rearRadius: 0.29,
      raised: "rear",
      lift: 0.5,
      lowMass: 450,
    };
    expect(() => cgHeight({ ...good, lowMass: 901 })).toThrow(/cannot carry 901 kg of a car of 900 kg/);
    expect(() => cgHeight({ ...good, lift: 2.4 })).toThrow(/stands the car on end/);
    expect(() => cgHeight({ ...good, lowMass: 380 })).toThrow(/below|above the ground: check which axle/);
    expect(() => cgHeight({ ...good, lift: 0 })).toThrow(/lift/);
    expect(() => cgHeight({ ...good, frontRadius: Number.NaN })).toThrow(/frontRadius/);
  });

  test("in the plan: behind the front axle by the rear's share, left by the moments of both axles", () => {
    const plan = { wheelbase: 2.4, frontTrack: 1.3, rearTrack: 1.2 };
    const even = centreInPlan({ leftFront: 250, rightFront: 250, leftRear: 250, rightRear: 250 }, plan);
    expect(even).toEqual({ behindFront: 1.2, left: 0 });
    const driver = centreInPlan({ leftFront: 240, rightFront: 260, leftRear: 245, rightRear: 255 }, plan);
    expect(driver.left).toBeCloseTo((-20 * 0.65 - 10 * 0.6) / 1000, 12);
    expect(() =>
      centreInPlan({ leftFront: 1, rightFront: 1, leftRear: 1, rightRear: 1 }, { ...plan, rearTrack: 0 }),
    ).toThrow(/rearTrack/);
  });
});

describe("ballast", () => {
  const cars = fc.record({ mass: between(300, 2000), at: between(0.5, 2) });

  test("of the mass asked for, at its place, reaches the target", () => {
    fc.assert(
      fc.property(cars, between(-0.5, 0.5), between(0.01, 3), (car, move, beyond) => {
        const wanted = car.at + move;
        const place = wanted + Math.sign(move) * beyond;
        const mass = ballastMass(car, wanted, place);
        expect(mass).toBeGreaterThanOrEqual(0);
        expect(together(car, { mass, at: place }).at).toBeCloseTo(wanted, 9);
      }),
    );
  });

  test("of a given mass, at the place asked for, reaches the target", () => {
    fc.assert(
      fc.property(cars, between(0.5, 2), between(1, 300), (car, wanted, mass) => {
        const place = ballastPlace(car, wanted, mass);
        expect(together(car, { mass, at: place }).at).toBeCloseTo(wanted, 9);
      }),
    );
  });

  test("further out, less is needed", () => {
    const car = { mass: 800, at: 1.3 };
    expect(ballastMass(car, 1.2, 0.1)).toBeLessThan(ballastMass(car, 1.2, 0.5));
    expect(ballastMass(car, 1.3, 0.5)).toBe(0);
  });

  test("on the wrong side, or no further than the target, is refused with the reason", () => {
    const car = { mass: 800, at: 1.3 };
    expect(() => ballastMass(car, 1.2, 1.25)).toThrow(/must lie beyond the wanted place/);
    expect(() => ballastMass(car, 1.2, 1.2)).toThrow(/must lie beyond/);
    expect(() => ballastMass(car, 1.2, 2)).toThrow(/must lie beyond/);
    expect(() => ballastPlace(car, 1.2, 0)).toThrow(/ballast must be greater/);
    expect(() => together({ mass: 0, at: 1 }, { mass: 0, at: 1 })).toThrow(/mass/);
  });

  test("a mass over the front axle is all on it, over the rear axle none", () => {
    expect([0, 1.2, 2.4].map((at) => frontShareAt(at, 2.4))).toEqual([1, 0.5, 0]);
  });
});
