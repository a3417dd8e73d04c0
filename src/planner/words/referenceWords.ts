/** An approval as it was given, what the planner said then, and what it knows now: side by side, neither in the other's place. */
import type { Expected } from "../../engine/recordFinding.ts";
import type { Band } from "../../job/jobDocument.ts";
import { MODEL_VERSION } from "../../job/modelVersion.ts";
import type { Approval } from "../../job/recordDocument.ts";
import { timeWords } from "./checklistSentences.ts";
import { bandWords, chanceWords, changeWords, rangeWords } from "./predictionSentences.ts";

export function approvedSentence({ approvedBy, approvedAt, note }: Approval): string {
  const by = `Approved by ${approvedBy}, ${timeWords(approvedAt)}.`;
  return note === "" ? by : `${by} ${note}`;
}

const version = (modelVersion: string) =>
  modelVersion === "" ? "model version not recorded" : `model version ${modelVersion}`;

/** "3.4 darker, 1.1 to 12.1 in nine of ten, 41 % in band; model only, model version 1." */
export function saidThenSentence({ said, modelVersion }: Approval): string {
  if (said === null) return `Nothing was kept of what the planner said (${version(modelVersion)}).`;
  const range = rangeWords({ deltaL: said.deltaL, deltaL5: said.p5, deltaL95: said.p95 });
  return `${changeWords(said.deltaL)}, ${range} in nine of ten, ${chanceWords(said.chanceInBand)} in band; ${said.evidence}, ${version(modelVersion)}.`;
}

export function saidNowSentence(expected: Expected): string {
  const { deltaL, evidence, chanceInBand } = expected;
  return `${changeWords(deltaL)}, ${rangeWords(expected)} in nine of ten, ${chanceWords(chanceInBand)} in band; ${evidence}, ${version(MODEL_VERSION)}.`;
}

/** What the band of the lot follows. */
export function followsSentence(band: Band | null): string {
  return band === null
    ? "This job prints it nowhere, so no target follows it here."
    : `The target of this lot, and of garments that stand in for it, follows it: ${bandWords(band)}.`;
}
