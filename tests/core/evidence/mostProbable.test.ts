// The most probable values and their spread against a brute-force grid, and a textbook's normal-normal update.
import { describe, expect, it } from "vitest";
import { learn } from "../../../src/core/evidence/learn.ts";
import { type Lesson, studentWeight } from "../../../src/core/evidence/lesson.ts";
import { DEFAULT_PRIOR_SCALES, type PriorScales } from "../../../src/core/evidence/priorScales.ts";
import type { EvidenceRecord } from "../../../src/core/evidence/record.ts";
import { styleVariance } from "../../../src/core/evidence/settle.ts";
import { backSubstitute, eliminate } from "../../../src/core/evidence/styleBlock.ts";
import { cloth, FILAMENT_POLYESTER } from "../prediction/cloths.ts";
import { MIXES, modelShop } from "./modelShop.ts";

const NEARLY_NONE = 1e-5;
const NOTHING_OPEN = Object.fromEntries(
  Object.keys(DEFAULT_PRIOR_SCALES).map((name) => [name, NEARLY_NONE]),
) as unknown as PriorScales;

/** Records of one lot, one with each mix. */
function recordsOn(shop: ReturnType<typeof modelShop>, mixes: readonly number[]): EvidenceRecord[] {
  const lot = shop.lots[0]!;
  return mixes.map((m) => shop.recordOf(shop.printOf(lot, MIXES[m]!)));
}

/**
 * -2 ln of the posterior at every point of a grid over two unknowns, the noise and weights being those of the fit: mean
 * and covariance over the grid, and its lowest point.
 */
function overGrid(
  lessons: readonly Lesson[],
  place: readonly [key: string, sd: number, from: number, to: number][],
  pointCount: number,
) {
  const [first, second] = place;
  const stepOf = ([, , from, to]: (typeof place)[number]): number => (to - from) / (pointCount - 1);
  let best = { x: 0, y: 0, value: Number.POSITIVE_INFINITY };
  const sums = { w: 0, x: 0, y: 0, xx: 0, yy: 0, xy: 0 };
  const values: { x: number; y: number; value: number }[] = [];
  for (let i = 0; i < pointCount; i++) {
    for (let j = 0; j < pointCount; j++) {
      const x = first![2] + i * stepOf(first!);
      const y = second![2] + j * stepOf(second!);
      let value = (x / first![1]) ** 2 + (y / second![1]) ** 2;
      for (const { teaching, inverseNoise, weight } of lessons) {
        const at = Float64Array.from(teaching.unknowns, ({ key }) =>
          key === first![0] ? x : key === second![0] ? y : 0,
        );
        const { expected } = teaching.linearise(at);
        const off = teaching.observed.map((o, row) => o - expected[row]!);
        for (let r = 0; r < off.length; r++) {
          for (let c = 0; c < off.length; c++) {
            value += weight * off[r]! * inverseNoise[r * off.length + c]! * off[c]!;
          }
        }
      }
      values.push({ x, y, value });
      if (value < best.value) best = { x, y, value };
    }
  }
  for (const { x, y, value } of values) {
    const w = Math.exp(-(value - best.value) / 2);
    sums.w += w;
    sums.x += w * x;
    sums.y += w * y;
    sums.xx += w * x * x;
    sums.yy += w * y * y;
    sums.xy += w * x * y;
  }
  const mean = { x: sums.x / sums.w, y: sums.y / sums.w };
  return {
    best,
    mean,
    variance: { x: sums.xx / sums.w - mean.x ** 2, y: sums.yy / sums.w - mean.y ** 2 },
    covariance: sums.xy / sums.w - mean.x * mean.y,
    steps: [stepOf(first!), stepOf(second!)] as const,
  };
}

describe("the most probable values of two open unknowns", () => {
  it.each([21, 22])("are the lowest point of a brute-force grid: lot and black, shop %i", (seed) => {
    const scales = { ...NOTHING_OPEN, lot: 0.44, colourantStrength: 0.3 };
    const shop = modelShop(seed, 3, 0, scales);
    const records = recordsOn(shop, [0, 4, 4]);
    const posterior = learn(records, { scales, mostProbable: true });
    const lotKey = posterior.blocks[0]!.unknowns.find(({ kind }) => kind === "lot")!;
    const blackKey = posterior.shared.find(({ kind }) => kind === "colourantStrength")!;
    const lot = posterior.blocks[0]!.values[posterior.blocks[0]!.positions.get(lotKey.key)!]!;
    const blackAt = posterior.sharedPositions.get(blackKey.key)!;
    const black = posterior.sharedValues[blackAt]!;
    const grid = overGrid(
      posterior.lessons,
      [
        [lotKey.key, lotKey.sd, lot - 0.45, lot + 0.45],
        [blackKey.key, blackKey.sd, black - 0.45, black + 0.45],
      ],
      46,
    );
    // A linearisation holds within 0.025; one grid step is 0.02.
    expect(Math.abs(lot - grid.best.x)).toBeLessThan(0.5 * grid.steps[0] + 0.005);
    expect(Math.abs(black - grid.best.y)).toBeLessThan(0.5 * grid.steps[1] + 0.005);
    const found = posterior.sharedCovariance[blackAt * posterior.shared.length + blackAt]!;
    // Laplace's normal against the grid's own spread, which is a little skew.
    expect(Math.sqrt(found) / Math.sqrt(grid.variance.y)).toBeGreaterThan(0.93);
    expect(Math.sqrt(found) / Math.sqrt(grid.variance.y)).toBeLessThan(1.07);
  });

  it("are the lowest point of the grid where a print surprises by four times its spread", () => {
    const scales = { ...NOTHING_OPEN, lot: 0.44, baseStrength: 0.25 };
    const shop = modelShop(25, 3, 0, scales);
    const [one] = recordsOn(shop, [1]);
    const reading = one!.reading;
    if (reading.kind !== "pair") throw new RangeError("a pair is needed");
    const darker = { ...reading.printed, L: reading.bare.L + 4 * (reading.printed.L - reading.bare.L) };
    const records = [{ ...one!, reading: { ...reading, printed: darker } }];
    const posterior = learn(records, { scales, mostProbable: true });
    expect(posterior.converged).toBe(true);
    const lotUnknown = posterior.blocks[0]!.unknowns.find(({ kind }) => kind === "lot")!;
    const lot = posterior.blocks[0]!.values[posterior.blocks[0]!.positions.get(lotUnknown.key)!]!;
    const baseUnknown = posterior.shared.find(({ kind }) => kind === "baseStrength")!;
    const base = posterior.sharedValues[posterior.sharedPositions.get(baseUnknown.key)!]!;
    const grid = overGrid(
      posterior.lessons,
      [
        [lotUnknown.key, lotUnknown.sd, lot - 0.6, lot + 0.6],
        [baseUnknown.key, baseUnknown.sd, base - 0.4, base + 0.4],
      ],
      51,
    );
    expect(Math.abs(lot - grid.best.x)).toBeLessThan(0.5 * grid.steps[0] + 0.012);
    expect(Math.abs(base - grid.best.y)).toBeLessThan(0.5 * grid.steps[1] + 0.012);
  });
});

describe("the means of two open unknowns", () => {
  it("lie nearer to the grid's means than the most probable values do, where one faint print is all there is", () => {
    const scales = { ...NOTHING_OPEN, lot: 0.44, baseStrength: 0.25 };
    const errors = { means: 0, mostProbable: 0 };
    for (const seed of [31, 32, 33, 34]) {
      const shop = modelShop(seed, 3, 0, scales);
      const lotOnPolyester = { ...shop.lots[0]!, garment: cloth([60, 5, 20], FILAMENT_POLYESTER) };
      const records = [shop.recordOf(shop.printOf(lotOnPolyester, MIXES[3]!))];
      const fits = {
        means: learn(records, { scales }),
        mostProbable: learn(records, { scales, mostProbable: true }),
      };
      const { blocks, lessons } = fits.mostProbable;
      const lot = blocks[0]!.unknowns.find(({ kind }) => kind === "lot")!;
      const base = fits.means.shared.find(({ kind }) => kind === "baseStrength")!;
      const at = blocks[0]!.positions.get(lot.key)!;
      const grid = overGrid(
        lessons,
        [
          [lot.key, lot.sd, -1.6, 1.6],
          [base.key, base.sd, -1, 1],
        ],
        61,
      );
      for (const name of ["means", "mostProbable"] as const) {
        errors[name] += Math.abs(fits[name].blocks[0]!.values[at]! - grid.mean.x);
      }
    }
    expect(errors.means).toBeLessThan(0.8 * errors.mostProbable);
  });
});

describe("a normal prior and normal data", () => {
  // Gelman et al., Bayesian Data Analysis, exercise 2.8 and its published solution (from memory): students' weights with
  // sd 20 lb, prior N(180, 40^2), ten students of mean 150: posterior N(150.7, 6.2^2); a hundred: N(150.07, 1.997^2).
  it.each([
    [10, 150.7, 0.05, 6.2, 0.05],
    [100, 150.07, 0.005, 1.997, 0.001],
  ])("give the textbook's posterior for %i students", (count, mean, meanRounding, sd, sdRounding) => {
    const noise = 20 ** 2 / count;
    const lesson = {
      locals: Int32Array.of(0),
      shared: new Int32Array(0),
      weight: 1,
      target: Float64Array.of(150 - 180),
      inverseNoise: Float64Array.of(1 / noise),
      linearised: {
        expected: Float64Array.of(0),
        jacobian: Float64Array.of(1),
        noise: Float64Array.of(noise),
      },
    } as unknown as Lesson;
    const eliminated = eliminate(1, Float64Array.of(40 ** 2), [lesson]);
    expect(Math.abs(180 + backSubstitute(eliminated, new Float64Array(0))[0]! - mean)).toBeLessThan(
      meanRounding,
    );
    expect(Math.abs(1 / eliminated.factor[0]! - sd)).toBeLessThan(sdRounding);
  });
});

describe("heavy tails", () => {
  it("weigh a record as the Student-t's mixture does, never above what its noise allows", () => {
    expect(studentWeight(0, 3)).toBe(1);
    expect(studentWeight(6, 3)).toBe(1);
    expect(studentWeight(24, 3)).toBeCloseTo(10.251 / 28, 12);
    expect(studentWeight(16, 1)).toBeCloseTo(6.706 / 20, 12);
    expect(() => studentWeight(1, 2)).toThrow(RangeError);
  });

  it("leave an unremarkable style its Student-t's variance and let a far one go further", () => {
    expect(styleVariance(0.18, 0, 0)).toBeCloseTo(0.18 ** 2, 12);
    expect(styleVariance(0.18, 0.2, 0.01)).toBeCloseTo(0.18 ** 2, 12);
    expect(styleVariance(0.18, 0.8, 0)).toBeGreaterThan(2 * 0.18 ** 2);
  });
});
