/** When a typed blend is complete, and the sentence that names what is missing. */
import { BLEND_SUM_TOLERANCE, type BlendPart } from "../../job/garmentLotDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import type { DraftBlendPart } from "./drafts.tsx";

/** The blend as it can be stored; null while something is missing. */
export function completeBlend(parts: readonly DraftBlendPart[]): BlendPart[] | null {
  const complete: BlendPart[] = [];
  for (const part of parts) {
    if (part.massFraction === null) return null;
    complete.push({ fibre: part.fibre, massFraction: part.massFraction, dyed: part.dyed });
  }
  return Math.abs(missingFraction(parts)) <= BLEND_SUM_TOLERANCE && complete.length > 0 ? complete : null;
}

/** What the parts lack to 1; negative where they are too much. */
export function missingFraction(parts: readonly DraftBlendPart[]): number {
  return Number((1 - parts.reduce((sum, part) => sum + (part.massFraction ?? 0), 0)).toFixed(9));
}

/** Null where nothing is missing. */
export function blendSentence(parts: readonly DraftBlendPart[]): string | null {
  if (parts.length === 0) return "100 % is missing: no fibre is entered.";
  const missing = missingFraction(parts);
  const unnamed = parts.filter((part) => part.massFraction === null).map(({ fibre }) => fibre);
  const listed = parts
    .filter((part) => part.massFraction !== null)
    .map(({ fibre, massFraction }) => `${fibre} ${percentWords(massFraction ?? 0)}`)
    .join(", ");
  if (missing > BLEND_SUM_TOLERANCE) {
    if (unnamed.length > 0)
      return `${percentWords(missing)} is missing: type the part of ${unnamed.join(" and ")}.`;
    if (parts.length === 1) return `${percentWords(missing)} is missing: only ${listed} is entered.`;
    return `${percentWords(missing)} is missing: ${listed} sum to ${percentWords(1 - missing)}.`;
  }
  if (missing < -BLEND_SUM_TOLERANCE) {
    return `${percentWords(-missing)} too much: ${listed} sum to ${percentWords(1 - missing)}.`;
  }
  if (unnamed.length > 0) return `Nothing is left for ${unnamed.join(" and ")}: type its part or remove it.`;
  return null;
}
