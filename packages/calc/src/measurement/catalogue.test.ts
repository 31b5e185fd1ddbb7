import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { measurementComputations } from "./catalogue";
import { outlierComputation } from "./outlier.entry";
import { repeatabilityComputation } from "./repeatability.entry";
import { uncertaintyComputation } from "./uncertainty.entry";
import { verdictComputation } from "./verdict.entry";

const minute = Math.PI / 180 / 60;
const text = (run: ReturnType<typeof runComputation>, name: string) => run.outputs[name]?.text;
const step = (run: ReturnType<typeof runComputation>, symbol: string) =>
  run.working.find((each) => each.symbol === symbol);

test.each(measurementComputations.map((one) => [one.name, one] as const))(
  "%s runs its example",
  (name, one) => {
    expect(name).toMatch(/^measurement\.[a-z]+$/);
    const run = runComputation(one, one.example);
    expect(run.working.length).toBeGreaterThan(2);
    expect(run.warnings).toEqual([]);
  },
);

describe("measurement.uncertainty", () => {
  test("takes the resolution that the readings' own text implies, and says so", () => {
    const run = runComputation(uncertaintyComputation, { dimension: "length", readings: ["12.5 mm"] });
    expect(step(run, "u_r")?.note).toContain("taken");
    expect(step(run, "u_r")?.value).toBeCloseTo(0.0001 / Math.sqrt(12), 12);
    expect(run.warnings).toHaveLength(2);
    expect(text(run, "result")).toBe("12.5 mm ± 0.05774 mm (k = 2)");
  });

  test("adds resolution, instrument, calibration and scatter by root-sum-square", () => {
    const run = runComputation(uncertaintyComputation, {
      dimension: "length",
      unit: "mm",
      readings: ["10", "10", "10", "10"],
      resolution: "0.1 mm",
      accuracy: "0.2 mm",
      calibration: "0.06",
      scatter: "0.2",
    });
    const expected = 2 * Math.hypot(0.1 / Math.sqrt(12), 0.2 / Math.sqrt(3), 0.03, 0.2 / 2);
    expect(Number(step(run, "U")?.value) * 1000).toBeCloseTo(expected, 12);
    expect(text(run, "largest")).toBe("instrument, maker's accuracy");
    expect(run.warnings).toEqual([]);
  });

  test("warns of few readings, and refuses to invent an uncertainty", () => {
    const few = runComputation(uncertaintyComputation, {
      dimension: "mass",
      readings: ["201 kg", "203 kg"],
      accuracy: "0.1 kg",
    });
    expect(few.warnings.join()).toMatch(/effective degrees of freedom/);
    const bare = { dimension: "mass", readings: [200] };
    expect(() => runComputation(uncertaintyComputation, bare)).toThrow(/uncertainty is not known/);
  });

  test("keeps a temperature's uncertainty a difference", () => {
    const run = runComputation(uncertaintyComputation, {
      dimension: "temperature",
      readings: ["80 °C"],
      resolution: "1 °C",
      accuracy: "2 °C",
    });
    expect(text(run, "value")).toBe("80 °C");
    expect(Number(step(run, "U")?.value)).toBeCloseTo(
      2 * Math.hypot(1 / Math.sqrt(12), 2 / Math.sqrt(3)),
      12,
    );
  });

  test("quotes what it cannot read", () => {
    const readings = ["12 furlongs"];
    expect(() => runComputation(uncertaintyComputation, { dimension: "length", readings })).toThrow(
      /12 furlongs/,
    );
    const none = { dimension: "length", unit: "psi", readings: ["1"] };
    expect(() => runComputation(uncertaintyComputation, none)).toThrow(/"psi" is no unit of length/);
    const negative = { dimension: "length", readings: ["1 mm"], accuracy: "-1 mm" };
    expect(() => runComputation(uncertaintyComputation, negative)).toThrow(/accuracy must be zero or more/);
  });
});

test("every figure is an SI number with its unit and text, as any other computation's", () => {
  const readings = ["80 °C", "82 °C", "81 °C", "81 °C", "81 °C"];
  const input = { dimension: "temperature", readings };
  const { mean, standardDeviation, range } = runComputation(repeatabilityComputation, input).outputs;
  expect(mean).toEqual({ si: expect.closeTo(354.15, 9), unit: "°C", text: "81 °C" });
  // A scatter is a difference: 1 °C of it is 1 K, not 274.15 K.
  expect(standardDeviation).toEqual({ si: expect.closeTo(Math.SQRT1_2, 12), unit: "°C", text: "0.7071 °C" });
  expect(range?.si).toBeCloseTo(2, 12);
  const { value, standardUncertainty, expandedUncertainty } = runComputation(uncertaintyComputation, {
    ...input,
    accuracy: "1 °C",
  }).outputs;
  expect(value?.si).toBeCloseTo(354.15, 9);
  expect(Number(expandedUncertainty?.si)).toBeCloseTo(2 * Number(standardUncertainty?.si), 12);
  const { median, scale } = runComputation(outlierComputation, input).outputs;
  expect(median?.si).toBeCloseTo(354.15, 9);
  expect(scale?.unit).toBe("°C");
});

describe("measurement.verdict", () => {
  const toe = {
    dimension: "angle",
    unit: "°'",
    lower: "5'",
    upper: "15'",
    resolution: 0,
    calibration: "1.5'",
  };
  const judge = (reading: string) => runComputation(verdictComputation, { ...toe, readings: [reading] });

  test("MEA-18, MEA-19: acceptance 6.5' to 13.5', and 5.8' cannot be told", () => {
    expect(text(judge("5.8'"), "verdict")).toBe("cannot tell");
    expect(text(judge("5.8'"), "acceptance")).toBe("0°06.5' to 0°13.5'");
    const { acceptanceLower, acceptanceUpper } = judge("5.8'").outputs;
    expect(acceptanceLower).toEqual({ si: expect.closeTo(6.5 * minute, 12), unit: "°'", text: "0°06.5'" });
    expect(acceptanceUpper).toEqual({ si: expect.closeTo(13.5 * minute, 12), unit: "°'", text: "0°13.5'" });
    expect(text(judge("6.5'"), "verdict")).toBe("inside");
    expect(text(judge("3.4'"), "verdict")).toBe("outside");
  });

  test("never passes what is not known", () => {
    const run = runComputation(verdictComputation, { dimension: "angle", readings: [0.003], upper: "15'" });
    expect(text(run, "verdict")).toBe("cannot tell");
    expect(run.outputs.expandedUncertainty?.si).toBeNull();
    expect(run.warnings.join()).toContain("uncertainty is not known");
  });

  test("with one limit says from or up to; too wide an uncertainty says none", () => {
    const one = { dimension: "pressure", readings: ["28 psi"], accuracy: "1 psi" };
    expect(text(runComputation(verdictComputation, { ...one, lower: "26 psi" }), "acceptance")).toMatch(
      /^from 27\./,
    );
    expect(text(runComputation(verdictComputation, { ...one, upper: "30 psi" }), "acceptance")).toMatch(
      /^up to 28\./,
    );
    const { acceptanceLower, acceptanceUpper } = runComputation(verdictComputation, {
      ...one,
      lower: "26 psi",
    }).outputs;
    expect(acceptanceLower).toMatchObject({ si: expect.any(Number), unit: "psi" });
    expect(acceptanceUpper).toEqual({ si: null, unit: "", text: "no value" });
    const narrow = runComputation(verdictComputation, { ...one, lower: "27.5 psi", upper: "28.5 psi" });
    expect(text(narrow, "acceptance")).toMatch(/^none/);
    expect(narrow.outputs.acceptanceLower?.si).toBeNull();
    expect(narrow.outputs.acceptanceUpper?.si).toBeNull();
    expect(() => runComputation(verdictComputation, one)).toThrow(/neither is given/);
  });

  test("a defined value has no probability, only a verdict", () => {
    const run = runComputation(verdictComputation, {
      dimension: "length",
      readings: [0.01],
      resolution: 0,
      lower: 0.01,
    });
    expect(text(run, "verdict")).toBe("inside");
    expect(run.outputs.probability?.si).toBeNull();
  });
});

test("measurement.repeatability warns of few readings and of scatter hidden by the resolution", () => {
  const run = runComputation(repeatabilityComputation, { dimension: "length", readings: ["3 mm", "3 mm"] });
  expect(run.warnings).toHaveLength(2);
  expect(run.outputs.count?.si).toBe(2);
});

describe("measurement.outlier", () => {
  test("names which, with the score", () => {
    const run = runComputation(outlierComputation, outlierComputation.example);
    expect(run.outputs.outlierCount?.si).toBe(1);
    expect(text(run, "outliers")).toMatch(/^number 6: -3\.5° \(score 9\.8\)$/);
  });

  test("says none, warns of few, and says when the MAD gives way", () => {
    const few = runComputation(outlierComputation, { dimension: "length", readings: [1, 2, 3] });
    expect(text(few, "outliers")).toBe("none");
    expect(few.warnings).toHaveLength(1);
    const equal = runComputation(outlierComputation, { dimension: "length", readings: [1, 1, 1, 1, 2] });
    expect(equal.warnings.join()).toContain("takes the place of the MAD");
  });
});
