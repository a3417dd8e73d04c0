/** How it stands with a record that looks wrong: what was answered, and what happens until somebody does. */
import type { SlipAnswer } from "../../job/recordDocument.ts";
import { timeWords } from "./checklistSentences.ts";

const ANSWERS: Readonly<Record<SlipAnswer["answer"], string>> = {
  keep: "Kept",
  "set-aside": "Set aside",
  corrected: "Corrected",
};

/** "Kept by M. Ruiz, 3 Feb 2026, 14:10: it teaches like any other." */
export function answerSentence({ answer, by, at }: SlipAnswer): string {
  const what = answer === "keep" ? "it teaches like any other" : "it teaches nothing";
  return `${ANSWERS[answer]} by ${by === "" ? "somebody" : by}, ${timeWords(at)}: ${what}.`;
}

/** What happens until someone answers. */
export function setAsideSentence(isSetAside: boolean): string {
  return isSetAside
    ? "Nobody has answered yet. Until then it is set aside: it teaches nothing, and is still here."
    : "Nobody has answered yet. It teaches, with less weight than others.";
}
