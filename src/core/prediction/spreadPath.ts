/** The colours along a spread: what the print looks like where it turns out darker or lighter than expected. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import { type CellResponse, lightnessAt } from "./cellResponse.ts";
import type { SpreadPoint } from "./prediction.ts";
import type { PrintableInk } from "./printableInk.ts";
import { type Workspace, wetCloth, wettedSpectrum } from "./printedColour.ts";
import { printedFilm } from "./printedFilm.ts";
import { layFilmOver } from "./printedReflectance.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Standard deviations to each side within which a point is looked for. */
const REACH = 4;
const HALVINGS = 30;

/**
 * The print whose delta-L* is `deltaL`: of all ways to get there through wet-out and tint the likeliest (the direction
 * covariance times gradient of L*), its spectrum from the exact model. L* is the asked one; where haze or surface made
 * part of the difference, spectrum and L* part by that little.
 */
export function pointOnSpread(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  response: CellResponse,
  deltaL: number,
): SpreadPoint {
  const { wetOutSd, tintSd, correlation } = response.doubt;
  const slope = (lnWetOut: number, lnTint: number): number =>
    (lightnessAt(response, lnWetOut, lnTint) - lightnessAt(response, -lnWetOut, -lnTint)) / 2;
  const perWetSd = slope(wetOutSd, 0);
  const perTintSd = tintSd === 0 ? 0 : slope(0, tintSd);
  const towardsWet = perWetSd + correlation * perTintSd;
  const towardsTint = correlation * perWetSd + perTintSd;
  const length = Math.sqrt(Math.max(0, perWetSd * towardsWet + perTintSd * towardsTint));
  let position = 0;
  if (length > 1e-6) {
    const along = (s: number): number =>
      lightnessAt(response, (s * wetOutSd * towardsWet) / length, (s * tintSd * towardsTint) / length);
    const wanted = cloth.bareLab.L + deltaL;
    let darker = -REACH;
    let lighter = REACH;
    for (let i = 0; i < HALVINGS; i++) {
      position = (darker + lighter) / 2;
      if (along(position) < wanted) darker = position;
      else lighter = position;
    }
  }
  const unit = length > 1e-6 ? position / length : 0;
  const tintFactor = Math.exp(unit * tintSd * towardsTint);
  const film = ink.hasTint ? printedFilm(ink.mix, ink.application, ink.surprise, tintFactor) : ink.film;
  wetCloth(room, cloth, film, unit * wetOutSd * towardsWet);
  const reflectance = new Float64Array(room.printed.length);
  layFilmOver(reflectance, wettedSpectrum(room, cloth), cloth, film);
  const lab = labFromReflectance(reflectance, cloth.weights);
  return { deltaL, lab: { ...lab, L: cloth.bareLab.L + deltaL }, reflectance };
}
