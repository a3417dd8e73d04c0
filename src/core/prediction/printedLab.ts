/** The colour of a print without its spectrum: what a spread asks for hundreds of times, in as few divisions as it takes. */
import { labFromReflectance, labFromTristimulus } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { EXTERNAL_REFLECTION, INTERNAL_REFLECTION } from "../optics/saunderson.ts";
import { BAND_COUNT } from "../spectrum/spectrum.ts";
import { printedColour, type Workspace } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { LEAVING, layFilmOver } from "./printedReflectance.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Whether every band is a plain film over plain cloth: all covered, solid, and nothing above 1 to be held back. */
function isPlain(cloth: WettableGarment, film: PrintedFilm): boolean {
  return !cloth.isBrightened && film.coverFraction === 1 && film.halftoneFraction === 1;
}

/** Light mirrored by the closed surface, which an instrument with the specular part included sees in every band. */
function mirroredBy(cloth: WettableGarment, closedFraction: number): number {
  return cloth.garment.geometry === "specular-included" ? closedFraction * EXTERNAL_REFLECTION : 0;
}

/**
 * Colour of `film` over what is in `room.wetted`; `room.printed` is not kept up. With m = 1 - R0 R and n = R0 m + T^2 R
 * the film over the cloth is n / m, and under its surface, open and closed parts together,
 * n (open (m - k2 n) + leaving m) / (m (m - k2 n)): the formulas of `layFilmOver` over one denominator (a test holds
 * them equal).
 */
export function labOver(
  room: Workspace,
  cloth: WettableGarment,
  film: PrintedFilm,
  closedFraction: number = film.closedFraction,
): Lab {
  const { wetted } = room;
  const { weights } = cloth;
  if (!isPlain(cloth, film)) {
    layFilmOver(room.printed, wetted, cloth, film, closedFraction);
    return labFromReflectance(room.printed, weights);
  }
  const { transmittanceSquared, reflectance } = film;
  const { x, y, z, white } = weights;
  const mirrored = mirroredBy(cloth, closedFraction);
  const open = 1 - closedFraction;
  const leaving = closedFraction * LEAVING;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    const below = wetted[i]!;
    const own = reflectance[i]!;
    const m = 1 - own * below;
    const n = own * m + transmittanceSquared[i]! * below;
    const d = m - INTERNAL_REFLECTION * n;
    const seen = mirrored + (n * (open * d + leaving * m)) / (m * d);
    X += x[i]! * seen;
    Y += y[i]! * seen;
    Z += z[i]! * seen;
  }
  return labFromTristimulus({ X, Y, Z }, white);
}

/**
 * Expected colour of `film` on `cloth`, as `printedColour` without the spectrum. For an evenly dyed cloth the wetted
 * reflectance is 1 / u with u = 1 + q + sqrt(q^2 + 2 q), q = D K/S, so that cloth, film and surface share one division.
 */
export function printedLab(room: Workspace, cloth: WettableGarment, film: PrintedFilm): Lab {
  if (cloth.dyedFibreKs !== null || !isPlain(cloth, film)) return printedColour(room, cloth, film);
  const { clothKs, dyeShares, gains, weights } = cloth;
  let factor = 0;
  for (let i = 0; i < dyeShares.length; i++) {
    if (dyeShares[i]! > 0) factor += dyeShares[i]! * Math.exp(gains[i]! * film.wetOutStrength);
  }
  const { transmittanceSquared, reflectance, closedFraction } = film;
  const { x, y, z, white } = weights;
  const mirrored = mirroredBy(cloth, closedFraction);
  const open = 1 - closedFraction;
  const leaving = closedFraction * LEAVING;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    const q = factor * clothKs[i]!;
    const own = reflectance[i]!;
    const m = 1 + q + Math.sqrt(q * (q + 2)) - own;
    const n = own * m + transmittanceSquared[i]!;
    const d = m - INTERNAL_REFLECTION * n;
    const seen = mirrored + (n * (open * d + leaving * m)) / (m * d);
    X += x[i]! * seen;
    Y += y[i]! * seen;
    Z += z[i]! * seen;
  }
  return labFromTristimulus({ X, Y, Z }, white);
}
