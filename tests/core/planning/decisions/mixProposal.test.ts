// A proposal beside the present choice: the sums agree, and what changes is named.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assignmentWith } from "../../../../src/core/planning/decisions/mixProgram.ts";
import { proposalAgainst } from "../../../../src/core/planning/decisions/mixProposal.ts";
import {
  allowedSearch,
  DEFAULT_MIX_SEARCH_RULES,
} from "../../../../src/core/planning/decisions/mixSearch.ts";
import { manyGarments } from "./manyGarments.ts";

const problem = manyGarments(4, { garments: 10, mixes: 5, setUps: 2 });
const found = allowedSearch(problem, { ...DEFAULT_MIX_SEARCH_RULES, leastChance: 0 });
if (!found.ok) throw new Error("the rules are sound");
const { search } = found;
const everything = assignmentWith(
  search,
  new Set(search.mixes.map(({ id }) => id)),
  new Set(search.setUps.map(({ id }) => id)),
);
const choiceOf = ({ garmentId, mixId, setUpId }: (typeof problem.options)[number]) => ({
  garmentId,
  mixId,
  setUpId,
});

describe("proposalAgainst", () => {
  it("changes nothing and saves nothing against itself", () => {
    const bound = everything.cost.total;
    const proposal = proposalAgainst(problem, everything.chosen.map(choiceOf), everything, bound);
    expect(proposal.changes).toEqual([]);
    expect(proposal.unchangedCount).toBe(everything.chosen.length);
    expect([proposal.mixesAdded, proposal.mixesDropped, proposal.setUpsAdded]).toEqual([[], [], []]);
    expect(proposal.presentCost).toEqual(proposal.proposedCost);
    expect(proposal.gapFraction).toBe(0);
  });

  it("saves on the garments what it saves in all, but for the openings, whatever is chosen at present", () => {
    const anyPresent = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 10, maxLength: 10 });
    fc.assert(
      fc.property(anyPresent, (picks) => {
        const present = picks.map((pick, g) => {
          const own = problem.options.filter(({ garmentId }) => garmentId === `garment ${g}`);
          return choiceOf(own[pick % own.length]!);
        });
        const { changes, presentCost, proposedCost, unchangedCount } = proposalAgainst(
          problem,
          present,
          everything,
          0,
        );
        expect(changes.length + unchangedCount).toBe(10);
        const known = changes.filter(({ saved }) => saved !== null);
        const savedOnGarments = known.reduce((sum, { saved }) => sum + (saved ?? 0), 0);
        const openings = (cost: typeof presentCost) => cost.mixes + cost.setUps;
        expect(
          presentCost.total - openings(presentCost) - proposedCost.total + openings(proposedCost),
        ).toBeCloseTo(savedOnGarments, 8);
      }),
    );
  });

  it("lists a garment that nothing was chosen for, and counts it in neither cost", () => {
    const [first, ...others] = everything.chosen;
    const proposal = proposalAgainst(problem, others.map(choiceOf), everything, 0);
    expect(proposal.changes).toEqual([{ garmentId: first!.garmentId, from: null, to: first, saved: null }]);
    expect(proposal.presentCost).toEqual(proposal.proposedCost);
    expect(proposal.gapFraction).toBe(1);
  });

  it("refuses two present choices of one garment", () => {
    const twice = [everything.chosen[0]!, everything.chosen[0]!].map(choiceOf);
    expect(() => proposalAgainst(problem, twice, everything, 0)).toThrow(RangeError);
  });
});
