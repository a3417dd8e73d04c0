/** What is believed of a record's print without the record: from the fit that holds it, without a new fit. */

import type { Expectation } from "./agreement.ts";
import { factorise, inverseFrom, solveLower } from "./dense.ts";
import type { Lesson } from "./lesson.ts";
import { residualAt } from "./lesson.ts";
import type { Posterior } from "./posterior.ts";
import { valuesOf } from "./settle.ts";
import { smallArray, smallCopy } from "./smallArrays.ts";

/** What of a fit or posterior its covariance is made of. */
type Conditioned = Pick<Posterior, "blocks" | "shared" | "sharedCovariance">;

/** Room for the parts of a lesson's unknowns in its block and in what is shared; grown when a lesson needs more. */
let ownRoom: Float64Array = new Float64Array(0);
let sharedRoom: Float64Array = new Float64Array(0);
let throughRoom: Float64Array = new Float64Array(0);

function cleared(room: Float64Array, length: number): Float64Array {
  if (room.length < length) return new Float64Array(2 * length);
  room.fill(0, 0, length);
  return room;
}

/** Covariance of a lesson's unknowns under the posterior that holds it. */
export function lessonCovariance(posterior: Conditioned, lesson: Lesson): Float64Array {
  const { factor, coupling, shared: columns } = posterior.blocks[lesson.block]!.eliminated;
  const size = posterior.blocks[lesson.block]!.unknowns.length;
  const width = columns.length;
  const { locals, shared } = lesson;
  const localCount = locals.length;
  const count = localCount + shared.length;
  const total = posterior.shared.length;
  // Column k: unknown k's own part, solved by the block's factor; and its part in the shared unknowns.
  ownRoom = cleared(ownRoom, size * localCount);
  sharedRoom = cleared(sharedRoom, total * count);
  throughRoom = cleared(throughRoom, total * count);
  for (let k = 0; k < localCount; k++) {
    const at = locals[k]!;
    ownRoom[at * localCount + k] = 1;
    for (let j = 0; j < width; j++) sharedRoom[columns[j]! * count + k] = -coupling[at * width + j]!;
  }
  for (let k = localCount; k < count; k++) sharedRoom[shared[k - localCount]! * count + k] = 1;
  solveLower(factor, size, ownRoom, localCount);
  for (let r = 0; r < total; r++) {
    for (let c = 0; c < total; c++) {
      const value = posterior.sharedCovariance[r * total + c]!;
      for (let k = 0; k < count; k++) throughRoom[r * count + k]! += value * sharedRoom[c * count + k]!;
    }
  }
  const covariance = smallArray(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = i; j < count; j++) {
      let sum = 0;
      for (let r = 0; r < total; r++) sum += sharedRoom[r * count + i]! * throughRoom[r * count + j]!;
      if (j < localCount) {
        for (let r = 0; r < size; r++) sum += ownRoom[r * localCount + i]! * ownRoom[r * localCount + j]!;
      }
      covariance[i * count + j] = sum;
      covariance[j * count + i] = sum;
    }
  }
  return covariance;
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
  const half = smallArray(count * p);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const c = covariance[i * count + j]!;
      for (let row = 0; row < p; row++) half[i * p + row]! += c * jacobian[row * count + j]!;
    }
  }
  const left = smallCopy(noise);
  for (let i = 0; i < left.length; i++) left[i] = left[i]! / lesson.weight;
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
