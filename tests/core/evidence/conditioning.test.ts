// The elimination by styles against a general-purpose linear-algebra library that sees one dense system.
import { inverse, Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { covarianceOf, meansOf } from "../../../src/core/evidence/beliefOfCell.ts";
import { cellOf } from "../../../src/core/evidence/cell.ts";
import { factorise, inverseFrom, lnDeterminant } from "../../../src/core/evidence/dense.ts";
import { learn } from "../../../src/core/evidence/learn.ts";
import { withoutLesson } from "../../../src/core/evidence/leaveOneOut.ts";
import type { Lesson } from "../../../src/core/evidence/lesson.ts";
import type { Posterior } from "../../../src/core/evidence/posterior.ts";
import { DEFAULT_PRIOR_SCALES } from "../../../src/core/evidence/priorScales.ts";
import { backSubstitute, eliminate } from "../../../src/core/evidence/styleBlock.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { VIEWING } from "../prediction/cloths.ts";
import { seededRandom } from "../prediction/seededRandom.ts";
import { MIXES, modelShop } from "./modelShop.ts";

/** Two factorisations of one well-conditioned system in doubles. */
const ROUNDING = 1e-9;

/** A lesson of random slopes and noise: only what elimination reads. */
function randomLesson(random: () => number, size: number, sharedCount: number): Lesson {
  const some = (count: number, most: number): Int32Array =>
    Int32Array.from({ length: most }, (_, i) => i).filter(() => random() < count / most);
  const locals = some(3, size);
  const shared = some(4, sharedCount);
  const count = locals.length + shared.length;
  const p = random() < 0.7 ? 3 : 1;
  const draw = (n: number): Float64Array => Float64Array.from({ length: n }, () => 4 * random() - 2);
  const root = draw(p * p);
  const noise = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      for (let k = 0; k < p; k++) noise[i * p + j]! += root[i * p + k]! * root[j * p + k]!;
    }
    noise[i * p + i]! += 0.1;
  }
  const factor = noise.slice();
  factorise(factor, p);
  return {
    locals,
    shared,
    weight: 0.2 + 0.8 * random(),
    target: draw(p),
    inverseNoise: inverseFrom(factor, p),
    linearised: { expected: draw(p), jacobian: draw(p * count), noise },
  } as unknown as Lesson;
}

interface Dense {
  readonly precision: Matrix;
  readonly right: Matrix;
}

/** The same normal equations as one matrix; unknown k of block b at offsets[b] + k, shared ones last. */
function denseSystem(
  blocks: readonly { variances: Float64Array; lessons: readonly Lesson[] }[],
  sharedVariances: ArrayLike<number>,
): Dense & { offsets: number[]; total: number } {
  const offsets: number[] = [];
  let total = 0;
  for (const { variances } of blocks) {
    offsets.push(total);
    total += variances.length;
  }
  const sharedAt = total;
  total += sharedVariances.length;
  const precision = Matrix.zeros(total, total);
  const right = Matrix.zeros(total, 1);
  blocks.forEach(({ variances, lessons }, b) => {
    variances.forEach((variance, k) => {
      precision.set(offsets[b]! + k, offsets[b]! + k, 1 / variance);
    });
    for (const { locals, shared, weight, target, inverseNoise, linearised } of lessons) {
      const at = [...Array.from(locals, (k) => offsets[b]! + k), ...Array.from(shared, (k) => sharedAt + k)];
      const p = target.length;
      if (at.length === 0) continue;
      const slopes = Matrix.from1DArray(p, at.length, linearised.jacobian);
      const weighed = slopes
        .transpose()
        .mmul(Matrix.from1DArray(p, p, inverseNoise))
        .mul(weight);
      const information = weighed.mmul(slopes);
      const pull = weighed.mmul(Matrix.columnVector(target));
      at.forEach((row, i) => {
        right.set(row, 0, right.get(row, 0) + pull.get(i, 0));
        at.forEach((column, j) => {
          precision.set(row, column, precision.get(row, column) + information.get(i, j));
        });
      });
    }
  });
  for (let k = 0; k < sharedVariances.length; k++) {
    const at = sharedAt + k;
    precision.set(at, at, precision.get(at, at) + 1 / sharedVariances[k]!);
  }
  return { precision, right, offsets, total };
}

describe("elimination by styles", () => {
  it.each([1, 2, 3, 4, 5, 6])(
    "solves random structured problem %i as ml-matrix solves the dense one",
    (seed) => {
      const { uniform } = seededRandom(seed);
      const sharedCount = 3 + Math.floor(uniform() * 8);
      const blocks = Array.from({ length: 4 }, () => {
        const size = 2 + Math.floor(uniform() * 9);
        return {
          variances: Float64Array.from({ length: size }, () => 0.05 + uniform()),
          lessons: Array.from({ length: 1 + Math.floor(uniform() * 12) }, () =>
            randomLesson(uniform, size, sharedCount),
          ),
        };
      });
      const sharedVariances = Array.from({ length: sharedCount }, () => 0.05 + uniform());
      const dense = denseSystem(blocks, sharedVariances);
      const expected = solve(dense.precision, dense.right).to1DArray();

      const eliminated = blocks.map(({ variances, lessons }) =>
        eliminate(variances.length, variances, lessons),
      );
      const reduced = Matrix.diag(sharedVariances.map((variance) => 1 / variance));
      const right = Matrix.zeros(sharedCount, 1);
      for (const { shared, reduced: part, reducedRight } of eliminated) {
        shared.forEach((row, i) => {
          right.set(row, 0, right.get(row, 0) + reducedRight[i]!);
          shared.forEach((column, j) => {
            reduced.set(row, column, reduced.get(row, column) + part[i * shared.length + j]!);
          });
        });
      }
      const sharedValues = Float64Array.from(solve(reduced, right).to1DArray());
      const found = [...eliminated.flatMap((one) => [...backSubstitute(one, sharedValues)]), ...sharedValues];
      expect(found.length).toBe(dense.total);
      found.forEach((value, i) => {
        expect(Math.abs(value - expected[i]!)).toBeLessThan(ROUNDING);
      });
    },
  );
});

describe("the posterior of a shop", () => {
  // Closed fractions so sure of themselves that none is held at 0: a bound is no part of a dense system.
  const scales = { ...DEFAULT_PRIOR_SCALES, closedFraction: 0.003 };
  const shop = modelShop(11, 24, 60, scales);
  const posterior = learn(shop.records, { scales });
  const dense = denseSystem(
    posterior.blocks.map(({ variances, lessons }) => ({
      variances,
      lessons: lessons.map((l) => posterior.lessons[l]!),
    })),
    posterior.shared.map(({ sd }) => sd * sd),
  );
  const covariance = inverse(dense.precision);
  const placeOf = (of: Posterior, style: string, key: string, isOwn: boolean): number => {
    const block = of.blockOfStyle.get(style)!;
    return isOwn
      ? dense.offsets[block]! + of.blocks[block]!.positions.get(key)!
      : dense.total - of.shared.length + of.sharedPositions.get(key)!;
  };

  it("has the covariance that ml-matrix inverts from all unknowns at once", () => {
    for (const { print } of shop.records.slice(0, 12)) {
      const cell = cellOf(print, wettableGarment(print.garment.garment, VIEWING), posterior.scales);
      const { styleKey } = print.garment;
      const found = covarianceOf(posterior, cell, styleKey);
      const at = cell.unknowns.map(({ key }, i) => placeOf(posterior, styleKey, key, i < cell.wetCount));
      at.forEach((row, i) => {
        at.forEach((column, j) => {
          const difference = found[i * at.length + j]! - covariance.get(row, column);
          expect(Math.abs(difference)).toBeLessThan(ROUNDING);
        });
      });
    }
  });

  it("has the values that ml-matrix solves for", () => {
    const expected = solve(dense.precision, dense.right);
    posterior.shared.forEach(({ lowest }, i) => {
      expect(posterior.sharedValues[i]!).toBeGreaterThan(lowest);
    });
    for (const { print } of shop.records) {
      const cell = cellOf(print, wettableGarment(print.garment.garment, VIEWING), posterior.scales);
      const { styleKey } = print.garment;
      meansOf(posterior, cell, styleKey).forEach((value, i) => {
        const at = placeOf(posterior, styleKey, cell.unknowns[i]!.key, i < cell.wetCount);
        expect(Math.abs(value - expected.get(at, 0))).toBeLessThan(ROUNDING);
      });
    }
  });

  it("leaves a record out as a dense system without it does", () => {
    const left = posterior.lessons[7]!;
    const others = denseSystem(
      posterior.blocks.map(({ variances, lessons }) => ({
        variances,
        lessons: lessons.filter((l) => l !== 7).map((l) => posterior.lessons[l]!),
      })),
      posterior.shared.map(({ sd }) => sd * sd),
    );
    const expectedMeans = solve(others.precision, others.right);
    const expected = inverse(others.precision);
    const { means, covariance: found } = withoutLesson(posterior, left);
    const at = [
      ...Array.from(left.locals, (k) => others.offsets[left.block]! + k),
      ...Array.from(left.shared, (k) => others.total - posterior.shared.length + k),
    ];
    at.forEach((row, i) => {
      expect(Math.abs(means[i]! - expectedMeans.get(row, 0))).toBeLessThan(1e-7);
      at.forEach((column, j) => {
        expect(Math.abs(found[i * at.length + j]! - expected.get(row, column))).toBeLessThan(1e-7);
      });
    });
  });

  it("knows nothing of a print none of whose unknowns any record shares", () => {
    const print = shop.printOf(
      { ...shop.lots[0]!, styleKey: "never printed", lotKey: "new lot" },
      { ...MIXES[0]!, itemKeys: ["a base never printed"] },
      99,
    );
    const cell = cellOf(print, wettableGarment(print.garment.garment, VIEWING), posterior.scales);
    const found = covarianceOf(posterior, cell, "never printed");
    const count = cell.unknowns.length;
    cell.unknowns.forEach(({ sd, kind }, i) => {
      if (kind === "fibreGain") return;
      expect(found[i * count + i]).toBeCloseTo(sd * sd, 12);
    });
  });
});

describe("small dense systems", () => {
  it("agree with ml-matrix on inverse and determinant", () => {
    const { uniform } = seededRandom(9);
    const n = 9;
    const root = Matrix.zeros(n, n).apply(function set(i, j) {
      this.set(i, j, uniform() - 0.5);
    });
    const matrix = root.mmul(root.transpose()).add(Matrix.eye(n).mul(0.2));
    const factor = Float64Array.from(matrix.to1DArray());
    factorise(factor, n);
    const expected = inverse(matrix).to1DArray();
    inverseFrom(factor, n).forEach((value, i) => {
      expect(Math.abs(value - expected[i]!)).toBeLessThan(ROUNDING);
    });
    const logs = matrix.clone();
    let lnDet = 0;
    for (let k = 0; k < n; k++) {
      lnDet += Math.log(logs.get(k, k));
      for (let i = k + 1; i < n; i++) {
        const factorOf = logs.get(i, k) / logs.get(k, k);
        for (let j = k; j < n; j++) logs.set(i, j, logs.get(i, j) - factorOf * logs.get(k, j));
      }
    }
    expect(lnDeterminant(factor, n)).toBeCloseTo(lnDet, 9);
  });

  it("refuse a matrix that is not positive definite", () => {
    expect(() => factorise(Float64Array.of(1, 2, 2, 1), 2)).toThrow(RangeError);
  });
});
