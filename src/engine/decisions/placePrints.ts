/** The lines of a place and the prints they may get, made ready for prediction: rows and columns as the matrix has them. */
import { lineBand } from "../../job/approvedReference.ts";
import type { MixCandidate } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import { evidenceGarment } from "../../job/evidencePrints.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Band, Line, Place } from "../../job/jobDocument.ts";
import { linesAt, lotOfLine } from "../../job/lookup.ts";
import { applicationFor, applicationProblems, garmentFor } from "../../job/predictionInputs.ts";
import type { SetUp } from "../../job/shelfDocument.ts";
import type { MatrixColumn, MatrixRow } from "../protocol.ts";

export interface ReadyLine {
  readonly line: Line;
  readonly lot: GarmentLot;
  readonly row: MatrixRow;
  readonly band: Band;
}

/** A mix through a set-up. */
export interface ReadyPrint {
  readonly mix: MixCandidate;
  readonly setUp: SetUp;
  readonly column: MatrixColumn;
}

/** The lines printed at a place that can be predicted; the others are named in `left`. */
export function readyLines(
  documents: Documents,
  place: Place,
): { readonly lines: readonly ReadyLine[]; readonly left: readonly string[] } {
  const lines: ReadyLine[] = [];
  const left: string[] = [];
  for (const line of linesAt(documents.job, place)) {
    const lot = lotOfLine(documents, line);
    const cloth = lot === null ? null : garmentFor(lot, documents.library.shelf);
    if (lot === null || cloth === null || !cloth.ok) {
      left.push(line.id);
      continue;
    }
    const { garment, ...keys } = evidenceGarment(lot, cloth.garment);
    const { band } = lineBand(documents, line, place);
    lines.push({ line, lot, band, row: { lineId: line.id, garment, keys, band } });
  }
  return { lines, left };
}

/** Set-ups whose deposit is known. */
export function usableSetUps({ library: { shelf } }: Documents): SetUp[] {
  return shelf.setUps.filter((setUp) => applicationProblems(setUp, shelf).length === 0);
}

/** `mix` through `setUp` at `place`. @throws RangeError for a set-up without a deposit. */
export function readyPrint(documents: Documents, place: Place, mix: MixCandidate, setUp: SetUp): ReadyPrint {
  const column: MatrixColumn = {
    candidateId: `${mix.key} ${setUp.id}`,
    // An object of its own: what is made of an ink on its set-up is remembered by it, from garment to garment.
    mix: { ...mix.ink },
    application: applicationFor(setUp, place, documents.library.shelf),
    itemKeys: mix.recipe.map(({ itemId }) => itemId),
    setUpKey: setUp.id,
  };
  return { mix, setUp, column };
}
