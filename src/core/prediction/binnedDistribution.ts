/** A distribution on a line held as probability mass in equal bins: built from curves, then read off with an added error. */
import { normalCumulativeFast } from "./normalDistribution.ts";

/** Two nodes of a curve closer than this many bins count as one point. */
const NARROWEST_RAMP = 1e-6;

/** The arrays of one distribution of at most some number of bins, to be used again and again. */
export interface BinRoom {
  readonly bends: Float64Array;
  readonly mass: Float64Array;
  readonly before: Float64Array;
}

export function binRoom(binCount: number): BinRoom {
  return {
    bends: new Float64Array(binCount + 2),
    mass: new Float64Array(binCount),
    before: new Float64Array(binCount + 1),
  };
}

/**
 * Mass spread evenly between two values makes a ramp of the cumulative distribution, so a curve known at a few nodes
 * bends it at each node and nowhere else: only these bends are kept while curves are added.
 */
export interface BinnedDistribution {
  /** [e]: how much steeper, in probability per bin, the cumulative distribution gets at edge e of the bins. */
  readonly bends: Float64Array;
  readonly room: BinRoom;
  readonly binCount: number;
  readonly first: number;
  readonly binWidth: number;
}

/**
 * An empty distribution over `low`..`high`; what was in `room` before is gone.
 * @throws RangeError unless low < high and the bins fit into `room`.
 */
export function emptyDistribution(
  low: number,
  high: number,
  binCount: number,
  room: BinRoom = binRoom(binCount),
): BinnedDistribution {
  if (!(low < high)) throw new RangeError(`low must be below high; got ${low} and ${high}`);
  if (binCount > room.mass.length) {
    throw new RangeError(`binCount must be at most ${room.mass.length}; got ${binCount}`);
  }
  room.bends.fill(0);
  return { bends: room.bends, room, binCount, first: low, binWidth: (high - low) / binCount };
}

/** A bend between two edges, shared by them so that nothing changes beyond: the cumulative at every edge stays exact. */
function addBend(bends: Float64Array, position: number, steeper: number): void {
  const edge = position | 0;
  const part = steeper * (position - edge);
  bends[edge]! += steeper - part;
  bends[edge + 1]! += part;
}

/** Mass at one place, as a ramp one bin wide about it, or as near as the bins reach. */
function addPoint({ bends, binCount }: BinnedDistribution, position: number, mass: number): void {
  const low = Math.min(binCount - 1, Math.max(0, position - 0.5));
  addBend(bends, low, mass);
  addBend(bends, low + 1, -mass);
}

/**
 * Adds the curve through `masses.length + 1` values from `values[start]` on, all within the bins: step k, from its value
 * to the next in either direction, gets `weight * masses[k]` spread evenly; with `shares` (as `values`) only the mean of
 * the shares at its two ends.
 */
export function addCurve(
  into: BinnedDistribution,
  values: Float64Array,
  start: number,
  masses: Float64Array,
  weight: number,
  shares: Float64Array | null = null,
): void {
  const { bends, first, binWidth } = into;
  let from = (values[start]! - first) / binWidth;
  let before = 0;
  for (let k = 0; k < masses.length; k++) {
    const to = (values[start + k + 1]! - first) / binWidth;
    const share = shares === null ? 1 : 0.5 * (shares[start + k]! + shares[start + k + 1]!);
    const mass = weight * masses[k]! * share;
    const step = to - from;
    let steepness = 0;
    if (step < NARROWEST_RAMP && step > -NARROWEST_RAMP) addPoint(into, from, mass);
    else steepness = mass / step;
    addBend(bends, from, steepness - before);
    before = steepness;
    from = to;
  }
  addBend(bends, from, -before);
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
  const share = 1 / shifts.length;
  const step = binWidth / width;
  for (let s = 0; s < shifts.length; s++) {
    const start = (0.5 - reach) * step - shifts[s]! / width;
    for (let k = 0; k < below.length; k++) below[k]! += share * normalCumulativeFast(start + k * step);
  }
  return { below, reach };
}

/** A distribution with its error, ready to be read at any number of places. */
export interface ReadableDistribution {
  readonly first: number;
  readonly binWidth: number;
  readonly binCount: number;
  readonly mass: Float64Array;
  /** [b]: mass in the bins before bin b; [binCount] is the total. */
  readonly before: Float64Array;
  readonly kernel: ErrorKernel;
}

export function readable(distribution: BinnedDistribution, kernel: ErrorKernel): ReadableDistribution {
  const { bends, room, binCount, first, binWidth } = distribution;
  const { mass, before } = room;
  before[0] = 0;
  let steepness = 0;
  let total = 0;
  for (let b = 0; b < binCount; b++) {
    steepness += bends[b]!;
    mass[b] = steepness;
    total += steepness;
    before[b + 1] = total;
  }
  return { first, binWidth, binCount, mass, before, kernel };
}

/** Probability below edge `edge` of the bins, the mass of each bin taken at its middle. */
function belowEdge({ binCount, mass, before, kernel }: ReadableDistribution, edge: number): number {
  const { below, reach } = kernel;
  const start = Math.max(0, edge - reach);
  const end = Math.min(binCount, edge + reach);
  const offset = edge - 1 + reach;
  let sum = before[start]!;
  for (let b = start; b < end; b++) sum += mass[b]! * below[offset - b]!;
  return sum;
}

/** Probability below `limit`, between the edges by linear interpolation. */
export function probabilityBelow(read: ReadableDistribution, limit: number): number {
  const { binCount, before, first, binWidth } = read;
  const position = (limit - first) / binWidth;
  if (position <= 0) return 0;
  if (position >= binCount) return before[binCount]!;
  const edge = Math.floor(position);
  const at = belowEdge(read, edge);
  return at + (position - edge) * (belowEdge(read, edge + 1) - at);
}

/** The value below which the part `probability` of the total mass lies. */
export function quantileFrom(read: ReadableDistribution, probability: number): number {
  const { binCount, before, first, binWidth } = read;
  const wanted = probability * before[binCount]!;
  let low = 0;
  let high = binCount;
  let atLow = 0;
  let atHigh = before[binCount]!;
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
