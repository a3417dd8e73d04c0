/** A first-off of which only the change of L* is known, as a record: the colour that the model has along its spread there. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import { pointOnSpread } from "../../core/prediction/spreadPath.ts";
import { chosenPrint } from "../../job/chosenPrint.ts";
import type { Documents } from "../../job/documents.ts";
import type { Line, Place } from "../../job/jobDocument.ts";
import { mixOf } from "../../job/lookup.ts";
import type { Problem } from "../../job/problem.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { beliefOf, predictedCell } from "../cellPrediction.ts";
import type { MatrixColumn } from "../protocol.ts";
import { preparedColumn, preparedLine } from "./outlook.ts";
import { readyLines } from "./placePrints.ts";

/** It is no entry of the shop's book and never stored: one id is as good as another. */
export const FIRST_OFF_ID = "00000000-0000-4000-8000-000000000001";

export interface FirstOffReading {
  readonly deltaL: number;
  readonly pairCount: number;
}

/** The documents with that first-off in the record book, printed as the line is chosen to be; latest of all by its time. */
export function withFirstOff(
  documents: Documents,
  line: Line,
  place: Place,
  { deltaL, pairCount }: FirstOffReading,
  posterior: Posterior | null,
):
  | { readonly ok: true; readonly documents: Documents }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const { job, library } = documents;
  const chosen = chosenPrint(documents, line, place);
  const ready = readyLines(documents, place).lines.find((one) => one.line.id === line.id);
  if (chosen.kind === "refused") return { ok: false, problems: chosen.problems };
  const mix = chosen.kind === "none" ? null : mixOf(job, chosen.candidate.mixId);
  if (chosen.kind === "none" || mix === null || ready === undefined) {
    return { ok: false, problems: [{ code: "no-mix-chosen", where: "choice" }] };
  }
  const column: MatrixColumn = { ...chosen, candidateId: chosen.candidate.id };
  const prepared = preparedLine(ready, job.viewing);
  const { cloth, room } = prepared;
  const { ink } = preparedColumn(column);
  const belief = beliefOf(posterior, ready.row, column, job.viewing);
  const cell = predictedCell(room, cloth, ink, ready.band, belief);
  const { lab } = pointOnSpread(room, cell.cloth, cell.ink, cell.spread.response, deltaL);
  const latest =
    library.testPrints
      .map(({ readAt }) => readAt)
      .sort()
      .at(-1) ?? job.createdAt;
  const record: TestPrint = {
    id: FIRST_OFF_ID,
    garmentLotId: line.garmentLotId,
    recipe: mix.recipe,
    actualGrams: null,
    setUpId: chosen.candidate.setUpId,
    depositGsm: null,
    halftoneFraction: place.halftoneFraction,
    smoothed: place.smoothed,
    cure: { filmCelsius: null, seconds: null },
    printedAt: latest,
    readAt: latest,
    operator: "",
    readings: {
      kind: "lab",
      viewing: job.viewing,
      geometry: library.shelf.defaults.instrument.geometry,
      pairs: [{ bare: cloth.bareLab, print: lab }],
      pairCount,
      pieceCount: 1,
      sdPairDifference: null,
    },
    instrument: "",
    backing: "",
    washCount: 0,
    verdict: "none",
    note: "",
    photo: null,
    supersedesId: null,
  };
  return {
    ok: true,
    documents: { job, library: { ...library, testPrints: [...library.testPrints, record] } },
  };
}
