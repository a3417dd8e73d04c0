/** What the planner asks of the prediction worker and what it gets back. */
import type { Viewing } from "../core/colorimetry/viewing.ts";
import type { Application, Garment, InkMix, TargetBand } from "../core/prediction/inputs.ts";
import type { EvidenceLevel, Prediction, PredictionWarning } from "../core/prediction/prediction.ts";
import type { ScreenGamut } from "../job/screenColour.ts";

/** A garment line of the matrix. */
export interface MatrixRow {
  readonly lineId: string;
  readonly garment: Garment;
}

/** A candidate of the matrix: a mix through a set-up. */
export interface MatrixColumn {
  readonly candidateId: string;
  readonly mix: InkMix;
  readonly application: Application;
}

export interface MatrixRequest {
  readonly rows: readonly MatrixRow[];
  readonly columns: readonly MatrixColumn[];
  readonly viewing: Viewing;
  readonly band: TargetBand;
  /** What the colours of the answer are for; sRGB where it is left out. */
  readonly gamut?: ScreenGamut;
}

/** One cell as the matrix shows it. Colours are #rrggbb of the asked gamut, mapped into it where needed. */
export interface MatrixCell {
  readonly lineId: string;
  readonly candidateId: string;
  readonly bareHex: string;
  readonly printedHex: string;
  /** The print at the light end (95 %) and the dark end (5 %) of its spread. */
  readonly lightHex: string;
  readonly darkHex: string;
  readonly deltaL: number;
  /** 5 %, 50 % and 95 % points of delta-L*. */
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  readonly chanceInBand: number;
  readonly deltaE00: number;
  readonly greyScaleGrade: string;
  readonly evidence: EvidenceLevel;
  readonly warnings: readonly PredictionWarning[];
}

/** Cells by `cellKey`. */
export type MatrixCells = ReadonlyMap<string, MatrixCell>;

/** The key of a cell. */
export function cellKey(lineId: string, candidateId: string): string {
  return `${lineId} ${candidateId}`;
}

/** Everything about one cell, and how it would answer to other amounts of tint. */
export interface CellRequest {
  readonly row: MatrixRow;
  readonly column: MatrixColumn;
  readonly viewing: Viewing;
  readonly band: TargetBand;
  /** As of `MatrixRequest`. */
  readonly gamut?: ScreenGamut;
  /** The same mix with other amounts of one tint, in rising order, for the curve; may be empty. */
  readonly tints: readonly { readonly massFraction: number; readonly mix: InkMix }[];
}

export interface TintCurvePoint {
  readonly massFraction: number;
  readonly deltaL: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
}

export interface CellDetail {
  readonly prediction: Prediction;
  readonly bareHex: string;
  readonly printedHex: string;
  readonly lightHex: string;
  readonly darkHex: string;
  /** The screen cannot show one of these colours; the nearest it can is shown. */
  readonly screenColourMoved: boolean;
  readonly tintCurve: readonly TintCurvePoint[];
}

/**
 * The engine as the planner sees it. One request of a kind is worked on at a time and at most one waits: a newer one
 * takes the place of the waiting one, which resolves to null. Answers come in the order asked, so that a slow one never
 * overwrites a newer.
 */
export interface PredictionEngine {
  predictMatrix(request: MatrixRequest): Promise<MatrixCells | null>;
  predictCell(request: CellRequest): Promise<CellDetail | null>;
  dispose(): void;
}
