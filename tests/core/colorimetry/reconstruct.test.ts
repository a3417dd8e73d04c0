// Reflectances for garments known only by their colour.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { labFromReflectance, tristimulusFromLab } from "../../../src/core/colorimetry/cielab.ts";
import { chroma, deltaEab } from "../../../src/core/colorimetry/difference.ts";
import { labFromHex } from "../../../src/core/colorimetry/hex.ts";
import {
  nearestReflectanceFromHex,
  nearestReflectanceFromLab,
  reflectanceFromLab,
} from "../../../src/core/colorimetry/reconstruct.ts";
import { smoothestReflectance } from "../../../src/core/colorimetry/smoothestReflectance.ts";
import type { Lab, Viewing } from "../../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { FIRST_NM, type Spectrum, STEP_NM } from "../../../src/core/spectrum/spectrum.ts";
import published from "../../published/lhtss.json" with { type: "json" };
import { ALL_VIEWINGS, anyViewing, clothReflectance } from "./allViewings.ts";

const SCREEN: Viewing = { illuminant: "D65", observer: "2deg" };
const AT_D65_10: Viewing = { illuminant: "D65", observer: "10deg" };

/** The solver stops at a residual of 1e-9 in X, Y, Z of 0..1; a near-black multiplies that by some 900 in CIELAB. */
const ROUND_TRIP_TOLERANCE = 1e-5;

function solved(lab: Lab, viewing: Viewing): { spectrum: Spectrum; iterations: number } {
  const found = reflectanceFromLab(lab, viewing);
  if (!found.ok) throw new Error(`${found.reason} at ${lab.L}, ${lab.a}, ${lab.b}`);
  return found;
}

/** What LHTSS makes least: the sum of squared steps of z = atanh(2R - 1). */
function roughness(reflectance: Spectrum): number {
  const z = reflectance.map((value) => Math.atanh(2 * value - 1));
  return z.slice(1).reduce((sum, value, i) => sum + (value - z[i]!) ** 2, 0);
}

function expectReflectance(reflectance: Spectrum): void {
  for (const value of reflectance) {
    expect(value).toBeGreaterThan(0);
    expect(value).toBeLessThan(1);
  }
}

describe("the smoothest reflectance of a colour", () => {
  /** The other code summed plain 10 nm tables and stated four decimals; ours interpolates to 5 nm. */
  const LHTSS_TOLERANCE = 0.0005;
  it.each(published.rows)(
    "gives $hex as the LHTSS computed by other code, to 0.0005",
    ({ hex, reflectance }) => {
      const { spectrum } = solved(labFromHex(hex), SCREEN);
      published.wavelengthsNm.forEach((nm, i) => {
        expect(Math.abs(spectrum[(nm - FIRST_NM) / STEP_NM]! - reflectance[i]!)).toBeLessThan(
          LHTSS_TOLERANCE,
        );
      });
    },
  );

  it("has the colour it was made from, stays within 0..1, under any viewing", () => {
    fc.assert(
      fc.property(clothReflectance, anyViewing, (cloth, viewing) => {
        const weights = weightsFor(viewing);
        const lab = labFromReflectance(cloth, weights);
        const { spectrum } = solved(lab, viewing);
        expectReflectance(spectrum);
        expect(deltaEab(labFromReflectance(spectrum, weights), lab)).toBeLessThan(ROUND_TRIP_TOLERANCE);
      }),
    );
  });

  it("is no rougher than any other reflectance of that colour", () => {
    fc.assert(
      fc.property(clothReflectance, anyViewing, (cloth, viewing) => {
        const { spectrum } = solved(labFromReflectance(cloth, weightsFor(viewing)), viewing);
        expect(roughness(spectrum)).toBeLessThanOrEqual(roughness(cloth) + 1e-9);
      }),
    );
  });

  it("is flat for a grey, at any lightness from 0.1 to 99.9 under any viewing", () => {
    for (const viewing of ALL_VIEWINGS) {
      for (const L of [0.1, 1, 4, 20, 50, 80, 94, 97, 99, 99.5, 99.9]) {
        const { spectrum } = solved({ L, a: 0, b: 0 }, viewing);
        expect(Math.max(...spectrum) - Math.min(...spectrum)).toBeLessThan(1e-9);
      }
    }
  });

  it("is found for off-whites and near-blacks under any viewing", () => {
    for (const viewing of ALL_VIEWINGS) {
      for (const lab of [
        { L: 94, a: -1, b: 3 },
        { L: 97, a: 1.5, b: -4 },
        { L: 99.5, a: -0.3, b: 0.6 },
        { L: 4.5, a: 1, b: -3 },
        { L: 2, a: -0.5, b: 0.5 },
        { L: 1, a: 0.4, b: -0.8 },
      ]) {
        const { spectrum } = solved(lab, viewing);
        expectReflectance(spectrum);
        expect(deltaEab(labFromReflectance(spectrum, weightsFor(viewing)), lab)).toBeLessThan(
          ROUND_TRIP_TOLERANCE,
        );
      }
    }
  });

  it("takes under ten Newton steps for real cloth colours (model.md section 2)", () => {
    for (const lab of [
      { L: 17, a: 4, b: -18 },
      { L: 41, a: 55, b: 25 },
      { L: 32, a: -20, b: 11 },
      { L: 78, a: 4, b: 70 },
      { L: 60, a: 0, b: -1 },
      { L: 15, a: 0, b: -1 },
      { L: 45, a: 10, b: -45 },
    ]) {
      expect(solved(lab, AT_D65_10).iterations).toBeLessThan(10);
    }
  });

  it("is found, by stages, for every corner of the sRGB cube but black and white", () => {
    for (const hex of [
      "#ff0000",
      "#00ff00",
      "#0000ff",
      "#ffff00",
      "#ff00ff",
      "#00ffff",
      "#000011",
      "#110000",
    ]) {
      const { spectrum } = solved(labFromHex(hex), SCREEN);
      expectReflectance(spectrum);
      const back = labFromReflectance(spectrum, weightsFor(SCREEN));
      expect(deltaEab(back, labFromHex(hex))).toBeLessThan(ROUND_TRIP_TOLERANCE);
    }
  });
});

describe("a colour that no reflectance has", () => {
  it("is refused with the reason", () => {
    for (const lab of [
      { L: 100, a: 0, b: 0 },
      { L: 0, a: 0, b: 0 },
      { L: 120, a: 0, b: 0 },
      { L: -1, a: 0, b: 0 },
      { L: 50, a: 200, b: 50 },
      { L: 95, a: 40, b: 0 },
    ]) {
      expect(reflectanceFromLab(lab, AT_D65_10)).toEqual({
        ok: false,
        reason: "outside-object-colour-solid",
      });
    }
  });

  it("is not sought by Newton's method either: that returns nothing beyond the solid", () => {
    const weights = weightsFor(AT_D65_10);
    expect(
      smoothestReflectance(tristimulusFromLab({ L: 50, a: 200, b: 50 }, weights.white), weights),
    ).toBeUndefined();
  });

  it("says so where the colour lies inside but the curve would be a step", () => {
    expect(reflectanceFromLab({ L: 13, a: -50, b: 0 }, { illuminant: "F11", observer: "10deg" })).toEqual({
      ok: false,
      reason: "did-not-converge",
    });
  });

  it("is refused as a mistake where it is no number", () => {
    expect(() => reflectanceFromLab({ L: 50, a: Number.NaN, b: 0 }, SCREEN)).toThrow(
      new RangeError("lab must be finite; got 50, NaN, 0"),
    );
  });
});

describe("the nearest colour that has a reflectance", () => {
  it("is the colour itself wherever it has one", () => {
    const lab: Lab = { L: 40, a: 30, b: -12 };
    const { spectrum, moved, lab: kept } = nearestReflectanceFromLab(lab, AT_D65_10);
    expect(moved).toBe(false);
    expect(kept).toEqual(lab);
    expect(spectrum).toEqual(solved(lab, AT_D65_10).spectrum);
  });

  it("keeps L* and hue, loses as little chroma as it can, and is marked as moved", () => {
    const wanted: Lab = { L: 50, a: 200, b: 50 };
    const { spectrum, moved, lab } = nearestReflectanceFromLab(wanted, AT_D65_10);
    expect(moved).toBe(true);
    expect(lab.L).toBe(50);
    expect(Math.atan2(lab.b, lab.a)).toBeCloseTo(Math.atan2(50, 200), 12);
    expect(chroma(lab)).toBeGreaterThan(0);
    expect(chroma(lab)).toBeLessThan(chroma(wanted));
    expectReflectance(spectrum);
    expect(deltaEab(labFromReflectance(spectrum, weightsFor(AT_D65_10)), lab)).toBeLessThan(
      ROUND_TRIP_TOLERANCE,
    );
    const further: Lab = { L: 50, a: lab.a * 1.01, b: lab.b * 1.01 };
    expect(reflectanceFromLab(further, AT_D65_10).ok).toBe(false);
  });

  it("keeps black and white just inside 0..1, marked as moved", () => {
    const white = nearestReflectanceFromHex("#ffffff");
    expect(white.moved).toBe(true);
    expect(white.lab.L).toBe(99.9);
    expectReflectance(white.spectrum);
    const black = nearestReflectanceFromHex("#000");
    expect(black.moved).toBe(true);
    expect(black.lab.L).toBe(0.1);
    expectReflectance(black.spectrum);
  });

  it("leaves a cloth colour on the screen where it is", () => {
    const { moved, lab, spectrum } = nearestReflectanceFromHex("#7a1f2b");
    expect(moved).toBe(false);
    expect(lab).toEqual(labFromHex("#7a1f2b"));
    expect(deltaEab(labFromReflectance(spectrum, weightsFor(SCREEN)), lab)).toBeLessThan(
      ROUND_TRIP_TOLERANCE,
    );
  });

  it("refuses a malformed hex", () => {
    expect(() => nearestReflectanceFromHex("7a1f2b")).toThrow(RangeError);
  });
});
