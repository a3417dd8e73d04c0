/** What is to be printed on a line at a place, ready to be predicted, or what keeps it from that. */
import type { EvidenceGarment } from "../core/evidence/record.ts";
import type { Application, Garment, InkMix } from "../core/prediction/inputs.ts";
import type { Documents } from "./documents.ts";
import { evidenceGarment } from "./evidencePrints.ts";
import { pouredRecipe } from "./inkRoom/pouredRecipe.ts";
import type { Candidate, Line, Place } from "./jobDocument.ts";
import { chosenCandidate, lotOfLine, mixOf, setUpOf } from "./lookup.ts";
import type { Mix } from "./mixDocument.ts";
import {
  applicationFor,
  applicationProblems,
  garmentFor,
  inkMixFor,
  pouredInkFor,
} from "./predictionInputs.ts";
import type { Problem } from "./problem.ts";

export type ChosenPrint =
  | { readonly kind: "none" }
  | { readonly kind: "refused"; readonly candidate: Candidate; readonly problems: readonly Problem[] }
  | {
      readonly kind: "ready";
      readonly candidate: Candidate;
      readonly garment: Garment;
      readonly mix: InkMix;
      readonly application: Application;
      /** What the print shares with others: its lot, inks and set-up by key. */
      readonly keys: Omit<EvidenceGarment, "garment">;
      readonly itemKeys: readonly string[];
      readonly setUpKey: string;
    };

/** The ink that is printed: what is in the pots once they were weighed, above a data sheet's limit too; else the mix as wanted. */
function printedInk(documents: Documents, mix: Mix) {
  const { shelf } = documents.library;
  const poured = pouredRecipe(documents, mix);
  const recipe = poured ?? mix.recipe;
  const ink = poured === null ? inkMixFor(mix, shelf) : pouredInkFor({ ...mix, recipe: [...poured] }, shelf);
  return { ink, recipe };
}

/** The chosen candidate of a line at a place; problems have paths from the garment, the mix or the set-up on. */
export function chosenPrint(documents: Documents, line: Line, place: Place): ChosenPrint {
  const { job, library } = documents;
  const { shelf } = library;
  const candidate = chosenCandidate(job, line.id, place.id);
  if (candidate === null) return { kind: "none" };
  const lot = lotOfLine(documents, line);
  const mix = mixOf(job, candidate.mixId);
  const setUp = setUpOf(shelf, candidate.setUpId);
  const missing = (where: string): Problem[] => [{ code: "missing-reference", where }];
  const garment =
    lot === null ? { ok: false as const, problems: missing("garmentLotId") } : garmentFor(lot, shelf);
  const { ink, recipe } =
    mix === null
      ? { ink: { ok: false as const, problems: missing("mixId") }, recipe: [] }
      : printedInk(documents, mix);
  const setUpProblems: Problem[] =
    setUp === null
      ? [{ code: "set-up-missing", where: "setUpId", detail: candidate.setUpId }]
      : applicationProblems(setUp, shelf);
  if (!garment.ok || !ink.ok || lot === null || mix === null || setUp === null || setUpProblems.length > 0) {
    const problems = [
      ...(garment.ok ? [] : garment.problems),
      ...(ink.ok ? [] : ink.problems),
      ...setUpProblems,
    ];
    return { kind: "refused", candidate, problems };
  }
  const { garment: own, ...keys } = evidenceGarment(lot, garment.garment);
  return {
    kind: "ready",
    candidate,
    garment: own,
    mix: ink.mix,
    application: applicationFor(setUp, place, shelf),
    keys,
    itemKeys: recipe.map(({ itemId }) => itemId),
    setUpKey: setUp.id,
  };
}
