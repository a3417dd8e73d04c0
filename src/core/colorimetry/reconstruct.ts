/**
 * A reflectance for a garment known only by its colour: the smoothest curve between 0 and 1 that has it.
 * Right for predicting under the light the colour was stated for; only indicative under another (model.md §2).
 */
import { constantSpectrum, type Spectrum } from "../spectrum/spectrum.ts";
import { luminanceRatioFromLightness, tristimulusFromLab } from "./cielab.ts";
import { labFromHex } from "./hex.ts";
import { depthInObjectColourSolid } from "./objectColourSolid.ts";
import { smoothestReflectance } from "./smoothestReflectance.ts";
import type { Lab, Viewing } from "./viewing.ts";
import { weightsFor } from "./weights.ts";

export type Reconstruction =
  | { readonly ok: true; readonly spectrum: Spectrum; readonly iterations: number }
  | { readonly ok: false; readonly reason: "outside-object-colour-solid" | "did-not-converge" };

export interface NearestReconstruction {
  readonly spectrum: Spectrum;
  /** Whether the colour had to move to become one that a reflectance can have. */
  readonly moved: boolean;
  /** The colour that `spectrum` has. */
  readonly lab: Lab;
}

/** On the surface of the solid R is 0 or 1 in places, never strictly between; this much is rounding of sums near 100. */
const SURFACE_DEPTH = 1e-9;
/** Invented default: L* 0 and 100 belong to no reflectance strictly between 0 and 1, so black and white stop here. */
const LOWEST_LIGHTNESS = 0.1;
const HIGHEST_LIGHTNESS = 99.9;
/** Halvings of the chroma interval: to 1/16384 of the chroma asked for. */
const BISECTION_COUNT = 14;
/** The viewing that a screen colour stands for. */
const HEX_VIEWING: Viewing = { illuminant: "D65", observer: "2deg" };

/**
 * The smoothest reflectance (S. A. Burns 2020, see smoothestReflectance.ts) whose CIELAB under `viewing` is `lab`.
 * Refuses a colour that no reflectance has, and says `did-not-converge` for the last few tenths of a unit of X, Y, Z
 * before that limit, where the curve would be a step function.
 * @throws RangeError where `lab` is not finite.
 */
export function reflectanceFromLab(lab: Lab, viewing: Viewing): Reconstruction {
  if (!Number.isFinite(lab.L + lab.a + lab.b)) {
    throw new RangeError(`lab must be finite; got ${lab.L}, ${lab.a}, ${lab.b}`);
  }
  const weights = weightsFor(viewing);
  const target = tristimulusFromLab(lab, weights.white);
  if (depthInObjectColourSolid(target, weights) < SURFACE_DEPTH)
    return { ok: false, reason: "outside-object-colour-solid" };
  const found = smoothestReflectance(target, weights);
  return found === undefined ? { ok: false, reason: "did-not-converge" } : { ok: true, ...found };
}

/**
 * The reflectance of `lab`, or where there is none that of the nearest colour of the same L* and hue with less chroma,
 * by bisection down to the flat reflectance of the grey. L* is held within 0.1..99.9.
 * @throws RangeError where `lab` is not finite.
 */
export function nearestReflectanceFromLab(lab: Lab, viewing: Viewing): NearestReconstruction {
  const exact = reflectanceFromLab(lab, viewing);
  if (exact.ok) return { spectrum: exact.spectrum, moved: false, lab };
  const L = Math.min(HIGHEST_LIGHTNESS, Math.max(LOWEST_LIGHTNESS, lab.L));
  const withChroma = (share: number): Lab => ({ L, a: share * lab.a, b: share * lab.b });
  let kept = 0;
  let refused = 1;
  let spectrum = constantSpectrum(luminanceRatioFromLightness(L));
  for (let i = 0; i < BISECTION_COUNT; i++) {
    const share = (kept + refused) / 2;
    const tried = reflectanceFromLab(withChroma(share), viewing);
    if (tried.ok) {
      spectrum = tried.spectrum;
      kept = share;
    } else {
      refused = share;
    }
  }
  return { spectrum, moved: true, lab: withChroma(kept) };
}

/**
 * The reflectance of the sRGB colour `#rgb` or `#rrggbb` under D65/2 degrees, or of the nearest colour that has one.
 * @throws RangeError where `hex` has another form.
 */
export function nearestReflectanceFromHex(hex: string): NearestReconstruction {
  return nearestReflectanceFromLab(labFromHex(hex), HEX_VIEWING);
}
