/** The figures' standard errors are those of shops, not of the cells in them. */
import { describe, expect, it } from "vitest";
import { quantileOver, rateOver } from "./clusteredFigures.ts";
import { drawsFor } from "./draws.ts";

describe("a rate over shops", () => {
  it("has the binomial standard error where each shop gives one value", () => {
    const values = Array.from({ length: 400 }, (_, i) => [i % 4 !== 0]);
    const { value, standardError, count, shopCount } = rateOver(values);
    expect(value).toBe(0.75);
    // sqrt(p (1 - p) / (n - 1)), the sample's own variance.
    expect(standardError).toBeCloseTo(Math.sqrt((0.75 * 0.25) / 399), 12);
    expect([count, shopCount]).toEqual([400, 400]);
  });

  it("does not become surer by counting each value a hundred times", () => {
    const once = Array.from({ length: 50 }, (_, i) => [i % 5 !== 0]);
    const often = once.map(([value]) => new Array<boolean>(100).fill(value!));
    expect(rateOver(often).standardError).toBeCloseTo(rateOver(once).standardError, 12);
  });

  it("leaves out shops without a case and says so where there is none", () => {
    expect(rateOver([[1], [], [0]]).shopCount).toBe(2);
    expect(rateOver([[], []]).count).toBe(0);
  });
});

describe("a quantile over shops", () => {
  const draws = drawsFor(7, "quantiles");
  const byShop = Array.from({ length: 300 }, () => [draws.normal(1)]);

  it("finds the median and the 90th percentile of normal values within its standard errors", () => {
    const median = quantileOver(byShop, 0.5, 1);
    const high = quantileOver(byShop, 0.9, 1);
    expect(Math.abs(median.value)).toBeLessThan(4 * median.standardError);
    expect(Math.abs(high.value - 1.2816)).toBeLessThan(4 * high.standardError);
    // sqrt(pi / 2) / sqrt(n) for the median of n normal values, within the bootstrap's own error.
    expect(median.standardError).toBeGreaterThan(0.7 * Math.sqrt(Math.PI / 2 / 300));
    expect(median.standardError).toBeLessThan(1.4 * Math.sqrt(Math.PI / 2 / 300));
  });

  it("is the value itself where there is one", () => {
    expect(quantileOver([[3]], 0.9, 1).value).toBe(3);
  });
});
