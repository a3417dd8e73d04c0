/** What to expect of one print on one garment, as decisions take it: chances and quantiles, no colours. */
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import { expectationFor } from "../../core/evidence/beliefFor.ts";
import type { Posterior } from "../../core/evidence/posterior.ts";
import { expectedDeltaL } from "../../core/prediction/expectedChange.ts";
import { probabilityBelow } from "../../core/prediction/normalMixture.ts";
import type { EvidenceLevel } from "../../core/prediction/prediction.ts";
import { type PrintableInk, printableInk } from "../../core/prediction/printableInk.ts";
import { type Workspace, workspaceFor } from "../../core/prediction/printedColour.ts";
import { printedLab } from "../../core/prediction/printedLab.ts";
import { type WettableGarment, wettableGarment } from "../../core/prediction/wettableGarment.ts";
import { beliefOf, evidencePrintOf, predictedCell } from "../cellPrediction.ts";
import type { MatrixColumn } from "../protocol.ts";
import type { ReadyLine } from "./placePrints.ts";

export interface Outlook {
  /** 0..1. */
  readonly chanceInBand: number;
  /** Chance of a print darker than the band's dark end, 0..1. */
  readonly chanceBelow: number;
  /** Chance of a print lighter than the band's light end, 0..1. What is left of 1 misses by its hue. */
  readonly chanceAbove: number;
  /** Delta-L*, negative is darker. */
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  readonly evidence: EvidenceLevel;
}

/** A column with its ink prepared, once for all garments. */
export interface PreparedColumn {
  readonly column: MatrixColumn;
  readonly ink: PrintableInk;
}

export function preparedColumn(column: MatrixColumn): PreparedColumn {
  return { column, ink: printableInk(column.mix, column.application) };
}

/** A line with its cloth prepared, once for all prints. */
export interface PreparedLine {
  readonly ready: ReadyLine;
  readonly cloth: WettableGarment;
  readonly room: Workspace;
}

export function preparedLine(ready: ReadyLine, viewing: Viewing): PreparedLine {
  const cloth = wettableGarment(ready.row.garment, viewing);
  return { ready, cloth, room: workspaceFor(cloth) };
}

/** The expected change of L* of a print on a line under `posterior`: where its spread lies, at a small part of the cost. */
export function expectedOf(
  { ready: { row }, cloth, room }: PreparedLine,
  { column, ink }: PreparedColumn,
  viewing: Viewing,
  posterior: Posterior | null,
): number {
  const print = posterior === null ? null : evidencePrintOf(row, column);
  if (posterior === null || print === null) return printedLab(room, cloth, ink.film).L - cloth.bareLab.L;
  const mean = expectationFor(posterior, print, viewing);
  return expectedDeltaL(room, cloth, column.mix, column.application, mean);
}

/** The outlook of a print on a line under `posterior`; the prior where that is null. */
export function outlookOf(
  { ready: { row, band }, cloth, room }: PreparedLine,
  { column, ink }: PreparedColumn,
  viewing: Viewing,
  posterior: Posterior | null,
): Outlook {
  const belief = beliefOf(posterior, row, column, viewing);
  const { spread } = predictedCell(room, cloth, ink, band, belief);
  const { chanceInBand, deltaL5, deltaL50, deltaL95 } = spread;
  // The room still holds the distribution that the spread was read from.
  const { all } = room.spread;
  // Rounding may leave a chance a trace above 1.
  const most = Math.max(0, 1 - chanceInBand);
  const chanceBelow = Math.min(probabilityBelow(all, band.deltaL - band.tolerance), most);
  const above = Math.max(0, 1 - probabilityBelow(all, band.deltaL + band.tolerance));
  return {
    chanceInBand,
    chanceBelow,
    chanceAbove: Math.min(above, Math.max(0, 1 - chanceInBand - chanceBelow)),
    deltaL5,
    deltaL50,
    deltaL95,
    evidence: belief?.evidence ?? "model only",
  };
}
