/** Small dense symmetric systems in typed arrays, row by row: what the elimination of the posterior is made of. */
import { smallArray } from "./smallArrays.ts";

/**
 * Cholesky factor L (lower, A = L L') of the symmetric positive definite n x n `matrix`, written over its lower triangle.
 * Golub & Van Loan, Matrix Computations, algorithm 4.2.1 (from memory).
 * @throws RangeError where `matrix` is not positive definite.
 */
export function factorise(matrix: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j <= i; j++) {
      const other = j * n;
      let sum = matrix[row + j]!;
      for (let k = 0; k < j; k++) sum -= matrix[row + k]! * matrix[other + k]!;
      if (i !== j) matrix[row + j] = sum / matrix[other + j]!;
      else {
        if (!(sum > 0))
          throw new RangeError(`matrix must be positive definite; got pivot ${sum} in row ${i}`);
        matrix[row + j] = Math.sqrt(sum);
      }
    }
  }
}

/** Solves L x = b in place, b being `count` columns side by side (n x count, row by row). */
export function solveLower(factor: Float64Array, n: number, b: Float64Array, count = 1): void {
  for (let i = 0; i < n; i++) {
    const row = i * count;
    for (let k = 0; k < i; k++) {
      const l = factor[i * n + k]!;
      if (l === 0) continue;
      const above = k * count;
      for (let c = 0; c < count; c++) b[row + c] = b[row + c]! - l * b[above + c]!;
    }
    const pivot = 1 / factor[i * n + i]!;
    for (let c = 0; c < count; c++) b[row + c] = b[row + c]! * pivot;
  }
}

/** Solves L' x = b in place, b as in `solveLower`. */
export function solveUpper(factor: Float64Array, n: number, b: Float64Array, count = 1): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * count;
    const pivot = 1 / factor[i * n + i]!;
    for (let c = 0; c < count; c++) b[row + c] = b[row + c]! * pivot;
    for (let k = 0; k < i; k++) {
      const l = factor[i * n + k]!;
      if (l === 0) continue;
      const above = k * count;
      for (let c = 0; c < count; c++) b[above + c] = b[above + c]! - l * b[row + c]!;
    }
  }
}

/** Inverse of the matrix whose Cholesky factor is `factor`, both triangles. */
export function inverseFrom(factor: Float64Array, n: number): Float64Array {
  const inverse = smallArray(n * n);
  for (let i = 0; i < n; i++) inverse[i * n + i] = 1;
  solveLower(factor, n, inverse, n);
  solveUpper(factor, n, inverse, n);
  return inverse;
}

/** ln of the determinant of the matrix whose Cholesky factor is `factor`. */
export function lnDeterminant(factor: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(factor[i * n + i]!);
  return 2 * sum;
}

/** x' M y for a symmetric n x n matrix. */
export function quadratic(x: Float64Array, matrix: Float64Array, y: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    if (x[i] === 0) continue;
    let along = 0;
    for (let j = 0; j < n; j++) along += matrix[i * n + j]! * y[j]!;
    sum += x[i]! * along;
  }
  return sum;
}
