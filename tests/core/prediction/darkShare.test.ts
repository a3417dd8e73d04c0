// How much of what wet-out does to L* lies in dark bands, and how that widens a spread.
import { describe, expect, it } from "vitest";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { darkShareOf } from "../../../src/core/prediction/darkShare.ts";
import { DARK_LIMIT_WIDENING, darkWidening } from "../../../src/core/prediction/unknowns.ts";
import { constantSpectrum, spectrumFrom } from "../../../src/core/spectrum/spectrum.ts";
import { VIEWING } from "./cloths.ts";

const weights = weightsFor(VIEWING);

describe("the dark share", () => {
  it("is 1 where every band is under the limit and 0 where none is", () => {
    expect(darkShareOf(constantSpectrum(0.049), weights)).toBe(1);
    expect(darkShareOf(constantSpectrum(0), weights)).toBe(1);
    expect(darkShareOf(constantSpectrum(0.05), weights)).toBe(0);
  });

  it("of a red that is dark up to 580 nm is little, though half of its bands are dark", () => {
    const red = spectrumFrom((nm) => (nm < 580 ? 0.03 : 0.5));
    const share = darkShareOf(red, weights);
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.35);
  });

  it("is the part of the luminance's own slope by ln(K/S) that dark bands make, by finite differences", () => {
    const blue = spectrumFrom((nm) => 0.02 + 0.3 * Math.exp(-(((nm - 460) / 40) ** 2)));
    const wetted = (r: number): number => {
      const q = (1.001 * (1 - r) ** 2) / (2 * r);
      return 1 + q - Math.sqrt(q * q + 2 * q);
    };
    let all = 0;
    let dark = 0;
    blue.forEach((r, i) => {
      const moved = weights.y[i]! * (r - wetted(r));
      all += moved;
      if (r < 0.05) dark += moved;
    });
    expect(darkShareOf(blue, weights)).toBeCloseTo(dark / all, 3);
  });

  it("does not count a brightened band", () => {
    const bright = spectrumFrom((nm) => (nm < 500 ? 1.2 : 0.03));
    expect(darkShareOf(bright, weights)).toBe(1);
  });

  it("widens by nothing at 0, by the whole factor at 1, and steadily between", () => {
    expect(darkWidening(0)).toBe(1);
    expect(darkWidening(1)).toBeCloseTo(DARK_LIMIT_WIDENING, 12);
    expect(darkWidening(0.5)).toBeGreaterThan(1);
    expect(darkWidening(0.5)).toBeLessThan(darkWidening(0.6));
  });
});
