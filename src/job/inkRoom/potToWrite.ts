/** The record of a pot that is about to be weighed, from its batch. */
import type { Documents } from "../documents.ts";
import { requireItem } from "../edits/listEdit.ts";
import type { Pot } from "../potDocument.ts";
import type { InkBatch } from "./inkBatch.ts";
import { sheetLinesToWrite } from "./masters.ts";

/** What the one who weighs says, and the id and time that the planner makes. */
export type PotToWrite = Pick<Pot, "id" | "by" | "at" | "note"> & {
  /** 1 to the batch's pot count. */
  readonly potNumber: number;
  /** Codes of the lots by item id, where others are taken than those proposed; empty text for none. */
  readonly lotCodes?: Readonly<Record<string, string>>;
};

/**
 * The pot as its sheet says it now: later changes of shelf, mix or quantities leave it as it is.
 * @throws RangeError where the batch has no sheet that can be weighed, or for a pot number outside the batch.
 */
export function potToWrite({ job, library }: Documents, batch: InkBatch, record: PotToWrite): Pot {
  const { pots, sheet, scale, restrictions } = batch;
  if (pots === null || scale === null || sheet?.ok !== true) {
    throw new RangeError(`the batch must have a sheet that can be weighed; got none for ${batch.mixName}`);
  }
  const { potNumber, lotCodes = {}, ...given } = record;
  if (!(Number.isInteger(potNumber) && potNumber >= 1 && potNumber <= pots.potCount)) {
    throw new RangeError(`potNumber must be in 1..${pots.potCount}; got ${potNumber}`);
  }
  const { recipe } = requireItem(job.mixes, batch.mixId, "mix");
  const baseLots = batch.lots.flatMap(({ itemId, chosen }) => {
    const code = lotCodes[itemId] ?? chosen?.code ?? "";
    return code === "" ? [] : [{ itemId, code }];
  });
  return {
    ...given,
    jobId: job.id,
    mixId: batch.mixId,
    mixName: batch.mixName,
    recipe: recipe.map((part) => ({ ...part })),
    recipeVersion: batch.recipeVersion,
    potNumber,
    potCount: pots.potCount,
    potLimitGrams: pots.potLimitGrams,
    hazards: restrictions.hazards.value === null ? null : [...restrictions.hazards.value],
    scaleStepGrams: scale.stepGrams,
    batchGrams: pots.gramsPerPot,
    lines: sheetLinesToWrite(sheet.lines, library.shelf),
    baseLots,
    expiresOn: restrictions.expiresOn.amongEntered,
    supersedesId: null,
  };
}
