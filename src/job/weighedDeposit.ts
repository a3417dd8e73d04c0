/** The figures of a weighed set-up: those of its pieces, or the mean as it was entered. */
import { calibrateSetUp, USUAL_PIECE_COUNT } from "../core/planning/ink/setUpCalibration.ts";
import { DEPOSIT_SD_PRINT_TO_PRINT, DEPOSIT_SD_WEIGHED } from "../core/prediction/unknowns.ts";
import type { Weighed } from "./shelfDocument.ts";

export interface WeighedDeposit {
  /** Ink on the area that carries ink, g/m2. */
  readonly meanGsm: number;
  /** From piece to piece; 0 for one piece, which shows no scatter. */
  readonly sdGsm: number;
  readonly pieceCount: number;
  readonly densityGramsPerCm3: number;
  /** Standard deviations of ln deposit, of the set-up and from print to print: see core/planning/ink/setUpCalibration. */
  readonly lnSetUpSd: number;
  readonly lnPrintSd: number;
}

/** @throws RangeError for pieces that the schema refuses. */
export function weighedDeposit(weighed: Weighed): WeighedDeposit {
  const { densityGramsPerCm3 } = weighed;
  if (weighed.kind === "mean") {
    const { meanGsm, sdGsm, pieceCount } = weighed;
    const isFew = pieceCount < USUAL_PIECE_COUNT;
    const lnPrintSd = isFew ? Math.max(sdGsm / meanGsm, DEPOSIT_SD_PRINT_TO_PRINT) : sdGsm / meanGsm;
    const lnSetUpSd = Math.max(DEPOSIT_SD_WEIGHED, lnPrintSd / Math.sqrt(pieceCount));
    return { meanGsm, sdGsm, pieceCount, densityGramsPerCm3, lnSetUpSd, lnPrintSd };
  }
  const found = calibrateSetUp(weighed.pieces, weighed.printedAreaM2, weighed.scaleStepGrams);
  if (!found.ok)
    throw new RangeError(`pieces must be heavier after printing; got ${found.problems[0]?.code}`);
  const { meanGsm, sdGsm, pieceCount, lnSetUpSd, lnPrintSd } = found;
  return { meanGsm, sdGsm, pieceCount, densityGramsPerCm3, lnSetUpSd, lnPrintSd };
}
