/** A record in its place in the fit: linearised where its unknowns last stood, weighed by how well it agrees. */

import { factorise, inverseFrom } from "./dense.ts";
import { smallArray, smallCopy } from "./smallArrays.ts";
import type { Linearised, Teaching } from "./teaching.ts";

export interface Lesson {
  readonly teaching: Teaching;
  readonly block: number;
  /** Positions of its unknowns: in its block, then among the shared ones. */
  readonly locals: Int32Array;
  readonly shared: Int32Array;
  /** Where it was linearised. */
  readonly point: Float64Array;
  readonly linearised: Linearised;
  /** The observation as the linear model sees it: observed - expected - bend + J point. */
  readonly target: Float64Array;
  /** What the model's bending adds to the mean of the observation, taken off before the fit sees it. */
  readonly bend: readonly number[] | null;
  readonly inverseNoise: Float64Array;
  /** Student-t weight, at most 1. */
  readonly weight: number;
}

/** Degrees of freedom of a record's error (model.md §6). */
export const RECORD_DEGREES_OF_FREEDOM = 4;

/** 90 % points of chi-square with 1 and 3 degrees of freedom. Published: any table (from memory). */
const ORDINARY_DISTANCE2: Readonly<Record<number, number>> = { 1: 2.706, 3: 6.251 };

/**
 * Weight of a record whose squared Mahalanobis residual is `distance2` in `dimension` 1 or 3: that of a multivariate
 * Student-t, (nu + c) / (nu + d^2) (Lange, Little & Taylor, JASA 84 (1989) 881; from memory), at most 1. Departures: not
 * above 1, because a record that the fit passes through has no residual, whatever its error; and c is not the dimension but
 * the distance within which nine of ten honest records lie, because weights that start at the mean distance take a tenth
 * off what honest records say.
 */
export function studentWeight(distance2: number, dimension: number): number {
  const ordinary = ORDINARY_DISTANCE2[dimension];
  if (ordinary === undefined) throw new RangeError(`dimension must be 1 or 3; got ${dimension}`);
  return Math.min(1, (RECORD_DEGREES_OF_FREEDOM + ordinary) / (RECORD_DEGREES_OF_FREEDOM + distance2));
}

/** `lesson` linearised anew at `point`. */
export function linearisedAt(
  place: Pick<Lesson, "teaching" | "block" | "locals" | "shared" | "weight" | "bend">,
  point: Float64Array,
): Lesson {
  const { teaching } = place;
  const { dimension: p, observed } = teaching;
  const linearised = teaching.linearise(point);
  const { expected, jacobian, noise } = linearised;
  const count = point.length;
  const target = smallArray(p);
  for (let row = 0; row < p; row++) {
    let along = 0;
    for (let k = 0; k < count; k++) along += jacobian[row * count + k]! * point[k]!;
    target[row] = observed[row]! - expected[row]! - (place.bend?.[row] ?? 0) + along;
  }
  const factor = smallCopy(noise);
  factorise(factor, p);
  const inverseNoise = inverseFrom(factor, p);
  const { block, locals, shared, weight, bend } = place;
  return {
    teaching,
    block,
    locals,
    shared,
    weight,
    bend,
    point,
    linearised,
    target,
    inverseNoise,
  };
}

/** `lesson` with `bend` taken off its observation instead of what was. */
export function withBend(lesson: Lesson, bend: readonly number[]): Lesson {
  const target = lesson.target.map((value, row) => value + (lesson.bend?.[row] ?? 0) - bend[row]!);
  return { ...lesson, target, bend };
}

/** Observed minus expected of the linear model where the lesson's unknowns are the first of `values`. */
export function residualAt(lesson: Lesson, values: Float64Array): Float64Array {
  const { target, linearised, point } = lesson;
  const { jacobian } = linearised;
  const count = point.length;
  const residual = smallCopy(target);
  for (let row = 0; row < residual.length; row++) {
    let along = 0;
    for (let k = 0; k < count; k++) along += jacobian[row * count + k]! * values[k]!;
    residual[row] = residual[row]! - along;
  }
  return residual;
}

/** Squared Mahalanobis length of a residual under the record's own noise. */
export function distance2Of(lesson: Lesson, residual: Float64Array): number {
  const p = residual.length;
  let sum = 0;
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) sum += residual[i]! * lesson.inverseNoise[i * p + j]! * residual[j]!;
  }
  return sum;
}

/**
 * How far a lesson's unknowns have moved from where it was linearised, in natural logarithms: the sum of what scales
 * wet-out (each of the two garments' of a goods-in check counts all of it), or any shared unknown.
 */
export function movementOf(lesson: Lesson, values: Float64Array): number {
  const { point, locals } = lesson;
  let sum = 0;
  let sizes = 0;
  let most = 0;
  for (let i = 0; i < locals.length; i++) {
    sum += values[i]! - point[i]!;
    sizes += Math.abs(values[i]! - point[i]!);
  }
  for (let i = locals.length; i < point.length; i++) most = Math.max(most, Math.abs(values[i]! - point[i]!));
  return Math.max(most, lesson.teaching.cells.length === 1 ? Math.abs(sum) : sizes);
}
