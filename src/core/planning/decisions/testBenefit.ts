/** What a set of test prints is worth: the state of a plan while tests are added to it, and its value in money. */
import { expectedLeastLoss } from "./expectedLeastLoss.ts";
import { expectedCellCost, type UncertainCell } from "./uncertainCell.ts";

/** A test print that could be made: it reads the driver of one cell, with noise. */
export interface TestCandidate {
  readonly id: string;
  /** Index of the cell that it prints. */
  readonly cell: number;
  /** Standard deviation of its answer around the driver: reading, print to print and the model's own, in the driver's unit. */
  readonly noiseSd: number;
  /** Money. */
  readonly cost: number;
  /** Spare pieces of the cell's garment that it uses up. */
  readonly pieceCount: number;
}

export interface TestPlanProblem {
  readonly cells: readonly UncertainCell[];
  readonly tests: readonly TestCandidate[];
  /**
   * Covariance of the driver of test i's cell with the driver of cell j: tests x cells, row by row. At a test's own cell it
   * is that cell's variance.
   */
  readonly covariance: Float64Array;
}

/** The cells of one garment among all. */
export interface GarmentCells {
  readonly garmentId: string;
  readonly cells: readonly number[];
  readonly means: Float64Array;
  /** Expected cost of its best choice with no test. */
  readonly costNow: number;
  /** The same with all the tests made and read without noise: nothing that can be tested is left open. */
  readonly costIfKnown: number;
  /** n x n: covariance that they would take away. */
  readonly knowable: Float64Array;
}

/** A set of tests, what their answers would settle, and what that is worth. Not changed once made. */
export interface Benefit {
  readonly chosen: readonly number[];
  /** As `TestPlanProblem.covariance`, after the answers of the chosen. */
  readonly covariance: Float64Array;
  /** Per garment, n x n: covariance that the answers take away. */
  readonly settled: readonly Float64Array[];
  /** Per garment: expected cost of its best choice after the answers, as it was counted last. */
  readonly costs: readonly number[];
  /** Per garment: part of the variance that answers have taken away, and of that since its cost was counted. */
  readonly settledShares: readonly number[];
  readonly uncounted: readonly number[];
  /** Money that the answers save, before the tests' own cost. */
  readonly worth: number;
}

export interface BenefitModel {
  readonly problem: TestPlanProblem;
  readonly garments: readonly GarmentCells[];
  /** 1 over each cell's variance; 0 where it has none. */
  readonly precision: Float64Array;
  readonly nothing: Benefit;
  /** Money that all the tests together would save if they were read without noise: the most that a plan can. */
  readonly avoidable: number;
}

/** Part of a driver's variance that answers must have taken away from a garment before its cost is counted anew. */
const NOTICEABLE_SHARE = 1e-3;
/**
 * The same for what one more test would gain on it, while candidates are compared, in a problem of many tests: each touches
 * every garment a little through what is known of a base, and that is counted once it is chosen.
 */
const COMPARED_SHARE = 4e-3;
const MANY_TESTS = 24;
/** Money below which a garment's avoidable risk is nothing. */
const NOTICEABLE_MONEY = 1e-9;

/**
 * The problem made ready.
 * @throws RangeError where the lists and the covariance do not fit together or a figure cannot be.
 */
export function benefitModel(problem: TestPlanProblem): BenefitModel {
  requireSound(problem);
  const byGarment = new Map<string, number[]>();
  problem.cells.forEach(({ garmentId }, c) => {
    const own = byGarment.get(garmentId);
    if (own === undefined) byGarment.set(garmentId, [c]);
    else own.push(c);
  });
  const owns = [...byGarment.values()];
  const known = settledByAll(problem, owns);
  const garments = [...byGarment].map(([garmentId, cells], g): GarmentCells => {
    const means = Float64Array.from(cells, (c) => problem.cells[c]!.mean);
    const costNow = costWith(problem, cells, means, new Float64Array(cells.length ** 2));
    const costIfKnown = Math.min(costNow, costWith(problem, cells, means, known[g]!));
    return { garmentId, cells, means, costNow, costIfKnown, knowable: known[g]! };
  });
  const nothing: Benefit = {
    chosen: [],
    covariance: problem.covariance,
    settled: garments.map(({ cells }) => new Float64Array(cells.length ** 2)),
    costs: garments.map(({ costNow }) => costNow),
    settledShares: garments.map(() => 0),
    uncounted: garments.map(() => 0),
    worth: 0,
  };
  const avoidable = garments.reduce((sum, { costNow, costIfKnown }) => sum + costNow - costIfKnown, 0);
  const precision = Float64Array.from(problem.cells, ({ sd }) => (sd > 0 ? 1 / (sd * sd) : 0));
  return { problem, garments, precision, nothing, avoidable };
}

/** Per garment, the covariance of its cells that all tests together settle when read without noise. */
function settledByAll(problem: TestPlanProblem, owns: readonly (readonly number[])[]): Float64Array[] {
  const cellCount = problem.cells.length;
  const covariance = problem.covariance.slice();
  const settled = owns.map((cells) => new Float64Array(cells.length ** 2));
  problem.tests.forEach(({ cell }, t) => {
    const variance = covariance[t * cellCount + cell]!;
    // What earlier tests have settled already leaves rounding only.
    if (!(variance > 1e-9 * problem.cells[cell]!.sd ** 2)) return;
    const row = covariance.slice(t * cellCount, (t + 1) * cellCount);
    owns.forEach((cells, g) => {
      addOuter(
        settled[g]!,
        cells.map((c) => row[c]!),
        variance,
      );
    });
    // Of those before it nothing more is asked.
    condition(problem, covariance, t, row, variance, covariance, t + 1);
  });
  return settled;
}

/** Adds moved moved' / variance to the square matrix `into`. */
function addOuter(into: Float64Array, moved: readonly number[], variance: number): void {
  const n = moved.length;
  for (let i = 0; i < n; i++) {
    if (moved[i] === 0) continue;
    for (let j = 0; j < n; j++) into[i * n + j]! += (moved[i]! * moved[j]!) / variance;
  }
}

/**
 * Writes `covariance` conditioned on the answer of test `t` to `into`, which may be itself: a correction of rank one to the rows
 * from `first` on. `row` is that of the test, and must not change meanwhile.
 */
function condition(
  { tests, cells }: TestPlanProblem,
  covariance: Float64Array,
  t: number,
  row: Float64Array,
  variance: number,
  into: Float64Array,
  first = 0,
): void {
  const ownCell = tests[t]!.cell;
  const cellCount = cells.length;
  for (let r = first; r < tests.length; r++) {
    const at = r * cellCount;
    const part = covariance[at + ownCell]! / variance;
    if (part !== 0) {
      for (let c = 0; c < cellCount; c++) into[at + c] = covariance[at + c]! - part * row[c]!;
    } else if (into !== covariance) into.set(covariance.subarray(at, at + cellCount), at);
  }
}

export function costWith(
  { cells }: TestPlanProblem,
  own: readonly number[],
  means: Float64Array,
  settled: Float64Array,
): number {
  return expectedLeastLoss(means, settled, (o, gone) => {
    const cell = cells[own[o]!]!;
    return expectedCellCost(cell, cell.sd ** 2 - gone);
  });
}

/** Variance of a test's answer, given the answers of those chosen before. */
function answerVariance({ problem: { tests, cells } }: BenefitModel, covariance: Float64Array, t: number) {
  const { cell, noiseSd } = tests[t]!;
  return covariance[t * cells.length + cell]! + noiseSd ** 2;
}

/** Money that test `t` saves besides those in `benefit`. */
export function gainOf(model: BenefitModel, benefit: Benefit, t: number): number {
  const least = model.problem.tests.length > MANY_TESTS ? COMPARED_SHARE : NOTICEABLE_SHARE;
  let gain = 0;
  forEachMoved(model, benefit, t, (g, share, settledAfter) => {
    if (share <= least) return;
    const { cells, means } = model.garments[g]!;
    gain += benefit.costs[g]! - costWith(model.problem, cells, means, settledAfter());
  });
  return gain;
}

/** Calls `act` for each garment with anything to save that the answer of `t` says anything of. */
export function forEachMoved(
  model: BenefitModel,
  benefit: Benefit,
  t: number,
  act: (garment: number, share: number, settledAfter: () => Float64Array) => void,
): void {
  const { problem, garments, precision } = model;
  const row = t * problem.cells.length;
  const variance = answerVariance(model, benefit.covariance, t);
  if (!(variance > 0)) return;
  garments.forEach(({ cells, costNow, costIfKnown }, g) => {
    if (costNow - costIfKnown < NOTICEABLE_MONEY) return;
    let largest = 0;
    for (let o = 0; o < cells.length; o++) {
      const moved = benefit.covariance[row + cells[o]!]!;
      largest = Math.max(largest, moved * moved * precision[cells[o]!]!);
    }
    const share = largest / variance;
    if (share === 0) return;
    act(g, share, () => {
      const settled = benefit.settled[g]!.slice();
      addOuter(
        settled,
        cells.map((c) => benefit.covariance[row + c]!),
        variance,
      );
      return settled;
    });
  });
}

/** `benefit` with test `t` made as well: the normal conditioned on one more answer. */
export function withTest(model: BenefitModel, benefit: Benefit, t: number): Benefit {
  const { problem, garments } = model;
  const cellCount = problem.cells.length;
  const costs = benefit.costs.slice();
  const settled = benefit.settled.slice();
  const settledShares = benefit.settledShares.slice();
  const uncounted = benefit.uncounted.slice();
  forEachMoved(model, benefit, t, (g, share, settledAfter) => {
    const after = settledAfter();
    settled[g] = after;
    settledShares[g]! += share;
    uncounted[g]! += share;
    if (uncounted[g]! <= NOTICEABLE_SHARE) return;
    uncounted[g] = 0;
    costs[g] = costWith(problem, garments[g]!.cells, garments[g]!.means, after);
  });
  const variance = answerVariance(model, benefit.covariance, t);
  let covariance = benefit.covariance;
  if (variance > 0) {
    covariance = new Float64Array(covariance.length);
    const row = benefit.covariance.subarray(t * cellCount, (t + 1) * cellCount);
    condition(problem, benefit.covariance, t, row, variance, covariance);
  }
  const worth = garments.reduce((sum, { costNow }, g) => sum + costNow - costs[g]!, 0);
  return { chosen: [...benefit.chosen, t], covariance, settled, costs, settledShares, uncounted, worth };
}

/** The benefit of all of `tests`, in order. */
export function benefitOf(model: BenefitModel, tests: readonly number[]): Benefit {
  return tests.reduce((benefit, t) => withTest(model, benefit, t), model.nothing);
}

function requireSound({ cells, tests, covariance }: TestPlanProblem): void {
  if (covariance.length !== cells.length * tests.length) {
    throw new RangeError(
      `covariance must be tests x cells, ${tests.length} x ${cells.length}; got ${covariance.length}`,
    );
  }
  for (const { sd, residualSd, lower, upper, lossIfOutOfBand, otherCost } of cells) {
    const figures = { sd, residualSd, lossIfOutOfBand, otherCost };
    for (const [name, value] of Object.entries(figures)) {
      if (!(value >= 0 && value < Infinity)) throw new RangeError(`${name} must be >= 0; got ${value}`);
    }
    if (!(lower <= upper)) throw new RangeError(`lower must not be above upper; got ${lower}, ${upper}`);
  }
  tests.forEach(({ id, cell, noiseSd, cost }, t) => {
    if (cells[cell] === undefined) throw new RangeError(`test ${id} must name a cell; got ${cell}`);
    if (!(noiseSd >= 0) || !(cost >= 0)) throw new RangeError(`test ${id} must have noise and cost >= 0`);
    const variance = cells[cell]!.sd ** 2;
    const given = covariance[t * cells.length + cell]!;
    if (Math.abs(given - variance) > 1e-6 * (variance + 1e-9)) {
      throw new RangeError(`test ${id}: covariance with its own cell must be ${variance}; got ${given}`);
    }
  });
}
