// The engine with a record book: the demo's, learned from and asked about.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { beliefFor } from "../../src/core/evidence/beliefFor.ts";
import { learnWatchfully } from "../../src/core/evidence/learnWatchfully.ts";
import { predictPrint } from "../../src/core/prediction/predictPrint.ts";
import { evidencePrintOf } from "../../src/engine/cellPrediction.ts";
import { predictDetail, predictPackedMatrix } from "../../src/engine/matrixPrediction.ts";
import { CELL_LENGTH, unpackCell } from "../../src/engine/packedCells.ts";
import type { MatrixColumn, MatrixRow } from "../../src/engine/protocol.ts";
import { teachersOf } from "../../src/engine/teachers.ts";
import { readJobArchive } from "../../src/exchange/jobArchive.ts";
import type { Documents } from "../../src/job/documents.ts";
import { evidenceInputs } from "../../src/job/evidenceInputs.ts";
import { evidenceGarment } from "../../src/job/evidencePrints.ts";
import { applicationFor, garmentFor, inkMixFor } from "../../src/job/predictionInputs.ts";

const DEMO = new URL("../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url);

function demo(): Documents {
  const read = readJobArchive(readFileSync(DEMO, "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  return read.documents;
}
const documents = demo();
const { job, library } = documents;
const place = job.places[0]!;
const { posterior } = learnWatchfully(evidenceInputs(library).records);

const rows: readonly MatrixRow[] = job.lines.map((line) => {
  const lot = library.garmentLots.find(({ id }) => id === line.garmentLotId)!;
  const found = garmentFor(lot, library.shelf);
  if (!found.ok) throw new Error("a demo garment cannot be predicted");
  const { garment, ...keys } = evidenceGarment(lot, found.garment);
  return { lineId: line.id, garment, keys };
});
const columns: readonly MatrixColumn[] = place.candidates.map(({ id, mixId, setUpId }) => {
  const mix = job.mixes.find((one) => one.id === mixId)!;
  const found = inkMixFor(mix, library.shelf);
  if (!found.ok) throw new Error("a demo mix cannot be predicted");
  const setUp = library.shelf.setUps.find((one) => one.id === setUpId)!;
  return {
    candidateId: id,
    mix: found.mix,
    application: applicationFor(setUp, place, library.shelf),
    itemKeys: mix.recipe.map(({ itemId }) => itemId),
    setUpKey: setUpId,
  };
});
const request = { rows, columns, viewing: job.viewing, band: place.band };
const approvedLotId = library.approvals[0]!.garmentLotId;
const approvedRow = rows.find(({ keys }) => keys?.lotKey === approvedLotId)!;
const clear = columns[0]!;

describe("predictions that follow the record book", () => {
  it("are what predictPrint gives with the same belief, cell by cell", () => {
    const packed = predictPackedMatrix(request, posterior);
    rows.forEach((row, r) => {
      columns.slice(0, 3).forEach((column, c) => {
        const cell = unpackCell(packed, r * columns.length + c, row.lineId, column.candidateId);
        const belief = beliefFor(posterior, evidencePrintOf(row, column)!, job.viewing);
        const { garment } = row;
        const alone = predictPrint({ ...request, ...column, garment, belief });
        expect(cell.evidence).toBe(alone.evidence);
        expect(cell.deltaL).toBeCloseTo(alone.deltaL, 9);
        expect(cell.deltaL5).toBeCloseTo(alone.spread.p5.deltaL, 9);
        expect(cell.chanceInBand).toBeCloseTo(alone.spread.chanceInBand, 9);
      });
    });
    expect(packed).toHaveLength(rows.length * columns.length * CELL_LENGTH);
  });

  it("are the prior's without keys, and narrower with them where a print was read", () => {
    const { keys: _, ...unknown } = approvedRow;
    const widthOf = (row: MatrixRow): number => {
      const packed = predictPackedMatrix({ ...request, rows: [row], columns: [clear] }, posterior);
      const { deltaL5, deltaL95 } = unpackCell(packed, 0, row.lineId, clear.candidateId);
      return deltaL95 - deltaL5;
    };
    expect(widthOf(approvedRow)).toBeLessThan(widthOf(unknown) / 3);
  });

  it("show the tint curve before and after, with colourants that the column itself does not hold", () => {
    const tints = columns
      .filter(({ mix }) => mix.parts.length > 1)
      .map(({ mix, itemKeys }, i) => ({ massFraction: i, mix, itemKeys: itemKeys! }));
    expect(tints.length).toBeGreaterThan(1);
    const detail = predictDetail({ ...request, row: approvedRow, column: clear, tints }, posterior);
    expect(detail.prediction.evidence).toBe("this lot");
    expect(detail.tintCurve).toHaveLength(tints.length);
    expect(detail.priorCurve).toHaveLength(tints.length);
    const width = (curve: typeof detail.tintCurve): number => curve[0]!.deltaL95 - curve[0]!.deltaL5;
    expect(width(detail.tintCurve)).toBeLessThan(width(detail.priorCurve));
    expect(predictDetail({ ...request, row: approvedRow, column: clear, tints }).priorCurve).toEqual([]);
  });

  it("name the approved print first among the records that taught about its own lot", () => {
    const teachers = teachersOf(posterior, { row: approvedRow, column: clear, viewing: job.viewing });
    const first = library.testPrints.find(({ id }) => id === teachers[0]!.recordId)!;
    expect(first.garmentLotId).toBe(approvedLotId);
    const shares = teachers.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    const { keys: _, ...unknown } = approvedRow;
    expect(teachersOf(posterior, { row: unknown, column: clear, viewing: job.viewing })).toEqual([]);
  });
});
