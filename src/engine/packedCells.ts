/** The cells of a matrix as one Float64Array, so that they cross from the worker by transfer and not by copy. */
import type { GreyScaleGrade } from "../core/colorimetry/greyScale.ts";
import { GREY_SCALE_STEPS } from "../core/colorimetry/greyScale.ts";
import type { EvidenceLevel, PredictionWarning } from "../core/prediction/prediction.ts";
import type { MatrixCell } from "./protocol.ts";

/** Order of the warnings in a cell's bit mask. */
const WARNINGS: readonly PredictionWarning[] = [
  "dark-limit",
  "brightener",
  "deposit-outside-range",
  "heather-as-solid",
  "milky-haze",
  "bare-approximate",
  "light-indicative",
  "screen-colour-moved",
];

const GRADES: readonly GreyScaleGrade[] = GREY_SCALE_STEPS.map((step) => step.grade);

const LEVELS: readonly EvidenceLevel[] = ["model only", "related prints", "this lot"];

/** Numbers per cell. */
export const CELL_LENGTH = 13;

const hexOf = (packed: number): string => `#${packed.toString(16).padStart(6, "0")}`;
const packedFrom = (hex: string): number => Number.parseInt(hex.slice(1), 16);

export type CellNumbers = Omit<MatrixCell, "lineId" | "candidateId" | "greyScaleGrade"> & {
  readonly greyScaleGrade: GreyScaleGrade;
};

/** Writes one cell at position `index`. */
export function packCell(into: Float64Array, index: number, cell: CellNumbers): void {
  into.set(
    [
      packedFrom(cell.bareHex),
      packedFrom(cell.printedHex),
      packedFrom(cell.lightHex),
      packedFrom(cell.darkHex),
      cell.deltaL,
      cell.deltaL5,
      cell.deltaL50,
      cell.deltaL95,
      cell.chanceInBand,
      cell.deltaE00,
      GRADES.indexOf(cell.greyScaleGrade),
      WARNINGS.reduce(
        (mask, warning, bit) => (cell.warnings.includes(warning) ? mask | (1 << bit) : mask),
        0,
      ),
      LEVELS.indexOf(cell.evidence),
    ],
    index * CELL_LENGTH,
  );
}

/** The cell at position `index`; `lineId` and `candidateId` are the asker's, since ids do not travel back. */
export function unpackCell(
  from: Float64Array,
  index: number,
  lineId: string,
  candidateId: string,
): MatrixCell {
  const at = (k: number): number => from[index * CELL_LENGTH + k]!;
  return {
    lineId,
    candidateId,
    bareHex: hexOf(at(0)),
    printedHex: hexOf(at(1)),
    lightHex: hexOf(at(2)),
    darkHex: hexOf(at(3)),
    deltaL: at(4),
    deltaL5: at(5),
    deltaL50: at(6),
    deltaL95: at(7),
    chanceInBand: at(8),
    deltaE00: at(9),
    greyScaleGrade: GRADES[at(10)]!,
    evidence: LEVELS[at(12)]!,
    warnings: WARNINGS.filter((_, bit) => at(11) & (1 << bit)),
  };
}
