import { describe, expect, test } from "vitest";
import { settable } from "./adjuster";
import { exampleAdjusters, exampleArmAdjusters } from "./example";
import { directionInWords, instruction, turnsInWords } from "./wording";

describe("turns, as a mechanic counts them", () => {
  test.each([
    [0, "0 turn"],
    [1 / 6, "⅙ turn"],
    [0.25, "¼ turn"],
    [1 / 3, "⅓ turn"],
    [0.5, "½ turn"],
    [2 / 3, "⅔ turn"],
    [0.75, "¾ turn"],
    [5 / 6, "⅚ turn"],
    [1, "1 turn"],
    [1.5, "1½ turns"],
    [2, "2 turns"],
    [-2.5, "2½ turns"],
    [3 - 1e-9, "3 turns"],
    [1.2, "1.2 turns"],
    [0.0833333, "0.083 turn"],
  ])("%d is %s", (turns, words) => expect(turnsInWords(turns)).toBe(words));
});

describe("directions, as said at the car", () => {
  test.each([
    [{ x: 0.1, y: 1, z: 0.2 }, "left", "outboard"],
    [{ x: 0.1, y: -1, z: 0.2 }, "left", "inboard"],
    [{ x: 0.1, y: -1, z: 0.2 }, "right", "outboard"],
    [{ x: 0.1, y: 1, z: 0.2 }, "right", "inboard"],
    [{ x: 1, y: 0.5, z: 0.2 }, "left", "forwards"],
    [{ x: -1, y: 0.5, z: 0.2 }, "right", "rearwards"],
    [{ x: 0.3, y: 0.5, z: 1 }, "left", "up"],
    [{ x: 0.3, y: 0.5, z: -1 }, "left", "down"],
  ] as const)("%o on the %s is %s", (shift, side, words) =>
    expect(directionInWords(shift, side)).toBe(words),
  );
});

describe("what to do", () => {
  const [joint, washers, rod] = exampleAdjusters;
  const [eccentric] = exampleArmAdjusters;
  const slot = {
    kind: "slot",
    name: "top mount",
    points: ["strutTop"],
    axis: { x: 0, y: 1, z: 0 },
    step: 0.0005,
    lowest: -0.008,
    highest: 0.008,
  } as const;

  test.each([
    [joint, 3, "screw upper ball joint 1½ turns outboard"],
    [joint, -1, "screw upper ball joint ½ turn inboard"],
    [washers, 2, "add 2 shims at upper arm washers (5 in all)"],
    [washers, 1, "add 1 shim at upper arm washers (4 in all)"],
    [washers, -3, "take 3 shims out at upper arm washers (0 in all)"],
    [rod, 6, "make track rod end ½ turn longer"],
    [rod, -18, "make track rod end 1½ turns shorter"],
    [eccentric, 2, "turn outer pivot eccentric from 0° to 15° (up)"],
    [eccentric, -1, "turn outer pivot eccentric from 0° to -7.5° (down)"],
    [slot, 5, "slide top mount 2.5 mm outboard"],
    [slot, -4, "slide top mount 2 mm inboard"],
  ] as const)("%o, %d steps", (adjuster, steps, words) => {
    if (adjuster === undefined) throw new Error("the example has that adjuster");
    expect(instruction(settable<string>(adjuster), steps, "left")).toBe(words);
  });
});
