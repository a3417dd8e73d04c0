/**
 * Gauss-Newton on the structured model: linearise, eliminate each style, solve for what is shared, substitute back, and
 * again only where something moved. Records that stayed put keep their linearisation and their style its elimination,
 * so one more record costs little (the idea of fluid relinearisation: Kaess et al., Int. J. Robotics Res. 31 (2012) 216;
 * from memory).
 */

import { STYLE_DEGREES_OF_FREEDOM } from "../prediction/unknowns.ts";
import { factorise, inverseFrom, lnDeterminant, solveLower, solveUpper } from "./dense.ts";
import { distance2Of, type Lesson, linearisedAt, movementOf, residualAt, studentWeight } from "./lesson.ts";
import { smallArray, smallCopy } from "./smallArrays.ts";
import { backSubstitute, eliminate, type StyleBlock } from "./styleBlock.ts";
import { STYLE_SD_PER_SCALE, type Unknown } from "./unknown.ts";

/** Natural logarithms within which a linearisation holds: the error left is under 0.001 L*. While far off, more will do. */
const MOVE_TOLERANCE = 0.01;
const FIRST_MOVE_TOLERANCE = 0.1;
/** One step moves no record's wet-out, and no shared unknown, by more: far out the model is not straight. */
const LONGEST_STEP = 0.7;
const WEIGHT_TOLERANCE = 0.01;
/** First steps without Student-t weights: what is far off before anything is learned is not an outlier. */
const UNWEIGHTED_STEPS = 2;
/** After so many steps they are halved, which ends a swing between two linearisations. */
const FULL_STEPS = 12;
const MOST_STEPS = 60;
/** Steps after which a fit from nothing is near enough for what bending does to it to be counted. */
export const STEPS_TO_NEAR = 4;
/** Natural logarithms left to go at which the fit has arrived. */
const ARRIVED = 0.002;

/** The fit under way; blocks and lessons are replaced, never changed in place. */
export interface Fit {
  readonly lessons: Lesson[];
  readonly blocks: StyleBlock[];
  readonly shared: readonly Unknown[];
  sharedValues: Float64Array;
  sharedCovariance: Float64Array;
  sharedLnDeterminant: number;
  iterationCount: number;
  converged: boolean;
}

type Place = Pick<Lesson, "block" | "locals" | "shared">;

/** Writes into `out` the present values of the unknowns of a lesson in its place, its style's first. */
function valuesInto(
  out: Float64Array,
  { block, locals, shared }: Place,
  blocks: readonly Pick<StyleBlock, "values">[],
  sharedValues: Float64Array,
): void {
  const own = blocks[block]!.values;
  for (let i = 0; i < locals.length; i++) out[i] = own[locals[i]!]!;
  for (let i = 0; i < shared.length; i++) out[locals.length + i] = sharedValues[shared[i]!]!;
}

/** Present values of the unknowns of a lesson in its place, its style's first. */
export function valuesOf(
  place: Place,
  blocks: readonly Pick<StyleBlock, "values">[],
  sharedValues: Float64Array,
): Float64Array {
  const values = smallArray(place.locals.length + place.shared.length);
  valuesInto(values, place, blocks, sharedValues);
  return values;
}

/** Settles `fit` from where it stands, in `mostSteps` at most; `dirty` names the blocks whose lessons changed. */
export function settle(fit: Fit, dirty: Set<number>, warm: boolean, mostSteps = MOST_STEPS): void {
  const unweighted = warm ? 0 : UNWEIGHTED_STEPS;
  let left = Number.POSITIVE_INFINITY;
  fit.converged = false;
  for (let step = 0; step < mostSteps; step++) {
    const isNear = warm || step > UNWEIGHTED_STEPS;
    relinearise(fit, dirty, step >= unweighted, isNear ? MOVE_TOLERANCE : FIRST_MOVE_TOLERANCE);
    restyle(fit, dirty);
    if (dirty.size === 0 && left < ARRIVED && step > unweighted) {
      fit.converged = true;
      return;
    }
    for (const k of dirty) {
      const block = fit.blocks[k]!;
      const lessons = block.lessons.map((l) => fit.lessons[l]!);
      fit.blocks[k] = { ...block, eliminated: eliminate(block.unknowns.length, block.variances, lessons) };
    }
    dirty.clear();
    left = advance(fit, step < FULL_STEPS ? 1 : 0.5);
    fit.iterationCount++;
  }
}

/** Linearises what moved and weighs every lesson anew. */
function relinearise(fit: Fit, dirty: Set<number>, isWeighted: boolean, tolerance: number): void {
  const most = fit.lessons.reduce((count, { point }) => Math.max(count, point.length), 0);
  const values = new Float64Array(most);
  for (let l = 0; l < fit.lessons.length; l++) {
    let lesson = fit.lessons[l]!;
    valuesInto(values, lesson, fit.blocks, fit.sharedValues);
    let changed = false;
    if (movementOf(lesson, values) > tolerance) {
      lesson = linearisedAt(lesson, smallCopy(values, lesson.point.length));
      changed = true;
    }
    if (isWeighted) {
      const distance2 = distance2Of(lesson, residualAt(lesson, values));
      const weight = studentWeight(distance2, lesson.teaching.dimension);
      if (Math.abs(weight - lesson.weight) > WEIGHT_TOLERANCE) {
        lesson = { ...lesson, weight };
        changed = true;
      }
    }
    if (changed) {
      fit.lessons[l] = lesson;
      dirty.add(lesson.block);
    }
  }
}

/**
 * Prior variance of a style whose value is `value`, known within `variance`: the expected precision of the Student-t's
 * scale mixture, (nu + 1) / (nu + (value^2 + variance) / scale^2) / scale^2 (EM of Lange, Little & Taylor 1989, the
 * variance added as in variational Bayes). Departure: never below the Student-t's own variance, which is what an
 * unremarkable style is believed to have; near the mode the mixture alone would promise more than it knows.
 */
export function styleVariance(priorSd: number, value: number, variance: number): number {
  const scale2 = (priorSd / STYLE_SD_PER_SCALE) ** 2;
  const q = (value * value + variance) / scale2;
  const mixture = (scale2 * (STYLE_DEGREES_OF_FREEDOM + q)) / (STYLE_DEGREES_OF_FREEDOM + 1);
  return Math.max(priorSd ** 2, mixture);
}

/** Gives each style the prior variance that its present value calls for. */
function restyle(fit: Fit, dirty: Set<number>): void {
  fit.blocks.forEach((block, k) => {
    let variances = block.variances;
    block.unknowns.forEach(({ kind, sd }, i) => {
      if (kind !== "style") return;
      // Its posterior variance is at most the prior's: taken whole, since it matters only far out.
      const wanted = styleVariance(sd, block.values[i]!, Math.min(sd ** 2, variances[i]!) / 2);
      if (Math.abs(wanted / variances[i]! - 1) < WEIGHT_TOLERANCE) return;
      if (variances === block.variances) variances = block.variances.slice();
      variances[i] = wanted;
    });
    if (variances === block.variances) return;
    fit.blocks[k] = { ...block, variances };
    dirty.add(k);
  });
}

/** Solves for the shared unknowns and moves everything by `part` of the way; returns the farthest that anything has left to go. */
function advance(fit: Fit, part: number): number {
  const count = fit.shared.length;
  const precision = new Float64Array(count * count);
  const right = new Float64Array(count);
  fit.shared.forEach(({ sd }, i) => {
    precision[i * count + i] = 1 / (sd * sd);
  });
  for (const { eliminated } of fit.blocks) {
    const { shared, reduced, reducedRight } = eliminated;
    const width = shared.length;
    for (let i = 0; i < width; i++) {
      const row = shared[i]!;
      right[row]! += reducedRight[i]!;
      for (let j = 0; j < width; j++) precision[row * count + shared[j]!]! += reduced[i * width + j]!;
    }
  }
  const wanted = solveBounded(precision, right, fit.shared);
  const factor = precision;
  factorise(factor, count);
  fit.sharedCovariance = inverseFrom(factor, count);
  fit.sharedLnDeterminant = lnDeterminant(factor, count);
  let longest = 0;
  for (let i = 0; i < count; i++) longest = Math.max(longest, Math.abs(wanted[i]! - fit.sharedValues[i]!));
  const share = part * Math.min(1, LONGEST_STEP / longest);
  const reached = fit.sharedValues.map((value, i) => value + share * (wanted[i]! - value));
  fit.sharedValues = reached;
  let left = (1 - share) * longest;
  fit.blocks.forEach((block, k) => {
    const goal = backSubstitute(block.eliminated, reached);
    let farthest = 0;
    for (const l of block.lessons) {
      const { locals } = fit.lessons[l]!;
      let sum = 0;
      for (const i of locals) sum += goal[i]! - block.values[i]!;
      farthest = Math.max(farthest, Math.abs(sum));
    }
    const step = part * Math.min(1, LONGEST_STEP / farthest);
    left = Math.max(left, (1 - step) * farthest);
    fit.blocks[k] = { ...block, values: block.values.map((value, i) => value + step * (goal[i]! - value)) };
  });
  return left;
}

/**
 * Solves precision x = right with no x below its bound: what would fall below is held there and the rest solved again
 * (one pass of an active set; a bound once met stays met, since what is held can only be released by other bounds).
 */
function solveBounded(
  precision: Float64Array,
  right: Float64Array,
  unknowns: readonly Unknown[],
): Float64Array {
  const count = unknowns.length;
  const held = new Uint8Array(count);
  for (let pass = 0; ; pass++) {
    const matrix = precision.slice();
    const x = right.slice();
    for (let i = 0; i < count; i++) {
      if (held[i] === 1) continue;
      for (let j = 0; j < count; j++) {
        if (held[j] === 1) x[i]! -= precision[i * count + j]! * unknowns[j]!.lowest;
      }
    }
    for (let i = 0; i < count; i++) {
      if (held[i] === 0) continue;
      for (let j = 0; j < count; j++) {
        matrix[i * count + j] = 0;
        matrix[j * count + i] = 0;
      }
      matrix[i * count + i] = 1;
      x[i] = unknowns[i]!.lowest;
    }
    factorise(matrix, count);
    solveLower(matrix, count, x);
    solveUpper(matrix, count, x);
    let violated = false;
    for (let i = 0; i < count; i++) {
      if (held[i] === 1 || x[i]! >= unknowns[i]!.lowest) continue;
      held[i] = 1;
      violated = true;
    }
    if (!violated || pass > count) return x;
  }
}
