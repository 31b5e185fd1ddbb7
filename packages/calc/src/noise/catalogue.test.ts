import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { noiseBackgroundComputation } from "./background.entry";
import { noiseComputations } from "./catalogue";
import { noiseDistanceComputation } from "./distance.entry";
import { noiseMarginComputation } from "./margin.entry";
import { noiseSumComputation } from "./sum.entry";
import { noiseTestSpeedComputation } from "./test-speed.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const text = (run: Run, name: string): string | undefined => run.outputs[name]?.text;

test.each(noiseComputations.map((one) => [one.name, one] as const))(
  "%s runs its own example",
  (name, one) => {
    expect(name).toMatch(/^noise\.[a-zA-Z]+$/);
    const run = runComputation(one, one.example);
    expect(run.working.length).toBeGreaterThan(2);
    expect(run.working.every((line) => line.text !== "")).toBe(true);
    expect(run.warnings).toEqual([]);
    expect(run.caution).toContain("Hearing suffers");
  },
);

test("noise.distance: ten times as far is 20 dB less; near field is warned of at either end", () => {
  const run = runComputation(noiseDistanceComputation, noiseDistanceComputation.example);
  expect([text(run, "level"), text(run, "drop")]).toEqual(["72.0 dB(A)", "20.00 dB"]);
  for (const [from, to, count] of [
    ["0.5 m", "2 m", 1],
    ["2 m", "0.5 m", 1],
    ["1 m", "2 m", 0],
  ] as const)
    expect(runComputation(noiseDistanceComputation, { level: "100 dB(A)", from, to }).warnings).toHaveLength(
      count,
    );
});

test("noise.sum: two alike and a quieter third", () => {
  const run = runComputation(noiseSumComputation, noiseSumComputation.example);
  const expected = 10 * Math.log10(2 * 10 ** 9.8 + 10 ** 9);
  expect(si(run, "level")).toBeCloseTo(expected, 9);
  expect(si(run, "aboveLoudest")).toBeCloseTo(expected - 98, 9);
  expect(run.working).toHaveLength(5);
  expect(() => runComputation(noiseSumComputation, { levels: [] })).toThrow();
  expect(() =>
    runComputation(noiseSumComputation, { levels: Array.from({ length: 51 }, () => 80) }),
  ).toThrow();
});

test("noise.background: 10 dB between is quiet enough, less is not, less than 3 is refused", () => {
  const at = (background: number) => runComputation(noiseBackgroundComputation, { reading: 96, background });
  expect(text(at(86), "verdict")).toBe("quiet enough");
  expect(at(86).warnings).toEqual([]);
  expect(si(at(86), "correction")).toBeCloseTo(0.4576, 4);
  expect(si(at(86), "level")).toBeCloseTo(96 - 0.4576, 4);
  expect(si(at(86), "margin")).toBe(10);
  expect(text(at(87), "verdict")).toContain("too loud");
  expect(at(87).warnings).toHaveLength(1);
  expect(() => at(94)).toThrow(/at least 3 dB above/);
});

describe("noise.margin", () => {
  const known = { limit: 100, meterAccuracy: 1.2, otherUncertainty: 0.4 };
  const U = 2 * Math.sqrt(1.2 ** 2 / 3 + 0.16);

  test("the highest reading counts, against the limit with its uncertainty", () => {
    const run = runComputation(noiseMarginComputation, { ...known, readings: [97, 98, 97.5] });
    expect([si(run, "level"), si(run, "margin"), si(run, "spread")]).toEqual([98, 2, 1]);
    expect(si(run, "expandedUncertainty")).toBeCloseTo(U, 12);
    expect(text(run, "verdict")).toBe("inside");
    expect(run.working.slice(0, 3).map(({ symbol, label }) => [symbol, label])).toEqual([
      ["L1", "Reading 1"],
      ["L2", "Reading 2"],
      ["L3", "Reading 3"],
    ]);
    expect(run.working.some((line) => line.text.startsWith("not given"))).toBe(false);
    expect(
      text(runComputation(noiseMarginComputation, { ...known, readings: [99, 98, 99] }), "verdict"),
    ).toBe("cannot tell");
    expect(
      text(runComputation(noiseMarginComputation, { ...known, readings: [102, 102, 102] }), "verdict"),
    ).toBe("outside");
  });

  test("an unknown meter proves nothing, however quiet the car", () => {
    const run = runComputation(noiseMarginComputation, { limit: 100, readings: [60, 60, 60] });
    expect(text(run, "verdict")).toBe("cannot tell");
    expect(run.outputs.expandedUncertainty?.si).toBeNull();
    expect(run.working.some((line) => line.text === "not given: nothing can be proven")).toBe(true);
  });

  test.each([
    [[97, 95, 96], undefined, []],
    [[97, 94.9, 96], undefined, ["differ by more than 2 dB"]],
    [[97, 96], undefined, ["Fewer than three"]],
    [[97, 97, 97], 87, []],
    [[97, 97, 97], 88, ["background is less than 10 dB"]],
  ])("readings %j over a background of %s: %j", (readings, background, expected) => {
    const { warnings } = runComputation(noiseMarginComputation, { ...known, readings, background });
    expect(warnings).toEqual(expected.map((part) => expect.stringContaining(part)));
  });
});

test("noise.testSpeed: three rules, three speeds", () => {
  const run = runComputation(noiseTestSpeedComputation, noiseTestSpeedComputation.example);
  expect([text(run, "stationary"), text(run, "threeQuarters"), text(run, "twoThirds")]).toEqual([
    "3750 rev/min",
    "4500 rev/min",
    "4000 rev/min",
  ]);
});
