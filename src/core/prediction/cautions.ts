/** What a prediction has to say beside its numbers: warnings where the model is weak, reasons for what it found. */
import type { Viewing } from "../colorimetry/viewing.ts";
import type { InkMix } from "./inputs.ts";
import type { PredictionReason, PredictionWarning } from "./prediction.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** The deposits the model was made for, um. Common practice, no source: one thin stroke to a heavy one. */
const SMALLEST_DEPOSIT_UM = 3;
const LARGEST_DEPOSIT_UM = 80;
/** Up to this much white a film does not cover but veils (common practice, no source). */
const VEILING_WHITE_FRACTION = 0.3;
/** Below this L* a garment has little left to lose; above the other a white has no dye to deepen. Invented defaults. */
const LITTLE_ROOM_L = 18;
const NO_COLOUR_L = 92;
/** A change of L* this small is "nothing to see", and one this large is plain. Invented defaults. */
const SMALL_DELTA_L = 1;
const PLAIN_DELTA_L = 2;
/** Part of the change a tint must make to be named as what does the work. Invented default. */
const TINT_SHARE = 0.5;

function whiteFraction(mix: InkMix): number {
  return mix.parts.reduce(
    (sum, part) => sum + (part.kind === "colourant" && part.family === "white" ? part.massFraction : 0),
    0,
  );
}

/** Warnings of one cell under `viewing`, in the order in which they matter; the screen's own are added by whoever shows it. */
export function predictionWarnings(
  cloth: WettableGarment,
  ink: PrintableInk,
  viewing: Viewing,
): PredictionWarning[] {
  const { bareSource, readUnder } = cloth.garment;
  const { depositUm } = ink.application;
  const white = whiteFraction(ink.mix);
  const found: PredictionWarning[] = [];
  if (cloth.isDark) found.push("dark-limit");
  if (cloth.isBrightened) found.push("brightener");
  if (depositUm < SMALLEST_DEPOSIT_UM || depositUm > LARGEST_DEPOSIT_UM) found.push("deposit-outside-range");
  if (cloth.fellBackToSolid) found.push("heather-as-solid");
  if (white > 0 && white < VEILING_WHITE_FRACTION) found.push("milky-haze");
  if (bareSource === "approximate") found.push("bare-approximate");
  if (bareSource !== "measured" && readUnder !== null && readUnder.illuminant !== viewing.illuminant) {
    found.push("light-indicative");
  }
  return found;
}

/** Why the cell answers as it does. `clearDeltaL` is the change that the mix without its colourants would make. */
export function predictionReasons(
  cloth: WettableGarment,
  ink: PrintableInk,
  deltaL: number,
  clearDeltaL: number,
): PredictionReason[] {
  const { fibres } = cloth.garment;
  const isPolyester = (fibre: string): boolean => fibre.startsWith("polyester");
  const polyester = fibres.reduce((sum, part) => sum + (isPolyester(part.fibre) ? part.massFraction : 0), 0);
  const dyedPolyester = fibres.some(
    (part, i) => isPolyester(part.fibre) && cloth.dyed[i] && part.massFraction > 0,
  );
  const isHeather = cloth.dyed.some((dyed) => !dyed);
  const found: PredictionReason[] = [];
  if (whiteFraction(ink.mix) > 0 && deltaL > 0) found.push("white-ink-lightens");
  if (cloth.bareLab.L >= NO_COLOUR_L && clearDeltaL > -SMALL_DELTA_L) found.push("no-colour-to-deepen");
  else if (polyester === 0) found.push("cotton-hardly-wets");
  else if (isHeather && !dyedPolyester) found.push("undyed-fibre-carries-the-wetting");
  else if (clearDeltaL <= -PLAIN_DELTA_L) found.push("polyester-deepens");
  if (cloth.bareLab.L < LITTLE_ROOM_L) found.push("little-room-to-darken");
  if (ink.hasTint && deltaL < 0 && deltaL - clearDeltaL <= TINT_SHARE * deltaL)
    found.push("tint-does-the-work");
  return found;
}
