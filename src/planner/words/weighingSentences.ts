/** Weighing in words: what a step of the scale makes of a print, what to add, why a pot cannot be corrected. */
import type { WeighingError } from "../../core/planning/ink/tintError.ts";
import type { Correction } from "../../core/planning/ink/weighCorrection.ts";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { amountWords, onScaleWords, scaleWords } from "./inkFigures.ts";
import { changeWords } from "./predictionSentences.ts";

/** Below this a step of the scale cannot be seen or read. Invented: a tenth of what an instrument repeats to. */
const UNSEEN_DELTA_L = 0.01;

const size = (deltaL: number) => (Math.abs(deltaL) < UNSEEN_DELTA_L ? "under 0.01" : deltaL.toFixed(2));

/** "One step of this scale (0.1 g) = 0.30 ΔL* on Ring-spun tee, Navy." */
export function stepSentence(
  error: WeighingError,
  stepGrams: number,
  garment: string,
  units: UnitChoice,
): string {
  return `One step of this scale (${onScaleWords(stepGrams, stepGrams, units)}) = ${size(error.oneStepDeltaL)} ΔL* on ${garment}.`;
}

/** What rounding to the scale alone does to the same print. */
export function roundingSentence({ roundingDeltaL }: WeighingError): string {
  const off = Math.abs(roundingDeltaL);
  if (off < UNSEEN_DELTA_L) return "Rounding every line to the scale changes it by less than 0.01 ΔL*.";
  return `Rounding every line to the scale makes it ${off.toFixed(2)} ΔL* ${roundingDeltaL < 0 ? "darker" : "lighter"}.`;
}

/** "0.30 ΔL*" of one line's step. */
export function lineStepWords(deltaL: number): string {
  return `${size(Math.abs(deltaL))} ΔL*`;
}

/** What was poured makes of a print, beside what was wanted. */
export function pouredSentence(error: WeighingError, garment: string): string {
  return `As poured, ${garment} comes out ${changeWords(error.weighedDeltaL)}; as wanted, ${changeWords(error.wantedDeltaL)}.`;
}

/** Why there is no correction within the pot, and what can be done. */
export function tooBigSentences(
  figures: Extract<Correction, { ok: false }>["figures"],
  stepGrams: number,
  units: UnitChoice,
): readonly string[] {
  return [
    `The correction would make ${amountWords(figures.potGrams, units)}, and this pot takes no more than ${amountWords(figures.potLimitGrams, units)}: it is refused.`,
    `Take ${scaleWords(figures.takeOutGrams, stepGrams, units)} of the mixed ink out and keep ${scaleWords(figures.keepGrams, stepGrams, units)}; what is left can then be corrected within the pot. Or go on in a larger pot with a sheet of its own.`,
  ];
}
