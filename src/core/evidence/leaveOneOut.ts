/** What is believed of a record's print without the record: from the fit that holds it, without a new fit. */
import type { Expectation } from "./agreement.ts";
import { factorise, inverseFrom, solveLower } from "./dense.ts";
import type { Lesson } from "./lesson.ts";
import { residualAt } from "./lesson.ts";
import type { Posterior } from "./posterior.ts";
import { valuesOf } from "./settle.ts";

/** Covariance of a lesson's unknowns under the posterior that holds it. */
export function lessonCovariance(posterior: Posterior, lesson: Lesson): Float64Array {
  const { factor, coupling, shared: columns } = posterior.blocks[lesson.block]!.eliminated;
  const size = posterior.blocks[lesson.block]!.unknowns.length;
  const width = columns.length;
  const { locals, shared } = lesson;
  const count = locals.length + shared.length;
  const total = posterior.shared.length;
  const own = new Float64Array(size * count);
  const common: number[][] = [];
  for (let k = 0; k < count; k++) {
    const parts: number[] = new Array<number>(total).fill(0);
    if (k < locals.length) {
      own[locals[k]! * count + k] = 1;
      for (let j = 0; j < width; j++) parts[columns[j]!] = -coupling[locals[k]! * width + j]!;
    } else parts[shared[k - locals.length]!] = 1;
    common.push(parts);
  }
  solveLower(factor, size, own, count);
  const covariance = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const through = timesShared(posterior.sharedCovariance, common[i]!, total);
    for (let j = i; j < count; j++) {
      let sum = 0;
      for (let r = 0; r < size; r++) sum += own[r * count + i]! * own[r * count + j]!;
      for (let r = 0; r < total; r++) sum += through[r]! * common[j]![r]!;
      covariance[i * count + j] = sum;
      covariance[j * count + i] = sum;
    }
  }
  return covariance;
}

function timesShared(matrix: Float64Array, parts: readonly number[], n: number): Float64Array {
  const product = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const value = parts[k]!;
    if (value === 0) continue;
    for (let i = 0; i < n; i++) product[i]! += matrix[k * n + i]! * value;
  }
  return product;
}

/**
 * Means and covariance of `lesson`'s unknowns were it not there. With J its slopes, N its weighed noise, e its residual,
 * C the covariance and K = N - J C J': means - C J' K^-1 e and C + C J' K^-1 J C (the rank-p downdate of a Gaussian;
 * Cook & Weisberg, Residuals and Influence in Regression, 1982, §2.2; from memory). Exact for a straight model.
 */
export function withoutLesson(posterior: Posterior, lesson: Lesson): Expectation {
  const values = valuesOf(lesson, posterior.blocks, posterior.sharedValues);
  const covariance = lessonCovariance(posterior, lesson);
  const { jacobian, noise } = lesson.linearised;
  const count = values.length;
  const p = lesson.target.length;
  const half = new Float64Array(count * p);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const c = covariance[i * count + j]!;
      for (let row = 0; row < p; row++) half[i * p + row]! += c * jacobian[row * count + j]!;
    }
  }
  const left = noise.map((value) => value / lesson.weight);
  for (let row = 0; row < p; row++) {
    for (let other = 0; other < p; other++) {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += jacobian[row * count + i]! * half[i * p + other]!;
      left[row * p + other]! -= sum;
    }
  }
  factorise(left, p);
  const inverse = inverseFrom(left, p);
  const residual = residualAt(lesson, values);
  const means = values.slice();
  for (let i = 0; i < count; i++) {
    for (let row = 0; row < p; row++) {
      let pull = 0;
      for (let other = 0; other < p; other++) {
        const part = half[i * p + other]! * inverse[other * p + row]!;
        pull += part;
      }
      means[i]! -= pull * residual[row]!;
      for (let j = 0; j < count; j++) covariance[i * count + j]! += pull * half[j * p + row]!;
    }
  }
  return { means, covariance };
}
