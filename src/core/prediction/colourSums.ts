/** The colours of a row of films over many wettings of one cloth, as a spread asks for them: summed over groups of bands. */
import { tristimulusFromReflectance } from "../colorimetry/tristimulus.ts";
import type { Tristimulus } from "../colorimetry/viewing.ts";
import { INTERNAL_REFLECTION } from "../optics/saunderson.ts";
import { GROUP_COUNT } from "./bandGroups.ts";
import type { ColourSums, SumPlane } from "./colourPlanes.ts";
import type { FilmRow } from "./filmRow.ts";
import { type BandKernel, bandKernel } from "./kernel/bandKernel.ts";
import {
  addressOf,
  COARSE_CLOTH_AT,
  FACTORS_AT,
  GROUPS_BYTES,
  residency,
  SUMS_AT,
} from "./kernel/residentBands.ts";
import { colourOver, type Workspace, wetClothBy } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { isSumOfBands, mirroredBy, wetHeatherInKernel } from "./printedLab.ts";
import { LEAVING } from "./printedReflectance.ts";
import { type WettableGarment, wetSpectrum } from "./wettableGarment.ts";

const NUMBER_BYTES = 8;

/** Dye-weighted darkening of an evenly dyed cloth whose fibres' gains are multiplied by `strength`. */
function darkeningBy({ gains, dyeShares }: WettableGarment, strength: number): number {
  let factor = 0;
  for (let i = 0; i < gains.length; i++) {
    if (dyeShares[i]! > 0) factor += dyeShares[i]! * Math.exp(strength * gains[i]!);
  }
  return factor;
}

/** `sumRow` by the kernel. */
function sumInKernel(
  kernel: BandKernel,
  room: Workspace,
  cloth: WettableGarment,
  row: FilmRow,
  first: number,
  count: number,
  strengths: Float64Array,
  closedFraction: number,
): void {
  const open = 1 - closedFraction;
  const both = open + closedFraction * LEAVING;
  const inside = INTERNAL_REFLECTION * open;
  const { coarse } = cloth;
  let ks: number;
  let weights: number;
  let films: number;
  let before: number;
  do {
    before = residency();
    ks = addressOf(coarse.resident);
    weights = addressOf(coarse.residentWeights);
    films = addressOf(row.resident) + first * 2 * GROUPS_BYTES;
  } while (residency() !== before);
  const { numbers } = kernel;
  const each = (end: number, wetting: number, out: number): void =>
    kernel.seenOverEach(
      FACTORS_AT,
      end,
      films,
      count,
      wetting,
      COARSE_CLOTH_AT,
      weights,
      out,
      both,
      inside,
      INTERNAL_REFLECTION,
      GROUPS_BYTES,
    );
  if (cloth.dyedFibreKs === null) {
    for (let w = 0; w < strengths.length; w++) {
      numbers[FACTORS_AT / NUMBER_BYTES + w] = darkeningBy(cloth, strengths[w]!);
    }
    each(FACTORS_AT + strengths.length * NUMBER_BYTES, ks, SUMS_AT);
    return;
  }
  for (let w = 0; w < strengths.length; w++) {
    wetClothBy(room, cloth, strengths[w]!);
    wetHeatherInKernel(kernel, room, cloth, ks + GROUPS_BYTES, COARSE_CLOTH_AT, GROUPS_BYTES);
    each(FACTORS_AT + NUMBER_BYTES, 0, SUMS_AT + w * count * NUMBER_BYTES);
  }
}

const wetted = new Float64Array(GROUP_COUNT);

/** `sumRow` in plain code: layFilmOver group by group. */
function sumPlainly(
  { x, y, z }: ColourSums,
  cloth: WettableGarment,
  row: FilmRow,
  first: number,
  count: number,
  strengths: Float64Array,
  closedFraction: number,
): void {
  const { coarse } = cloth;
  const open = 1 - closedFraction;
  const leaving = closedFraction * LEAVING;
  strengths.forEach((strength, w) => {
    const gains = cloth.gains.map((gain) => strength * gain);
    wetSpectrum(wetted, cloth, coarse.ks, cloth.dyedFibreKs === null ? null : coarse.dyedFibreKs, gains);
    for (let f = 0; f < count; f++) {
      const { transmittanceSquared, reflectance: own } = row.coarse[first + f]!;
      const at = w * count + f;
      x.sums[at] = 0;
      y.sums[at] = 0;
      z.sums[at] = 0;
      for (let g = 0; g < GROUP_COUNT; g++) {
        const below = wetted[g]!;
        const body = own[g]! + (transmittanceSquared[g]! * below) / (1 - own[g]! * below);
        const seen = open * body + (leaving * body) / (1 - INTERNAL_REFLECTION * body);
        x.sums[at]! += coarse.x[g]! * seen;
        y.sums[at]! += coarse.y[g]! * seen;
        z.sums[at]! += coarse.z[g]! * seen;
      }
    }
  });
}

/** `sumRow` band by band, of what is no sum over bands: the whole tristimulus values. */
function sumExactly(
  room: Workspace,
  cloth: WettableGarment,
  row: FilmRow,
  first: number,
  count: number,
  strengths: Float64Array,
  closedFraction: number,
): void {
  const { x, y, z } = room.spread.colours;
  strengths.forEach((strength, w) => {
    wetClothBy(room, cloth, strength);
    for (let f = 0; f < count; f++) {
      colourOver(room, cloth, row.films[first + f]!, closedFraction);
      const { X, Y, Z } = tristimulusFromReflectance(room.printed, cloth.weights);
      const at = w * count + f;
      x.sums[at] = X;
      y.sums[at] = Y;
      z.sums[at] = Z;
    }
  });
}

/**
 * Sums up, into the planes of `room`, `count` films of `row` from film `first` on over the cloth wetted by each of
 * `strengths` (what the fibres' gains are multiplied by), under a surface closed by `closedFraction`.
 */
export function sumRow(
  room: Workspace,
  cloth: WettableGarment,
  row: FilmRow,
  first: number,
  count: number,
  strengths: Float64Array,
  closedFraction: number,
): void {
  if (!isSumOfBands(cloth, row.films[0]!)) {
    sumExactly(room, cloth, row, first, count, strengths, closedFraction);
  } else if (bandKernel === null) {
    sumPlainly(room.spread.colours, cloth, row, first, count, strengths, closedFraction);
  } else sumInKernel(bandKernel, room, cloth, row, first, count, strengths, closedFraction);
}

function tie(plane: SumPlane, exact: number, white: number, share: number, base: number): void {
  const total = share * plane.sums[0]! + base;
  const toExact = total === 0 ? 1 : exact / total;
  plane.scale = (toExact * share) / white;
  plane.offset = (toExact * base) / white;
  plane.untied = 1 - (toExact - 1) / 3;
}

/**
 * Sets scale and offset of every plane: light that the closed surface mirrors and cloth that the film leaves uncovered are
 * added, and all is multiplied by what makes the first sum the colour `exact`, which all bands give.
 */
export function tieSums(
  { x, y, z }: ColourSums,
  cloth: WettableGarment,
  film: PrintedFilm,
  exact: Tristimulus,
): void {
  const { bareTristimulus: bare, weights } = cloth;
  const { white } = weights;
  const isWhole = !isSumOfBands(cloth, film);
  const cover = isWhole ? 1 : film.coverFraction;
  const mirrored = isWhole ? 0 : cover * mirroredBy(cloth, film.closedFraction);
  tie(x, exact.X, white.X, cover, (1 - cover) * bare.X + mirrored * white.X);
  tie(y, exact.Y, white.Y, cover, (1 - cover) * bare.Y + mirrored * white.Y);
  tie(z, exact.Z, white.Z, cover, (1 - cover) * bare.Z + mirrored * white.Z);
}

/** What closing the surface by `step` more mirrors beside what `sumRow` sums up, as a ratio to the white point. */
export function mirroredBeside(cloth: WettableGarment, film: PrintedFilm, step: number): number {
  return isSumOfBands(cloth, film) ? film.coverFraction * mirroredBy(cloth, step) : 0;
}
