/** The lines that no mix serves, each with the reason and what would help. */
import type { MixOption, UnservableGarment } from "../../core/planning/decisions/mixSearch.ts";
import { unservedReason } from "../../core/planning/decisions/unservedReason.ts";
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import { partsOf } from "../../job/recipeParts.ts";
import { bareLab } from "../../job/screenColour.ts";
import type { UnservedLine } from "./decisionProtocol.ts";
import type { StatedSearch } from "./mixStatement.ts";

/** Fibres that plastisol wets well enough to deepen, as in the checklist's rules (model.md §3). */
const WETTED: readonly string[] = ["polyester", "nylon"];

function wets({ blend }: GarmentLot): boolean {
  return blend.some(({ fibre, dyed, massFraction }) => dyed && massFraction > 0 && WETTED.includes(fibre));
}

export function unservedLines(
  { job, library: { shelf } }: Documents,
  { problem, mixes, lines, left, deltaL50 }: StatedSearch,
  unservable: readonly UnservableGarment[],
): UnservedLine[] {
  const tinted = new Map(
    mixes.map(({ key, recipe }) => [key, partsOf(recipe, shelf).some(({ kind }) => kind === "colourant")]),
  );
  const middleOf = new Map(problem.options.map((option, i) => [option, deltaL50[i]!]));
  const found = unservable.flatMap(({ garmentId, why, nearest }): UnservedLine[] => {
    const ready = lines.find(({ line }) => line.id === garmentId);
    if (ready === undefined) return [];
    const options = problem.options
      .filter((option) => option.garmentId === garmentId)
      .map((option: MixOption) => ({
        chanceInBand: option.chanceInBand,
        deltaL50: middleOf.get(option) ?? 0,
        tinted: tinted.get(option.mixId) ?? false,
      }));
    const reason = unservedReason({
      why,
      options,
      bareL: bareLab(ready.lot.bare, job.viewing)?.lab.L ?? null,
      wets: wets(ready.lot),
      band: ready.band,
    });
    const nearestDeltaL = nearest === null ? null : (middleOf.get(nearest) ?? null);
    return [{ lineId: garmentId, nearest, nearestDeltaL, ...reason }];
  });
  const unpredicted = left.map((lineId): UnservedLine => {
    return { lineId, nearest: null, nearestDeltaL: null, reason: "nothing-predicted", helps: [] };
  });
  return [...found, ...unpredicted];
}
