/** Means and joint covariance of the unknowns of one cell under a posterior; the prior's where nothing is known. */
import type { Cell } from "./cell.ts";
import { solveLower } from "./dense.ts";
import type { Posterior } from "./posterior.ts";
import type { StyleBlock } from "./styleBlock.ts";

/** Most probable value of each of the cell's unknowns; 0 for what no record speaks of. */
export function meansOf(posterior: Posterior, cell: Cell, styleKey: string): Float64Array {
  const block = blockOf(posterior, styleKey);
  return Float64Array.from(cell.unknowns, ({ key }, i) => {
    const at = i < cell.wetCount ? block?.positions.get(key) : posterior.sharedPositions.get(key);
    if (at === undefined) return 0;
    return i < cell.wetCount ? block!.values[at]! : posterior.sharedValues[at]!;
  });
}

export function blockOf(posterior: Posterior, styleKey: string): StyleBlock | undefined {
  const at = posterior.blockOfStyle.get(styleKey);
  return at === undefined ? undefined : posterior.blocks[at];
}

/** Whether any record speaks of the style. */
export function knowsStyle(posterior: Posterior, styleKey: string): boolean {
  return posterior.blockOfStyle.has(styleKey);
}

/**
 * Covariance (n x n) of the cell's n unknowns: with A the precision of the style's own unknowns and W their coupling to
 * the shared ones after elimination, cov = l' A^-1 l + (s - W'l)' C (s - W'l) for any combination of own parts l and
 * shared parts s, C being the covariance of what is shared. What no record speaks of keeps its prior, alone.
 */
export function covarianceOf(posterior: Posterior, cell: Cell, styleKey: string): Float64Array {
  const { unknowns, wetCount } = cell;
  const count = unknowns.length;
  const covariance = new Float64Array(count * count);
  const block = blockOf(posterior, styleKey);
  const size = block?.unknowns.length ?? 0;
  const sharedCount = posterior.shared.length;
  /** Column k: the own part of unknown k, solved by the block's factor; and its part in the shared unknowns. */
  const own = new Float64Array(size * count);
  const common = new Float64Array(sharedCount * count);
  for (let k = 0; k < count; k++) {
    const { key, sd } = unknowns[k]!;
    const isOwn = k < wetCount;
    const at = isOwn ? block?.positions.get(key) : posterior.sharedPositions.get(key);
    if (at === undefined) covariance[k * count + k] = sd * sd;
    else if (isOwn) {
      own[at * count + k] = 1;
      const { shared, coupling } = block!.eliminated;
      for (let j = 0; j < shared.length; j++) {
        common[shared[j]! * count + k] = -coupling[at * shared.length + j]!;
      }
    } else common[at * count + k] = 1;
  }
  if (block !== undefined) {
    solveLower(block.eliminated.factor, size, own, count);
    addGram(covariance, own, own, size, count);
  }
  addGram(
    covariance,
    common,
    times(posterior.sharedCovariance, common, sharedCount, count),
    sharedCount,
    count,
  );
  return covariance;
}

/** Adds x' y to `into` (count x count), x and y being rows x count. */
function addGram(into: Float64Array, x: Float64Array, y: Float64Array, rows: number, count: number): void {
  for (let r = 0; r < rows; r++) {
    for (let i = 0; i < count; i++) {
      const value = x[r * count + i]!;
      if (value === 0) continue;
      for (let j = 0; j < count; j++) into[i * count + j]! += value * y[r * count + j]!;
    }
  }
}

/** matrix (n x n) times x (n x count). */
function times(matrix: Float64Array, x: Float64Array, n: number, count: number): Float64Array {
  const product = new Float64Array(n * count);
  for (let k = 0; k < n; k++) {
    for (let c = 0; c < count; c++) {
      const value = x[k * count + c]!;
      if (value === 0) continue;
      for (let i = 0; i < n; i++) product[i * count + c]! += matrix[i * n + k]! * value;
    }
  }
  return product;
}
