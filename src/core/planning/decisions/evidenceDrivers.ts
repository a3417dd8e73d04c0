/** What evidence knows of many prints at once: how they vary together, as loadings on independent standard unknowns. */
import type { Viewing } from "../../colorimetry/viewing.ts";
import { type ExaminedCell, examine } from "../../evidence/beliefFor.ts";
import { blockOf } from "../../evidence/beliefOfCell.ts";
import { factorise, solveLower } from "../../evidence/dense.ts";
import type { Posterior } from "../../evidence/posterior.ts";
import { printNoise } from "../../evidence/readingNoise.ts";
import type { EvidencePrint } from "../../evidence/record.ts";

/** One print's delta-L* to first order around its mean: loadings on independent standard normals, and what is its own. */
export interface PrintDriver {
  /** By name of the standard unknown, delta-L* per unit. */
  readonly loadings: ReadonlyMap<string, number>;
  /** Variance of delta-L* that records could settle: the sum of the squared loadings. */
  readonly settleableVariance: number;
  /** Variance of delta-L* from print to print and from what the model misses: no record of another print settles it. */
  readonly residualVariance: number;
}

/** The Cholesky factor of what the shop shares, made once for many prints. */
export interface SharedFactor {
  readonly posterior: Posterior;
  readonly factor: Float64Array;
}

/** A variance that was learned down to rounding must not stop the factorisation. */
const JITTER = 1e-12;

export function sharedFactor(posterior: Posterior): SharedFactor {
  const n = posterior.shared.length;
  const factor = posterior.sharedCovariance.slice();
  for (let i = 0; i < n; i++) factor[i * n + i]! += JITTER;
  factorise(factor, n);
  return { posterior, factor };
}

/**
 * The driver of `print` under a posterior. With A = LL' the precision of its style's own unknowns, W their coupling to the
 * shared ones and C = GG' the covariance of those, a combination of own parts l and shared parts s has the variance
 * |L^-1 l|^2 + |G'(s - W'l)|^2, so that L^-1 l and G'(s - W'l) are its loadings; what no record speaks of loads on itself. Two
 * prints' loadings multiplied give their covariance: the same as `covarianceOf` in core/evidence gives within one print.
 * @param pieceCount pieces that the run is the mean of: what varies from piece to piece averages out in a long run
 */
export function printDriver(
  shared: SharedFactor,
  print: EvidencePrint,
  viewing: Viewing,
  pieceCount: number,
): PrintDriver {
  const examined = examine(shared.posterior, print, viewing);
  const loadings = loadingsOf(shared, examined, print.garment.styleKey);
  let settleableVariance = 0;
  for (const loading of loadings.values()) settleableVariance += loading * loading;
  const { cell, slopes } = examined;
  return { loadings, settleableVariance, residualVariance: printNoise(cell, slopes, pieceCount)[0]! };
}

function loadingsOf(
  { posterior, factor }: SharedFactor,
  { cell, slopes }: ExaminedCell,
  styleKey: string,
): Map<string, number> {
  const loadings = new Map<string, number>();
  const block = blockOf(posterior, styleKey);
  const size = block?.unknowns.length ?? 0;
  const sharedCount = posterior.shared.length;
  const own = new Float64Array(size);
  const common = new Float64Array(sharedCount);
  cell.unknowns.forEach(({ key, sd }, k) => {
    const slope = slopes.jacobian[k]!;
    const isOwn = k < cell.wetCount;
    const at = isOwn ? block?.positions.get(key) : posterior.sharedPositions.get(key);
    if (at === undefined) {
      const name = isOwn ? `${styleKey}\u0001${key}` : key;
      loadings.set(name, (loadings.get(name) ?? 0) + slope * sd);
    } else if (isOwn) own[at]! += slope;
    else common[at]! += slope;
  });
  if (block !== undefined) {
    const { shared, coupling } = block.eliminated;
    for (let i = 0; i < size; i++) {
      if (own[i] === 0) continue;
      for (let j = 0; j < shared.length; j++)
        common[shared[j]!]! -= coupling[i * shared.length + j]! * own[i]!;
    }
    solveLower(block.eliminated.factor, size, own);
    own.forEach((value, i) => {
      if (value !== 0) loadings.set(`own ${i}\u0001${styleKey}`, value);
    });
  }
  for (let j = 0; j < sharedCount; j++) {
    let sum = 0;
    for (let i = j; i < sharedCount; i++) sum += factor[i * sharedCount + j]! * common[i]!;
    if (sum !== 0) loadings.set(`shared ${j}`, sum);
  }
  return loadings;
}

/** Covariance of two prints' delta-L* by what they share. */
export function driverCovariance(one: PrintDriver, other: PrintDriver): number {
  const [few, many] =
    one.loadings.size <= other.loadings.size
      ? [one.loadings, other.loadings]
      : [other.loadings, one.loadings];
  let sum = 0;
  for (const [name, loading] of few) sum += loading * (many.get(name) ?? 0);
  return sum;
}

/**
 * `driverCovariance` of each of `rows` (positions in `drivers`) with all of them: rows x drivers, row by row. By the unknowns
 * instead of by pairs, since most pairs share few.
 */
export function driverCovariances(drivers: readonly PrintDriver[], rows: readonly number[]): Float64Array {
  const users = new Map<string, { readonly at: number; readonly loading: number }[]>();
  drivers.forEach(({ loadings }, at) => {
    for (const [name, loading] of loadings) {
      const known = users.get(name);
      if (known === undefined) users.set(name, [{ at, loading }]);
      else known.push({ at, loading });
    }
  });
  const columns = new Map(
    [...users].map(([name, of]) => [
      name,
      { at: Int32Array.from(of, (use) => use.at), loadings: Float64Array.from(of, (use) => use.loading) },
    ]),
  );
  const covariance = new Float64Array(rows.length * drivers.length);
  rows.forEach((driver, r) => {
    const start = r * drivers.length;
    for (const [name, loading] of drivers[driver]!.loadings) {
      const { at, loadings } = columns.get(name)!;
      for (let i = 0; i < at.length; i++) covariance[start + at[i]!]! += loading * loadings[i]!;
    }
  });
  return covariance;
}
