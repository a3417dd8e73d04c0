/**
 * Tristimulus values of a reflectance: one weighted sum.
 */
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import type { Tristimulus } from "./viewing.ts";
import type { WeightSet } from "./weights.ts";

/**
 * X, Y, Z of reflectance factor `reflectance` (BAND_COUNT bands), Y = 100 for the perfect diffuser (CIE 015:2018).
 * @throws RangeError where the spectrum does not have BAND_COUNT bands.
 */
export function tristimulusFromReflectance(reflectance: Spectrum, weights: WeightSet): Tristimulus {
  if (reflectance.length !== BAND_COUNT) {
    throw new RangeError(`reflectance must have ${BAND_COUNT} bands; got ${reflectance.length}`);
  }
  const { x, y, z } = weights;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < reflectance.length; i++) {
    const r = reflectance[i]!;
    X += x[i]! * r;
    Y += y[i]! * r;
    Z += z[i]! * r;
  }
  return { X, Y, Z };
}
