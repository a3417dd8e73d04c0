// The film over a substrate: calculated values, two independent solutions of the same physics, laws and limits.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blackInk } from "../../../src/core/optics/colourant.ts";
import {
  composeLayers,
  filmLayer,
  filmReflectance,
  reflectanceOverSubstrate,
} from "../../../src/core/optics/inkFilm.ts";
import { reflectanceFromAbsorptionOverScattering } from "../../../src/core/optics/kubelkaMunk.ts";
import published from "../../published/kubelka-munk.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

/** A few dozen roundings of numbers of order 1. */
const ROUNDING = 1e-13;
/** Fourth-order Runge-Kutta with 2000 steps over the thicknesses below: its error was seen under 1e-11. */
const RUNGE_KUTTA_TOLERANCE = 1e-9;

const perUm = between(0, 0.3);
const deposits = between(0, 150);
const substrates = between(0, 1);

/** The differential equation itself, dR/dx = S - 2(K+S) R + S R^2, R = Rg at x = 0 (Kubelka & Munk 1931). */
function integrated(K: number, S: number, X: number, substrate: number): number {
  const steps = 2000;
  const h = X / steps;
  const slope = (R: number) => S - 2 * (K + S) * R + S * R * R;
  let R = substrate;
  for (let i = 0; i < steps; i++) {
    const k1 = slope(R);
    const k2 = slope(R + (h / 2) * k1);
    const k3 = slope(R + (h / 2) * k2);
    const k4 = slope(R + h * k3);
    R += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return R;
}

/** Kubelka 1948's own form with a, b and coth; 0/0 at S = 0 and K = 0. */
function textbook(K: number, S: number, X: number, substrate: number): number {
  const a = 1 + K / S;
  const b = Math.sqrt(a * a - 1);
  const coth = 1 / Math.tanh(b * S * X);
  return (1 - substrate * (a - b * coth)) / (a - substrate + b * coth);
}

describe("an ink film over a substrate", () => {
  it("gives the nine calculated film values to 6 decimals, by either path", () => {
    expect(published.films).toHaveLength(9);
    for (const { K, S, X, substrate, reflectance } of published.films) {
      expect(missOf(filmReflectance(K, S, X, substrate), reflectance)).toBeLessThan(1);
      expect(missOf(reflectanceOverSubstrate(filmLayer(K, S, X), substrate), reflectance)).toBeLessThan(1);
    }
  });

  it("gives the calculated transmittances and own reflectances to 6 decimals", () => {
    for (const { K, S, X, transmittance, reflectance } of published.layers) {
      const layer = filmLayer(K, S, X);
      expect(missOf(layer.transmittance, transmittance)).toBeLessThan(1);
      expect(missOf(layer.reflectance, reflectance)).toBeLessThan(1);
    }
  });

  it("solves Kubelka & Munk's differential equation, integrated step by step", () => {
    for (const [K, S, X, substrate] of [
      [0.0055, 0.00014, 20, 0.4],
      [0, 0.09, 20, 0.03],
      [0.02, 0.05, 60, 0.9],
      [0.3, 0, 10, 0.7],
      [1e-9, 0.1, 30, 0.2],
    ] as const) {
      const miss = Math.abs(filmReflectance(K, S, X, substrate) - integrated(K, S, X, substrate));
      expect(miss, `K ${K} S ${S}`).toBeLessThan(RUNGE_KUTTA_TOLERANCE);
    }
  });

  it("agrees with the a, b, coth form wherever that one has digits, on both sides of the series limit", () => {
    for (const y of [0.05, 0.3, 0.4999999, 0.5, 0.5000001, 2, 20]) {
      const S = 0.02;
      const K = 0.01;
      const X = y / Math.sqrt(K * (K + 2 * S));
      expect(Math.abs(filmReflectance(K, S, X, 0.3) - textbook(K, S, X, 0.3)), `mX ${y}`).toBeLessThan(1e-14);
    }
  });

  it("gives back the a = 1.25 and SX = 1 of its film from readings over black and over 0.8", () => {
    const overBlack = filmReflectance(0.5, 2, 0.5, 0);
    const overWhite = filmReflectance(0.5, 2, 0.5, 0.8);
    const a = (overWhite + (overBlack - overWhite + 0.8) / (overBlack * 0.8)) / 2;
    const b = Math.sqrt(a * a - 1);
    expect(a).toBeCloseTo(1.25, 12);
    expect(Math.atanh((b * overBlack) / (1 - a * overBlack)) / b).toBeCloseTo(1, 12);
  });

  it("lets 0.80 of the light at 560 nm return through 20 um holding 0.5 % of black ink", () => {
    const black = blackInk();
    const band = (560 - 380) / 10;
    const K = 0.005 * black.absorptionPerUm[band]!;
    expect(missOf(filmReflectance(K, 0, 20, 1), ".80")).toBeLessThan(1);
    const scattering = filmReflectance(K, 0.005 * black.scatteringPerUm[band]!, 20, 0.5) / 0.5;
    expect(missOf(scattering, ".80")).toBeLessThan(1);
  });

  it("lifts a substrate of 0.05 to 0.195 by 1 % of titanium dioxide, SX = 0.19", () => {
    const { scatteringTimesDeposit, substrate, reflectance } = published.whiteLoad;
    expect(missOf(filmReflectance(0, scatteringTimesDeposit / 30, 30, substrate), reflectance)).toBeLessThan(
      1,
    );
  });
});

describe("limits of the film", () => {
  it("no deposit leaves the substrate, to the last digit or two", () => {
    fc.assert(
      fc.property(perUm, perUm, between(0, 1.5), (K, S, substrate) => {
        expect(Math.abs(filmReflectance(K, S, 0, substrate) - substrate)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("a very thick film hides the substrate: R of K/S, and no overflow at mX = 1e6", () => {
    for (const thick of [2000, 1e7]) {
      const expected = reflectanceFromAbsorptionOverScattering(0.05 / 0.1);
      expect(Math.abs(filmReflectance(0.05, 0.1, thick, 0.9) - expected)).toBeLessThan(ROUNDING);
    }
    expect(filmLayer(0.1, 0, 1e7)).toEqual({ transmittance: 0, reflectance: 0 });
  });

  it("without scattering it absorbs only: Rg exp(-2KX), reached smoothly", () => {
    const pure = 0.6 * Math.exp(-2 * 0.01 * 25);
    expect(filmReflectance(0.01, 0, 25, 0.6)).toBeCloseTo(pure, 14);
    expect(Math.abs(filmReflectance(0.01, 1e-13, 25, 0.6) - pure)).toBeLessThan(1e-11);
  });

  it("without absorption it scatters only: SX/(1+SX) over black, T + R0 = 1, reached smoothly", () => {
    const layer = filmLayer(0, 0.1, 30);
    expect(layer.reflectance).toBeCloseTo(3 / 4, 14);
    expect(layer.transmittance).toBeCloseTo(1 / 4, 14);
    expect(Math.abs(filmReflectance(1e-15, 0.1, 30, 0.2) - filmReflectance(0, 0.1, 30, 0.2))).toBeLessThan(
      1e-11,
    );
  });

  it("stays a number where T and R0 alone do not: a white film of SX = 1e20 over a perfect white", () => {
    expect(filmReflectance(0, 1e18, 100, 1)).toBeCloseTo(1, 14);
    expect(() => reflectanceOverSubstrate(filmLayer(0, 1e18, 100), 1)).toThrow(RangeError);
  });
});

describe("laws of the film", () => {
  it("keeps every reflectance in 0..1 and never gives out more light than went in", () => {
    fc.assert(
      fc.property(perUm, perUm, deposits, substrates, (K, S, X, substrate) => {
        const R = filmReflectance(K, S, X, substrate);
        expect(R).toBeGreaterThanOrEqual(0);
        expect(R).toBeLessThanOrEqual(1 + ROUNDING);
        const layer = filmLayer(K, S, X);
        expect(layer.transmittance + layer.reflectance).toBeLessThanOrEqual(1 + ROUNDING);
      }),
    );
  });

  it("gives one number by both paths", () => {
    fc.assert(
      fc.property(perUm, perUm, deposits, between(0, 1.5), (K, S, X, substrate) => {
        const byLayer = reflectanceOverSubstrate(filmLayer(K, S, X), substrate);
        expect(Math.abs(filmReflectance(K, S, X, substrate) - byLayer)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("a thicker pure absorber never reflects more", () => {
    fc.assert(
      fc.property(perUm, deposits, deposits, substrates, (K, X, more, substrate) => {
        expect(filmReflectance(K, 0, X + more, substrate)).toBeLessThanOrEqual(
          filmReflectance(K, 0, X, substrate) + ROUNDING,
        );
      }),
    );
  });

  it("two layers of X1 and X2 compose to one of X1 + X2 (Kubelka 1954)", () => {
    fc.assert(
      fc.property(perUm, perUm, deposits, deposits, (K, S, X1, X2) => {
        const composed = composeLayers(filmLayer(K, S, X1), filmLayer(K, S, X2));
        const whole = filmLayer(K, S, X1 + X2);
        expect(Math.abs(composed.transmittance - whole.transmittance)).toBeLessThan(1e-12);
        expect(Math.abs(composed.reflectance - whole.reflectance)).toBeLessThan(1e-12);
      }),
    );
  });

  it("layers of different inks laid on the substrate one after the other equal their stack over it", () => {
    const top = filmLayer(0.01, 0.002, 20);
    const bottom = filmLayer(0, 0.09, 20);
    const stack = composeLayers(top, bottom);
    const fromBelow = composeLayers(bottom, top).reflectance;
    const oneByOne = reflectanceOverSubstrate(top, reflectanceOverSubstrate(bottom, 0.3));
    const atOnce = stack.reflectance + (stack.transmittance ** 2 * 0.3) / (1 - fromBelow * 0.3);
    expect(oneByOne).toBeCloseTo(atOnce, 13);
  });

  it("brightened light above 1 passes the film once and is not multiplied between film and cloth", () => {
    const layer = filmLayer(0, 0.09, 20);
    const ofWhite = reflectanceOverSubstrate(layer, 1);
    const perExcess = layer.transmittance ** 2 / (1 - layer.reflectance);
    expect(reflectanceOverSubstrate(layer, 1.5)).toBeCloseTo(ofWhite + 0.5 * perExcess, 13);
    expect(reflectanceOverSubstrate(layer, 1.5)).toBeLessThanOrEqual(1.5);
  });
});

describe("arguments out of range", () => {
  it("are refused by name, value and range", () => {
    for (const bad of [-1, Number.NaN, Infinity]) {
      expect(() => filmLayer(bad, 0, 1)).toThrow(`absorptionPerUm must be >= 0 and finite; got ${bad}`);
      expect(() => filmLayer(0, bad, 1)).toThrow(`scatteringPerUm must be >= 0 and finite; got ${bad}`);
      expect(() => filmReflectance(0, 0, bad, 0.5)).toThrow(`depositUm must be >= 0 and finite; got ${bad}`);
    }
    for (const bad of [-0.01, 1.51, Number.NaN]) {
      expect(() => filmReflectance(0, 0, 1, bad)).toThrow(
        `substrateReflectance must be in 0..1.5; got ${bad}`,
      );
      expect(() => reflectanceOverSubstrate(filmLayer(0, 0, 1), bad)).toThrow(RangeError);
    }
    for (const [K, S] of [
      [1e200, 0],
      [0, 1e200],
    ] as const) {
      expect(() => filmLayer(K, S, 1e200)).toThrow(/must have KX and SX below 1e150/);
      expect(() => filmReflectance(K, S, 1e200, 0.5)).toThrow(/must have KX and SX below 1e150/);
    }
    const clear = { transmittance: 1, reflectance: 0 };
    for (const bad of [
      { transmittance: 1.1, reflectance: 0 },
      { transmittance: -0.1, reflectance: 0 },
      { transmittance: 0, reflectance: 1 },
      { transmittance: 0, reflectance: -0.1 },
    ]) {
      expect(() => composeLayers(bad, clear)).toThrow(RangeError);
      expect(() => composeLayers(clear, bad)).toThrow(RangeError);
      expect(() => reflectanceOverSubstrate(bad, 0.5)).toThrow(RangeError);
    }
  });
});
