// The simulation behind `npm run soak`, on a few shops: what must hold of any shop, whatever the plan is worth in it.
import { describe, expect, it } from "vitest";
import { learn } from "../../../../src/core/evidence/learn.ts";
import { syntheticShop } from "../../../generator/syntheticShop.ts";
import { avoidableCosts } from "./savedCost.ts";
import { jobOf, leastLoss, likeliest, outlooksOf, tested } from "./shopJob.ts";

const TEST_COST = 25;
const SEED = 71000000;

describe("avoidableCosts", () => {
  it.each([
    [SEED, true],
    [SEED + 1, false],
  ])(
    "of shop %i (library: %s) are what the tests cost, or more by prints that missed",
    (seed, withLibrary) => {
      const costs = avoidableCosts(seed, withLibrary);
      const { oracle, plan, nothing, everything, largest, plainRule, planTestCount } = costs;
      const stakes = jobOf(syntheticShop(seed), withLibrary).reduce((sum, { stake }) => sum + stake, 0);
      expect(oracle).toBeGreaterThanOrEqual(0);
      // Nobody beats the oracle by more than the tests that he pays and it does not.
      const tests = { plan: planTestCount, nothing: 0, everything: 14, largest: Math.min(14, planTestCount) };
      for (const [rule, count] of Object.entries(tests) as [keyof typeof tests, number][]) {
        expect(costs[rule]).toBeGreaterThanOrEqual(count * TEST_COST - 1e-6);
        expect(costs[rule]).toBeLessThanOrEqual(stakes - oracle + count * TEST_COST + 1e-6);
      }
      expect(plainRule).toBeGreaterThanOrEqual(-1e-6);
      expect([plan, nothing, everything, largest, plainRule].every(Number.isFinite)).toBe(true);
      // No more tests than there are prints to test.
      expect(planTestCount).toBeLessThanOrEqual(14 * 30);
    },
  );
});

describe("a job in a synthetic shop", () => {
  const shop = syntheticShop(SEED);
  const job = jobOf(shop, false);

  it("has 14 garments with a stake each, and loses least with the mix of which most prints are in band", () => {
    expect(job).toHaveLength(14);
    const missing = job.map(({ pieces, sharesInBand }) => {
      for (const share of sharesInBand) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      return pieces * 3.2 * 0.7 * Math.min(...sharesInBand.map((share) => 1 - share));
    });
    expect(leastLoss(job)).toBeCloseTo(
      missing.reduce((sum, loss) => sum + loss, 0),
      6,
    );
  });

  it("has outlooks whose chances are chances, too dark, in band, too light and wrong in hue", () => {
    const start = learn([]);
    for (const line of job) {
      for (const { chanceBelow, chanceInBand, chanceAbove } of outlooksOf(start, line)) {
        for (const chance of [chanceBelow, chanceInBand, chanceAbove])
          expect(chance).toBeGreaterThanOrEqual(-1e-9);
        expect(chanceBelow + chanceInBand + chanceAbove).toBeLessThanOrEqual(1 + 1e-9);
      }
    }
  });

  it("learns one record from a test print, the same whenever it is made", () => {
    const start = learn([]);
    const line = job[0]!;
    const c = likeliest(outlooksOf(start, line))[0]!;
    const once = tested(shop, start, line, c);
    expect(once.records).toHaveLength(1);
    expect(tested(shop, start, line, c).records).toEqual(once.records);
  });
});
