/**
 * A small dense linear system, for the Newton steps of the reconstruction.
 */

/**
 * Solves A v = rhs in place by Gaussian elimination with row pivoting; the solution replaces `rhs`.
 * `matrix` is A row by row, n x n, and is overwritten. False where A is singular to working precision (rhs is then spoilt).
 */
export function solveInPlace(matrix: Float64Array, rhs: Float64Array): boolean {
  const n = rhs.length;
  for (let column = 0; column < n; column++) {
    let pivotRow = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(matrix[row * n + column]!) > Math.abs(matrix[pivotRow * n + column]!)) pivotRow = row;
    }
    const pivot = matrix[pivotRow * n + column]!;
    if (!(Math.abs(pivot) > Number.MIN_VALUE)) return false;
    if (pivotRow !== column) swapRows(matrix, rhs, pivotRow, column);
    for (let row = column + 1; row < n; row++) {
      const factor = matrix[row * n + column]! / pivot;
      if (factor === 0) continue;
      for (let k = column + 1; k < n; k++) {
        matrix[row * n + k] = matrix[row * n + k]! - factor * matrix[column * n + k]!;
      }
      rhs[row] = rhs[row]! - factor * rhs[column]!;
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let value = rhs[row]!;
    for (let k = row + 1; k < n; k++) value -= matrix[row * n + k]! * rhs[k]!;
    rhs[row] = value / matrix[row * n + row]!;
  }
  return true;
}

function swapRows(matrix: Float64Array, rhs: Float64Array, one: number, other: number): void {
  const n = rhs.length;
  for (let k = 0; k < n; k++) {
    const held = matrix[one * n + k]!;
    matrix[one * n + k] = matrix[other * n + k]!;
    matrix[other * n + k] = held;
  }
  const held = rhs[one]!;
  rhs[one] = rhs[other]!;
  rhs[other] = held;
}
