/** Readings at the press in one form: what the bench form took as the changes of L* that the press log keeps. */
import { labFromReflectance } from "../../core/colorimetry/cielab.ts";
import { isSameViewing, type Viewing } from "../../core/colorimetry/viewing.ts";
import { weightsFor } from "../../core/colorimetry/weights.ts";
import type { PairReadings } from "../../core/planning/decisions/readingUncertainty.ts";
import type { PressReadings } from "../pressDocument.ts";
import { type MeasuredReadings, readingMeans } from "../readingMeans.ts";
import type { BenchForm } from "../recordBook/benchForm.ts";
import { readingsOfForm } from "../recordBook/benchPrint.ts";
import type { Readings } from "../recordDocument.ts";

export type ReadChange =
  | { readonly ok: true; readonly readings: PressReadings }
  /** `other-light`: read under another light or observer than the band is for; readings are never compared across them. */
  | { readonly ok: false; readonly reason: "nothing-read" | "other-light" };

/** More pairs than this are kept as their mean and scatter. */
const MOST_PAIRS = 200;

const NOTHING: ReadChange = { ok: false, reason: "nothing-read" };
const OTHER_LIGHT: ReadChange = { ok: false, reason: "other-light" };

function pairChanges(readings: MeasuredReadings, viewing: Viewing): number[] {
  if (readings.kind === "lab") return readings.pairs.map(({ bare, print }) => print.L - bare.L);
  const weights = weightsFor(viewing);
  const lightness = (spectrum: readonly number[]) =>
    labFromReflectance(Float64Array.from(spectrum), weights).L;
  return readings.pairs.map(({ bare, print }) => lightness(print) - lightness(bare));
}

/** The readings of a record as the press log keeps them, under the light of the band. */
export function pressReadingsOf(readings: Readings, viewing: Viewing): ReadChange {
  if (readings.kind === "by-eye") {
    const { kind, grade, direction, light } = readings;
    return light === viewing.illuminant ? { ok: true, readings: { kind, grade, direction } } : OTHER_LIGHT;
  }
  if (readings.kind === "lab" && !isSameViewing(readings.viewing, viewing)) return OTHER_LIGHT;
  const deltaL = pairChanges(readings, viewing);
  const { bare, print, pairCount, sdPairDeltaL } = readingMeans(readings, viewing);
  const pieceCount = Math.min(readings.pieceCount, pairCount);
  if (pairCount > deltaL.length || deltaL.length > MOST_PAIRS) {
    const mean = print.L - bare.L;
    return {
      ok: true,
      readings: { kind: "mean", deltaL: mean, pairCount, pieceCount, sdPairDifference: sdPairDeltaL },
    };
  }
  return { ok: true, readings: { kind: "pairs", deltaL, pieceCount } };
}

/**
 * What a form says while it is typed: a pair counts as soon as both its L* are there, whole or not, so that the answer is
 * there before a* and b* are. What is kept needs the whole pair.
 */
export function typedReadings(form: BenchForm, viewing: Viewing): ReadChange {
  const { way, illuminant, observer, pieceCount } = form;
  if (way === "pairs" && illuminant !== null && observer !== null) {
    const deltaL = form.pairs.flatMap(({ bare, print }) =>
      bare.L === null || print.L === null ? [] : [print.L - bare.L],
    );
    if (deltaL.length === 0) return NOTHING;
    if (!isSameViewing({ illuminant, observer }, viewing)) return OTHER_LIGHT;
    if (deltaL.length <= MOST_PAIRS) {
      return {
        ok: true,
        readings: { kind: "pairs", deltaL, pieceCount: Math.min(pieceCount, deltaL.length) },
      };
    }
  }
  const read = readingsOfForm(form, true);
  return read.ok ? pressReadingsOf(read.readings, viewing) : NOTHING;
}

/**
 * As many changes as were read with the mean and the scatter of them (n - 1): what is known of pairs that nobody typed. One
 * at the mean, where their number is odd, the others as far above it as below.
 */
export function spreadAround(mean: number, count: number, sd: number): number[] {
  const even = count % 2 === 0;
  const off = even ? sd * Math.sqrt((count - 1) / count) : sd;
  return Array.from({ length: count }, (_, index) => {
    if (!even && index === 0) return mean;
    return index % 2 === 0 ? mean + off : mean - off;
  });
}

/** The pairs of an instrument's readings; where only their mean was typed, pairs of that mean and its scatter. */
export function pairsOf(
  readings: Exclude<PressReadings, { readonly kind: "by-eye" }>,
  usualPairSd: number,
): PairReadings {
  if (readings.kind === "pairs") return readings;
  const { deltaL, pairCount, pieceCount, sdPairDifference } = readings;
  // A scatter that nobody has said is taken to be the usual one.
  return { deltaL: spreadAround(deltaL, pairCount, sdPairDifference ?? usualPairSd), pieceCount };
}
