import { describe, expect, test } from "vitest";
import { cornerOutputs } from "../linkage/corner-answer";
import { lazily } from "./lazily";
import { computationNamed } from "./list";
import { answerComputation, runComputation } from "./run";

test("what is put off is worked out once, when it is first asked for, even if it is nothing", () => {
  let times = 0;
  const answer = lazily(() => {
    times += 1;
    return undefined;
  });
  expect(times).toBe(0);
  expect([answer(), answer()]).toEqual([undefined, undefined]);
  expect(times).toBe(1);
});

describe("answers asked for by name", () => {
  const computation = computationNamed("linkage.doubleWishbone");

  test("are those of the whole run", () => {
    const names = Object.keys(cornerOutputs);
    const { outputs } = answerComputation(computation, computation.example, names);
    const whole = runComputation(computation, computation.example);
    expect(outputs).toEqual(Object.fromEntries(names.map((name) => [name, whole.outputs[name]])));
  });

  test("do not have a working made that nobody reads", () => {
    const watched = {
      ...computation,
      compute: (input: Parameters<typeof computation.compute>[0]) => ({
        ...computation.compute(input),
        working: (): never => {
          throw new Error("the working was asked for");
        },
      }),
    };
    expect(answerComputation(watched, computation.example, ["camber"]).outputs.camber?.text).toMatch(/°$/);
    expect(() => runComputation(watched, computation.example)).toThrow("the working was asked for");
  });
});

test("a working that was put off tells the position asked for, whatever the search for the ends moved", () => {
  const { compute, input, example } = computationNamed("linkage.doubleWishbone");
  const made = compute(input.parse({ ...example, bump: "25 mm", rack: "10 mm" }));
  const steps = Object.fromEntries(made.working().map(({ symbol, value }) => [symbol, value]));
  const again = compute(input.parse({ ...example, bump: "25 mm", rack: "10 mm" }));
  expect(made.working()).toEqual(again.working());
  expect(steps.z).toBeCloseTo(0.025, 12);
  expect(steps.s).toBeCloseTo(0.01, 12);
  expect(Number(steps.z_max)).toBeGreaterThan(0.025);
  expect(Number(steps.Δγ) + Number(steps["γ₀"])).toBeCloseTo(Number(made.outputs.camber), 12);
});
