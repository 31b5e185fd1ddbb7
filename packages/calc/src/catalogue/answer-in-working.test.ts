import { expect, test } from "vitest";
import { computations } from "./all";
import { runComputation } from "./run";

test.each(computations.map((computation) => [computation.name, computation] as const))(
  "every answer of %s stands in its working, by what it comes from",
  (_name, computation) => {
    const { outputs, working } = runComputation(computation, computation.example);
    const unnamed = Object.entries(outputs).filter(([name, { si }]) => {
      const spec = computation.outputs[name];
      if (spec?.how !== undefined) return false;
      // A yes, a no and an answer that this example has not cannot be told from another; such an answer must say how.
      return si === null || !working.some(({ value }) => value === si);
    });
    expect(unnamed.map(([name, { text }]) => `${name}: ${text}`)).toEqual([]);
    for (const [name, { si, text }] of Object.entries(outputs)) {
      const spec = computation.outputs[name];
      if (spec?.how === undefined || si === null) continue;
      expect(working).toContainEqual(
        expect.objectContaining({ symbol: spec.how[0], formula: spec.how[1], label: spec.label, text }),
      );
    }
  },
);
