/** Films that share all but their optics, in a row, by groups of bands: what the kernel lays over one wetted cloth at once. */
import type { Spectrum } from "../spectrum/spectrum.ts";
import { groupMeans } from "./bandGroups.ts";
import { type ResidentBands, residentBands } from "./kernel/residentBands.ts";
import type { PrintedFilm } from "./printedFilm.ts";

export interface FilmRow {
  readonly films: readonly PrintedFilm[];
  /** T^2 and R0 of each film by group. */
  readonly coarse: readonly { readonly transmittanceSquared: Spectrum; readonly reflectance: Spectrum }[];
  readonly resident: ResidentBands;
}

/** `films` made ready to be laid by groups; eight at most (residentBands.ts). */
export function filmRow(films: readonly PrintedFilm[]): FilmRow {
  const coarse = films.map(({ transmittanceSquared, reflectance }) => ({
    transmittanceSquared: groupMeans(transmittanceSquared),
    reflectance: groupMeans(reflectance),
  }));
  const spectra = coarse.flatMap(({ transmittanceSquared, reflectance }) => [
    transmittanceSquared,
    reflectance,
  ]);
  return { films, coarse, resident: residentBands(spectra, 2) };
}
