/** A distribution on a line held as probability mass in equal bins: built from ramps, then read off with an added error. */
import { normalCumulativeFast } from "./normalDistribution.ts";

export interface BinnedDistribution {
  readonly mass: Float64Array;
  readonly first: number;
  readonly binWidth: number;
}

/** An empty distribution over `low`..`high`. @throws RangeError unless low < high. */
export function emptyDistribution(low: number, high: number, binCount: number): BinnedDistribution {
  if (!(low < high)) throw new RangeError(`low must be below high; got ${low} and ${high}`);
  return { mass: new Float64Array(binCount), first: low, binWidth: (high - low) / binCount };
}

/**
 * Adds `probability`, evenly spread between `from` and `to` (either order), both within the bins. A curve known at a
 * few nodes so becomes a density without the steps that single points would leave.
 */
export function addRamp(into: BinnedDistribution, from: number, to: number, probability: number): void {
  const { mass, first, binWidth } = into;
  const low = (Math.min(from, to) - first) / binWidth;
  const high = (Math.max(from, to) - first) / binWidth;
  const lowBin = low | 0;
  const highBin = Math.min(mass.length - 1, high | 0);
  if (highBin <= lowBin) {
    mass[highBin]! += probability;
    return;
  }
  const perBin = probability / (high - low);
  mass[lowBin]! += perBin * (lowBin + 1 - low);
  for (let b = lowBin + 1; b < highBin; b++) mass[b]! += perBin;
  mass[highBin]! += perBin * (high - highBin);
}

/** The probabilities of an independent error that bins at a distance from a limit are read with. */
export interface ErrorKernel {
  /** [k]: chance that the error is below (k - reach + 1/2) bins. */
  readonly below: Float64Array;
  readonly reach: number;
}

/** The error: a normal of standard deviation `width` about one of `shifts`, each as likely. */
export function errorKernel(binWidth: number, width: number, shifts: Float64Array): ErrorKernel {
  let farthest = 0;
  for (let s = 0; s < shifts.length; s++) farthest = Math.max(farthest, Math.abs(shifts[s]!));
  const reach = Math.ceil((5 * width + farthest) / binWidth);
  const below = new Float64Array(2 * reach);
  for (let k = 0; k < below.length; k++) {
    const offset = (k - reach + 0.5) * binWidth;
    let sum = 0;
    for (let s = 0; s < shifts.length; s++) sum += normalCumulativeFast((offset - shifts[s]!) / width);
    below[k] = sum / shifts.length;
  }
  return { below, reach };
}

/** A distribution with its error, ready to be read at any number of places. */
export interface ReadableDistribution {
  readonly distribution: BinnedDistribution;
  readonly kernel: ErrorKernel;
  /** [b]: mass in the bins before bin b; the last is the total. */
  readonly before: Float64Array;
}

export function readable(distribution: BinnedDistribution, kernel: ErrorKernel): ReadableDistribution {
  const { mass } = distribution;
  const before = new Float64Array(mass.length + 1);
  for (let b = 0; b < mass.length; b++) before[b + 1] = before[b]! + mass[b]!;
  return { distribution, kernel, before };
}

/** Probability below edge `edge` of the bins, the mass of each bin taken at its middle. */
function belowEdge(read: ReadableDistribution, edge: number): number {
  const { mass } = read.distribution;
  const { below, reach } = read.kernel;
  const start = Math.max(0, edge - reach);
  const end = Math.min(mass.length, edge + reach);
  let sum = read.before[start]!;
  for (let b = start; b < end; b++) sum += mass[b]! * below[edge - b - 1 + reach]!;
  return sum;
}

/** Probability below `limit`, between the edges by linear interpolation. */
export function probabilityBelow(read: ReadableDistribution, limit: number): number {
  const { mass, first, binWidth } = read.distribution;
  const position = (limit - first) / binWidth;
  if (position <= 0) return 0;
  if (position >= mass.length) return read.before[mass.length]!;
  const edge = Math.floor(position);
  const at = belowEdge(read, edge);
  return at + (position - edge) * (belowEdge(read, edge + 1) - at);
}

/** The value below which the part `probability` of the total mass lies. */
export function quantileFrom(read: ReadableDistribution, probability: number): number {
  const { mass, first, binWidth } = read.distribution;
  const wanted = probability * read.before[mass.length]!;
  let low = 0;
  let high = mass.length;
  let atLow = 0;
  let atHigh = read.before[mass.length]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const at = belowEdge(read, middle);
    if (at < wanted) {
      low = middle;
      atLow = at;
    } else {
      high = middle;
      atHigh = at;
    }
  }
  const part = atHigh > atLow ? (wanted - atLow) / (atHigh - atLow) : 0.5;
  return first + (low + part) * binWidth;
}
