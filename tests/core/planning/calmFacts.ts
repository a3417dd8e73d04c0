/** Facts of a line of which nothing but the usual is asked, and what a change of them does to its checklist. */
import type { ChecklistFacts, ChecklistPrediction } from "../../../src/core/planning/checklistFacts.ts";
import type { ChecklistItemCode, ChecklistReasonCode } from "../../../src/core/planning/checklistItem.ts";
import { runChecklist } from "../../../src/core/planning/runChecklist.ts";

export const sure: ChecklistPrediction = {
  deltaL: -4,
  deltaL5: -5,
  deltaL95: -3,
  chanceInBand: 0.95,
  warnings: [],
};

/** A tested, approved, solid 50/50 in a tinted mix that is expected in band: nothing but what is always asked. */
export const calm: ChecklistFacts = {
  fibres: [
    { fibre: "cotton", massFraction: 0.5, dyed: true },
    { fibre: "polyester", massFraction: 0.5, dyed: true },
  ],
  finish: "none",
  heather: false,
  bleeds: false,
  bareL: 40,
  pieceCount: 1000,
  testAboveCount: 144,
  substituted: false,
  approvedLot: "this",
  goodsInRatio: null,
  forChildren: false,
  prints: { any: true, withThisBase: true, ofThisRecipe: true },
  choice: "made",
  mix: { kind: "tinted", lowCure: "none", enteredCuresCelsius: [160, 160], curesMissingCount: 0 },
  band: { deltaL: -4, tolerance: 1.5 },
  prediction: sure,
};
export const mix = calm.mix!;
export const clear = { ...mix, kind: "clear" as const };
export const untested = { any: false, withThisBase: false, ofThisRecipe: false };
export const cotton = [{ fibre: "cotton" as const, massFraction: 1, dyed: true }];

export function reasonsOf(change: Partial<ChecklistFacts>, code: ChecklistItemCode): ChecklistReasonCode[] {
  const found = runChecklist({ ...calm, ...change }).find((item) => item.code === code);
  return found === undefined ? [] : found.reasons.map((reason) => reason.code);
}

export function blocks(change: Partial<ChecklistFacts>, code: ChecklistItemCode): boolean | undefined {
  return runChecklist({ ...calm, ...change }).find((item) => item.code === code)?.blocking;
}

export function figuresOf(change: Partial<ChecklistFacts>, wanted: ChecklistReasonCode) {
  const reasons = runChecklist({ ...calm, ...change }).flatMap((item) => item.reasons);
  return reasons.find((reason) => reason.code === wanted)?.figures;
}
