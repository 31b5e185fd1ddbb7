import { describe, expect, test } from "vitest";
import { ZodError } from "zod";
import { CalcRefusal } from "../catalogue/refusal";
import { runComputation } from "../catalogue/run";
import { axesComputation } from "./axes.entry";
import { setBackComputation, thrustComputation } from "./axle.entry";
import { alignmentComputations } from "./catalogue";
import { ackermannComputation, castorSwingComputation } from "./steer.entry";
import { camberAtRimComputation, toeAtRimComputation, toeFromRimComputation } from "./toe.entry";

const text = (run: ReturnType<typeof runComputation>, name: string): string | undefined =>
  run.outputs[name]?.text;

test.each(alignmentComputations.map((one) => [one.name, one] as const))(
  "%s runs its own example",
  (name, one) => {
    expect(name).toMatch(/^alignment\.[a-zA-Z]+$/);
    const run = runComputation(one, one.example);
    expect(run.working.length).toBeGreaterThan(2);
    expect(run.warnings).toEqual([]);
  },
);

describe("toe", () => {
  test("20 minutes in all on a 15 in rim is about 2.2 mm (common practice, no source)", () => {
    const run = runComputation(toeAtRimComputation, { toeIn: "0°20' toe-in total", rimDiameter: "15 in" });
    expect(text(run, "totalDistance")).toBe("2.22 mm");
    expect(text(run, "anglePerWheel")).toBe("10.00'");
  });

  test("ALI-08 (from memory): 1/16 in total over 13 in is 16.53 minutes", () => {
    const run = runComputation(toeFromRimComputation, {
      distance: "1/16 in",
      share: "total",
      rimDiameter: "13 in",
    });
    expect(text(run, "totalAngle")).toBe("16.53'");
    const perSide = runComputation(toeFromRimComputation, {
      distance: "1/32 in",
      share: "per side",
      rimDiameter: "13 in",
    });
    expect(perSide.outputs).toEqual(run.outputs);
  });

  test("out is negative, however it is written", () => {
    const words = runComputation(toeAtRimComputation, {
      toeIn: "2 mm toe-out total on 381 mm rim",
      rimDiameter: "381 mm",
    });
    expect(Number(words.outputs.totalDistance?.si)).toBeCloseTo(-0.002, 12);
    expect(
      runComputation(toeAtRimComputation, { toeIn: -0.001, rimDiameter: 0.381 }).outputs.totalAngle?.si,
    ).toBeCloseTo(-0.002, 12);
  });

  test("an entry that does not say enough is asked for what is missing, and too much is refused", () => {
    const run = (toeIn: unknown) => () =>
      runComputation(toeAtRimComputation, { toeIn, rimDiameter: "13 in" });
    expect(run("0°20'")).toThrow(ZodError);
    expect(run("0°20' toe-in")).toThrow(/per side or total/);
    expect(run("2 mm toe-in total")).toThrow(/rim/);
    expect(run(1)).toThrow(/Toe must lie within ±45°/);
    expect(run(null)).toThrow(/a number \(in rad\) or toe in words is wanted/);
    expect(() =>
      runComputation(toeFromRimComputation, { distance: "0.5 m", share: "per side", rimDiameter: "13 in" }),
    ).toThrow(CalcRefusal);
  });
});

test("ALI-10 (from memory): a degree of camber over 330.2 mm is 5.763 mm", () => {
  expect(
    text(runComputation(camberAtRimComputation, { camber: "1°", rimDiameter: "330.2 mm" }), "distance"),
  ).toBe("5.76 mm");
});

test("ALI-16 (from memory): 12' left and 4' right point the car 4' to the right", () => {
  const run = runComputation(thrustComputation, thrustComputation.example);
  expect([text(run, "thrust"), text(run, "totalToe")]).toEqual(["4.00'", "16.00'"]);
});

test("set-back is the difference of the wheelbases", () => {
  const run = runComputation(setBackComputation, {
    leftWheelbase: "2300 mm",
    rightWheelbase: "2310 mm",
    track: "1.3 m",
  });
  expect(text(run, "distance")).toBe("-10.0 mm");
  expect(Number(run.outputs.angle?.si)).toBeCloseTo(-Math.atan(10 / 1300), 12);
});

describe("steering", () => {
  test("ALI-11 (formula read): 30° inside is 23.74° outside at 1300 over 2400", () => {
    const run = runComputation(ackermannComputation, {
      inner: "30°",
      wheelbase: "2.4 m",
      kingpinTrack: "1.3 m",
    });
    expect(text(run, "idealOuter")).toBe("23.74°");
    expect(run.outputs.ratio?.si).toBeNull();
    expect(run.warnings).toHaveLength(1);
  });

  test("the steer angle of the turn lies between both wheels' ideal angles", () => {
    const { outputs } = runComputation(ackermannComputation, ackermannComputation.example);
    expect(Number(outputs.steer?.si)).toBeLessThan((30 * Math.PI) / 180);
    expect(Number(outputs.steer?.si)).toBeGreaterThan(Number(outputs.idealOuter?.si));
    expect(Number(outputs.ratio?.si)).toBeCloseTo((30 - 26) / (30 - 23.7403), 3);
  });

  test("ALI-14 (from memory): the gauge shows 5.02° where castor is 5° and kingpin 10°", () => {
    const run = runComputation(castorSwingComputation, castorSwingComputation.example);
    expect(text(run, "gaugeCastor")).toBe("5.02°");
    expect(text(run, "castor")).toBe("5.00°");
    expect(Number(run.outputs.kingpin?.si)).toBeCloseTo((10 * Math.PI) / 180, 3);
    const { straight: _, ...without } = castorSwingComputation.example;
    expect(runComputation(castorSwingComputation, without).outputs.castor?.si).toBeNull();
  });
});

test("axes on the right show the same trade angles and opposite ISO angles", () => {
  const mirror = {
    side: "right",
    spinAxis: { x: 0.003, y: -1, z: 0.009 },
    steeringAxis: { x: -0.09, y: 0.16, z: 1 },
  };
  const left = runComputation(axesComputation, axesComputation.example).outputs;
  const right = runComputation(axesComputation, mirror).outputs;
  for (const name of ["camber", "toeIn", "castor", "kingpin"])
    expect(right[name]?.si).toBeCloseTo(Number(left[name]?.si), 12);
  for (const name of ["inclination", "steer"])
    expect(right[name]?.si).toBeCloseTo(-Number(left[name]?.si), 12);
  const { steeringAxis: _, ...spinOnly } = mirror;
  expect(runComputation(axesComputation, spinOnly).warnings).toHaveLength(1);
  expect(() => runComputation(axesComputation, { ...mirror, spinAxis: { x: 0, y: 0, z: 0 } })).toThrow(
    "an axis needs a finite length",
  );
});
