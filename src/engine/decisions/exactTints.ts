/** For each garment and base the tint that would land it in the middle of its band: mixes besides the shop's ladder. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import {
  candidateOf,
  carryingBases,
  laddered,
  type MixCandidate,
} from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import { recipeWithTint } from "../../job/edits/recipe.ts";
import type { Place } from "../../job/jobDocument.ts";
import type { SetUp } from "../../job/shelfDocument.ts";
import { expectedOf, type PreparedLine, preparedColumn } from "./outlook.ts";
import { readyPrint } from "./placePrints.ts";

/** No tint is weighed finer than one part in ten thousand of the pot. Invented default. */
const STEP = 1e-4;
/** Most that a search for an exact tint goes up to: beyond it a print is a coloured ink. Invented default. */
const LARGEST = 0.05;
/** Halvings of that range: 0.05 / 2^9 is as fine as the step. */
const BISECTIONS = 9;

/** Through the first of `setUps`, each tint of the place on each base; one that no amount brings there is left out. */
export function exactTints(
  documents: Documents,
  place: Place,
  lines: readonly PreparedLine[],
  setUps: readonly SetUp[],
  posterior: Posterior | null,
): MixCandidate[] {
  const { shelf } = documents.library;
  const [setUp] = setUps;
  if (setUp === undefined || place.band.deltaL > 0) return [];
  return carryingBases(shelf).flatMap(({ id: itemId }) =>
    laddered(documents, place).flatMap(({ id, largestFraction }) => {
      const at = (fraction: number) =>
        candidateOf(recipeWithTint([{ itemId, massFraction: 1 }], shelf, id, fraction), shelf);
      return lines.flatMap((line) => {
        const { deltaL } = line.ready.band;
        const middle = (fraction: number): number | null => {
          const mix = at(fraction);
          if (mix === null) return null;
          const { column } = readyPrint(documents, place, mix, setUp);
          return expectedOf(line, preparedColumn(column), documents.job.viewing, posterior);
        };
        let low = 0;
        let high = Math.min(LARGEST, largestFraction);
        const [clear, most] = [middle(low), middle(high)];
        if (clear === null || most === null || clear <= deltaL || most >= deltaL) return [];
        for (let i = 0; i < BISECTIONS; i++) {
          const between = (low + high) / 2;
          if ((middle(between) ?? deltaL) > deltaL) low = between;
          else high = between;
        }
        const fraction = Math.round((low + high) / 2 / STEP) * STEP;
        return fraction > 0 ? (at(fraction) ?? []) : [];
      });
    }),
  );
}
