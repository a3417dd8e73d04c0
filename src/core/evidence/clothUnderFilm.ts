/** The colour of a film over a wetted cloth in the prediction's plain form: one print at a time, no state kept between prints. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import type { PrintedFilm } from "../prediction/printedFilm.ts";
import { layFilmOver } from "../prediction/printedReflectance.ts";
import { type WettableGarment, wetInto, wetSolidInto } from "../prediction/wettableGarment.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";

/** Room for what is seen; filled anew at each call. */
const seen: Spectrum = new Float64Array(BAND_COUNT);

/** Gain of each fibre under a film of `wetOutStrength`, its surprise being ln wet-out and the fibre's own. */
export function gainsUnder(
  cloth: WettableGarment,
  wetOutStrength: number,
  lnWetOut: number,
  lnFibreGain: readonly number[],
): Float64Array {
  const gains = cloth.gains.slice();
  for (let i = 0; i < gains.length; i++) gains[i]! *= wetOutStrength * Math.exp(lnWetOut + lnFibreGain[i]!);
  return gains;
}

/** Room for a wetted cloth, owned by whoever asks for colours in a row: arrays this size cost more to make than to fill. */
export function clothRoom(): Spectrum {
  return new Float64Array(BAND_COUNT);
}

/** The cloth wetted by `gains`, in `room`. */
export function wettedBy(room: Spectrum, cloth: WettableGarment, gains: Float64Array): Spectrum {
  wetInto(room, cloth, gains);
  return room;
}

/** The same by the other of a heather's two models, the dye share alone. */
export function wettedAsSolid(room: Spectrum, cloth: WettableGarment, gains: Float64Array): Spectrum {
  wetSolidInto(room, cloth, gains);
  return room;
}

/** Colour of `film` over the cloth as `wetted`. */
export function labThrough(
  film: PrintedFilm,
  cloth: WettableGarment,
  wetted: Spectrum,
  closedFraction: number = film.closedFraction,
): Lab {
  layFilmOver(seen, wetted, cloth, film, closedFraction);
  return labFromReflectance(seen, cloth.weights);
}

/** `to` minus `from`. */
export function difference(to: Lab, from: Lab): Lab {
  return { L: to.L - from.L, a: to.a - from.a, b: to.b - from.b };
}
