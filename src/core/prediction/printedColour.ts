/** The colour of one print out of prepared parts, with its spectrum: the plain form of every prediction. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { layFilmOver } from "./printedReflectance.ts";
import { type SpreadRoom, spreadRoom } from "./spreadRoom.ts";
import { type WettableGarment, wetInto, wetSolidInto } from "./wettableGarment.ts";

/** Room for the spectra and gains of one garment; owned by whoever predicts many colours in a row. */
export interface Workspace {
  /** Gain of each fibre as the cloth was last wetted. */
  readonly gains: Float64Array;
  /** A heather wetted as if it were evenly dyed: the other of its two models. */
  wettedAsSolid: boolean;
  /** The cloth wetted with `gains`, once `wettedSpectrum` has been asked for it. */
  readonly wetted: Spectrum;
  isWettedCurrent: boolean;
  /** Counts how often the cloth was wetted, so that copies of the wetted cloth know when they are old. */
  wetting: number;
  readonly printed: Spectrum;
  readonly spread: SpreadRoom;
}

export function workspaceFor(cloth: WettableGarment): Workspace {
  return {
    gains: new Float64Array(cloth.gains.length),
    wettedAsSolid: false,
    wetted: new Float64Array(BAND_COUNT),
    isWettedCurrent: false,
    wetting: 0,
    printed: new Float64Array(BAND_COUNT),
    spread: spreadRoom(),
  };
}

/**
 * Wets the cloth of `room` with `film`, every fibre's gain multiplied by exp(`lnWetOut`), and that of fibre `fibre` (by
 * position; -1 for none) by exp(`lnFibreGain`) more. Its spectrum is computed when someone asks for it.
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
  const { gains } = room;
  for (let i = 0; i < gains.length; i++) gains[i] = factor * cloth.gains[i]!;
  if (fibre >= 0) gains[fibre] = gains[fibre]! * Math.exp(lnFibreGain);
  markWetted(room, false);
}

/** Wets the cloth of `room` with every fibre's gain times `factor`. */
export function wetClothBy(room: Workspace, cloth: WettableGarment, factor: number): void {
  const { gains } = room;
  for (let i = 0; i < gains.length; i++) gains[i] = factor * cloth.gains[i]!;
  markWetted(room, false);
}

/** Wets the cloth again with the same gains by the other of a heather's two models, the dye share alone. */
export function wetAsSolid(room: Workspace): void {
  markWetted(room, true);
}

function markWetted(room: Workspace, asSolid: boolean): void {
  room.wettedAsSolid = asSolid;
  room.isWettedCurrent = false;
  room.wetting++;
}

/** Reflectance of the wetted cloth in `room`; the same array at every call. */
export function wettedSpectrum(room: Workspace, cloth: WettableGarment): Spectrum {
  if (!room.isWettedCurrent) {
    if (room.wettedAsSolid) wetSolidInto(room.wetted, cloth, room.gains);
    else wetInto(room.wetted, cloth, room.gains);
    room.isWettedCurrent = true;
  }
  return room.wetted;
}

/** Colour of `film` over the wetted cloth in `room`; the print's spectrum is left in `room.printed`. */
export function colourOver(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): Lab {
  layFilmOver(room.printed, wettedSpectrum(room, cloth), cloth, film, closedFraction);
  return labFromReflectance(room.printed, cloth.weights);
}

/** Expected colour of `film` on `cloth`: `wetCloth` and `colourOver` in one. */
export function printedColour(room: Workspace, cloth: WettableGarment, film: PrintedFilm, lnWetOut = 0): Lab {
  wetCloth(room, cloth, film, lnWetOut);
  return colourOver(room, cloth, film);
}
