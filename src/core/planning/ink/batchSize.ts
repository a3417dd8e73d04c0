/** How much of a mix to make for all garments that use it, in how many pots, and what will be left over. */

/** Ink that stays behind on spatulas, blades and in pots: the batch is this much larger. From memory, no source. */
export const BATCH_FACTOR = 1.1;

/** What keeps one screen wet, grams; 300 to 500 is the usual range. From memory, no source. */
export const SCREEN_WET_GRAMS = 400;
export const SCREEN_WET_GRAMS_RANGE = { fewest: 300, most: 500 } as const;

/** One use of a mix: some garments printed at one place through one set-up. */
export interface BatchUse {
  readonly printCount: number;
  /** Part of the prints that is spoiled and printed again, >= 0. */
  readonly spoilageFraction: number;
  /** Ink one print is mixed for, grams: at transfer 1.0 until the set-up was weighed. */
  readonly mixedGramsPerPrint: number;
  /** Ink one print is expected to take, grams. */
  readonly expectedGramsPerPrint: number;
}

export interface BatchSize {
  /** Prints x (1 + spoilage) over all uses. */
  readonly printCount: number;
  /** For the prints, the share that stays behind, and the screens: they sum to `batchGrams`. */
  readonly printGrams: number;
  readonly handlingGrams: number;
  readonly screenGrams: number;
  readonly batchGrams: number;
  /** Batch less what the prints are expected to take; what clings to screens and pots is part of it. */
  readonly leftOverGrams: number;
}

/**
 * Batch of one mix: sum of prints x (1 + spoilage) x grams x 1.1, plus what keeps `screenCount` screens wet (model.md
 * §8; the factor and the screen's share are from memory, no source). No prints need no ink: 0 throughout.
 * @param screenCount screens that the mix is on, one for each place and set-up.
 * @throws RangeError for a negative figure or a screen count that is no whole number.
 */
export function batchSize(
  uses: readonly BatchUse[],
  screenCount: number,
  screenWetGrams: number = SCREEN_WET_GRAMS,
): BatchSize {
  if (!Number.isInteger(screenCount)) {
    throw new RangeError(`screenCount must be a whole number; got ${screenCount}`);
  }
  requireNotNegative("screenCount", screenCount);
  requireNotNegative("screenWetGrams", screenWetGrams);
  let printCount = 0;
  let printGrams = 0;
  let expectedGrams = 0;
  for (const use of uses) {
    for (const [name, value] of Object.entries(use)) requireNotNegative(name, value);
    const prints = use.printCount * (1 + use.spoilageFraction);
    printCount += prints;
    printGrams += prints * use.mixedGramsPerPrint;
    expectedGrams += prints * use.expectedGramsPerPrint;
  }
  const handlingGrams = printGrams * (BATCH_FACTOR - 1);
  const screenGrams = printCount === 0 ? 0 : screenCount * screenWetGrams;
  const batchGrams = printGrams + handlingGrams + screenGrams;
  const leftOverGrams = batchGrams - expectedGrams;
  return { printCount, printGrams, handlingGrams, screenGrams, batchGrams, leftOverGrams };
}

function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
}
