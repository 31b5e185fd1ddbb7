import { solveLinear } from "../linkage/linear";

/** Weighted residuals as a function of real steps; `null` where the linkage cannot be assembled. */
export type Residuals = (steps: readonly number[]) => number[] | null;

/** Where a search stands. */
export interface Optimum {
  readonly steps: readonly number[];
  readonly residuals: readonly number[];
  /** One row per residual, one column per adjuster. */
  readonly jacobian: readonly (readonly number[])[];
}

/** Lowest and highest step of each adjuster. */
export interface Bounds {
  readonly lowest: readonly number[];
  readonly highest: readonly number[];
}

const mostRounds = 40;
const mostHalvings = 12;
const difference = 0.05;
/**
 * Weight of an adjuster's whole range against an error of one tolerance: so little that it only decides between ways
 * that reach the target alike, and then for the one that moves less.
 */
const rangeWeight = 1e-4;

/** Error in tolerances squared, plus next to nothing for moving. */
export function score(residuals: readonly number[], steps: readonly number[], bounds: Bounds): number {
  let sum = 0;
  for (const residual of residuals) sum += residual * residual;
  for (const [index, step] of steps.entries()) sum += stepWeight(bounds, index) * step * step;
  return sum;
}

function stepWeight({ lowest, highest }: Bounds, index: number): number {
  const range = Math.max(1, -(lowest[index] ?? 0), highest[index] ?? 0);
  return rangeWeight / (range * range);
}

/** The best real-valued steps by the Gauss-Newton method within bounds, from where the adjusters stand now. */
export function findOptimum(residuals: Residuals, bounds: Bounds): Optimum | null {
  let steps: readonly number[] = bounds.lowest.map(() => 0);
  let here = residuals(steps);
  if (here === null) return null;
  for (let round = 0; round < mostRounds; round += 1) {
    const jacobian = differentiate(residuals, steps, here);
    const wanted = clamped({ jacobian, residuals: here, steps }, bounds);
    const next = approach(residuals, { steps, here, wanted, bounds });
    const moved = Math.max(...next.steps.map((step, index) => Math.abs(step - (steps[index] ?? 0))));
    steps = next.steps;
    here = next.here;
    if (moved < 1e-6) break;
  }
  return { steps, residuals: here, jacobian: differentiate(residuals, steps, here) };
}

/** Halves the way to the wanted steps until the score falls. */
function approach(
  residuals: Residuals,
  {
    steps,
    here,
    wanted,
    bounds,
  }: { steps: readonly number[]; here: number[]; wanted: readonly number[]; bounds: Bounds },
): { steps: readonly number[]; here: number[] } {
  const start = score(here, steps, bounds);
  for (let halving = 0, part = 1; halving < mostHalvings; halving += 1, part /= 2) {
    const tried = steps.map((step, index) => step + part * ((wanted[index] ?? step) - step));
    const found = residuals(tried);
    if (found !== null && score(found, tried, bounds) < start) return { steps: tried, here: found };
  }
  return { steps, here };
}

/** Central differences; one-sided where one side cannot be assembled. */
function differentiate(residuals: Residuals, steps: readonly number[], here: readonly number[]): number[][] {
  const columns = steps.map((_, index) => {
    const at = (by: number): number[] | null =>
      residuals(steps.map((step, other) => (other === index ? step + by : step)));
    const after = at(difference);
    const before = at(-difference);
    const span = (after === null ? 0 : difference) + (before === null ? 0 : difference);
    return here.map((value, row) =>
      span === 0 ? 0 : ((after?.[row] ?? value) - (before?.[row] ?? value)) / span,
    );
  });
  return here.map((_, row) => columns.map((column) => column[row] ?? 0));
}

/** The steps that the linear model likes best; those driven past a bound are held at it and the rest solved again. */
function clamped({ jacobian, residuals, steps }: Optimum, bounds: Bounds): number[] {
  const { lowest, highest } = bounds;
  const result = [...steps];
  let free = steps.map((_, index) => index);
  while (free.length > 0) {
    const wanted = solveFree({ jacobian, residuals, steps }, { free, result, bounds });
    if (wanted === null) return result;
    for (const [at, index] of free.entries()) result[index] = wanted[at] ?? 0;
    const outside = free.filter(
      (index) => (result[index] ?? 0) < (lowest[index] ?? 0) || (result[index] ?? 0) > (highest[index] ?? 0),
    );
    if (outside.length === 0) return result;
    for (const index of outside) {
      result[index] = Math.max(lowest[index] ?? 0, Math.min(highest[index] ?? 0, result[index] ?? 0));
    }
    free = free.filter((index) => !outside.includes(index));
  }
  return result;
}

/** Normal equations of the free adjusters, the others where `result` holds them. */
function solveFree(
  { jacobian, residuals, steps }: Optimum,
  { free, result, bounds }: { free: readonly number[]; result: readonly number[]; bounds: Bounds },
): number[] | null {
  const held = residuals.map((residual, row) => {
    let sum = residual;
    for (const [index, step] of steps.entries()) {
      const at = free.includes(index) ? 0 : (result[index] ?? 0);
      sum += (jacobian[row]?.[index] ?? 0) * (at - step);
    }
    return sum;
  });
  const entry = (row: number, column: number): number => {
    let sum = row === column ? stepWeight(bounds, free[row] ?? 0) : 0;
    for (const line of jacobian) sum += (line[free[row] ?? 0] ?? 0) * (line[free[column] ?? 0] ?? 0);
    return sum;
  };
  const matrix = free.map((_, row) => free.map((__, column) => entry(row, column)));
  const sides = free.map((index) => [
    -held.reduce((sum, value, row) => sum + (jacobian[row]?.[index] ?? 0) * value, 0),
  ]);
  return solveLinear(matrix, sides) ? sides.map(([value]) => value ?? 0) : null;
}
