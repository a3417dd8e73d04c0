/**
 * The 36 bands in twelve groups: what a print's colour *changes* by as wet-out and tint vary needs no more (measured by
 * us; a test holds how far it is off), and its colour itself comes from all bands.
 */
import { weightsFor } from "../colorimetry/weights.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";

/** Bands in each group from 380 nm on: 20 nm wide from 440 to 620 nm, wider towards the ends, where the eye sees little. */
const GROUP_SIZES = [6, 2, 2, 2, 2, 2, 2, 2, 2, 2, 3, 9];
export const GROUP_COUNT = GROUP_SIZES.length;

/** Group of each band. */
const groupOf = Uint8Array.from(GROUP_SIZES.flatMap((size, g) => new Array<number>(size).fill(g)));

/** A weight of 0 or a trace below, as the ends have, counts as this much. */
const LEAST_WEIGHT = 1e-4;

/** How much each band counts in the mean of its group: by what a light and observer see of it in all. */
export function groupShares({
  x,
  y,
  z,
}: {
  readonly x: Spectrum;
  readonly y: Spectrum;
  readonly z: Spectrum;
}): Spectrum {
  const seen = x.map((value, i) => Math.max(LEAST_WEIGHT, value + y[i]! + z[i]!));
  const total = groupSums(seen);
  return seen.map((value, i) => value / total[groupOf[i]!]!);
}

/** For what lies on the cloth, whatever the light. */
const daylightShares = groupShares(weightsFor({ illuminant: "D65", observer: "10deg" }));

/** Sum over each group. */
export function groupSums(spectrum: Spectrum): Spectrum {
  const sums = new Float64Array(GROUP_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) sums[groupOf[i]!] = sums[groupOf[i]!]! + spectrum[i]!;
  return sums;
}

/** Mean over each group, its bands counting by `shares`; in daylight's where none are given. */
export function groupMeans(spectrum: Spectrum, shares: Spectrum = daylightShares): Spectrum {
  const means = new Float64Array(GROUP_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) means[groupOf[i]!] = means[groupOf[i]!]! + shares[i]! * spectrum[i]!;
  return means;
}
