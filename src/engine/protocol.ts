/** What the planner asks of the prediction worker and what it gets back. */
import type { Viewing } from "../core/colorimetry/viewing.ts";
import type { Application, Garment, InkMix, TargetBand } from "../core/prediction/inputs.ts";
import type { EvidenceLevel, PredictionWarning } from "../core/prediction/prediction.ts";

export interface MatrixRow {
  readonly lineId: string;
  readonly garment: Garment;
}

export interface MatrixColumn {
  readonly candidateId: string;
  readonly mix: InkMix;
  readonly application: Application;
}

export interface MatrixRequest {
  /** Rises with every request; a reply with an older revision is dropped. */
  readonly revision: number;
  readonly rows: readonly MatrixRow[];
  readonly columns: readonly MatrixColumn[];
  readonly viewing: Viewing;
  readonly band: TargetBand;
}

/** One cell as the matrix shows it. Colours are sRGB hex for the screen, mapped into gamut where needed. */
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

export interface MatrixReply {
  readonly revision: number;
  readonly cells: ReadonlyMap<string, MatrixCell>;
}

/** The key of a cell in a reply. */
export function cellKey(lineId: string, candidateId: string): string {
  return `${lineId} ${candidateId}`;
}
