/**
 * From the grams that really went into a pot to what is in it, and the least to add so that it is the recipe again.
 *
 * The pot is brought to the smallest total in which nothing is too much: T = max poured / wanted share. For one tint in
 * one base that is the shop's rule "extra base = tint / target - total" (common practice, no source) when too much tint
 * went in, and tint to add when too much base did. What is added is of the lines on the sheet (a tint weighed as a
 * master is corrected with that master). The total is taken up to the next whole step and shared out in whole steps by
 * largest remainder, so that no line misses its share by a step or more.
 */
import { type ItemFraction, recipeOfPot } from "./potRecipe.ts";
import { coveringStepCount, gramsOfSteps, wholeStepCount } from "./scaleStep.ts";
import type { WeighSheetLine, WrittenWeighSheet } from "./weighSheet.ts";

/** Actual grams of a line of the sheet; 0 for one not weighed yet. */
export interface PouredLine {
  readonly id: string;
  readonly grams: number;
}

/** What is in a pot, line by line and by recipe. */
export interface PotState {
  readonly totalGrams: number;
  readonly lines: readonly {
    readonly id: string;
    readonly grams: number;
    /** The line's share of this total by the recipe. */
    readonly wantedGrams: number;
  }[];
  /** Mass fractions of the shelf items, masters taken apart. */
  readonly recipe: readonly ItemFraction[];
}

export interface Addition {
  readonly id: string;
  readonly grams: number;
  readonly stepCount: number;
}

export type CorrectionProblemCode = "pot-too-big";

export type Correction =
  | {
      readonly ok: true;
      readonly before: PotState;
      /**
       * In weighing order. Empty where every line but the largest is within a step of its share already; the largest
       * then misses no more than the others together, which is the least of it.
       */
      readonly additions: readonly Addition[];
      readonly after: PotState;
    }
  | {
      readonly ok: false;
      readonly before: PotState;
      readonly code: CorrectionProblemCode;
      readonly figures: {
        /** The pot as it would be corrected, and the most it may hold. */
        readonly potGrams: number;
        readonly potLimitGrams: number;
        /** How much of the mixed pot to keep so that its correction would just fill the limit, and what to take out. */
        readonly keepGrams: number;
        readonly takeOutGrams: number;
      };
    };

/** A step, and room for the last digits. */
const WITHIN_A_STEP = 1 + 1e-9;

/**
 * What was poured, and its correction in steps of the sheet's scale, or why there is none within `potLimitGrams`.
 * @throws RangeError where `poured` is not one entry for each line of the sheet, for grams out of range, for a pot
 * that holds nothing, or a limit not above 0.
 */
export function correctWeighing(
  sheet: WrittenWeighSheet,
  poured: readonly PouredLine[],
  potLimitGrams: number,
): Correction {
  if (!(potLimitGrams > 0)) throw new RangeError(`potLimitGrams must be above 0; got ${potLimitGrams}`);
  const { scaleStepGrams } = sheet;
  const grams = pouredGrams(sheet, poured);
  const sheetGrams = sheet.lines.reduce((sum, line) => sum + line.exactGrams, 0);
  const shares = sheet.lines.map((line) => line.exactGrams / sheetGrams);
  const before = potState(sheet.lines, shares, grams);
  const largest = shares.indexOf(Math.max(...shares));
  const isRight = before.lines.every(
    (line, i) => i === largest || Math.abs(line.grams - line.wantedGrams) <= scaleStepGrams * WITHIN_A_STEP,
  );
  const exactTotal = Math.max(...grams.map((poured, i) => poured / shares[i]!));
  const addedStepCount = isRight ? 0 : coveringStepCount(exactTotal - before.totalGrams, scaleStepGrams);
  const potGrams = before.totalGrams + gramsOfSteps(addedStepCount, scaleStepGrams);
  if (potGrams > potLimitGrams) {
    const keepGrams = (before.totalGrams * potLimitGrams) / potGrams;
    const takeOutGrams = before.totalGrams - keepGrams;
    const figures = { potGrams, potLimitGrams, keepGrams, takeOutGrams };
    return { ok: false, before, code: "pot-too-big", figures };
  }
  const counts = shareOut(
    addedStepCount,
    shares.map((share, i) => Math.max(0, share * potGrams - grams[i]!) / scaleStepGrams),
  );
  const additions = sheet.lines
    .map(({ id }, i) => ({ id, grams: gramsOfSteps(counts[i]!, scaleStepGrams), stepCount: counts[i]! }))
    .filter((addition) => addition.stepCount > 0);
  const corrected = grams.map((poured, i) => poured + gramsOfSteps(counts[i]!, scaleStepGrams));
  return { ok: true, before, additions, after: potState(sheet.lines, shares, corrected) };
}

/** What is in the pot when the lines were poured as given. @throws RangeError as `correctWeighing`. */
export function pouredPot(sheet: WrittenWeighSheet, poured: readonly PouredLine[]): PotState {
  const sheetGrams = sheet.lines.reduce((sum, line) => sum + line.exactGrams, 0);
  const shares = sheet.lines.map((line) => line.exactGrams / sheetGrams);
  return potState(sheet.lines, shares, pouredGrams(sheet, poured));
}

function pouredGrams(sheet: WrittenWeighSheet, poured: readonly PouredLine[]): number[] {
  const byId = new Map(poured.map((line) => [line.id, line.grams]));
  if (byId.size !== sheet.lines.length || poured.length !== sheet.lines.length) {
    throw new RangeError(`poured must have one entry for each of ${sheet.lines.length} lines`);
  }
  return sheet.lines.map(({ id }) => {
    const grams = byId.get(id);
    if (grams === undefined) throw new RangeError(`poured must have the line ${id}`);
    return grams;
  });
}

function potState(
  lines: readonly WeighSheetLine[],
  shares: readonly number[],
  grams: readonly number[],
): PotState {
  const recipe = recipeOfPot(lines.map(({ contents }, i) => ({ grams: grams[i]!, contents })));
  const totalGrams = grams.reduce((sum, value) => sum + value, 0);
  return {
    totalGrams,
    lines: lines.map(({ id }, i) => ({ id, grams: grams[i]!, wantedGrams: shares[i]! * totalGrams })),
    recipe,
  };
}

/** `total` whole steps in proportion to `exact` steps that sum to it, by largest remainder. */
function shareOut(total: number, exact: readonly number[]): number[] {
  const counts = exact.map((steps) => (total === 0 ? 0 : wholeStepCount(steps, 1)));
  const left = total - counts.reduce((sum, count) => sum + count, 0);
  const byRemainder = exact
    .map((steps, i) => ({ i, remainder: steps - counts[i]! }))
    .sort((one, other) => other.remainder - one.remainder);
  for (const { i } of byRemainder.slice(0, Math.max(0, left))) counts[i]! += 1;
  return counts;
}
