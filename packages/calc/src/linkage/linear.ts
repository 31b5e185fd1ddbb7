/**
 * Solves A·x = b for each right-hand side by elimination with partial pivoting. `matrix` and `sides` are written over.
 * Row i of `sides` holds the i-th element of every right-hand side, and on return that of every solution. Answers
 * false if the matrix is singular to working precision.
 */
export function solveLinear(matrix: number[][], sides: number[][]): boolean {
  const size = matrix.length;
  for (let pivot = 0; pivot < size; pivot += 1) {
    if (!bringUp(matrix, sides, pivot)) return false;
    const top = rowOf(matrix, pivot);
    for (let row = 0; row < size; row += 1) {
      if (row === pivot) continue;
      const factor = item(rowOf(matrix, row), pivot) / item(top, pivot);
      if (factor === 0) continue;
      takeOff(rowOf(matrix, row), top, factor);
      takeOff(rowOf(sides, row), rowOf(sides, pivot), factor);
    }
  }
  for (let row = 0; row < size; row += 1) {
    const divisor = item(rowOf(matrix, row), row);
    const side = rowOf(sides, row);
    for (let column = 0; column < side.length; column += 1) side[column] = item(side, column) / divisor;
  }
  return true;
}

/** Least pivot, against rows whose largest element is of the order of 1. */
const singular = 1e-11;

function bringUp(matrix: number[][], sides: number[][], pivot: number): boolean {
  let best = pivot;
  for (let row = pivot + 1; row < matrix.length; row += 1) {
    if (Math.abs(item(rowOf(matrix, row), pivot)) > Math.abs(item(rowOf(matrix, best), pivot))) best = row;
  }
  for (const rows of [matrix, sides]) {
    const lifted = rowOf(rows, best);
    rows[best] = rowOf(rows, pivot);
    rows[pivot] = lifted;
  }
  return Math.abs(item(rowOf(matrix, pivot), pivot)) > singular;
}

function takeOff(row: number[], other: readonly number[], factor: number): void {
  for (let column = 0; column < row.length; column += 1)
    row[column] = item(row, column) - factor * item(other, column);
}

function rowOf(rows: number[][], index: number): number[] {
  const row = rows[index];
  if (row === undefined) throw new RangeError(`there is no row ${index} among ${rows.length}`);
  return row;
}

function item(row: readonly number[], index: number): number {
  const value = row[index];
  if (value === undefined) throw new RangeError(`there is no column ${index} among ${row.length}`);
  return value;
}
