// CIELAB from tristimulus values and back.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  labFromReflectance,
  labFromTristimulus,
  lightnessFromLuminanceRatio,
  luminanceRatioFromLightness,
  tristimulusFromLab,
} from "../../../src/core/colorimetry/cielab.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import published from "../../published/cielab.json" with { type: "json" };
import { anyViewing } from "./allViewings.ts";

describe("lightness", () => {
  it.each(published.lightness.rows)("is $L at Y = $luminance % (ISO/CIE 11664-4)", ({ luminance, L }) => {
    const decimals = L.split(".")[1]!.length;
    expect(lightnessFromLuminanceRatio(luminance / 100).toFixed(decimals)).toBe(L);
  });

  it("goes back to the luminance ratio, on both branches", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1.5, noNaN: true }), (ratio) => {
        expect(luminanceRatioFromLightness(lightnessFromLuminanceRatio(ratio))).toBeCloseTo(ratio, 12);
      }),
    );
  });
});

describe("CIELAB", () => {
  const anyLab = fc.record({
    L: fc.double({ min: 0, max: 110, noNaN: true }),
    a: fc.double({ min: -128, max: 128, noNaN: true }),
    b: fc.double({ min: -128, max: 128, noNaN: true }),
  });

  it("survives the way to tristimulus values and back under any white", () => {
    fc.assert(
      fc.property(anyLab, anyViewing, (lab, viewing) => {
        const { white } = weightsFor(viewing);
        const back = labFromTristimulus(tristimulusFromLab(lab, white), white);
        expect(back.L).toBeCloseTo(lab.L, 9);
        expect(back.a).toBeCloseTo(lab.a, 9);
        expect(back.b).toBeCloseTo(lab.b, 9);
      }),
    );
  });

  it("calls every flat reflectance grey under any light, L* as its luminance says", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), anyViewing, (level, viewing) => {
        const lab = labFromReflectance(constantSpectrum(level), weightsFor(viewing));
        expect(lab.L).toBeCloseTo(lightnessFromLuminanceRatio(level), 9);
        expect(lab.a).toBeCloseTo(0, 9);
        expect(lab.b).toBeCloseTo(0, 9);
      }),
    );
  });
});
