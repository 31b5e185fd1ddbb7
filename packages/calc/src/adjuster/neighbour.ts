import { type Bounds, type Optimum, type Residuals, score } from "./optimum";

/** The best whole steps found. */
export interface Settled {
  readonly steps: readonly number[];
  readonly residuals: readonly number[];
  /** How many whole settings were weighed, and how many of these solved exactly. */
  readonly weighed: number;
  readonly solved: number;
}

/** Most settings weighed in one neighbourhood, and most of them solved exactly. */
const mostWeighed = 100_000;
const mostSolved = 48;
const mostRounds = 6;

/**
 * The best whole steps in the neighbourhood of a real-valued optimum. Rounding each adjuster by itself can miss by
 * several steps where two of them work on the same angle, so all combinations of up to three whole steps either way
 * are weighed by the linear model there, and the most promising solved exactly. If the best lies at the edge of the
 * neighbourhood, the search goes on around it.
 */
export function searchNeighbours(optimum: Optimum, residuals: Residuals, bounds: Bounds): Settled | null {
  let centre = optimum.steps;
  let best: Settled | null = null;
  let weighed = 0;
  let solved = 0;
  for (let round = 0; round < mostRounds; round += 1) {
    const ranges = centre.map((step, index) =>
      candidates(
        step,
        { lowest: bounds.lowest[index] ?? 0, highest: bounds.highest[index] ?? 0 },
        width(centre.length),
      ),
    );
    const ranked = rank(optimum, ranges, bounds);
    weighed += ranked.weighed;
    for (const steps of ranked.promising) {
      const found = residuals(steps);
      solved += 1;
      if (found === null) continue;
      if (best === null || score(found, steps, bounds) < score(best.residuals, best.steps, bounds)) {
        best = { steps, residuals: found, weighed: 0, solved: 0 };
      }
    }
    if (best === null || !atEdge(best.steps, ranges, bounds)) break;
    centre = best.steps;
  }
  return best === null ? null : { ...best, weighed, solved };
}

/** Steps either way, so that no more than `mostWeighed` combinations arise. */
function width(adjusters: number): number {
  for (let steps = 3; steps > 1; steps -= 1) {
    if ((2 * steps + 2) ** adjusters <= mostWeighed) return steps;
  }
  return 1;
}

function candidates(
  step: number,
  { lowest, highest }: { lowest: number; highest: number },
  around: number,
): number[] {
  const from = Math.max(lowest, Math.floor(step) - around + 1);
  const to = Math.min(highest, Math.ceil(step) + around - 1);
  if (to < from) return [Math.max(lowest, Math.min(highest, Math.round(step)))];
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

function rank(
  optimum: Optimum,
  ranges: readonly (readonly number[])[],
  bounds: Bounds,
): { promising: number[][]; weighed: number } {
  const kept: { steps: number[]; value: number }[] = [];
  let weighed = 0;
  const steps = ranges.map(([first]) => first ?? 0);
  const visit = (index: number, predicted: readonly number[]): void => {
    if (index === ranges.length) {
      weighed += 1;
      keep(kept, steps, score(predicted, steps, bounds));
      return;
    }
    for (const step of ranges[index] ?? []) {
      steps[index] = step;
      const off = step - (optimum.steps[index] ?? 0);
      visit(
        index + 1,
        predicted.map((value, row) => value + off * (optimum.jacobian[row]?.[index] ?? 0)),
      );
    }
  };
  visit(0, optimum.residuals);
  return { promising: kept.map((each) => each.steps), weighed };
}

/** Keeps the best few, in order. */
function keep(kept: { steps: number[]; value: number }[], steps: readonly number[], value: number): void {
  const last = kept[kept.length - 1];
  if (kept.length === mostSolved && last !== undefined && value >= last.value) return;
  let at = kept.length;
  while (at > 0 && (kept[at - 1]?.value ?? 0) > value) at -= 1;
  kept.splice(at, 0, { steps: [...steps], value });
  if (kept.length > mostSolved) kept.pop();
}

function atEdge(
  steps: readonly number[],
  ranges: readonly (readonly number[])[],
  { lowest, highest }: Bounds,
): boolean {
  return steps.some((step, index) => {
    const range = ranges[index] ?? [];
    const low = step === range[0] && step > (lowest[index] ?? 0);
    return low || (step === range[range.length - 1] && step < (highest[index] ?? 0));
  });
}
