/**
 * The weigh sheet of one pot: what to weigh in which order, in grams that the scale can show, and the recipe that
 * comes of it. Base first, then additives and reducers, then tint, each line rounded to the nearest step by itself, so
 * that no line is off by more than half a step; what the planner then predicts with is the recipe of the rounded grams.
 */
import { FEWEST_STEP_COUNT, hasFiftySteps } from "./colourantForm.ts";
import { type DraftLine, type DraftNoticeCode, type DraftRequest, draftPot } from "./potDraft.ts";
import { type ItemFraction, recipeOfPot, requireRecipe } from "./potRecipe.ts";
import type { Remark } from "./remark.ts";
import { gramsOfSteps, nearestStepCount } from "./scaleStep.ts";

export type WeighSheetRequest = DraftRequest;

export interface WeighSheetLine extends DraftLine {
  /** `exactGrams` rounded to the scale's step, and how many steps that is. */
  readonly grams: number;
  readonly stepCount: number;
  /** One step of the scale over the grams weighed: how well the line is known. */
  readonly scaleErrorFraction: number;
}

export type WeighSheetNoticeCode =
  | DraftNoticeCode
  /** Under 50 steps even so. figures: stepCount, fewestStepCount, leastBatchGrams. */
  | "under-fifty-steps";

export type WeighSheetProblemCode =
  /** Less than half a step of the scale. figures: exactGrams, scaleStepGrams, leastBatchGrams. */
  | "rounds-to-nothing"
  /** The master asked for is not at hand, or there is too little base to make room for it. figures: colourantGrams. */
  | "chosen-form-impossible";

export interface WrittenWeighSheet {
  readonly ok: true;
  /** In weighing order. */
  readonly lines: readonly WeighSheetLine[];
  readonly batchGrams: number;
  readonly scaleStepGrams: number;
  /** Sum of the rounded lines. */
  readonly totalGrams: number;
  /** Recipe of the rounded grams, masters taken apart; sums to 1. */
  readonly trueRecipe: readonly ItemFraction[];
  readonly notices: readonly Remark<WeighSheetNoticeCode>[];
}

export interface RefusedWeighSheet {
  readonly ok: false;
  readonly problems: readonly Remark<WeighSheetProblemCode>[];
  /** What the draft has to say, such as that a master would help. */
  readonly notices: readonly Remark<WeighSheetNoticeCode>[];
}

export type WeighSheet = WrittenWeighSheet | RefusedWeighSheet;

/** Base first, tint into it (common practice, no source); a master takes its colourant's place. */
const WEIGHING_PLACE: Readonly<Record<DraftLine["role"], number>> = {
  base: 0,
  additive: 1,
  reducer: 2,
  colourant: 3,
  master: 3,
};

/**
 * The weigh sheet for `batchGrams` of a recipe. A master's own base is taken off the same base of the recipe, or off
 * the largest one where the recipe does not name it, and is counted in `trueRecipe`. Refuses rather than round a
 * component to 0 g.
 * @throws RangeError for a recipe that does not sum to 1 or names an item twice, a master that is no dilution, or a
 * batch or step not above 0.
 */
export function writeWeighSheet(request: WeighSheetRequest): WeighSheet {
  const { batchGrams, scaleStepGrams } = request;
  requireRecipe(request.recipe);
  if (!(batchGrams > 0 && batchGrams < Infinity)) {
    throw new RangeError(`batchGrams must be above 0 and finite; got ${batchGrams}`);
  }
  const draft = draftPot(request);
  const lines = draft.lines.map((line) => roundedLine(line, scaleStepGrams));
  lines.sort((one, other) => WEIGHING_PLACE[one.role] - WEIGHING_PLACE[other.role]);
  const notices: Remark<WeighSheetNoticeCode>[] = [...draft.notices];
  const problems: Remark<WeighSheetProblemCode>[] = draft.impossible.map(({ itemId, colourantGrams }) => ({
    code: "chosen-form-impossible",
    itemId,
    figures: { colourantGrams },
  }));
  for (const { contents, exactGrams, stepCount } of lines) {
    if (hasFiftySteps(exactGrams, scaleStepGrams)) continue;
    const { itemId } = contents[0]!;
    const leastBatchGrams = (batchGrams * FEWEST_STEP_COUNT * scaleStepGrams) / exactGrams;
    if (stepCount === 0) {
      const figures = { exactGrams, scaleStepGrams, leastBatchGrams };
      problems.push({ code: "rounds-to-nothing", itemId, figures });
    } else {
      const figures = { stepCount, fewestStepCount: FEWEST_STEP_COUNT, leastBatchGrams };
      notices.push({ code: "under-fifty-steps", itemId, figures });
    }
  }
  if (problems.length > 0) return { ok: false, problems, notices };
  const stepCount = lines.reduce((total, line) => total + line.stepCount, 0);
  return {
    ok: true,
    lines,
    batchGrams,
    scaleStepGrams,
    totalGrams: gramsOfSteps(stepCount, scaleStepGrams),
    trueRecipe: recipeOfPot(lines),
    notices,
  };
}

function roundedLine(draft: DraftLine, scaleStepGrams: number): WeighSheetLine {
  const stepCount = nearestStepCount(draft.exactGrams, scaleStepGrams);
  const grams = gramsOfSteps(stepCount, scaleStepGrams);
  return { ...draft, grams, stepCount, scaleErrorFraction: 1 / stepCount };
}
