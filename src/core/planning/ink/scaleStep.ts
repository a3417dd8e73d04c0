/** Grams as a scale shows them: whole numbers of its step. */

/** Room for the last digits of a division, in steps. */
const STEP_SLACK = 1e-9;

/** The nearest whole number of steps to `grams` (halves up). @throws RangeError for a step not above 0. */
export function nearestStepCount(grams: number, scaleStepGrams: number): number {
  requireStep(scaleStepGrams);
  return Math.round(grams / scaleStepGrams);
}

/** Whole steps in `grams`, rounded down; a hair below a whole step counts as that step. @throws RangeError as above. */
export function wholeStepCount(grams: number, scaleStepGrams: number): number {
  requireStep(scaleStepGrams);
  return Math.floor(grams / scaleStepGrams + STEP_SLACK);
}

/** Steps needed to hold `grams`, rounded up; a hair above a whole step counts as that step. @throws RangeError as above. */
export function coveringStepCount(grams: number, scaleStepGrams: number): number {
  requireStep(scaleStepGrams);
  return Math.ceil(grams / scaleStepGrams - STEP_SLACK);
}

/** Grams of a whole number of steps; 3 steps of 0.1 g are 0.3 g, not 0.30000000000000004 g. @throws RangeError as above. */
export function gramsOfSteps(stepCount: number, scaleStepGrams: number): number {
  requireStep(scaleStepGrams);
  const stepsPerGram = Math.round(1 / scaleStepGrams);
  const isPartOfGram = Math.abs(stepsPerGram * scaleStepGrams - 1) < STEP_SLACK;
  return isPartOfGram ? stepCount / stepsPerGram : stepCount * scaleStepGrams;
}

function requireStep(scaleStepGrams: number): void {
  if (!(scaleStepGrams > 0 && scaleStepGrams < Infinity)) {
    throw new RangeError(`scaleStepGrams must be above 0 and finite; got ${scaleStepGrams}`);
  }
}
