/** What the planner asks of the prediction worker and what it gets back. */
import type { Viewing } from "../core/colorimetry/viewing.ts";
import type { LearnedUnknown } from "../core/evidence/learned.ts";
import type { ScaleEstimate } from "../core/evidence/priorEstimate.ts";
import type { EvidenceGarment } from "../core/evidence/record.ts";
import type { Suspicion } from "../core/evidence/suspicious.ts";
import type { Application, Garment, InkMix, TargetBand } from "../core/prediction/inputs.ts";
import type { EvidenceLevel, Prediction, PredictionWarning } from "../core/prediction/prediction.ts";
import type { EvidenceInputs } from "../job/evidenceInputs.ts";
import type { ScreenGamut } from "../job/screenColour.ts";
import type { ReadingsAnswer, ReadingsRequest } from "./readingsFile.ts";
import type { RecordFinding, RecordRequest } from "./recordFinding.ts";

/** What a garment lot shares with others, by key. */
export type GarmentKeys = Omit<EvidenceGarment, "garment">;

/** A garment line of the matrix. */
export interface MatrixRow {
  readonly lineId: string;
  readonly garment: Garment;
  /** By which test prints are found that teach about it; without them the prior. */
  readonly keys?: GarmentKeys;
  /** The band of this line where it is not the request's: that of its approved print. */
  readonly band?: TargetBand;
}

/** A candidate of the matrix: a mix through a set-up. */
export interface MatrixColumn {
  readonly candidateId: string;
  readonly mix: InkMix;
  readonly application: Application;
  /** Base or colourant behind each part of the mix, by position, and the set-up; without them the prior. */
  readonly itemKeys?: readonly string[];
  readonly setUpKey?: string;
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
  readonly tints: readonly {
    readonly massFraction: number;
    readonly mix: InkMix;
    /** As of `MatrixColumn`. */
    readonly itemKeys?: readonly string[];
  }[];
}

export interface TintCurvePoint {
  readonly massFraction: number;
  readonly deltaL: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
}

/** A cell whose teachers are asked for: dearer than a prediction, so not while a tint is dragged. */
export type TeachersRequest = Pick<CellRequest, "row" | "column" | "viewing">;

/** A record and how much of what is known of a cell it alone has taught. */
export interface Teacher {
  readonly recordId: string;
  /** Its part of all that the records took away of the variance of delta-L*. */
  readonly share: number;
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
  /** The same curve before any test print; empty where no test print has taught. */
  readonly priorCurve: readonly TintCurvePoint[];
}

/** What the engine has found in the record book. */
export interface Lessons {
  /** Records that disagree with all others, those set aside among them. */
  readonly suspicions: readonly Suspicion[];
  /** How many records teach. */
  readonly teachingCount: number;
}

/**
 * The engine as the planner sees it. One request of a kind is worked on at a time and at most one waits: a newer one
 * takes the place of the waiting one, which resolves to null. Answers come in the order asked, so that a slow one never
 * overwrites a newer.
 */
export interface PredictionEngine {
  predictMatrix(request: MatrixRequest): Promise<MatrixCells | null>;
  predictCell(request: CellRequest): Promise<CellDetail | null>;
  /** The records that mattered most for a cell, first the one that taught most; empty where none did. */
  teachers(request: TeachersRequest): Promise<readonly Teacher[] | null>;
  /** Learns from the record book; later predictions with keys follow it. Ask for them anew once it has answered. */
  learn(inputs: EvidenceInputs): Promise<Lessons | null>;
  readonly book: RecordBookEngine;
  dispose(): void;
}

/** What the record book asks; every question is answered, in the order asked. */
export interface RecordBookEngine {
  /** A record against what all other prints lead to expect; of a print's other readings none counts as another. */
  finding(request: RecordRequest): Promise<RecordFinding>;
  /** Unknown by unknown, what the records taught; empty where none teaches. */
  learned(): Promise<readonly LearnedUnknown[]>;
  /** The prior's scales as the shop's records would have them; null where these are too few. */
  scales(): Promise<ScaleEstimate | null>;
  /** A colour-measurement file under what was answered about it so far. */
  readings(request: ReadingsRequest): Promise<ReadingsAnswer>;
}
