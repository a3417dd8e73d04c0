/** The mix search of one place from documents to a program for the solver, and from its solution to a proposal. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import { withoutDearOptions } from "../../core/planning/decisions/dearOptions.ts";
import {
  type MixedIntegerProgram,
  mixProgram,
  type ProgramSolution,
  readAssignment,
} from "../../core/planning/decisions/mixProgram.ts";
import { type PresentChoice, proposalAgainst } from "../../core/planning/decisions/mixProposal.ts";
import {
  type AllowedSearch,
  allowedSearch,
  DEFAULT_MIX_SEARCH_RULES,
  type MixSearchRules,
} from "../../core/planning/decisions/mixSearch.ts";
import { mixOpeningCost, partsWithoutPrice } from "../../job/decisions/inkMoney.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import type { FoundMix, MixAnswer } from "./decisionProtocol.ts";
import { type StatedSearch, statedSearch } from "./mixStatement.ts";
import { chosenPrintKey } from "./statedLine.ts";
import { unservedLines } from "./unservedLines.ts";

/** A search that only the solver is missing for. */
export interface PreparedSearch {
  readonly program: MixedIntegerProgram;
  readonly finish: (solution: ProgramSolution) => MixAnswer;
}

/** A recipe that no mix has any more has no effect. */
function rulesOf({ mixRules }: Place, { mixes }: StatedSearch): MixSearchRules {
  const known = new Set(mixes.map(({ key }) => key));
  return {
    ...DEFAULT_MIX_SEARCH_RULES,
    atMostMixes: mixRules.atMostMixes,
    stockOnly: mixRules.stockOnly,
    lowCureOnly: mixRules.lowCureOnly,
    keptMixIds: mixRules.keptRecipes.filter((key) => known.has(key)),
    forbiddenMixIds: mixRules.forbiddenRecipes,
  };
}

function presentChoices({ job }: Documents, place: Place, { lines, mixes }: StatedSearch): PresentChoice[] {
  const known = new Set(mixes.map(({ key }) => key));
  return lines.flatMap(({ line }) => {
    const print = chosenPrintKey(job, line.id, place.id);
    return print === null || !known.has(print.mixId) ? [] : [{ garmentId: line.id, ...print }];
  });
}

function foundMixes({ library: { shelf } }: Documents, { mixes }: StatedSearch): FoundMix[] {
  return mixes.map(({ key, recipe, mixId }) => ({
    key,
    recipe,
    jobMixId: mixId,
    openingCost: mixOpeningCost(recipe, shelf),
    unpriced: partsWithoutPrice(recipe, shelf),
  }));
}

function answerOf(
  documents: Documents,
  place: Place,
  stated: StatedSearch,
  search: AllowedSearch,
  lean: AllowedSearch,
  solution: ProgramSolution,
): MixAnswer {
  if (solution.status === "infeasible") return { ok: false, faults: [], impossible: true };
  if (solution.status === "none") return { ok: false, faults: [], impossible: false };
  const assignment = readAssignment(lean, solution.values);
  const present = presentChoices(documents, place, stated);
  return {
    ok: true,
    placeId: place.id,
    proposal: proposalAgainst(stated.problem, present, assignment, solution.lowerBound),
    cost: assignment.cost,
    proven: solution.status === "optimal",
    mixes: foundMixes(documents, stated),
    unserved: unservedLines(documents, stated, search.unservable),
    counts: {
      mixes: stated.mixes.length,
      setUps: stated.problem.setUps.length,
      lines: stated.lines.length,
    },
  };
}

/**
 * The search made ready for a solver, or the answer where the place's rules contradict each other.
 * @param onLine told of the part of the lines that is predicted
 */
export function preparedSearch(
  documents: Documents,
  place: Place,
  posterior: Posterior | null,
  onLine?: (doneFraction: number) => void,
): PreparedSearch | MixAnswer {
  const stated = statedSearch(documents, place, posterior, onLine);
  const allowed = allowedSearch(stated.problem, rulesOf(place, stated));
  if (!allowed.ok) return { ok: false, faults: allowed.faults, impossible: false };
  const lean = withoutDearOptions(allowed.search);
  return {
    program: mixProgram(lean),
    finish: (solution) => answerOf(documents, place, stated, allowed.search, lean, solution),
  };
}
