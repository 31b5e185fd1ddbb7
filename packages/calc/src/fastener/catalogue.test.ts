import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { fastenerComputations } from "./catalogue";
import { engagementComputation } from "./engagement.entry";
import { jointComputation } from "./joint.entry";
import { boltLengthComputation } from "./length.entry";
import { spacerStackComputation } from "./spacer-stack.entry";
import { boltStrengthComputation } from "./strength.entry";
import { lookAlikeComputation, threadPairComputation } from "./thread-pair.entry";
import { boltPreloadComputation, boltTorqueComputation } from "./torque.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const text = (run: Run, name: string) => run.outputs[name]?.text;

test.each(fastenerComputations.map((one) => [one.name, one] as const))(
  "%s runs its example and carries the caution",
  (name, one) => {
    expect(name).toMatch(/^fastener\.[a-zA-Z]+$/);
    expect(one.caution).toContain("competent mechanic");
    const run = runComputation(one, one.example);
    expect(run.working.length).toBeGreaterThan(2);
    expect(run.working.every((step) => step.text !== "")).toBe(true);
  },
);

test("a thread or grade that cannot be read is quoted, with what would be right", () => {
  const run = (change: object) => () =>
    runComputation(boltStrengthComputation, { ...boltStrengthComputation.example, ...change });
  expect(run({ thread: "3/8-25 UNF" })).toThrow(/3\/8-24 UNF/);
  expect(run({ grade: "8" })).toThrow(/figure alone/);
  expect(run({ thread: "1/8 BSW", grade: "grade 8" })).toThrow(/0.25 to 1.5 in/);
});

describe("fastener.strength", () => {
  test("FAS-29, FAS-37: M10 8.8 has 33.7 kN of proof load and breaks at 46.4 kN", () => {
    const run = runComputation(boltStrengthComputation, { thread: "M10", grade: "8.8", planes: 1 });
    expect(Math.abs(si(run, "proofLoad") / 33700 - 1)).toBeLessThanOrEqual(0.003);
    expect(Math.abs(si(run, "tensileLoad") / 46400 - 1)).toBeLessThanOrEqual(0.003);
    expect(run.working.find(({ symbol }) => symbol === "A_s")?.note).toContain(
      "root diameter is for comparison",
    );
  });

  test("a waisted shank carries less, two planes more", () => {
    const one = runComputation(boltStrengthComputation, { thread: "M10", grade: "8.8", planes: 1 });
    const waisted = runComputation(boltStrengthComputation, {
      thread: "M10",
      grade: "8.8",
      planes: 1,
      shankDiameter: "9 mm",
    });
    const two = runComputation(boltStrengthComputation, { thread: "M10", grade: "8.8", planes: 2 });
    expect(si(waisted, "shankShear")).toBeLessThan(si(one, "shankShear"));
    expect(si(two, "shankShear") / si(one, "shankShear")).toBeCloseTo(2, 12);
  });
});

describe("fastener.preload and fastener.torque", () => {
  test("the range of clamp force is that of friction, and the verdict hangs on its upper end", () => {
    const at = (torque: string) =>
      runComputation(boltPreloadComputation, { ...boltPreloadComputation.example, torque });
    expect(si(at("40 N·m"), "leastPreload")).toBeLessThan(si(at("40 N·m"), "greatestPreload"));
    expect(text(at("40 N·m"), "verdict")).toBe("holds below 90 % of proof load");
    expect(text(at("44 N·m"), "verdict")).toMatch(/^near its limit/);
    expect(text(at("60 N·m"), "verdict")).toMatch(/^too much/);
    expect(at("12 N·m").warnings.join()).toContain("slip or work loose");
  });

  test("the torque that is asked for gives the clamp force back at the least friction", () => {
    const asked = runComputation(boltTorqueComputation, {
      ...boltTorqueComputation.example,
      headDiameter: "13 mm",
    });
    const back = runComputation(boltPreloadComputation, {
      thread: "3/8-24 UNF",
      grade: "grade 8",
      torque: si(asked, "torque"),
      leastFriction: 0.1,
      greatestFriction: 0.16,
      headDiameter: "13 mm",
    });
    expect(si(back, "greatestPreload")).toBeCloseTo(si(asked, "wantedPreload"), 6);
    expect(si(back, "leastPreload")).toBeCloseTo(si(asked, "leastPreload"), 6);
    expect(si(back, "greatestShare")).toBeCloseTo(0.75, 9);
    expect(asked.warnings).toEqual([]);
  });

  test("warns of yield while tightening, and refuses an inverted range of friction", () => {
    const full = { ...boltTorqueComputation.example, proofShare: "100 %", leastFriction: 0.16 };
    expect(runComputation(boltTorqueComputation, full).warnings).toHaveLength(1);
    const inverted = { ...boltTorqueComputation.example, leastFriction: 0.2 };
    expect(() => runComputation(boltTorqueComputation, inverted)).toThrow(/0.2 > 0.16/);
  });
});

test("FAS-54, FAS-55 through the catalogue: C 0.32 and about 72.2 ksi in 3/4-16 under 6 kip with 25 kip", () => {
  const run = runComputation(jointComputation, jointComputation.example);
  expect(Math.abs(si(run, "constant") - 0.32)).toBeLessThanOrEqual(0.0005);
  expect(Math.abs(si(run, "boltStress") / 6894757.293168361 - 72.17)).toBeLessThan(0.2);
  const open = runComputation(jointComputation, { ...jointComputation.example, load: "200 kN" });
  expect(open.warnings).toHaveLength(2);
  expect(si(open, "boltForce")).toBe(200_000);
});

describe("fastener.engagement", () => {
  const { example } = engagementComputation;
  test("tells what strips, and judges the engagement as it is", () => {
    const soft = runComputation(engagementComputation, example);
    expect(text(soft, "weaker")).toBe("the tapped thread");
    expect(text(soft, "verdict")).toBe("the bolt breaks first");
    expect(text(runComputation(engagementComputation, { ...example, engagement: "15 mm" }), "verdict")).toBe(
      "strips before the bolt breaks",
    );
    const hard = runComputation(engagementComputation, { ...example, tappedTensile: "900 MPa" });
    expect(text(hard, "weaker")).toBe("the bolt's thread");
  });

  test("never promises what it does not know", () => {
    const { engagement: _engagement, ...unmeasured } = example;
    expect(text(runComputation(engagementComputation, unmeasured), "verdict")).toMatch(/^cannot tell/);
    const { tappedTensile: _tensile, ...unknown } = example;
    expect(text(runComputation(engagementComputation, unknown), "verdict")).toMatch(
      /^cannot tell: meets the rule/,
    );
    const short = runComputation(engagementComputation, { ...unknown, engagement: "19 mm" });
    expect(text(short, "verdict")).toBe("short of the rule of thumb");
    expect(short.outputs.needed?.si).toBeNull();
  });
});

describe("fastener.spacerStack", () => {
  const { example } = spacerStackComputation;
  const run = (change: object) => runComputation(spacerStackComputation, { ...example, ...change });

  test("judges against the grade, names the section, and gives the root diameter", () => {
    const good = run({});
    expect(text(good, "verdict")).toBe("stays straight");
    expect(text(good, "section")).toBe("thread, 8.59 mm");
    expect(good.working.find(({ symbol }) => symbol === "d₃")?.text).toBe("8.16 mm");
    expect(text(run({ force: "2 kN" }), "verdict")).toMatch(/^bends/);
    expect(text(run({ grade: "grade 2", thread: "3/8 UNC", force: "1 kN" }), "verdict")).toMatch(/^bends/);
  });

  test("an unmarked bolt gets no promise", () => {
    const unmarked = run({ grade: undefined });
    expect(text(unmarked, "verdict")).toMatch(/^cannot tell: the grade/);
    expect(unmarked.outputs.reserve?.si).toBeNull();
    expect(unmarked.outputs.enduranceForce?.si).toBeNull();
    expect(si(unmarked, "stress")).toBe(si(run({}), "stress"));
  });

  test("warns of threads at the bracket, of fatigue, of an opening stack and of little reserve", () => {
    expect(run({}).warnings.join()).toContain("fatigue");
    expect(run({ force: "1500 N", preload: "8 kN" }).warnings.join(" ")).toMatch(
      /pothole.*stack opens.*Threads at/,
    );
    const quiet = run({ section: "shank", force: "100 N", preload: undefined });
    expect(quiet.warnings).toEqual([]);
    expect(quiet.outputs.openingForce?.si).toBeNull();
    expect(quiet.outputs.enduranceForce?.si).toBeNull();
  });

  test("grade 8 or class 10.9 for a drop link (common practice): what bends grade 5 leaves grade 8 straight", () => {
    const link = { thread: "3/8-24 UNF", force: "1000 N", preload: undefined };
    expect(text(run({ ...link, grade: "grade 8" }), "verdict")).toBe("stays straight");
    expect(text(run({ ...link, grade: "grade 5", force: "1600 N" }), "verdict")).toMatch(/^bends/);
    expect(text(run({ ...link, grade: "grade 8", force: "1600 N" }), "verdict")).toBe("stays straight");
  });
});

describe("fastener.threadPair and fastener.lookAlike", () => {
  test("never mix, both ways told, with the reason", () => {
    const pair = runComputation(threadPairComputation, threadPairComputation.example);
    expect(text(pair, "verdict")).toMatch(/^never mix/);
    expect(text(pair, "reverse")).toBe("does not start");
    expect(pair.warnings.join()).toContain("screws on as if it belonged");
    const short = runComputation(threadPairComputation, { bolt: "5/16-24 UNF", nut: "M8x1" });
    expect(short.warnings.join()).toMatch(/goes in about (?:1 turn|[2-5] turns), further/);
  });

  test("its own nut goes together; equal pitches never bind; others do not belong", () => {
    const own = runComputation(threadPairComputation, { bolt: "M10x1.25", nut: "M10 x 1.25" });
    expect(text(own, "verdict")).toBe("goes together");
    expect(own.warnings).toEqual([]);
    expect(own.outputs.turns?.si).toBeNull();
    const thin = runComputation(threadPairComputation, { bolt: "M6", nut: "M10" });
    expect(text(thin, "verdict")).toMatch(/^passes through/);
    expect(si(thin, "overlapShare")).toBe(0);
    expect(thin.warnings.join()).toContain("does not belong");
  });

  test("lists look-alikes with the worst first", () => {
    const run = runComputation(lookAlikeComputation, { thread: "1/2-20 UNF" });
    expect(text(run, "list")).toContain("M12x1.25");
    expect(si(run, "count")).toBe(run.working.filter(({ formula }) => formula?.startsWith("|ΔP|")).length);
    expect(text(run, "worst")).toBe(String(text(run, "list")).split(", ")[0]);
  });
});

describe("fastener.length", () => {
  const { example } = boltLengthComputation;
  const run = (change: object) => runComputation(boltLengthComputation, { ...example, ...change });

  test("takes the next nominal length and says so", () => {
    expect(text(run({}), "verdict")).toBe("fits");
    expect(si(run({}), "length")).toBe(0.06);
    expect(run({}).working.find(({ symbol }) => symbol === "l")?.formula).toContain("taken");
    const inchBolt = run({ thread: "3/8-24 UNF" });
    expect(si(inchBolt, "length")).toBeCloseTo(2.25 * 0.0254, 9);
  });

  test("refuses to call short bolts, jammed nuts and threads in shear good", () => {
    expect(text(run({ length: "53 mm" }), "verdict")).toBe("too short: the nut is not full");
    expect(text(run({ length: "55 mm" }), "verdict")).toMatch(/not one thread/);
    expect(text(run({ length: "70 mm", threadLength: "26 mm" }), "verdict")).toMatch(/runs on to the shank/);
    const threaded = run({ length: "60 mm", threadLength: "60 mm" });
    expect(threaded.warnings.join()).toContain("plane of shear");
    expect(run({ length: "70 mm", threadLength: "60 mm" }).warnings.join()).toContain("six threads");
  });
});
