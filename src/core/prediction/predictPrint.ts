/** One garment, one mix, one way of printing it, one light: the printed colour, its spread and what to say about it. */
import { deltaE00 } from "../colorimetry/ciede2000.ts";
import { deltaChroma, deltaEab, deltaHueAb } from "../colorimetry/difference.ts";
import { greyScaleGrade } from "../colorimetry/greyScale.ts";
import type { Viewing } from "../colorimetry/viewing.ts";
import { believedCell } from "./believedCell.ts";
import { predictionReasons, predictionWarnings } from "./cautions.ts";
import type { CellBelief } from "./cellBelief.ts";
import { cellResponse } from "./cellResponse.ts";
import type { Application, Garment, InkMix, TargetBand } from "./inputs.ts";
import type { Prediction } from "./prediction.ts";
import { type PrintableInk, printableInk } from "./printableInk.ts";
import { colourOver, type Workspace, wetCloth, workspaceFor } from "./printedColour.ts";
import { type CellSpread, spreadOf } from "./spread.ts";
import { pointOnSpread } from "./spreadPath.ts";
import { believedSources, spreadSources } from "./spreadSources.ts";
import { type WettableGarment, wettableGarment } from "./wettableGarment.ts";

export interface PredictionRequest {
  readonly garment: Garment;
  readonly mix: InkMix;
  readonly application: Application;
  readonly viewing: Viewing;
  readonly band: TargetBand;
  /** What test prints have taught of this cell; without it the prior. */
  readonly belief?: CellBelief;
}

/**
 * Prediction of one print, everything model.md §5 names; same input, same output, nothing random.
 * @throws RangeError where fibres or mix do not sum to 1, a spectrum has another length, or a value is out of range.
 */
export function predictPrint(request: PredictionRequest): Prediction {
  const { garment, mix, application, viewing, band, belief } = request;
  const cloth = wettableGarment(garment, viewing);
  if (belief === undefined) {
    return predictPrepared(workspaceFor(cloth), cloth, printableInk(mix, application), viewing, band);
  }
  const cell = believedCell(cloth, mix, application, belief);
  const room = workspaceFor(cell.cloth);
  const response = cellResponse(room, cell.cloth, cell.ink, band.hueLimit, cell.doubt);
  const spread = spreadOf(room, cell.cloth, cell.ink, band, response);
  return predictPrepared(room, cell.cloth, cell.ink, viewing, band, spread, belief);
}

/** `predictPrint` out of parts prepared once for a row and a column. */
export function predictPrepared(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  viewing: Viewing,
  band: TargetBand,
  spread: CellSpread = spreadOf(room, cloth, ink, band),
  belief: CellBelief | null = null,
): Prediction {
  wetCloth(room, cloth, ink.film);
  const clear = colourOver(room, cloth, ink.clearFilm);
  const printed = colourOver(room, cloth, ink.film);
  const bare = cloth.bareLab;
  const deltaL = printed.L - bare.L;
  const difference = deltaEab(bare, printed);
  const printedReflectance = room.printed.slice();
  const pointAt = (value: number) => pointOnSpread(room, cloth, ink, spread.response, value);
  return {
    bare,
    printed,
    bareReflectance: cloth.garment.bare,
    printedReflectance,
    deltaL,
    deltaE00: deltaE00(bare, printed),
    deltaEab: difference,
    deltaChroma: deltaChroma(bare, printed),
    deltaHue: deltaHueAb(bare, printed),
    greyScaleGrade: greyScaleGrade(difference),
    spread: {
      p5: pointAt(spread.deltaL5),
      p50: pointAt(spread.deltaL50),
      p95: pointAt(spread.deltaL95),
      chanceInBand: spread.chanceInBand,
      sources: belief === null ? spreadSources(ink, spread.response) : believedSources(belief, spread),
    },
    evidence: belief?.evidence ?? "model only",
    warnings: predictionWarnings(cloth, ink, viewing),
    reasons: predictionReasons(cloth, ink, deltaL, clear.L - bare.L),
  };
}
