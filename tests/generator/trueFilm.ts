/** The true ink film: an absorbing layer that diffuse light crosses four times, a sheet of haze in its middle, a surface closed in part. */
import { BAND_COUNT, type Spectrum } from "../../src/core/spectrum/spectrum.ts";

/** Deposit at which a gain holds, and the one at which half of the largest wetting is reached; both um, invented. */
const REFERENCE_UM = 20;
const HALF_WETTED_UM = 26;
/** Surface of the cured film, refractive index 1.5: mirrored at normal incidence, and thrown back inside (physics.md §2). */
const MIRRORED = 0.04;
const THROWN_BACK = 0.6;

/** Per um: what one straight crossing absorbs, and the share of diffuse light thrown back. */
export interface TrueFilm {
  readonly opticalDepthPerUm: Spectrum;
  readonly backScatterPerUm: Spectrum;
  readonly depositUm: number;
  readonly closedFraction: number;
}

/** How far a deposit wets, 1 at 20 um: a hyperbola, where the model takes an exponential. */
export function wettingReach(depositUm: number): number {
  const reach = (x: number): number => x / (x + HALF_WETTED_UM);
  return reach(depositUm) / reach(REFERENCE_UM);
}

/**
 * Reflectance factor of the film over `below`, specular part excluded. Diffuse light travels twice the thickness each
 * way, so without haze the cloth is seen through t^4, t = exp(-depth). The haze is one sheet half way down that throws
 * back b and passes 1 - b. Of the surface a part is closed as Saunderson (1942) has it, the rest has no surface.
 */
export function seenThroughFilm(below: Spectrum, film: TrueFilm): Spectrum {
  const seen = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    // In and out of one half: twice half the thickness each way.
    const throughHalf = Math.exp(-2 * film.opticalDepthPerUm[i]! * film.depositUm);
    const b = Math.min(0.9, film.backScatterPerUm[i]! * film.depositUm);
    const cloth = throughHalf * below[i]!;
    const body = throughHalf * (b + ((1 - b) ** 2 * cloth) / (1 - b * cloth));
    const closed = ((1 - MIRRORED) * (1 - THROWN_BACK) * body) / (1 - THROWN_BACK * body);
    seen[i] = (1 - film.closedFraction) * body + film.closedFraction * closed;
  }
  return seen;
}
