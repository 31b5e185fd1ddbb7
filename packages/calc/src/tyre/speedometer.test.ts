import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allowedFactors, judgeReading, readingFactorAfter, speedometerTestSpeeds } from "./speedometer";

const kmh = 1 / 3.6;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a reading", () => {
  test("at either limit is still within (limits inclusive), beyond it is not", () => {
    fc.assert(
      fc.property(between(5, 250), (speed) => {
        const highest = speed * 1.1 + 4;
        expect(judgeReading(speed * kmh, speed * kmh)).toBe("within");
        expect(judgeReading(highest * kmh, speed * kmh)).toBe("within");
        expect(judgeReading((speed - 1e-4) * kmh, speed * kmh)).toBe("low");
        expect(judgeReading((highest + 1e-4) * kmh, speed * kmh)).toBe("high");
      }),
    );
    expect(judgeReading(0, 0)).toBe("within");
    expect(() => judgeReading(-1, 0)).toThrow(/indicated/);
    expect(() => judgeReading(1, -1)).toThrow(/trueSpeed/);
  });
});

describe("test speeds by top speed (UN R39 5.2.5, from memory)", () => {
  test.each<[number, number[]]>([
    [40, [32]],
    [45, [36]],
    [60, [40]],
    [68.75, [40, 55]],
    [100, [40, 80]],
    [120, [40, 80]],
    [125, [40, 80, 100]],
    [150, [40, 80, 120]],
    [151, [40, 80, 120]],
    [220, [40, 80, 120]],
  ])("%d km/h is tested at %j", (top, expected) => {
    expect(speedometerTestSpeeds(top * kmh).map((speed) => Number((speed * 3.6).toFixed(6)))).toEqual(
      expected,
    );
  });
  test("no top speed, no test", () => {
    expect(() => speedometerTestSpeeds(0)).toThrow(/topSpeed/);
  });
});

describe("after a tyre change", () => {
  const circumferences = fc.record({ before: between(1.5, 2.2), after: between(1.5, 2.2) });
  test("larger tyres read less; there and back is where it was", () => {
    fc.assert(
      fc.property(circumferences, between(1, 1.1), ({ before, after }, factor) => {
        fc.pre(Math.abs(after / before - 1) > 1e-9);
        const changed = readingFactorAfter(factor, { before, after });
        expect(Math.sign(factor - changed)).toBe(Math.sign(after - before));
        expect(readingFactorAfter(changed, { before: after, after: before })).toBeCloseTo(factor, 12);
      }),
    );
    for (const place of ["before", "after"] as const)
      expect(() => readingFactorAfter(1, { before: 1, after: 1, [place]: 0 })).toThrow(place);
    expect(() => readingFactorAfter(0, { before: 1, after: 1 })).toThrow(/factor/);
  });

  test("the factors allowed are exactly those judged within at every speed shown", () => {
    const shown = [40, 80, 120].map((speed) => speed * kmh);
    const { least, greatest } = allowedFactors(shown);
    const judged = (factor: number) => shown.map((speed) => judgeReading(speed, speed / factor));
    expect(new Set(judged(least))).toEqual(new Set(["within"]));
    expect(new Set(judged(greatest))).toEqual(new Set(["within"]));
    expect(judged(greatest + 1e-6)).toEqual(["within", "within", "high"]);
    expect(judged(least - 1e-6)).toEqual(["low", "low", "low"]);
    expect(greatest).toBeCloseTo(132 / 116, 12);
    expect(() => allowedFactors([4 * kmh])).toThrow(/shown less 4 km\/h/);
  });
});
