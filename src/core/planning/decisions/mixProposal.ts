/** A proposal of the mix search beside what is chosen at present: what changes and what it costs. */
import { type MixAssignment, type MixCost, sumOfCosts } from "./mixProgram.ts";
import { type MixOption, type MixSearchProblem, optionCost } from "./mixSearch.ts";

/** What is chosen for a garment now. */
export interface PresentChoice {
  readonly garmentId: string;
  readonly mixId: string;
  readonly setUpId: string;
}

export interface GarmentChange {
  readonly garmentId: string;
  /** Null: nothing is chosen, or what is chosen was not predicted. */
  readonly from: MixOption | null;
  /** Null: left out. */
  readonly to: MixOption | null;
  /** Money saved on its ink and expected loss; null where one of the two is not known. */
  readonly saved: number | null;
}

export interface MixProposal {
  readonly changes: readonly GarmentChange[];
  readonly unchangedCount: number;
  readonly mixesAdded: readonly string[];
  readonly mixesDropped: readonly string[];
  readonly setUpsAdded: readonly string[];
  readonly setUpsDropped: readonly string[];
  /** Cost of the present choices of the garments that the proposal serves too, and of the proposal for the same garments. */
  readonly presentCost: MixCost;
  readonly proposedCost: MixCost;
  /** How far the proposal may be from the best plan, as a part of its cost; 0 is proven optimal. */
  readonly gapFraction: number;
}

/**
 * `assignment` against `present`, over all of `problem`: rules may have shut out what is chosen now. Garments that only one
 * of the two serves are listed as changes and left out of both costs, for a missing print is not a saving.
 * @param lowerBound no plan can cost less; from the solver
 * @throws RangeError for two present choices of one garment.
 */
export function proposalAgainst(
  problem: MixSearchProblem,
  present: readonly PresentChoice[],
  assignment: MixAssignment,
  lowerBound: number,
): MixProposal {
  const chosenNow = new Map(present.map((choice) => [choice.garmentId, choice]));
  if (chosenNow.size !== present.length) throw new RangeError("present must list a garment once");
  const proposed = new Map(assignment.chosen.map((option) => [option.garmentId, option]));
  const keyOf = ({ garmentId, mixId, setUpId }: PresentChoice) => `${garmentId}\n${mixId}\n${setUpId}`;
  const optionOf = new Map(problem.options.map((option) => [keyOf(option), option]));
  const changes: GarmentChange[] = [];
  const both: { from: MixOption; to: MixOption }[] = [];
  let unchangedCount = 0;
  for (const { id } of problem.garments) {
    const choice = chosenNow.get(id);
    const from = choice === undefined ? null : (optionOf.get(keyOf(choice)) ?? null);
    const to = proposed.get(id) ?? null;
    if (from !== null && to !== null) both.push({ from, to });
    if (choice === undefined && to === null) continue;
    if (choice !== undefined && to !== null && keyOf(choice) === keyOf(to)) unchangedCount++;
    else {
      const saved = from === null || to === null ? null : optionCost(from) - optionCost(to);
      changes.push({ garmentId: id, from, to, saved });
    }
  }
  const mixesNow = new Set(present.map(({ mixId }) => mixId));
  const setUpsNow = new Set(present.map(({ setUpId }) => setUpId));
  return {
    changes,
    unchangedCount,
    mixesAdded: assignment.mixIds.filter((id) => !mixesNow.has(id)),
    mixesDropped: [...mixesNow].filter((id) => !assignment.mixIds.includes(id)),
    setUpsAdded: assignment.setUpIds.filter((id) => !setUpsNow.has(id)),
    setUpsDropped: [...setUpsNow].filter((id) => !assignment.setUpIds.includes(id)),
    presentCost: sumOfCosts(
      problem,
      both.map(({ from }) => from),
    ),
    proposedCost: sumOfCosts(
      problem,
      both.map(({ to }) => to),
    ),
    gapFraction: gapOf(assignment.cost.total, lowerBound),
  };
}

/** Rounding of the solver's arithmetic, as a part of the cost. */
const NO_GAP = 1e-8;

function gapOf(total: number, lowerBound: number): number {
  if (!(total > 0)) return 0;
  const gap = (total - lowerBound) / total;
  return gap > NO_GAP ? gap : 0;
}
