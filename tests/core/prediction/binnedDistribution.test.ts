// The binned distribution: no mass is lost, a curve's density is the one its steps have, quantile and probability agree.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addCurve,
  type BinnedDistribution,
  binRoom,
  emptyDistribution,
  errorKernel,
  probabilityBelow,
  quantileFrom,
  readable,
} from "../../../src/core/prediction/binnedDistribution.ts";
import { normalCumulative } from "../../../src/core/prediction/normalDistribution.ts";
import { between } from "../optics/between.ts";

/** Sums of some hundred bends, of which near-equal values make steep ones that cancel: up to 1e6 roundings. */
const ROUNDING = 1e-9;
const NO_SHIFT = new Float64Array(1);
const WIDTH = 0.3;
const BIN_COUNT = 128;

/** Bins over -10..10 with one curve, each step as likely. */
function curve(values: readonly number[]): BinnedDistribution {
  const into = emptyDistribution(-10, 10, BIN_COUNT);
  const masses = new Float64Array(values.length - 1).fill(1 / (values.length - 1));
  addCurve(into, Float64Array.from(values), 0, masses, 1);
  return into;
}
const read = (into: BinnedDistribution, width = WIDTH, shifts = NO_SHIFT) =>
  readable(into, errorKernel(into.binWidth, width, shifts));

/** The chance below `limit` of an even density from `from` to `to` with a normal error, by the midpoint rule. */
function evenWithError(from: number, to: number, limit: number): number {
  const STEPS = 4000;
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    sum += normalCumulative((limit - from - ((to - from) * (i + 0.5)) / STEPS) / WIDTH);
  }
  return sum / STEPS;
}

describe("a binned distribution", () => {
  it("has at every bin edge exactly what its curve has, however the curve runs", () => {
    fc.assert(
      fc.property(fc.array(between(-5, 5), { minLength: 2, maxLength: 26 }), (values) => {
        const { before, first, binWidth, binCount } = read(curve(values));
        for (let edge = 0; edge <= binCount; edge++) {
          const limit = first + edge * binWidth;
          let below = 0;
          for (let k = 1; k < values.length; k++) {
            const [low, high] = [values[k - 1]!, values[k]!].sort((a, b) => a - b) as [number, number];
            const part = high > low ? (limit - low) / (high - low) : Number(limit > low);
            below += Math.min(1, Math.max(0, part)) / (values.length - 1);
          }
          expect(Math.abs(before[edge]! - below)).toBeLessThan(ROUNDING);
        }
      }),
    );
  });

  it("keeps the mass of a curve that stands still, within a bin of where it stands", () => {
    fc.assert(
      fc.property(between(-5, 5), (value) => {
        const { before, first, binWidth, binCount } = read(curve([value, value, value]));
        for (let edge = 0; edge <= binCount; edge++) {
          const limit = first + edge * binWidth;
          if (Math.abs(limit - value) >= binWidth) {
            expect(Math.abs(before[edge]! - Number(limit > value))).toBeLessThan(ROUNDING);
          }
        }
      }),
    );
  });

  it("uses old room anew, and refuses more bins than it has", () => {
    const room = binRoom(BIN_COUNT);
    const fill = (low: number, bins: number) => {
      const into = emptyDistribution(low, 10, bins, room);
      addCurve(into, Float64Array.of(-1, 2), 0, Float64Array.of(1), 1);
      const distribution = read(into);
      return [0, 0.3, 0.9].map((limit) => probabilityBelow(distribution, limit));
    };
    const first = fill(-10, BIN_COUNT);
    fill(-3, 40);
    expect(fill(-10, BIN_COUNT)).toEqual(first);
    expect(() => emptyDistribution(-1, 1, BIN_COUNT + 1, room)).toThrow(
      new RangeError(`binCount must be at most ${BIN_COUNT}; got ${BIN_COUNT + 1}`),
    );
  });

  it("is the even density of a straight curve, with its error, within 0.002", () => {
    // Mass is taken at the middle of its bin: for a density of 1/6 per unit and bins of 0.16 that is worth 0.001.
    for (const [from, to] of [
      [-3, 3],
      [3, -3],
    ] as const) {
      const distribution = read(curve([from, (from + to) / 2, to]));
      for (const limit of [-3.5, -1, 0, 0.77, 1.1, 2.9, 4]) {
        expect(Math.abs(probabilityBelow(distribution, limit) - evenWithError(from, to, limit))).toBeLessThan(
          0.002,
        );
      }
    }
  });

  it("of one point is the error alone", () => {
    const distribution = read(curve([0.4, 0.4, 0.4]));
    for (const x of [-2, -1, 0, 1, 2]) {
      // the point is spread over a bin of 0.16, which adds 1 % to a variance of 0.09
      expect(Math.abs(probabilityBelow(distribution, 0.4 + x * WIDTH) - normalCumulative(x))).toBeLessThan(
        0.015,
      );
    }
  });

  it("counts each step by its share", () => {
    const into = emptyDistribution(-10, 10, BIN_COUNT);
    const values = Float64Array.of(-2, 0, 2);
    addCurve(into, values, 0, Float64Array.of(0.5, 0.5), 1, Float64Array.of(1, 0, 0));
    const distribution = read(into);
    expect(probabilityBelow(distribution, 9.9)).toBeCloseTo(0.25, 9);
    expect(probabilityBelow(distribution, 2)).toBeGreaterThan(0.2499);
  });

  it("takes each shift of the error as likely", () => {
    const shifted = read(curve([0, 0]), WIDTH, Float64Array.of(-4, 4));
    expect(probabilityBelow(shifted, 0)).toBeCloseTo(0.5, 6);
    expect(probabilityBelow(shifted, -2.5)).toBeCloseTo(0.5, 5);
    expect(probabilityBelow(shifted, 5.5)).toBeCloseTo(1, 5);
  });

  it("gives 0 below and all above its bins, and rises between", () => {
    const distribution = read(curve([-3, 1, 2]));
    expect(probabilityBelow(distribution, -11)).toBe(0);
    expect(probabilityBelow(distribution, 11)).toBeCloseTo(1, 12);
    let before = 0;
    for (let limit = -10; limit <= 10; limit += 0.05) {
      const at = probabilityBelow(distribution, limit);
      expect(at).toBeGreaterThanOrEqual(before - ROUNDING);
      before = at;
    }
  });

  it("has quantiles that undo its probabilities", () => {
    fc.assert(
      fc.property(
        fc.array(between(-5, 5), { minLength: 2, maxLength: 20 }),
        between(0.001, 0.999),
        (values, p) => {
          const distribution = read(curve(values));
          expect(probabilityBelow(distribution, quantileFrom(distribution, p))).toBeCloseTo(p, 9);
        },
      ),
    );
  });

  it("needs a low end below its high end", () => {
    expect(() => emptyDistribution(2, 2, 10)).toThrow(new RangeError("low must be below high; got 2 and 2"));
    expect(() => emptyDistribution(0, Number.NaN, 10)).toThrow("got 0 and NaN");
  });
});
