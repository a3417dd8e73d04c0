/**
 * CIELAB from tristimulus values and back, always against the white point that is passed.
 */
import type { Spectrum } from "../spectrum/spectrum.ts";
import { tristimulusFromReflectance } from "./tristimulus.ts";
import type { Lab, Tristimulus } from "./viewing.ts";
import type { WeightSet } from "./weights.ts";

/** Published: CIE 015:2018 (ISO/CIE 11664-4), the exact rational form of 0.008856 and 903.3. */
const DELTA = 6 / 29;
const LINEAR_LIMIT = DELTA ** 3;
const LINEAR_SLOPE = 1 / (3 * DELTA ** 2);
const LINEAR_OFFSET = 4 / 29;

/** f of CIELAB: the cube root of a tristimulus ratio, and below (6/29)^3 the straight line that meets it (ISO/CIE 11664-4). */
export function compress(ratio: number): number {
  return ratio > LINEAR_LIMIT ? Math.cbrt(ratio) : ratio * LINEAR_SLOPE + LINEAR_OFFSET;
}

function expand(value: number): number {
  return value > DELTA ? value * value * value : (value - LINEAR_OFFSET) / LINEAR_SLOPE;
}

/** CIE 1976 lightness L* of the luminance ratio Y/Yn (ISO/CIE 11664-4): 0 at 0, 100 at 1. */
export function lightnessFromLuminanceRatio(ratio: number): number {
  return 116 * compress(ratio) - 16;
}

/** Y/Yn of a CIE 1976 lightness L*: the inverse of `lightnessFromLuminanceRatio`. */
export function luminanceRatioFromLightness(lightness: number): number {
  return expand((lightness + 16) / 116);
}

/** CIELAB 1976 of `tristimulus` against `white`, both on the same scale (ISO/CIE 11664-4). */
export function labFromTristimulus(tristimulus: Tristimulus, white: Tristimulus): Lab {
  const fx = compress(tristimulus.X / white.X);
  const fy = compress(tristimulus.Y / white.Y);
  const fz = compress(tristimulus.Z / white.Z);
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/** Tristimulus values of `lab` on the scale of `white`: the inverse of `labFromTristimulus`. */
export function tristimulusFromLab(lab: Lab, white: Tristimulus): Tristimulus {
  const fy = (lab.L + 16) / 116;
  return {
    X: white.X * expand(fy + lab.a / 500),
    Y: white.Y * expand(fy),
    Z: white.Z * expand(fy - lab.b / 200),
  };
}

/** CIELAB of a reflectance factor (BAND_COUNT bands) against the weights' own white point. */
export function labFromReflectance(reflectance: Spectrum, weights: WeightSet): Lab {
  return labFromTristimulus(tristimulusFromReflectance(reflectance, weights), weights.white);
}
