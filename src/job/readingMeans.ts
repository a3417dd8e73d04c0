/** What a record's readings come to: the mean pair under one light and observer, and how far the pairs scatter. */
import { labFromReflectance } from "../core/colorimetry/cielab.ts";
import type { Lab, Viewing } from "../core/colorimetry/viewing.ts";
import { weightsFor } from "../core/colorimetry/weights.ts";
import { meanLab } from "./colourSpectrum.ts";
import type { Readings } from "./recordDocument.ts";

/** What an instrument read. */
export type MeasuredReadings = Exclude<Readings, { readonly kind: "by-eye" }>;

export interface ReadingMeans {
  readonly bare: Lab;
  readonly print: Lab;
  /** Light and observer of both: as read, or the one that spectra were asked for under. */
  readonly viewing: Viewing;
  readonly pairCount: number;
  readonly pieceCount: number;
  /** Of the change of L* from pair to pair; null where one pair tells nothing of it. */
  readonly sdPairDeltaL: number | null;
}

/** Standard deviation (n - 1); null for fewer than two. */
function standardDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** The means of an instrument's readings. Spectra are seen under `viewing`. */
export function readingMeans(readings: MeasuredReadings, viewing: Viewing): ReadingMeans {
  const under = readings.kind === "lab" ? readings.viewing : viewing;
  const pairs =
    readings.kind === "lab"
      ? readings.pairs
      : readings.pairs.map(({ bare, print }) => ({
          bare: labFromReflectance(Float64Array.from(bare), weightsFor(under)),
          print: labFromReflectance(Float64Array.from(print), weightsFor(under)),
        }));
  const scatter = standardDeviation(pairs.map(({ bare, print }) => print.L - bare.L));
  return {
    bare: meanLab(pairs.map((pair) => pair.bare)),
    print: meanLab(pairs.map((pair) => pair.print)),
    viewing: under,
    pairCount: readings.kind === "lab" ? readings.pairCount : pairs.length,
    pieceCount: readings.pieceCount,
    sdPairDeltaL: scatter ?? (readings.kind === "lab" ? readings.sdPairDifference : null),
  };
}
