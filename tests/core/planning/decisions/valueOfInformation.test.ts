// The value of a test print: the textbook's closed form, brute-force simulation with a fixed seed, and the laws of information.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedLeastLoss } from "../../../../src/core/planning/decisions/expectedLeastLoss.ts";
import { benefitModel, benefitOf, gainOf } from "../../../../src/core/planning/decisions/testBenefit.ts";
import { expectedCellCost, scoredCell } from "../../../../src/core/planning/decisions/uncertainCell.ts";
import { between } from "../../optics/between.ts";
import { sharedShop } from "./sharedShops.ts";
import { simulatedCost } from "./simulatedPlan.ts";

describe("expectedLeastLoss", () => {
  // Unit normal linear-loss integral L_N(D) (Schlaifer 1959; Raiffa & Schlaifer, Applied Statistical Decision Theory, 1961,
  // table II; from memory: 0.3989, 0.1978, 0.08332, 0.02931, 0.008491), and D for a two-action problem with linear loss:
  // EVSI = k s L_N(|m - b|/s), s the standard deviation of the posterior mean.
  it.each([
    [0, 0.3989],
    [0.5, 0.1978],
    [1, 0.08332],
    [1.5, 0.02931],
    [2, 0.008491],
  ])(
    "values a sample in Raiffa & Schlaifer's two-action problem with linear loss at D = %f by L_N = %f",
    (D, table) => {
      const [k, priorMean, priorVariance, sampleVariance, sampleSize] = [400, 12, 9, 36, 8];
      const posteriorVariance = 1 / (1 / priorVariance + sampleSize / sampleVariance);
      const s = Math.sqrt(priorVariance - posteriorVariance);
      const breakEven = priorMean + D * s;
      // Doing it loses k for each unit that the mean stays below break-even, leaving it loses nothing.
      const after = (option: number) => (mean: number) => (option === 0 ? 0 : k * (breakEven - mean));
      const settled = new Float64Array(4).fill(s ** 2);
      const now = Math.min(0, k * (breakEven - priorMean));
      const value = now - expectedLeastLoss([priorMean, priorMean], settled, after);
      // The table's last digit, and 0.2 % for the quadrature.
      expect(Math.abs(value / (k * s) - table)).toBeLessThan(0.00005 + 0.002 * table);
    },
  );

  it("is the loss itself where nothing is learned, and never more than the least of today's", () => {
    const anyCell = fc.record({
      mean: between(-1, 1),
      sd: between(0.05, 1),
      residualSd: between(0.05, 0.5),
      width: between(0.1, 1.5),
      lossIfOutOfBand: between(0, 1000),
      otherCost: between(0, 20),
    });
    fc.assert(
      fc.property(fc.array(anyCell, { minLength: 1, maxLength: 5 }), between(0, 1), (figures, share) => {
        const cells = figures.map((figure, i) => ({
          ...figure,
          garmentId: "g",
          choiceId: `${i}`,
          lower: -figure.width,
          upper: figure.width,
        }));
        const n = cells.length;
        const settled = Float64Array.from(
          { length: n * n },
          (_, i) => share * cells[Math.floor(i / n)]!.sd * cells[i % n]!.sd,
        );
        const means = cells.map(({ mean }) => mean);
        const cost = (covariance: Float64Array) =>
          expectedLeastLoss(means, covariance, (o, gone) =>
            expectedCellCost(cells[o]!, cells[o]!.sd ** 2 - gone),
          );
        const now = Math.min(...cells.map((cell) => expectedCellCost(cell, cell.sd ** 2)(cell.mean)));
        expect(cost(new Float64Array(n * n))).toBeCloseTo(now, 9);
        // What quadrature and the table of the normal may be off: 0.1 % of the money at stake.
        const slack = 1e-3 * Math.max(...cells.map(({ lossIfOutOfBand }) => lossIfOutOfBand), 1);
        expect(cost(settled)).toBeLessThan(now + slack);
      }),
      { numRuns: 200 },
    );
  });
});

describe("the value of a set of tests", () => {
  it.each([11, 12, 13])(
    "agrees with drawing prints and answers 20,000 times, in shop %i, one test and all",
    (seed) => {
      const shop = sharedShop(seed, { garments: 6, choices: 3, testCost: 25 });
      const model = benefitModel(shop.problem);
      const now = model.garments.reduce((sum, { costNow }) => sum + costNow, 0);
      const sets = [[0], [1, 3], [0, 1, 2, 3, 4, 5]];
      for (const set of sets) {
        const { mean, standardError } = simulatedCost(shop, set, 20_000, seed);
        const expected = now - benefitOf(model, set).worth;
        // Of several answers only two lines are followed: at most 2 % of the cost may be left, never gained.
        const tolerance = 3 * standardError + (set.length > 1 ? 0.02 : 0.002) * now;
        expect(Math.abs(expected - mean)).toBeLessThan(tolerance);
        expect(mean).toBeLessThan(expected + 3 * standardError + 0.002 * now);
      }
    },
  );

  it("is nothing for a noisy test of little, and grows as a test is read better", () => {
    const { problem } = sharedShop(3, { garments: 8, choices: 3, testCost: 25 });
    const gainAt = (noiseSd: number) => {
      const model = benefitModel({
        ...problem,
        tests: problem.tests.map((test) => ({ ...test, noiseSd })),
      });
      return problem.tests.map((_, t) => gainOf(model, model.nothing, t));
    };
    const [blind, rough, fine] = [gainAt(50), gainAt(0.4), gainAt(0.1)];
    problem.tests.forEach((_, t) => {
      expect(Math.abs(blind[t]!)).toBeLessThan(0.5);
      expect(fine[t]!).toBeGreaterThanOrEqual(rough[t]! - 0.5);
    });
    expect(Math.max(...fine)).toBeGreaterThan(25);
  });

  it("adds the same whichever of two tests is made first", () => {
    const { problem } = sharedShop(4, { garments: 8, choices: 3, testCost: 25 });
    const model = benefitModel(problem);
    expect(benefitOf(model, [2, 5]).worth).toBeCloseTo(benefitOf(model, [5, 2]).worth, 6);
  });

  it("refuses a covariance that is not the cells'", () => {
    const { problem } = sharedShop(4, { garments: 3, choices: 2, testCost: 25 });
    const wrong = problem.covariance.slice();
    wrong[problem.tests[1]!.cell + problem.cells.length] = 9;
    expect(() => benefitModel({ ...problem, covariance: wrong })).toThrow(RangeError);
    expect(() => benefitModel({ ...problem, covariance: wrong.slice(1) })).toThrow(RangeError);
  });
});

describe("scoredCell", () => {
  it("keeps today's chance in band whatever the share that tests could settle", () => {
    const money = { garmentId: "g", choiceId: "c", lossIfOutOfBand: 100, otherCost: 0 };
    fc.assert(
      fc.property(between(0, 1), between(0, 1), between(0, 1), (below, part, settleableShare) => {
        const chanceInBand = part * (1 - below);
        const cell = scoredCell(money, { chanceBelow: below, chanceInBand, settleableShare });
        const cost = expectedCellCost(cell, cell.sd ** 2)(cell.mean);
        // 2e-5: two readings of the table of the normal.
        expect(Math.abs(cost - 100 * (1 - chanceInBand))).toBeLessThan(100 * 2e-5);
      }),
    );
  });

  it("takes a hue that may miss for what no test settles: what stands out of band by lightness alone is left to settle", () => {
    const money = { garmentId: "g", choiceId: "c", lossIfOutOfBand: 100, otherCost: 0 };
    fc.assert(
      fc.property(between(0, 0.3), between(0, 0.3), between(0, 1), (below, above, holds) => {
        const byLightness = 1 - below - above;
        const chances = { chanceBelow: below, chanceInBand: holds * byLightness, settleableShare: 0.9 };
        const cell = scoredCell(money, { ...chances, chanceAbove: above });
        const cost = expectedCellCost(cell, cell.sd ** 2)(cell.mean);
        expect(Math.abs(cost - 100 * (1 - chances.chanceInBand))).toBeLessThan(100 * 2e-5);
        // Known to lie in the middle of the band, it still misses as often as its hue does.
        const known = expectedCellCost({ ...cell, residualSd: 0 }, 0);
        const middle = (Math.max(cell.lower, -9) + Math.min(cell.upper, 9)) / 2;
        expect(known(middle)).toBeCloseTo(100 * (1 - holds), 6);
      }),
    );
  });

  it("makes a test worth nothing where only the hue may miss", () => {
    const money = { garmentId: "g", lossIfOutOfBand: 1000, otherCost: 0 };
    const chances = { chanceBelow: 0, chanceInBand: 0.6, settleableShare: 0.9 };
    const worthOf = (chanceAbove: number | undefined) => {
      const cells = ["one", "other"].map((choiceId) =>
        scoredCell({ ...money, choiceId }, chanceAbove === undefined ? chances : { ...chances, chanceAbove }),
      );
      const tests = [{ id: "t", cell: 0, noiseSd: 0.1, cost: 25, pieceCount: 1 }];
      const model = benefitModel({ cells, tests, covariance: Float64Array.from([0.9, 0]) });
      return benefitOf(model, [0]).worth;
    };
    expect(Math.abs(worthOf(0))).toBeLessThan(1e-6);
    expect(worthOf(undefined)).toBeGreaterThan(100);
  });
});
