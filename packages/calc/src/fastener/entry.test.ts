import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { parseGrade } from "../quantity/designation/grade";
import { parseThread } from "../quantity/designation/thread";
import { spacerStackComputation } from "./spacer-stack.entry";
import { stressArea, stressDiameter } from "./thread-form";
import { boltPreloadComputation, boltTorqueComputation } from "./torque.entry";

// What the entries say around the arithmetic: their figures against mechanics by hand, their working, and every
// warning just inside and just outside its limit.

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string) => Number(run.outputs[name]?.si);
const step = (run: Run, symbol: string) => run.working.find((each) => each.symbol === symbol);
const says = (run: Run, words: RegExp) => run.warnings.some((text) => words.test(text));

describe("a link on a stack of spacers", () => {
  const stack = (over: object) =>
    runComputation(spacerStackComputation, { ...spacerStackComputation.example, ...over });
  const thread = parseThread("M10x1.5");
  const d = stressDiameter(thread);
  const arm = 0.02 + 0.007;

  test("bends as a cantilever of the thread's stress diameter (statics, by hand)", () => {
    const run = stack({ preload: undefined, spacerDiameter: undefined });
    const bending = (32 * 600 * arm) / (Math.PI * d ** 3);
    const shear = (4 * 600) / (Math.PI * d ** 2);
    expect(si(run, "moment")).toBeCloseTo(600 * arm, 9);
    expect(si(run, "stress")).toBeCloseTo(Math.hypot(bending, Math.sqrt(3) * shear), -3);
    expect(si(run, "rate")).toBeCloseTo(600 / si(run, "deflection"), 6);
    expect(si(run, "reserve")).toBeCloseTo(si(run, "yieldForce") / 600, 12);
    expect(step(run, "F_y")?.value).toBeCloseTo(si(run, "yieldForce"), 9);
    expect(step(run, "M")?.value).toBeCloseTo(600 * arm, 9);
    expect(step(run, "D_b")?.formula).toMatch(/stress diameter in the thread/);
    expect(run.outputs.openingForce?.si).toBeNull();
    expect(step(run, "F_o")).toBeUndefined();
    expect(stack({ preload: undefined }).outputs.openingForce?.si).toBeNull();
    expect(stack({ spacerDiameter: undefined }).outputs.openingForce?.si).toBeNull();
  });

  test("a plain shank at the bracket is said to be the section, and is the stronger", () => {
    const plain = stack({ section: "shank" });
    expect(step(plain, "D_b")?.formula).toBe("plain shank");
    expect(si(plain, "yieldForce")).toBeGreaterThan(si(stack({}), "yieldForce"));
    expect(says(plain, /plain shank there is stronger/)).toBe(false);
    expect(says(stack({}), /plain shank there is stronger/)).toBe(true);
    expect(plain.outputs.enduranceForce?.si).toBeNull();
  });

  test("endurance is the rolled thread's amplitude over the bending of its stress diameter (VDI 2230, from memory)", () => {
    const amplitude = 0.85 * (150 / 10 + 45) * 1e6;
    expect(si(stack({}), "enduranceForce")).toBeCloseTo((amplitude * Math.PI * d ** 3) / (32 * arm), 6);
    const enduranceOf = (over: object) => stack(over).outputs.enduranceForce?.si ?? null;
    expect(enduranceOf({ grade: "8.8" })).not.toBeNull();
    expect(enduranceOf({ grade: "5.8" })).toBeNull();
    expect(enduranceOf({ grade: undefined })).toBeNull();
    const small = { stackLength: "5 mm", eyeWidth: "6 mm", spacerDiameter: undefined, preload: undefined };
    expect(enduranceOf({ ...small, thread: "M6x1" })).not.toBeNull();
    expect(enduranceOf({ ...small, thread: "M5x0.8" })).toBeNull();
  });

  test("without a grade nothing is judged: the verdict cannot tell, and no strength is in the working", () => {
    const run = stack({ grade: undefined });
    expect(run.outputs.verdict?.text).toMatch(/^cannot tell/);
    expect([run.outputs.yieldForce?.si, run.outputs.reserve?.si]).toEqual([null, null]);
    expect(step(run, "grade")?.text).toBe("not given");
    expect(step(stack({}), "grade")?.text).not.toBe("not given");
    expect(step(stack({}), "R_e") ?? step(stack({}), "S_p")).toBeDefined();
    expect(says(run, /bends the bolt/)).toBe(false);
  });

  test("each warning is given just beyond its limit and not just before it", () => {
    const free = { preload: undefined, spacerDiameter: undefined };
    const limit = si(stack(free), "yieldForce");
    const near = /Less than 2 times the force bends/;
    expect(says(stack({ ...free, force: limit / 2.01 }), near)).toBe(false);
    expect(says(stack({ ...free, force: limit / 1.99 }), near)).toBe(true);
    expect(stack({ ...free, force: limit * 0.99 }).outputs.verdict?.text).toBe("stays straight");
    const bent = stack({ ...free, force: limit * 1.01 });
    expect(bent.outputs.verdict?.text).toBe("bends: the bolt takes a set");
    expect(says(bent, near)).toBe(false);
    const opening = si(stack({}), "openingForce");
    expect(says(stack({ force: opening * 1.001 }), /The stack opens/)).toBe(true);
    expect(says(stack({ force: opening * 0.999 }), /The stack opens/)).toBe(false);
    const endurance = si(stack({}), "enduranceForce");
    expect(says(stack({ force: endurance * 1.001 }), /break by fatigue/)).toBe(true);
    expect(says(stack({ force: endurance * 0.999 }), /break by fatigue/)).toBe(false);
  });
});

describe("torque and clamp force", () => {
  const thread = parseThread("M10x1.5");
  const area = stressArea(thread);
  /** Class 8.8 up to 16 mm: proof stress 580 MPa (ISO 898-1, table 3). */
  const proof = area * 580e6;
  const preload = (over: object) =>
    runComputation(boltPreloadComputation, { ...boltPreloadComputation.example, ...over });
  const torque = (over: object) =>
    runComputation(boltTorqueComputation, {
      ...boltTorqueComputation.example,
      thread: "M10x1.5",
      grade: "8.8",
      ...over,
    });

  test("torque for a clamp force, and clamp force of that torque, are the inverse of each other", () => {
    const wanted = torque({});
    expect(si(wanted, "wantedPreload")).toBeCloseTo(0.75 * proof, 3);
    const back = preload({ torque: si(wanted, "torque") });
    expect(si(back, "greatestPreload")).toBeCloseTo(0.75 * proof, 3);
    expect(si(back, "leastPreload")).toBeCloseTo(si(wanted, "leastPreload"), 3);
    expect(si(back, "greatestShare")).toBeCloseTo(0.75, 9);
    expect(si(back, "leastShare")).toBeCloseTo(si(wanted, "leastPreload") / proof, 9);
  });

  test("the nut factor's torque is 0.2·d·F, and the working's own factor lies near it (general engineering)", () => {
    const run = torque({});
    expect(si(run, "byNutFactor")).toBeCloseTo(0.2 * 0.01 * 0.75 * proof, 6);
    // q = K·d: the mean of both frictions.
    const [least, greatest] = [Number(step(run, "q_min")?.value), Number(step(run, "q_max")?.value)];
    expect(step(run, "K")?.value).toBeCloseTo((least + greatest) / 2 / 0.01, 9);
    expect(Number(step(run, "K")?.value)).toBeGreaterThan(0.12);
    expect(Number(step(run, "K")?.value)).toBeLessThan(0.22);
    expect(step(run, "φ")?.text).toBe("75 %");
    expect(step(run, "F")?.value).toBeCloseTo(0.75 * proof, 3);
  });

  test("a head's diameter is taken as 1.3 d and said so, or as given", () => {
    expect(step(torque({}), "D_h")).toMatchObject({ formula: "taken: 1.3 d", text: "13 mm" });
    expect(step(torque({ headDiameter: "14 mm" }), "D_h")).toMatchObject({ formula: "given", text: "14 mm" });
    expect(si(torque({ headDiameter: "14 mm" }), "torque")).toBeGreaterThan(si(torque({}), "torque"));
  });

  test("the stress while tightening is of tension and half the torque's twist, and its share is of yield", () => {
    const run = preload({});
    const { yield: strength } = { yield: 640e6 };
    expect(parseGrade("8.8").canonical).toMatch(/8\.8/);
    expect(Number(step(run, "σ_v")?.value) / strength).toBeCloseTo(si(run, "tighteningShare"), 9);
    expect(Number(step(run, "σ_v")?.value)).toBeGreaterThan(si(run, "greatestPreload") / area);
    expect(step(run, "F_p")?.value).toBeCloseTo(proof, 3);
  });

  test("verdicts and warnings change just at their limits", () => {
    const full = si(preload({ torque: 1 }), "greatestShare");
    const at = (share: number) => preload({ torque: share / full });
    expect(at(0.899).outputs.verdict?.text).toBe("holds below 90 % of proof load");
    expect(at(0.901).outputs.verdict?.text).toMatch(/^(near its limit|too much)/);
    const tightening = si(preload({ torque: 1 }), "tighteningShare");
    expect(preload({ torque: 0.999 / tightening }).outputs.verdict?.text).not.toMatch(/^too much/);
    expect(preload({ torque: 1.001 / tightening }).outputs.verdict?.text).toMatch(/^too much/);
    const least = si(preload({ torque: 1 }), "leastShare");
    expect(preload({ torque: 0.299 / least }).warnings).toHaveLength(1);
    expect(preload({ torque: 0.301 / least }).warnings).toEqual([]);
    expect(torque({ proofShare: 0.75 }).warnings).toEqual([]);
    expect(torque({ proofShare: 1, leastFriction: 0.3, greatestFriction: 0.3 }).warnings).toHaveLength(1);
  });
});
