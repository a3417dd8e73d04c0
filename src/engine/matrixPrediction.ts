/** The work behind a request: rows and columns prepared once, every cell predicted and coloured for the screen. */
import { deltaE00 } from "../core/colorimetry/ciede2000.ts";
import { deltaEab } from "../core/colorimetry/difference.ts";
import { greyScaleGrade } from "../core/colorimetry/greyScale.ts";
import { screenColourFromReflectance } from "../core/colorimetry/screenColour.ts";
import type { Viewing } from "../core/colorimetry/viewing.ts";
import { predictionWarnings } from "../core/prediction/cautions.ts";
import type { TargetBand } from "../core/prediction/inputs.ts";
import { predictPrepared } from "../core/prediction/predictPrint.ts";
import { type PrintableInk, printableInk } from "../core/prediction/printableInk.ts";
import { printedColour, type Workspace, workspaceFor } from "../core/prediction/printedColour.ts";
import { spreadOf } from "../core/prediction/spread.ts";
import { pointOnSpread } from "../core/prediction/spreadPath.ts";
import { type WettableGarment, wettableGarment } from "../core/prediction/wettableGarment.ts";
import type { Spectrum } from "../core/spectrum/spectrum.ts";
import { type ScreenGamut, type ShownColour, shownIn } from "../job/screenColour.ts";
import { CELL_LENGTH, type CellNumbers, packCell } from "./packedCells.ts";
import type { CellDetail, CellRequest, MatrixRequest, TintCurvePoint } from "./protocol.ts";

const screenColour = (reflectance: Spectrum, gamut: ScreenGamut): ShownColour =>
  shownIn(screenColourFromReflectance(reflectance), gamut);

function cellNumbers(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  viewing: Viewing,
  band: TargetBand,
  bare: ShownColour,
  gamut: ScreenGamut,
): CellNumbers {
  const spread = spreadOf(room, cloth, ink, band);
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
    warnings,
  };
}

/** Every cell of the request, row by row, packed as packedCells.ts says. @throws RangeError as `predictPrint`. */
export function predictPackedMatrix(request: MatrixRequest): Float64Array {
  const { rows, columns, viewing, band, gamut = "srgb" } = request;
  const inks = columns.map(({ mix, application }) => printableInk(mix, application));
  const packed = new Float64Array(rows.length * columns.length * CELL_LENGTH);
  rows.forEach((row, r) => {
    const cloth = wettableGarment(row.garment, viewing);
    const room = workspaceFor(cloth);
    const bare = screenColour(row.garment.bare, gamut);
    inks.forEach((ink, c) => {
      packCell(packed, r * columns.length + c, cellNumbers(room, cloth, ink, viewing, band, bare, gamut));
    });
  });
  return packed;
}

/** One cell in full, with its tint curve. @throws RangeError as `predictPrint`. */
export function predictDetail(request: CellRequest): CellDetail {
  const { row, column, viewing, band, tints, gamut = "srgb" } = request;
  const cloth = wettableGarment(row.garment, viewing);
  const room = workspaceFor(cloth);
  const ink = printableInk(column.mix, column.application);
  const prediction = predictPrepared(room, cloth, ink, viewing, band);
  const colours = [
    prediction.bareReflectance,
    prediction.printedReflectance,
    prediction.spread.p95.reflectance,
    prediction.spread.p5.reflectance,
  ].map((reflectance) => screenColour(reflectance, gamut));
  const tintCurve: TintCurvePoint[] = tints.map(({ massFraction, mix }) => {
    const tinted = printableInk(mix, column.application);
    const { deltaL5, deltaL95 } = spreadOf(room, cloth, tinted, band);
    const deltaL = printedColour(room, cloth, tinted.film).L - cloth.bareLab.L;
    return { massFraction, deltaL, deltaL5, deltaL95 };
  });
  return {
    prediction,
    bareHex: colours[0]!.hex,
    printedHex: colours[1]!.hex,
    lightHex: colours[2]!.hex,
    darkHex: colours[3]!.hex,
    screenColourMoved: colours.some((colour) => colour.moved),
    tintCurve,
  };
}
