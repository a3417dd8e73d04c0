/** How much of what wet-out does to L* happens in bands so dark that Kubelka-Munk is weak there. */
import type { WeightSet } from "../colorimetry/weights.ts";
import { DARK_LIMIT_REFLECTANCE } from "../optics/kubelkaMunk.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";

/**
 * Share, 0..1, of dY/d ln(K/S) of the bare cloth that lies in bands under R = 0.05, with dR/d ln(K/S) = -R (1 - R) / (1 + R)
 * (from K/S = (1 - R)^2 / 2R, model.md §1); 1 for cloth that reflects nothing. Departure from model.md §3, where one dark
 * band widens the whole: over half of all saturated cloth has one, and it hardly moves the L* of a red.
 */
export function darkShareOf(bare: Spectrum, { y }: Pick<WeightSet, "y">): number {
  let all = 0;
  let dark = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    const reflectance = bare[i]!;
    // A brightened band does not move.
    const moves = y[i]! * Math.max(0, (reflectance * (1 - reflectance)) / (1 + reflectance));
    all += moves;
    if (reflectance < DARK_LIMIT_REFLECTANCE) dark += moves;
  }
  // A weight at an end may be a trace below 0.
  return all === 0 ? 1 : Math.min(1, Math.max(0, dark / all));
}
