import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { atMost } from "../property-runs.fixture";
import { searchNeighbours } from "./neighbour";
import { type Bounds, findOptimum, type Optimum, type Residuals, score } from "./optimum";

// The two searches of the planner by themselves, on problems whose answer is known by hand or by trying everything.

const within = (lowest: readonly number[], highest: readonly number[]): Bounds => ({ lowest, highest });
const linear =
  (matrix: readonly (readonly number[])[], offset: readonly number[]): Residuals =>
  (steps) =>
    matrix.map((row, line) =>
      row.reduce((sum, factor, index) => sum + factor * (steps[index] ?? 0), offset[line] ?? 0),
    );
function optimumOf(residuals: Residuals, bounds: Bounds): Optimum {
  const found = findOptimum(residuals, bounds);
  if (found === null) throw new Error("the start is not to be had");
  return found;
}
/** Counts how often a problem is solved. */
function counted(residuals: Residuals): { readonly residuals: Residuals; readonly calls: () => number } {
  let calls = 0;
  return {
    residuals: (steps) => {
      calls += 1;
      return residuals(steps);
    },
    calls: () => calls,
  };
}

test("the score is the errors squared, and next to nothing for moving, by the share of the range moved", () => {
  expect(score([1, -2], [0, 0], within([0, 0], [9, 9]))).toBe(5);
  expect(score([], [3, -4], within([-10, -100], [5, 0]))).toBeCloseTo(1e-4 * (9 / 100 + 16 / 10_000), 15);
  expect(score([], [3, -4], within([-5, 0], [10, 100]))).toBeCloseTo(1e-4 * (9 / 100 + 16 / 10_000), 15);
  expect(score([], [0.5], within([0], [0.1]))).toBeCloseTo(1e-4 * 0.25, 15);
});

describe("the best steps without rounding", () => {
  test("solve two linear equations, and tell what is left and the slopes", () => {
    const { steps, residuals, jacobian } = optimumOf(
      linear(
        [
          [1, 1],
          [2, -1],
        ],
        [-10, -2],
      ),
      within([-100, -100], [100, 100]),
    );
    expect(steps[0]).toBeCloseTo(4, 5);
    expect(steps[1]).toBeCloseTo(6, 5);
    expect(Math.hypot(...residuals)).toBeLessThan(1e-5);
    expect(jacobian.flat().map((slope) => Math.round(slope * 1e6) / 1e6)).toEqual([1, 1, 2, -1]);
  });

  test.each([
    ["above", 1, within([-100, -100], [3, 100])],
    ["below", -1, within([-3, -100], [100, 100])],
  ])("held at a bound %s, the other makes the best of it", (_, sign, bounds) => {
    // x + y = 10 and 2x − y = 2 want x = 4; with x at 3, y² terms (y − 7)² + (4 − y)² want 5.5.
    const matrix = [
      [1, 1],
      [2, -1],
    ];
    const { steps } = optimumOf(linear(matrix, [-10 * sign, -2 * sign]), bounds);
    expect(steps[0]).toBeCloseTo(3 * sign, 9);
    expect(steps[1]).toBeCloseTo(5.5 * sign, 4);
  });

  test("both held where both are driven out, and exactly on a bound is inside", () => {
    const apart = linear(
      [
        [1, 0],
        [0, 1],
      ],
      [-9, 7],
    );
    expect(optimumOf(apart, within([-2, -3], [5, 5])).steps).toEqual([5, -3]);
    expect(
      optimumOf(apart, within([-2, -7], [9, 5])).steps.map((step) => Math.round(step * 1e4) / 1e4),
    ).toEqual([9, -7]);
  });

  test("of two adjusters that do the same, the one of the larger range moves, either way", () => {
    const same = linear([[1, 1]], [-6]);
    // x²/10² + y²/100² least with x + y = 6: y = 100 x.
    const up = optimumOf(same, within([-1, -1], [10, 100]));
    expect(up.steps[0]).toBeCloseTo(6 / 101, 3);
    expect(up.steps[1]).toBeCloseTo(600 / 101, 3);
    const { steps } = optimumOf(linear([[1, 1]], [6]), within([-10, -100], [1, 1]));
    expect(steps[0]).toBeCloseTo(-6 / 101, 3);
    expect(steps[1]).toBeCloseTo(-600 / 101, 3);
  });

  test("a linear problem takes a few solutions and no more", () => {
    const { residuals, calls } = counted(linear([[2]], [-7]));
    expect(optimumOf(residuals, within([-10], [10])).steps[0]).toBeCloseTo(3.5, 5);
    expect(calls()).toBeLessThan(20);
  });

  test("where the slope promises too much, the step is halved until it helps", () => {
    // Newton's method on arctan runs away from 8.
    const { steps } = optimumOf(([x = 0]) => [Math.atan(x - 8)], within([-1000], [1000]));
    expect(steps[0]).toBeCloseTo(8, 4);
  });

  test("one adjuster that cannot move does not end the search for the others", () => {
    const { steps } = optimumOf(([x = 0, y = 0]) => [x ** 3 + x - 30, y], within([-9, 0], [9, 0]));
    expect(steps[0]).toBeCloseTo(3, 4);
    expect(steps[1]).toBe(0);
  });

  test("a step into where nothing can be assembled is halved, and a slope there is taken from one side", () => {
    const upTo: Residuals = ([x = 0]) => (x <= 1.5 ? [2 * x - 6] : null);
    const above = optimumOf(upTo, within([-10], [10]));
    expect(above.steps[0]).toBeGreaterThan(1.4);
    expect(above.steps[0]).toBeLessThanOrEqual(1.5);
    expect(above.jacobian[0]?.[0]).toBeCloseTo(2, 9);
    const downTo: Residuals = ([x = 0]) => (x >= -1.5 ? [2 * x + 6] : null);
    const below = optimumOf(downTo, within([-10], [10]));
    expect(below.steps[0]).toBeLessThan(-1.4);
    expect(below.jacobian[0]?.[0]).toBeCloseTo(2, 9);
  });

  test("nothing to be had at the start is no answer; nothing either side of it leaves it there", () => {
    expect(findOptimum(() => null, within([-1], [1]))).toBeNull();
    const alone: Residuals = ([x = 0]) => (Math.abs(x) < 0.01 ? [1] : null);
    expect(findOptimum(alone, within([-1], [1]))).toEqual({ steps: [0], residuals: [1], jacobian: [[0]] });
  });
});

describe("the best whole steps", () => {
  const entry = fc.integer({ min: -9, max: 9 });

  test("are the best of all there are, where all lie in reach (by trying each)", () => {
    const problem = fc.record({
      matrix: fc.array(fc.array(entry, { minLength: 4, maxLength: 4 }), { minLength: 3, maxLength: 4 }),
      offset: fc.array(fc.integer({ min: -12, max: 12 }), { minLength: 4, maxLength: 4 }),
    });
    const bounds = within([-1, -1, -1, -1], [1, 1, 1, 1]);
    const three = [-1, 0, 1];
    const all = three.flatMap((a) =>
      three.flatMap((b) => three.flatMap((c) => three.map((d) => [a, b, c, d]))),
    );
    fc.assert(
      fc.property(problem, ({ matrix, offset }) => {
        const residuals = linear(matrix, offset);
        const found = searchNeighbours(optimumOf(residuals, bounds), residuals, bounds);
        const best = Math.min(...all.map((steps) => score(residuals(steps) ?? [], steps, bounds)));
        expect(score(found?.residuals ?? [], found?.steps ?? [], bounds)).toBeCloseTo(best, 9);
        expect(found).toMatchObject({ weighed: 81, solved: 48 });
      }),
      atMost(60),
    );
  });

  /** An optimum whose slopes are wrong: nothing tells the search where to go but what it finds. */
  const blind = (count: number, steps = Array.from({ length: count }, () => 0)): Optimum => ({
    steps,
    residuals: [0],
    jacobian: [Array.from({ length: count }, () => 0)],
  });
  const wide = within([-500], [500]);

  test.each([1, -1])("lie further on where the best is at the edge of what was looked at (%d)", (sign) => {
    const found = searchNeighbours(blind(1), ([x = 0]) => [x - 10 * sign], wide);
    // Two steps a round: 2, 4, 6, 8, 10, and a look round 10.
    expect(found).toMatchObject({ steps: [10 * sign], weighed: 30, solved: 30 });
  });

  test.each([1, -1])("are looked for in six rounds at most (%d)", (sign) => {
    expect(searchNeighbours(blind(1), ([x = 0]) => [x - 100 * sign], wide)?.steps).toEqual([12 * sign]);
  });

  test("end at a bound without a further round", () => {
    const up = searchNeighbours(blind(1), ([x = 0]) => [x - 100], within([-9], [4]));
    expect(up).toMatchObject({ steps: [4], weighed: 10 });
    const down = searchNeighbours(blind(1), ([x = 0]) => [x + 100], within([-4], [9]));
    expect(down).toMatchObject({ steps: [-4], weighed: 10 });
  });

  test("need no further round where the best lies inside", () => {
    expect(searchNeighbours(blind(1), ([x = 0]) => [x - 1], wide)).toMatchObject({ steps: [1], weighed: 5 });
  });

  test("go on where one of two adjusters is at its edge", () => {
    const residuals: Residuals = ([x = 0, y = 0]) => [x - 6, y];
    expect(searchNeighbours(blind(2), residuals, within([-50, -50], [50, 50]))?.steps).toEqual([6, 0]);
  });

  test("stay within bounds that the optimum lies outside of", () => {
    const below = searchNeighbours(blind(1, [-5]), ([x = 0]) => [x + 5], within([0], [3]));
    expect(below?.steps).toEqual([0]);
    const above = searchNeighbours(blind(1, [9]), ([x = 0]) => [x - 9], within([-3], [3]));
    expect(above?.steps).toEqual([3]);
  });

  test("are the next best where the best cannot be assembled, and none where none can", () => {
    const gap: Residuals = ([x = 0]) => (x === 1 ? null : [x - 1.2]);
    const optimum = { steps: [1.2], residuals: [0], jacobian: [[1]] };
    expect(searchNeighbours(optimum, gap, wide)?.steps).toEqual([2]);
    expect(searchNeighbours(optimum, () => null, wide)).toBeNull();
  });

  test.each([
    [5, 6 ** 5],
    [6, 4 ** 6],
  ])(
    "of %d adjusters are sought among %d settings: fewer steps either way, the more adjusters",
    (count, weighed) => {
      const halves = blind(
        count,
        Array.from({ length: count }, () => 0.5),
      );
      const bounds = within(
        Array.from({ length: count }, () => -50),
        Array.from({ length: count }, () => 50),
      );
      expect(searchNeighbours(halves, (steps) => [...steps], bounds)).toMatchObject({ weighed, solved: 48 });
    },
  );

  test("of eight adjusters, only the steps next to the optimum are weighed", () => {
    const halves = blind(
      8,
      Array.from({ length: 8 }, () => 0.5),
    );
    const bounds = within(
      Array.from({ length: 8 }, () => 0),
      Array.from({ length: 8 }, () => 1),
    );
    expect(searchNeighbours(halves, (steps) => [...steps], bounds)).toMatchObject({
      weighed: 256,
      solved: 48,
    });
  });
});
