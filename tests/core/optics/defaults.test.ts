// The invented defaults of the optics, pinned so that none changes by accident. Not a reference: no source is behind them.
import { expect, it } from "vitest";
import { BRIGHTENER_LIMIT_REFLECTANCE, HIGHEST_REFLECTANCE } from "../../../src/core/optics/brightener.ts";
import { whiteInk } from "../../../src/core/optics/colourant.ts";
import { UNDYED_FIBRE_REFLECTANCE } from "../../../src/core/optics/fibreBlend.ts";
import {
  absorptionOverScattering,
  DARK_LIMIT_REFLECTANCE,
  reflectanceFromAbsorptionOverScattering,
} from "../../../src/core/optics/kubelkaMunk.ts";
import { CLOSED_FRACTION_AS_PRINTED, CLOSED_FRACTION_SMOOTHED } from "../../../src/core/optics/saunderson.ts";
import { WET_OUT_GAIN } from "../../../src/core/optics/wetOut.ts";

it("keeps the invented defaults that the model's description states (not a reference)", () => {
  expect(WET_OUT_GAIN).toEqual({
    cotton: 0.02,
    viscose: 0.05,
    "polyester-spun": 0.5,
    "polyester-filament": 0.2,
    nylon: 0.25,
    elastane: 0.1,
  });
  expect([CLOSED_FRACTION_AS_PRINTED, CLOSED_FRACTION_SMOOTHED]).toEqual([0.02, 0.2]);
  expect([UNDYED_FIBRE_REFLECTANCE, BRIGHTENER_LIMIT_REFLECTANCE, HIGHEST_REFLECTANCE]).toEqual([
    0.8, 0.99, 1.5,
  ]);
});

it("warns of darkness from where K/S passes 9, and gives opaque white ink a reflectance of 0.936", () => {
  expect(absorptionOverScattering(DARK_LIMIT_REFLECTANCE)).toBeCloseTo(9.025, 12);
  const { absorptionPerUm, scatteringPerUm } = whiteInk();
  const opaque = reflectanceFromAbsorptionOverScattering(absorptionPerUm[0]! / scatteringPerUm[0]!);
  expect(Math.abs(opaque - 0.936)).toBeLessThan(0.0005);
});
