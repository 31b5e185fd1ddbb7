import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { barComputations } from "./catalogue";
import { barMotionRatioComputation } from "./motion.entry";
import { barRateComputation } from "./rate.entry";
import { barRatioComputation } from "./ratio.entry";
import { barDiameterComputation } from "./size.entry";
import { barStressComputation } from "./stress.entry";

const shape = { middleLength: "900 mm", leverLength: "200 mm", armLength: "200 mm" };
const si = (run: ReturnType<typeof runComputation>, name: string): number => Number(run.outputs[name]?.si);

describe("the bar's catalogue entries", () => {
  test.each(barComputations.map((one) => [one.name, one] as const))(
    "%s runs its own example",
    (name, one) => {
      expect(name).toMatch(/^bar\.[a-zA-Z]+$/);
      const run = runComputation(one, one.example);
      expect(run.working.length).toBeGreaterThan(2);
      expect(run.working.every(({ text }) => text !== "")).toBe(true);
      expect(run.warnings).toEqual([]);
    },
  );
});

describe("bar.rate", () => {
  test("says nothing at the wheel without a motion ratio, and nothing in roll without a track", () => {
    const bare = runComputation(barRateComputation, { diameter: "20 mm", ...shape });
    expect(bare.outputs.wheelRate?.text).toBe("no value");
    const atWheel = runComputation(barRateComputation, { diameter: "20 mm", ...shape, motionRatio: 0.5 });
    expect(si(atWheel, "wheelRate")).toBeCloseTo(si(bare, "rate") / 4, 6);
    expect(atWheel.outputs.rollRate?.si).toBeNull();
    const inRoll = runComputation(barRateComputation, {
      diameter: "20 mm",
      ...shape,
      motionRatio: 0.5,
      track: "1.4 m",
    });
    expect(si(inRoll, "rollRate")).toBeCloseTo((si(atWheel, "wheelRate") * 1.4 ** 2) / 2, 6);
    expect(si(inRoll, "rateOneEndHeld")).toBeCloseTo(si(bare, "rate") / 2, 9);
  });

  test("says what it took where nothing was given, and how much links take", () => {
    const stiff = runComputation(barRateComputation, { diameter: "20 mm", ...shape });
    expect(
      stiff.working.filter(
        ({ note, value }) => note?.startsWith("taken") || String(value).startsWith("not given"),
      ),
    ).toHaveLength(5);
    expect(si(stiff, "softening")).toBe(0);
    const linked = runComputation(barRateComputation, {
      diameter: "20 mm",
      ...shape,
      linkRate: si(stiff, "rate"),
    });
    expect(si(linked, "softening")).toBeCloseTo(0.5, 12);
    expect(si(linked, "rate")).toBeCloseTo(si(stiff, "rate") / 2, 6);
    const all = {
      youngModulus: "207 GPa",
      shearModulus: "79.3 GPa",
      bushSpacing: "900 mm",
      linkRate: "1 kN/mm",
      bushRate: "9 kN/mm",
    };
    expect(() => runComputation(barRateComputation, { diameter: "20 mm", ...shape, ...all })).toThrow(
      /kN\/mm/,
    );
    const given = { ...all, linkRate: "1000 N/mm", bushRate: "9000 N/mm" };
    const { working } = runComputation(barRateComputation, { diameter: "20 mm", ...shape, ...given });
    expect(
      working.some(({ note, value }) => note?.startsWith("taken") || String(value).startsWith("not given")),
    ).toBe(false);
  });

  test("the parts of the working add up to 1 kN over the rate", () => {
    const run = runComputation(barRateComputation, barRateComputation.example);
    const parts = run.working.filter(({ symbol }) => symbol.startsWith("x_"));
    expect(parts).toHaveLength(5);
    const sum = parts.reduce((total, { value }) => total + Number(value), 0);
    expect(1000 / sum).toBeCloseTo(si(run, "rate"), 6);
  });

  test("warns of an arm much longer than its lever", () => {
    const cranked = runComputation(barRateComputation, { diameter: "20 mm", ...shape, armLength: "301 mm" });
    expect(cranked.warnings).toHaveLength(1);
    expect(
      runComputation(barRateComputation, { diameter: "20 mm", ...shape, armLength: "300 mm" }).warnings,
    ).toEqual([]);
  });
});

test("bar.ratio: 20 mm for 16 mm is 2.44 times as stiff, 144 % more", () => {
  const run = runComputation(barRatioComputation, barRatioComputation.example);
  expect(si(run, "ratio")).toBeCloseTo(2.44140625, 10);
  expect(run.outputs.change?.text).toBe("144.1 %");
  expect(() =>
    runComputation(barRatioComputation, { before: { diameter: "16 mm", bor: 1 }, after: {} }),
  ).toThrow(/bor/);
});

describe("bar.stress", () => {
  const bar = { diameter: "20 mm", ...shape };
  test("gives the same for a movement and for the roll that makes it", () => {
    const byRoll = runComputation(barStressComputation, {
      ...bar,
      rollAngle: 0.05,
      track: 1.3,
      motionRatio: 0.6,
    });
    const byMovement = runComputation(barStressComputation, { ...bar, endMovement: (0.6 * 0.05 * 1.3) / 2 });
    expect(si(byRoll, "stress")).toBeCloseTo(si(byMovement, "stress"), 3);
    expect(byRoll.caution).toContain("fatigue");
  });

  test("never calls an unknown material good, and tells yield from elastic", () => {
    const load = { ...bar, endMovement: "20 mm" };
    const unknown = runComputation(barStressComputation, load);
    expect(unknown.outputs.verdict?.text).toBe("cannot tell: the yield strength of the bar is not known");
    expect(unknown.outputs.reserve?.si).toBeNull();
    const stress = si(unknown, "stress");
    const good = runComputation(barStressComputation, { ...load, yieldStrength: stress * 1.5 });
    expect(good.outputs.verdict?.text).toBe("stays elastic");
    expect(si(good, "reserve")).toBeCloseTo(1.5, 9);
    const bad = runComputation(barStressComputation, { ...load, yieldStrength: stress });
    expect(bad.outputs.verdict?.text).toBe("yields: the bar takes a set");
    expect(good.outputs.place?.text).toBe("arm, at the bend");
    const overhung = runComputation(barStressComputation, { ...load, bushSpacing: "200 mm" });
    expect(overhung.outputs.place?.text).toBe("middle, at the mounting bush");
  });

  test("wants one load, and only one", () => {
    expect(() => runComputation(barStressComputation, bar)).toThrow(/give the movement of the bar's end/);
    expect(() => runComputation(barStressComputation, { ...bar, rollAngle: "3°" })).toThrow(/together/);
    expect(() => runComputation(barStressComputation, { ...bar, rollAngle: "3°", track: 1.3 })).toThrow(
      /together/,
    );
    const both = { ...bar, endMovement: "1 mm", rollAngle: "3°", track: 1.3, motionRatio: 0.6 };
    expect(() => runComputation(barStressComputation, both)).toThrow(/not both/);
    const still = runComputation(barStressComputation, { ...bar, endMovement: 0, yieldStrength: "1200 MPa" });
    expect(still.outputs.reserve?.si).toBeNull();
    expect(still.outputs.verdict?.text).toBe("stays elastic");
  });
});

test("bar.diameter: the bar it asks for has the rate wanted, bore in proportion", () => {
  const present = { diameter: "20 mm", bore: "10 mm", ...shape, linkRate: "300 N/mm" };
  const run = runComputation(barDiameterComputation, { ...present, wantedRate: "30 N/mm" });
  const [diameter, bore] = [si(run, "diameter"), si(run, "bore")];
  expect(bore / diameter).toBeCloseTo(0.5, 12);
  const check = runComputation(barRateComputation, { ...present, diameter, bore });
  expect(si(check, "rate")).toBeCloseTo(30_000, 4);
  expect(si(run, "presentRate")).toBeCloseTo(si(runComputation(barRateComputation, present), "rate"), 9);
  const solid = runComputation(barDiameterComputation, barDiameterComputation.example);
  expect(si(solid, "bore")).toBe(0);
});

test("bar.motionRatio: 3 in in from the joint of a 19 in arm is 0.8421", () => {
  expect(
    runComputation(barMotionRatioComputation, barMotionRatioComputation.example).outputs.motionRatio?.text,
  ).toBe("0.8421");
});
