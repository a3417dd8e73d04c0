/** One cell as it is asked for: garment and ink with what test prints have taught of them, or as the prior has them. */
import type { Viewing } from "../core/colorimetry/viewing.ts";
import { beliefFor } from "../core/evidence/beliefFor.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import type { EvidencePrint } from "../core/evidence/record.ts";
import { believedCell } from "../core/prediction/believedCell.ts";
import type { CellBelief } from "../core/prediction/cellBelief.ts";
import { cellResponse } from "../core/prediction/cellResponse.ts";
import type { TargetBand } from "../core/prediction/inputs.ts";
import type { PrintableInk } from "../core/prediction/printableInk.ts";
import type { Workspace } from "../core/prediction/printedColour.ts";
import { type CellSpread, spreadOf } from "../core/prediction/spread.ts";
import type { WettableGarment } from "../core/prediction/wettableGarment.ts";
import type { MatrixColumn, MatrixRow } from "./protocol.ts";

/** A cell made ready, with its spread. */
export interface PredictedCell {
  readonly cloth: WettableGarment;
  readonly ink: PrintableInk;
  readonly belief: CellBelief | null;
  readonly spread: CellSpread;
}

/** The print of a cell as evidence knows it; null where its keys are not all given. */
export function evidencePrintOf(row: MatrixRow, column: MatrixColumn): EvidencePrint | null {
  const { keys, garment } = row;
  const { itemKeys, setUpKey, mix, application } = column;
  if (keys === undefined || itemKeys === undefined || setUpKey === undefined) return null;
  return {
    garment: { ...keys, garment },
    mix,
    itemKeys,
    application,
    setUpKey,
    depositOfThisPrintWeighed: false,
  };
}

/** What `posterior` believes of a cell; null where nothing was learned or the cell has no keys. */
export function beliefOf(
  posterior: Posterior | null,
  row: MatrixRow,
  column: MatrixColumn,
  viewing: Viewing,
): CellBelief | null {
  const print = posterior === null ? null : evidencePrintOf(row, column);
  return posterior === null || print === null ? null : beliefFor(posterior, print, viewing);
}

/** The cell of `cloth` and `ink`, or of what `belief` makes of them, in `room`. */
export function predictedCell(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  band: TargetBand,
  belief: CellBelief | null,
): PredictedCell {
  if (belief === null) return { cloth, ink, belief, spread: spreadOf(room, cloth, ink, band) };
  const cell = believedCell(cloth, ink.mix, ink.application, belief);
  const response = cellResponse(room, cell.cloth, cell.ink, band.hueLimit, cell.doubt);
  const spread = spreadOf(room, cell.cloth, cell.ink, band, response);
  return { cloth: cell.cloth, ink: cell.ink, belief, spread };
}
