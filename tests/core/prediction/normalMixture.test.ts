// Mixtures of normals: probabilities against their definition, quantiles as the inverse, wherever the search starts.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCumulative } from "../../../src/core/prediction/normalDistribution.ts";
import {
  mixtureRoom,
  type NormalMixture,
  probabilityBelow,
  quantileOf,
} from "../../../src/core/prediction/normalMixture.ts";
import { between } from "../optics/between.ts";

/** The table of Phi that a mixture is read from is good to this (its own test). */
const TABLE_ERROR = 5e-7;
/** What `quantileOf` promises, in probability. */
const QUANTILE_ERROR = 1e-6;

const parts = fc.array(fc.tuple(between(0.01, 1), between(-20, 20), between(0.05, 5)), {
  minLength: 1,
  maxLength: 40,
});

function mixtureOf(of: readonly (readonly [mass: number, mean: number, sd: number])[]): NormalMixture {
  const total = of.reduce((sum, [mass]) => sum + mass, 0);
  const mixture = mixtureRoom(of.length + 3);
  of.forEach(([mass, mean, sd], k) => {
    mixture.masses[k] = mass / total;
    mixture.means[k] = mean;
    mixture.precisions[k] = 1 / sd;
  });
  mixture.count = of.length;
  return mixture;
}

describe("a mixture of normals", () => {
  it("has below a limit what its parts have there, by mass", () => {
    fc.assert(
      fc.property(parts, between(-40, 40), (of, limit) => {
        const total = of.reduce((sum, [mass]) => sum + mass, 0);
        const exact = of.reduce(
          (sum, [mass, mean, sd]) => sum + (mass / total) * normalCumulative((limit - mean) / sd),
          0,
        );
        expect(Math.abs(probabilityBelow(mixtureOf(of), limit) - exact)).toBeLessThan(TABLE_ERROR);
      }),
    );
  });

  it("has its quantile where that much lies below, from any guess", () => {
    fc.assert(
      fc.property(parts, between(0.01, 0.99), between(-200, 200), (of, probability, guess) => {
        const mixture = mixtureOf(of);
        const at = quantileOf(mixture, probability, -60, 60, guess);
        expect(Math.abs(probabilityBelow(mixture, at) - probability)).toBeLessThan(QUANTILE_ERROR);
      }),
    );
  });

  it("finds a quantile between parts far apart, where nothing rises", () => {
    const mixture = mixtureOf([
      [0.5, -20, 0.05],
      [0.5, 20, 0.05],
    ]);
    const at = quantileOf(mixture, 0.5, -60, 60, 3);
    // in a gap Newton's last step leads nowhere: what is left is how near the search is content with
    expect(Math.abs(probabilityBelow(mixture, at) - 0.5)).toBeLessThan(2e-5);
  });

  it("stops where it began if that is the quantile", () => {
    const mixture = mixtureOf([[1, 3, 0.5]]);
    expect(quantileOf(mixture, 0.5, -60, 60, 3)).toBe(3);
  });

  it("is 0 below and 1 above all it holds", () => {
    const mixture = mixtureOf([[1, 2, 0.5]]);
    expect(probabilityBelow(mixture, -10)).toBe(0);
    expect(probabilityBelow(mixture, 10)).toBe(1);
  });
});
