/** What is seen of a print: wetted cloth, the film over it, its surface, its halftone (model.md §3 and §4). */
import { EXTERNAL_REFLECTION, INTERNAL_REFLECTION } from "../optics/saunderson.ts";
import { halftoneReflectance } from "../optics/yuleNielsen.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import type { Application, InkMix } from "./inputs.ts";
import { type PrintedFilm, printedFilm } from "./printedFilm.ts";
import type { Surprise } from "./unknowns.ts";
import { type WettableGarment, wetInto } from "./wettableGarment.ts";

/** Share of internal reflectance that leaves a closed surface, without the return factor (Saunderson 1942). */
export const LEAVING = (1 - EXTERNAL_REFLECTION) * (1 - INTERNAL_REFLECTION);

/**
 * Writes into `out` what is measured of `film` over the wetted cloth `wetted` (they may be the same array): Kubelka's
 * layer, the part of the cloth it covers, the closed part of its surface, and Yule-Nielsen for a halftone.
 * The formulas of optics/inkFilm, saunderson and yuleNielsen written as one loop (a test holds them equal).
 */
export function layFilmOver(
  out: Spectrum,
  wetted: Spectrum,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): void {
  const { transmittanceSquared, reflectance: own, coverFraction, halftoneFraction } = film;
  const { bare } = cloth.garment;
  const mirrored = cloth.garment.geometry === "specular-included" ? closedFraction * EXTERNAL_REFLECTION : 0;
  const open = 1 - closedFraction;
  const leaving = closedFraction * LEAVING;
  for (let i = 0; i < BAND_COUNT; i++) {
    const below = wetted[i]!;
    const body = own[i]! + (transmittanceSquared[i]! * below) / (1 - own[i]! * Math.min(below, 1));
    out[i] = open * body + mirrored + (leaving * body) / (1 - INTERNAL_REFLECTION * Math.min(body, 1));
  }
  if (coverFraction !== 1) {
    for (let i = 0; i < BAND_COUNT; i++) out[i] = bare[i]! + coverFraction * (out[i]! - bare[i]!);
  }
  if (halftoneFraction !== 1) {
    for (let i = 0; i < BAND_COUNT; i++) out[i] = halftoneReflectance(bare[i]!, out[i]!, halftoneFraction);
  }
}

/** Gain of each fibre under `film`: gamma beta F(X) exp(surprise), ln(K/S). */
export function gainsUnder(cloth: WettableGarment, film: PrintedFilm, surprise: Surprise = {}): Float64Array {
  return cloth.gains.map(
    (gamma, i) =>
      gamma * film.wetOutStrength * Math.exp((surprise.lnWetOut ?? 0) + (surprise.lnFibreGain?.[i] ?? 0)),
  );
}

/** Reflectance factor of the print (BAND_COUNT bands) if things turn out as `surprise` says. */
export function printedReflectance(
  cloth: WettableGarment,
  mix: InkMix,
  application: Application,
  surprise: Surprise = {},
): Spectrum {
  const film = printedFilm(mix, application, surprise);
  const reflectance = new Float64Array(BAND_COUNT);
  wetInto(reflectance, cloth, gainsUnder(cloth, film, surprise));
  layFilmOver(reflectance, reflectance, cloth, film);
  return reflectance;
}
