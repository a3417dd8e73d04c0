// Wet-out: the reach of a deposit, the darkening factor, and what it does to a reflectance.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  darkeningFactor,
  depositReach,
  type FibreName,
  WET_OUT_GAIN,
  wetOutGain,
  wettedReflectance,
} from "../../../src/core/optics/wetOut.ts";
import published from "../../published/kubelka-munk.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

/** Through K/S and back near R = 0.99 a few roundings of K/S = 5e-5 weigh as their square root's slope, about 100. */
const ROUNDING = 1e-12;

const bareBelowBrightener = between(0.001, 0.99);
const factors = between(1, 8);

describe("the reach of a deposit", () => {
  it("is 0 without ink, 1 at the reference of 20 um, and ends at 1/(1 - 1/e)", () => {
    expect(depositReach(0)).toBe(0);
    expect(depositReach(20)).toBe(1);
    expect(depositReach(Infinity)).toBeCloseTo(1 / (1 - 1 / Math.E), 14);
  });

  it("grows with the deposit", () => {
    const deposits = between(0, 200);
    fc.assert(
      fc.property(deposits, deposits, (deposit, more) => {
        expect(depositReach(deposit + more)).toBeGreaterThanOrEqual(depositReach(deposit));
      }),
    );
  });
});

describe("the darkening factor", () => {
  it("of spun polyester under the reference clear at 20 um is exp(0.5)", () => {
    const gain = wetOutGain(WET_OUT_GAIN["polyester-spun"], 1, 20);
    expect(darkeningFactor([1], [gain])).toBeCloseTo(Math.exp(0.5), 14);
  });

  it("weighs each fibre's exp(g) by its dye share", () => {
    const gains = [wetOutGain(WET_OUT_GAIN.cotton, 1, 20), wetOutGain(WET_OUT_GAIN["polyester-spun"], 1, 20)];
    const expected = 0.5 * Math.exp(0.02) + 0.5 * Math.exp(0.5);
    expect(darkeningFactor(Float64Array.of(0.5, 0.5), Float64Array.from(gains))).toBeCloseTo(expected, 14);
  });

  it("doubles its gain with a surprise of ln 2 and halves it with half the base strength", () => {
    expect(wetOutGain(0.5, 1, 20, Math.LN2)).toBeCloseTo(1, 14);
    expect(wetOutGain(0.5, 0.5, 20, 0)).toBeCloseTo(0.25, 14);
  });

  it("holds a starting gain for each fibre, spun polyester the largest and cotton the smallest", () => {
    const byGain = (Object.keys(WET_OUT_GAIN) as FibreName[]).sort(
      (a, b) => WET_OUT_GAIN[a] - WET_OUT_GAIN[b],
    );
    expect(byGain).toHaveLength(6);
    expect(byGain[0]).toBe("cotton");
    expect(byGain[5]).toBe("polyester-spun");
  });
});

describe("wetted cloth", () => {
  it("gives the 28 calculated reflectances of cloth whose scattering fell to s, D = 1/s, to 4 decimals", () => {
    const { bare, rows } = published.scatteringLoss;
    for (const { scatteringRatio, wetted } of rows) {
      expect(wetted).toHaveLength(bare.length);
      bare.forEach((reflectance, i) => {
        const computed = wettedReflectance(reflectance, 1 / scatteringRatio);
        expect(missOf(computed, wetted[i]!), `R ${reflectance}, s ${scatteringRatio}`).toBeLessThan(1);
      });
    }
  });

  it("is never lighter than bare for D >= 1, and stays above 0", () => {
    fc.assert(
      fc.property(bareBelowBrightener, factors, (bare, factor) => {
        const wetted = wettedReflectance(bare, factor);
        expect(wetted).toBeLessThanOrEqual(bare + ROUNDING);
        expect(wetted).toBeGreaterThan(0);
      }),
    );
  });

  it("is the bare cloth at D = 1, and two wet-outs multiply", () => {
    fc.assert(
      fc.property(bareBelowBrightener, factors, factors, (bare, one, other) => {
        expect(Math.abs(wettedReflectance(bare, 1) - bare)).toBeLessThan(ROUNDING);
        const twice = wettedReflectance(wettedReflectance(bare, one), other);
        expect(Math.abs(twice - wettedReflectance(bare, one * other))).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("keeps a brightened band, 0.99 to 1.5, as it is", () => {
    for (const bare of [0.9901, 1, 1.2, 1.5]) expect(wettedReflectance(bare, 3)).toBe(bare);
    expect(wettedReflectance(0.99, 3)).toBeLessThan(0.99);
  });
});

describe("wet-out arguments out of range", () => {
  it("are refused by name and value", () => {
    for (const bad of [-3, Number.NaN]) {
      expect(() => depositReach(bad)).toThrow(`depositUm must be >= 0; got ${bad}`);
    }
    for (const bad of [-1, Infinity, Number.NaN]) {
      expect(() => wetOutGain(bad, 1, 20)).toThrow(`gamma must be >= 0 and finite; got ${bad}`);
      expect(() => wetOutGain(0.5, bad, 20)).toThrow(`baseStrength must be >= 0 and finite; got ${bad}`);
    }
    expect(() => wetOutGain(0.5, 1, 20, Number.NaN)).toThrow("lnSurprise must be finite; got NaN");
    expect(() => darkeningFactor([1], [])).toThrow(/as many as dyeShares \(1\); got 0/);
    expect(() => darkeningFactor([1.5, -0.5], [0, 0])).toThrow("dyeShare must be in 0..1; got -0.5");
    expect(() => darkeningFactor([1], [Infinity])).toThrow("gain must be finite; got Infinity");
    expect(() => darkeningFactor([0.5, 0.4], [0, 0])).toThrow("dyeShares must sum to 1; got 0.9");
    for (const bad of [0, -1, Infinity, Number.NaN]) {
      expect(() => wettedReflectance(0.5, bad)).toThrow(`must be above 0 and finite; got ${bad}`);
    }
    for (const bad of [0, -0.1, 1.51, Number.NaN]) {
      expect(() => wettedReflectance(bad, 1.5)).toThrow(`got ${bad}`);
    }
  });
});
