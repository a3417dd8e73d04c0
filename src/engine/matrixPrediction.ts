/** The work behind a request: rows and columns prepared once, every cell predicted and coloured for the screen. */
import { deltaE00 } from "../core/colorimetry/ciede2000.ts";
import { deltaEab } from "../core/colorimetry/difference.ts";
import { greyScaleGrade } from "../core/colorimetry/greyScale.ts";
import { screenColourFromReflectance } from "../core/colorimetry/screenColour.ts";
import type { Viewing } from "../core/colorimetry/viewing.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import { predictionWarnings } from "../core/prediction/cautions.ts";
import { predictPrepared } from "../core/prediction/predictPrint.ts";
import { printableInk } from "../core/prediction/printableInk.ts";
import { printedColour, type Workspace, workspaceFor } from "../core/prediction/printedColour.ts";
import { pointOnSpread } from "../core/prediction/spreadPath.ts";
import { wettableGarment } from "../core/prediction/wettableGarment.ts";
import type { Spectrum } from "../core/spectrum/spectrum.ts";
import { type ScreenGamut, type ShownColour, shownIn } from "../job/screenColour.ts";
import { beliefOf, type PredictedCell, predictedCell } from "./cellPrediction.ts";
import { CELL_LENGTH, type CellNumbers, packCell } from "./packedCells.ts";
import type { CellDetail, CellRequest, MatrixColumn, MatrixRequest, TintCurvePoint } from "./protocol.ts";

const screenColour = (reflectance: Spectrum, gamut: ScreenGamut): ShownColour =>
  shownIn(screenColourFromReflectance(reflectance), gamut);

function cellNumbers(
  room: Workspace,
  { cloth, ink, belief, spread }: PredictedCell,
  viewing: Viewing,
  bare: ShownColour,
  gamut: ScreenGamut,
): CellNumbers {
  const lab = printedColour(room, cloth, ink.film);
  const printed = screenColour(room.printed, gamut);
  const endAt = (deltaL: number) =>
    screenColour(pointOnSpread(room, cloth, ink, spread.response, deltaL).reflectance, gamut);
  const light = endAt(spread.deltaL95);
  const dark = endAt(spread.deltaL5);
  const warnings = predictionWarnings(cloth, ink, viewing);
  if ([bare, printed, light, dark].some(({ moved }) => moved)) warnings.push("screen-colour-moved");
  return {
    bareHex: bare.hex,
    printedHex: printed.hex,
    lightHex: light.hex,
    darkHex: dark.hex,
    deltaL: lab.L - cloth.bareLab.L,
    deltaL5: spread.deltaL5,
    deltaL50: spread.deltaL50,
    deltaL95: spread.deltaL95,
    chanceInBand: spread.chanceInBand,
    deltaE00: deltaE00(cloth.bareLab, lab),
    greyScaleGrade: greyScaleGrade(deltaEab(cloth.bareLab, lab)),
    evidence: belief?.evidence ?? "model only",
    warnings,
  };
}

/**
 * Every cell of the request, row by row, packed as packedCells.ts says; by `posterior` where test prints were learned from.
 * @throws RangeError as `predictPrint`.
 */
export function predictPackedMatrix(
  request: MatrixRequest,
  posterior: Posterior | null = null,
): Float64Array {
  const { rows, columns, viewing, gamut = "srgb" } = request;
  const inks = columns.map(({ mix, application }) => printableInk(mix, application));
  const packed = new Float64Array(rows.length * columns.length * CELL_LENGTH);
  rows.forEach((row, r) => {
    const cloth = wettableGarment(row.garment, viewing);
    const room = workspaceFor(cloth);
    const bare = screenColour(row.garment.bare, gamut);
    const band = row.band ?? request.band;
    inks.forEach((ink, c) => {
      const belief = beliefOf(posterior, row, columns[c]!, viewing);
      const cell = predictedCell(room, cloth, ink, band, belief);
      packCell(packed, r * columns.length + c, cellNumbers(room, cell, viewing, bare, gamut));
    });
  });
  return packed;
}

/** How a cell answers to each of the request's tints. */
function tintCurve(request: CellRequest, posterior: Posterior | null): TintCurvePoint[] {
  const { row, column, viewing, tints } = request;
  const cloth = wettableGarment(row.garment, viewing);
  const room = workspaceFor(cloth);
  const band = row.band ?? request.band;
  return tints.map(({ massFraction, mix, itemKeys }) => {
    const { candidateId, application, setUpKey } = column;
    const keys = itemKeys === undefined || setUpKey === undefined ? {} : { itemKeys, setUpKey };
    const tinted: MatrixColumn = { candidateId, application, mix, ...keys };
    const ink = printableInk(mix, column.application);
    const cell = predictedCell(room, cloth, ink, band, beliefOf(posterior, row, tinted, viewing));
    const deltaL = printedColour(room, cell.cloth, cell.ink.film).L - cloth.bareLab.L;
    const { deltaL5, deltaL95 } = cell.spread;
    return { massFraction, deltaL, deltaL5, deltaL95 };
  });
}

/** One cell in full, with its tint curve. @throws RangeError as `predictPrint`. */
export function predictDetail(request: CellRequest, posterior: Posterior | null = null): CellDetail {
  const { row, column, viewing, gamut = "srgb" } = request;
  const ready = wettableGarment(row.garment, viewing);
  const room = workspaceFor(ready);
  const band = row.band ?? request.band;
  const belief = beliefOf(posterior, row, column, viewing);
  const printable = printableInk(column.mix, column.application);
  const { cloth, ink, spread } = predictedCell(room, ready, printable, band, belief);
  const prediction = predictPrepared(room, cloth, ink, viewing, band, spread, belief);
  const colours = [
    prediction.bareReflectance,
    prediction.printedReflectance,
    prediction.spread.p95.reflectance,
    prediction.spread.p5.reflectance,
  ].map((reflectance) => screenColour(reflectance, gamut));
  return {
    prediction,
    bareHex: colours[0]!.hex,
    printedHex: colours[1]!.hex,
    lightHex: colours[2]!.hex,
    darkHex: colours[3]!.hex,
    screenColourMoved: colours.some((colour) => colour.moved),
    tintCurve: tintCurve(request, posterior),
    priorCurve: belief === null ? [] : tintCurve(request, null),
  };
}
