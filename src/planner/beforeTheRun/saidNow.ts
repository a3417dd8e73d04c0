/** What is predicted at the moment of a signature, kept with it: later test prints change what is said, not what was. */
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import type { Documents } from "../../job/documents.ts";
import type { ChecklistEntry } from "../../job/jobDocument.ts";
import { MODEL_VERSION } from "../../job/modelVersion.ts";
import type { RunLine } from "./runLines.ts";

/** What a hold or a withdrawal was written for is no prediction: null, as where nothing is predicted. */
export function saidNow(
  documents: Documents,
  { chosen, line }: Pick<RunLine, "chosen" | "line">,
  action: ChecklistEntry["action"],
): ChecklistEntry["said"] {
  if (chosen.kind !== "predicted" || action === "hold" || action === "withdraw") return null;
  const { deltaL, deltaL5, deltaL95, chanceInBand, evidence } = chosen.cell;
  return {
    deltaL,
    p5: deltaL5,
    p95: deltaL95,
    chanceInBand,
    evidence,
    expectedLoss: lineLoss(documents, line, chanceInBand).expectedLoss,
    modelVersion: MODEL_VERSION,
  };
}
