/**
 * The unknowns of one style (its mills, colourways, lots, bases on it), which meet other styles only through what the
 * shop shares: they are eliminated from the normal equations, leaving a small system in the shared unknowns.
 */
import { factorise, solveLower, solveUpper } from "./dense.ts";
import type { Lesson } from "./lesson.ts";
import type { Unknown } from "./unknown.ts";

export interface StyleBlock {
  readonly unknowns: readonly Unknown[];
  /** Position in `unknowns` by key. */
  readonly positions: ReadonlyMap<string, number>;
  /** Positions of its lessons in the posterior's list. */
  readonly lessons: readonly number[];
  readonly values: Float64Array;
  /** Prior variance of each unknown; a style's grows where it turns out far out in its tail. */
  readonly variances: Float64Array;
  readonly eliminated: Elimination;
}

/** A block after elimination; `shared` are the positions of the shared unknowns that it speaks of. */
export interface Elimination {
  readonly shared: Int32Array;
  /** Cholesky factor of the block's own precision, and the precision's inverse times its coupling to `shared`. */
  readonly factor: Float64Array;
  readonly coupling: Float64Array;
  /** The block's own solution where all shared unknowns are 0. */
  readonly particular: Float64Array;
  /** What it adds to precision and right-hand side of the shared unknowns. */
  readonly reduced: Float64Array;
  readonly reducedRight: Float64Array;
}

export const NOTHING_ELIMINATED: Elimination = {
  shared: new Int32Array(0),
  factor: new Float64Array(0),
  coupling: new Float64Array(0),
  particular: new Float64Array(0),
  reduced: new Float64Array(0),
  reducedRight: new Float64Array(0),
};

/** Room for one row of J' N^-1. */
const weighed = [0, 0, 0];

/**
 * Eliminates `size` unknowns of prior variances `variances` from the normal equations of `lessons` by Schur complement
 * (Golub & Van Loan, Matrix Computations, §3.2; from memory).
 */
export function eliminate(size: number, variances: Float64Array, lessons: readonly Lesson[]): Elimination {
  const columns = new Map<number, number>();
  for (const { shared } of lessons) {
    for (const position of shared) if (!columns.has(position)) columns.set(position, columns.size);
  }
  const width = columns.size;
  const own = new Float64Array(size * size);
  const coupling = new Float64Array(size * width);
  const reduced = new Float64Array(width * width);
  const particular = new Float64Array(size);
  const reducedRight = new Float64Array(width);
  for (let i = 0; i < size; i++) own[i * size + i] = 1 / variances[i]!;
  for (const lesson of lessons) {
    const { locals, shared, weight, target, inverseNoise } = lesson;
    const { jacobian } = lesson.linearised;
    const p = target.length;
    const localCount = locals.length;
    const count = localCount + shared.length;
    const at = placesOf(lesson, columns);
    for (let i = 0; i < count; i++) {
      // Row i of J' N^-1, weighed.
      let right = 0;
      for (let row = 0; row < p; row++) {
        let sum = 0;
        for (let k = 0; k < p; k++) sum += jacobian[k * count + i]! * inverseNoise[k * p + row]!;
        weighed[row] = weight * sum;
        right += weighed[row]! * target[row]!;
      }
      const isOwn = i < localCount;
      const row = at[i]!;
      if (isOwn) particular[row]! += right;
      else reducedRight[row]! += right;
      for (let j = isOwn ? 0 : localCount; j < count; j++) {
        let value = 0;
        for (let k = 0; k < p; k++) value += weighed[k]! * jacobian[k * count + j]!;
        if (!isOwn) reduced[row * width + at[j]!]! += value;
        else if (j < localCount) own[row * size + at[j]!]! += value;
        else coupling[row * width + at[j]!]! += value;
      }
    }
  }
  factorise(own, size);
  // With Z = L^-1 coupling: reduced -= Z'Z, reducedRight -= Z' L^-1 particular.
  const half = coupling;
  solveLower(own, size, half, width);
  solveLower(own, size, particular);
  for (let k = 0; k < size; k++) {
    for (let i = 0; i < width; i++) {
      const z = half[k * width + i]!;
      if (z === 0) continue;
      reducedRight[i]! -= z * particular[k]!;
      for (let j = 0; j < width; j++) reduced[i * width + j]! -= z * half[k * width + j]!;
    }
  }
  solveUpper(own, size, half, width);
  solveUpper(own, size, particular);
  const shared = Int32Array.from(columns.keys());
  return { shared, factor: own, coupling: half, particular, reduced, reducedRight };
}

/** Where each unknown of `lesson` lies: in its block, then among the columns of what is shared. */
function placesOf({ locals, shared }: Lesson, columns: ReadonlyMap<number, number>): number[] {
  const at: number[] = Array.from(locals);
  for (const position of shared) at.push(columns.get(position)!);
  return at;
}

/** Values of the block's unknowns where the shared unknowns have `sharedValues`. */
export function backSubstitute(eliminated: Elimination, sharedValues: Float64Array): Float64Array {
  const { shared, coupling, particular } = eliminated;
  const width = shared.length;
  const values = particular.slice();
  for (let i = 0; i < values.length; i++) {
    let sum = 0;
    for (let j = 0; j < width; j++) sum += coupling[i * width + j]! * sharedValues[shared[j]!]!;
    values[i] = values[i]! - sum;
  }
  return values;
}
