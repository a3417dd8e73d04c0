/** The colour of one print out of prepared parts: the innermost steps of every prediction. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { layFilmOver } from "./printedReflectance.ts";
import { type SpreadRoom, spreadRoom } from "./spreadRoom.ts";
import { type WettableGarment, wetInto } from "./wettableGarment.ts";

/** Room for the spectra and gains of one garment; owned by whoever predicts many colours in a row. */
export interface Workspace {
  readonly wetted: Spectrum;
  readonly printed: Spectrum;
  readonly gains: Float64Array;
  readonly spread: SpreadRoom;
}

export function workspaceFor(cloth: WettableGarment): Workspace {
  return {
    wetted: new Float64Array(BAND_COUNT),
    printed: new Float64Array(BAND_COUNT),
    gains: new Float64Array(cloth.gains.length),
    spread: spreadRoom(),
  };
}

/**
 * Leaves in `room.wetted` the cloth wetted by `film`, every fibre's gain multiplied by exp(`lnWetOut`), and that of
 * fibre `fibre` (by position; -1 for none) by exp(`lnFibreGain`) more.
 */
export function wetCloth(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  lnWetOut = 0,
  fibre = -1,
  lnFibreGain = 0,
): void {
  const factor = film.wetOutStrength * (lnWetOut === 0 ? 1 : Math.exp(lnWetOut));
  for (let i = 0; i < room.gains.length; i++) room.gains[i] = factor * cloth.gains[i]!;
  if (fibre >= 0) room.gains[fibre] = room.gains[fibre]! * Math.exp(lnFibreGain);
  wetInto(room.wetted, cloth, room.gains);
}

/** Colour of `film` over what is in `room.wetted`; the print's spectrum is left in `room.printed`. */
export function colourOver(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): Lab {
  layFilmOver(room.printed, room.wetted, cloth, film, closedFraction);
  return labFromReflectance(room.printed, cloth.weights);
}

/** Expected colour of `film` on `cloth`: `wetCloth` and `colourOver` in one. */
export function printedColour(room: Workspace, cloth: WettableGarment, film: PrintedFilm, lnWetOut = 0): Lab {
  wetCloth(room, cloth, film, lnWetOut);
  return colourOver(room, cloth, film);
}
