// The best plan by trying every set of mixes and set-ups: what a solver must agree with on small cases.
import { assignmentWith, type MixAssignment } from "../../../../src/core/planning/decisions/mixProgram.ts";
import type { AllowedSearch } from "../../../../src/core/planning/decisions/mixSearch.ts";

/** Every subset of `ids`. */
function* subsets(ids: readonly string[]): Generator<Set<string>> {
  for (let bits = 0; bits < 2 ** ids.length; bits++) {
    yield new Set(ids.filter((_, i) => (bits >> i) & 1));
  }
}

/** Null where no allowed set serves what has to be served. Counts in its own way: a set pays for all it opens. */
export function bestByTrying(search: AllowedSearch): MixAssignment | null {
  let best: MixAssignment | null = null;
  for (const mixIds of subsets(search.mixes.map(({ id }) => id))) {
    if (search.atMostMixes !== null && mixIds.size > search.atMostMixes) continue;
    if ([...search.keptMixIds].some((id) => !mixIds.has(id))) continue;
    for (const setUpIds of subsets(search.setUps.map(({ id }) => id))) {
      const servesAll = search.garments.every(
        ({ id, unservedCost }) =>
          unservedCost !== null ||
          search.options.some(
            (option) => option.garmentId === id && mixIds.has(option.mixId) && setUpIds.has(option.setUpId),
          ),
      );
      if (!servesAll) continue;
      const found = assignmentWith(search, mixIds, setUpIds);
      if (best === null || found.cost.total < best.cost.total) best = found;
    }
  }
  return best;
}

/** Cost of an assignment added up from nothing but the lists. */
export function costOnPaper(search: AllowedSearch, assignment: MixAssignment): number {
  let cost = 0;
  for (const { id, openingCost } of search.mixes) if (assignment.mixIds.includes(id)) cost += openingCost;
  for (const { id, openingCost } of search.setUps) if (assignment.setUpIds.includes(id)) cost += openingCost;
  for (const { inkCost, expectedLoss } of assignment.chosen) cost += inkCost + expectedLoss;
  for (const { id, unservedCost } of search.garments) {
    if (assignment.unservedIds.includes(id)) cost += unservedCost ?? Infinity;
  }
  return cost;
}
