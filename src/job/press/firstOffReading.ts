/** From what was read of a print at the press to its mean, how far that may be off, and what to do about it. */
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import { PIECE_TO_PIECE_SD } from "../../core/evidence/readingNoise.ts";
import { Z_95 } from "../../core/evidence/sampleSize.ts";
import { byEyeVariance, deltaEabOfGrade } from "../../core/evidence/teaching.ts";
import { type FirstOffVerdict, judgeFirstOff } from "../../core/planning/decisions/firstOff.ts";
import {
  type MeanReading,
  meanReading,
  type ReadingNoise,
} from "../../core/planning/decisions/readingUncertainty.ts";
import type { ApprovedReference, LineBand } from "../approvedReference.ts";
import { pairSdOf } from "../decisions/testTerms.ts";
import type { GarmentLot } from "../garmentLotDocument.ts";
import type { Library } from "../libraryDocument.ts";
import type { PressReadings } from "../pressDocument.ts";
import { pairsOf, pressReadingsOf } from "./pressReadings.ts";

type Cloth = Pick<GarmentLot, "heather" | "blend">;

/** Mean change of L* as far as it is known without noise: what the piece-to-piece spread is a part of. */
function roughMean(readings: PressReadings): number {
  if (readings.kind === "by-eye") {
    const seen = deltaEabOfGrade(readings.grade);
    return readings.direction === "darker" ? -seen : seen;
  }
  if (readings.kind === "mean") return readings.deltaL;
  return readings.deltaL.reduce((sum, value) => sum + value, 0) / readings.deltaL.length;
}

/**
 * Pieces of one lot differ by `PIECE_TO_PIECE_SD` in epsilon, the logarithm of what they react with (model.md §6). The
 * change of L* is taken as proportional to that, so that its spread is that part of its size: near enough for a print that
 * keeps some room to darken, too wide at the dark limit.
 */
const pieceSdOf = (mean: number) => PIECE_TO_PIECE_SD * Math.abs(mean);

/**
 * How far readings may be off. An eye sees the whole colour difference and not L* alone; for a tonal print the two are
 * nearly one, and its error (0.25 in ln, as the record book takes it) is far wider than what parts them.
 */
export function meanOf(readings: PressReadings, cloth: Cloth, referenceSd: number): MeanReading {
  const mean = roughMean(readings);
  const noise: ReadingNoise = { pairSd: pairSdOf(cloth), pieceSd: pieceSdOf(mean), referenceSd };
  if (readings.kind !== "by-eye") return meanReading(pairsOf(readings, noise.pairSd), noise);
  const pairSd = Math.sqrt(byEyeVariance(readings.grade));
  const randomUncertainty = Math.hypot(pairSd, noise.pieceSd);
  return {
    mean,
    pairCount: 1,
    pieceCount: 1,
    pairSd,
    randomUncertainty,
    referenceUncertainty: referenceSd,
    standardUncertainty: Math.hypot(randomUncertainty, referenceSd),
  };
}

/** Of the mean that a band follows: the approved print's own readings on its own lot; 0 where the band is a figure. */
export function referenceSdOf(
  follows: ApprovedReference | null,
  { garmentLots }: Pick<Library, "garmentLots">,
  viewing: Viewing,
): number {
  if (follows === null) return 0;
  const lot = garmentLots.find(({ id }) => id === follows.lotId);
  const read = pressReadingsOf(follows.testPrint.readings, viewing);
  if (lot === undefined || !read.ok) return 0;
  return meanOf(read.readings, lot, 0).randomUncertainty;
}

/** Half of the interval that holds a mean in 95 of 100. */
export const halfInterval95 = (standardUncertainty: number): number => Z_95 * standardUncertainty;

export type JudgedReading =
  | { readonly ok: true; readonly reading: MeanReading; readonly verdict: FirstOffVerdict }
  /** A band without width holds nothing that can be read. */
  | { readonly ok: false; readonly reason: "no-tolerance" };

const UNDECIDED: ReadonlySet<FirstOffVerdict["reason"]> = new Set([
  "near-limit",
  "on-limit",
  "band-narrower-than-noise",
]);

/**
 * What to do with a print read like that. An eye that cannot decide is asked for an instrument's pairs and not to look
 * again: the same eye errs alike. `readMoreCount` is 0 then.
 */
export function judgeReading(
  readings: PressReadings,
  cloth: Cloth,
  { band }: Pick<LineBand, "band">,
  referenceSd: number,
): JudgedReading {
  if (!(band.tolerance > 0)) return { ok: false, reason: "no-tolerance" };
  const reading = meanOf(readings, cloth, referenceSd);
  const verdict = judgeFirstOff(reading, band);
  if (readings.kind === "by-eye" && UNDECIDED.has(verdict.reason)) {
    return { ok: true, reading, verdict: { ...verdict, action: "read-more", readMoreCount: 0 } };
  }
  return { ok: true, reading, verdict };
}
