/**
 * A screen set-up's deposit by weighing garments before and after printing, before cure (cure drives off moisture):
 * the shop's own figure in place of the estimate from the mesh.
 */
import { DEPOSIT_SD_PRINT_TO_PRINT, DEPOSIT_SD_WEIGHED } from "../../prediction/unknowns.ts";

/** One garment on the scale, grams. */
export interface WeighedPiece {
  readonly beforeGrams: number;
  readonly afterGrams: number;
}

/** Pieces that are usually weighed, and from which their own scatter is believed. Common practice, no source. */
export const USUAL_PIECE_COUNT = 10;

/** One step of the scale may be this part of the ink on a piece before a coarse scale is remarked on: 50 steps. From memory. */
const COARSE_SCALE_FRACTION = 1 / 50;

export type CalibrationProblemCode =
  | "no-pieces"
  /** The piece `index` weighed no more after printing than before. figures: index, beforeGrams, afterGrams. */
  | "not-heavier";

export type CalibrationNoticeCode =
  /** figures: pieceCount, usualPieceCount. */
  | "few-pieces"
  /** figures: scaleStepGrams, meanInkGrams. */
  | "coarse-scale";

interface Finding<Code extends string> {
  readonly code: Code;
  readonly figures: Readonly<Record<string, number>>;
}

export interface Calibration {
  readonly ok: true;
  /** Ink on the area that carries ink, g/m2. */
  readonly meanGsm: number;
  /** Piece to piece (n - 1), g/m2; 0 for one piece, which shows no scatter. */
  readonly sdGsm: number;
  readonly pieceCount: number;
  /** Of the mean, g/m2, after the spread that is believed: see `lnPrintSd`. */
  readonly standardErrorGsm: number;
  /**
   * Standard deviation of ln deposit of the set-up. A weighing shows one session; blade, pressure and tension differ
   * from one to the next, which is what 0.10 stands for (prediction/unknowns, invented default). It is the larger of
   * 0.10 and the relative standard error of the mean, so that a poor weighing never counts as a good one.
   */
  readonly lnSetUpSd: number;
  /**
   * From print to print, of ln deposit: the pieces' own sd / mean from ten pieces on; with fewer, the larger of that
   * and the default of 0.08.
   */
  readonly lnPrintSd: number;
  readonly notices: readonly Finding<CalibrationNoticeCode>[];
}

export type CalibrationResult =
  | Calibration
  | { readonly ok: false; readonly problems: readonly Finding<CalibrationProblemCode>[] };

/**
 * Mean, spread and standard error of the ink on the inked area, g/m2.
 * @param printedAreaM2 area that carries ink, m2, above 0. @param scaleStepGrams step of the scale the garments were on.
 * @throws RangeError for an area or step not above 0, or a weight that is negative or infinite.
 */
export function calibrateSetUp(
  pieces: readonly WeighedPiece[],
  printedAreaM2: number,
  scaleStepGrams: number,
): CalibrationResult {
  if (!(printedAreaM2 > 0)) throw new RangeError(`printedAreaM2 must be above 0; got ${printedAreaM2}`);
  if (!(scaleStepGrams > 0)) throw new RangeError(`scaleStepGrams must be above 0; got ${scaleStepGrams}`);
  const problems: Finding<CalibrationProblemCode>[] = [];
  if (pieces.length === 0) problems.push({ code: "no-pieces", figures: {} });
  pieces.forEach(({ beforeGrams, afterGrams }, index) => {
    for (const grams of [beforeGrams, afterGrams]) {
      if (!(grams >= 0 && grams < Infinity))
        throw new RangeError(`grams must be >= 0 and finite; got ${grams}`);
    }
    if (afterGrams <= beforeGrams) {
      problems.push({ code: "not-heavier", figures: { index, beforeGrams, afterGrams } });
    }
  });
  if (problems.length > 0) return { ok: false, problems };
  const pieceCount = pieces.length;
  const gsm = pieces.map(({ beforeGrams, afterGrams }) => (afterGrams - beforeGrams) / printedAreaM2);
  const meanGsm = gsm.reduce((sum, value) => sum + value, 0) / pieceCount;
  const squares = gsm.reduce((sum, value) => sum + (value - meanGsm) ** 2, 0);
  const sdGsm = pieceCount === 1 ? 0 : Math.sqrt(squares / (pieceCount - 1));
  const few = pieceCount < USUAL_PIECE_COUNT;
  const lnPrintSd = few ? Math.max(sdGsm / meanGsm, DEPOSIT_SD_PRINT_TO_PRINT) : sdGsm / meanGsm;
  const relativeError = lnPrintSd / Math.sqrt(pieceCount);
  const meanInkGrams = meanGsm * printedAreaM2;
  const notices: Finding<CalibrationNoticeCode>[] = [];
  if (few) notices.push({ code: "few-pieces", figures: { pieceCount, usualPieceCount: USUAL_PIECE_COUNT } });
  if (scaleStepGrams > meanInkGrams * COARSE_SCALE_FRACTION) {
    notices.push({ code: "coarse-scale", figures: { scaleStepGrams, meanInkGrams } });
  }
  return {
    ok: true,
    meanGsm,
    sdGsm,
    pieceCount,
    standardErrorGsm: relativeError * meanGsm,
    lnSetUpSd: Math.max(DEPOSIT_SD_WEIGHED, relativeError),
    lnPrintSd,
    notices,
  };
}
