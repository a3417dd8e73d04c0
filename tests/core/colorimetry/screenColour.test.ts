// What a screen shows of a reflectance, and the colour behind a hex value.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deltaEab } from "../../../src/core/colorimetry/difference.ts";
import { labFromHex } from "../../../src/core/colorimetry/hex.ts";
import { nearestReflectanceFromHex } from "../../../src/core/colorimetry/reconstruct.ts";
import {
  screenColourFromLab,
  screenColourFromReflectance,
} from "../../../src/core/colorimetry/screenColour.ts";
import { constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import published from "../../published/cielab.json" with { type: "json" };
import { clothReflectance } from "./allViewings.ts";

describe("CIELAB of a hex value", () => {
  /**
   * The notes used the rounded matrix (Y of red 0.2126729), ours is the unrounded one of CSS Color 4 (0.2126390): at
   * most 0.0039 apart, in L* of full red; the rounded matrix recomputed gives the notes' figures to their last digit.
   */
  const MATRIX_TOLERANCE = 0.0045;
  it.each(published.srgb.rows)("is that of the design notes for $hex", ({ hex, L, a, b }) => {
    const lab = labFromHex(hex);
    expect(Math.abs(lab.L - L)).toBeLessThan(MATRIX_TOLERANCE);
    expect(Math.abs(lab.a - a)).toBeLessThan(MATRIX_TOLERANCE);
    expect(Math.abs(lab.b - b)).toBeLessThan(MATRIX_TOLERANCE);
  });

  it("reads #rgb as #rrggbb, in either case", () => {
    expect(labFromHex("#a3F")).toEqual(labFromHex("#AA33ff"));
  });

  it.each([
    "",
    "#",
    "#12",
    "#1234",
    "#12345",
    "#1234567",
    "#12345678",
    "123456",
    "#12g456",
    " #123456",
    "red",
  ])("refuses %j", (hex) => {
    expect(() => labFromHex(hex)).toThrow(
      new RangeError(`hex must be #rgb or #rrggbb; got ${JSON.stringify(hex)}`),
    );
  });
});

describe("the colour on the screen", () => {
  it("is pure white for the perfect diffuser and pure black for none, neither moved", () => {
    const white = screenColourFromReflectance(constantSpectrum(1));
    expect(white).toMatchObject({ hex: "#ffffff", srgbMoved: false, displayP3Moved: false });
    const black = screenColourFromReflectance(constantSpectrum(0));
    expect(black).toMatchObject({ hex: "#000000", srgbMoved: false, displayP3Moved: false });
  });

  it("is neutral for every flat reflectance", () => {
    for (const level of [0.01, 0.05, 0.18, 0.5, 0.9]) {
      const { hex } = screenColourFromReflectance(constantSpectrum(level));
      expect(hex.slice(1, 3)).toBe(hex.slice(3, 5));
      expect(hex.slice(3, 5)).toBe(hex.slice(5, 7));
    }
  });

  it("gives back the hex value that a reflectance was reconstructed from", () => {
    for (const hex of [
      "#1f2a44",
      "#7a1f2b",
      "#2e5339",
      "#808080",
      "#c9c4b8",
      "#111111",
      "#ff0000",
      "#00c8ff",
    ]) {
      const shown = screenColourFromReflectance(nearestReflectanceFromHex(hex).spectrum);
      expect(shown).toMatchObject({ hex, srgbMoved: false, displayP3Moved: false });
    }
  });

  it("stays within 0..1 in both gamuts, and says where it lost chroma", () => {
    fc.assert(
      fc.property(clothReflectance, (reflectance) => {
        const shown = screenColourFromReflectance(reflectance);
        for (const channel of [...shown.srgb, ...shown.displayP3]) {
          expect(channel).toBeGreaterThanOrEqual(0);
          expect(channel).toBeLessThanOrEqual(1);
        }
        expect(shown.hex).toMatch(/^#[0-9a-f]{6}$/);
        if (shown.displayP3Moved) expect(shown.srgbMoved).toBe(true);
      }),
    );
  });

  /** Rounding to 8 bits; one step is at most 0.6 in L* and about 1 in a* and b* of these colours. */
  const HEX_STEP = 0.6;
  it("keeps lightness and hue of a colour outside sRGB, which Display P3 still holds", () => {
    const wanted = { L: 55, a: 88, b: 70 };
    const shown = screenColourFromLab(wanted);
    expect(shown).toMatchObject({ srgbMoved: true, displayP3Moved: false });
    const lab = labFromHex(shown.hex);
    expect(Math.abs(lab.L - wanted.L)).toBeLessThan(HEX_STEP);
    const hueOff = Math.atan2(lab.b, lab.a) - Math.atan2(wanted.b, wanted.a);
    expect(Math.abs(hueOff) * Math.hypot(lab.a, lab.b)).toBeLessThan(1);
    expect(Math.hypot(lab.a, lab.b)).toBeLessThan(Math.hypot(wanted.a, wanted.b));
  });

  it("marks both gamuts for a colour outside both", () => {
    const shown = screenColourFromLab({ L: 60, a: -120, b: 40 });
    expect(shown).toMatchObject({ srgbMoved: true, displayP3Moved: true });
    expect(Math.abs(labFromHex(shown.hex).L - 60)).toBeLessThan(HEX_STEP);
  });

  it("clips what is brighter than white, as brightened cloth can be, and marks it", () => {
    expect(screenColourFromReflectance(constantSpectrum(1.2))).toMatchObject({
      hex: "#ffffff",
      srgbMoved: true,
      displayP3Moved: true,
    });
  });

  it("shows colours in gamut as they are, to a rounding step", () => {
    const wanted = { L: 41, a: 30, b: 12 };
    expect(deltaEab(labFromHex(screenColourFromLab(wanted).hex), wanted)).toBeLessThan(1);
  });
});
