// The mix search on the demo's documents: fewer mixes and less cost than each garment's own cheapest, proven optimal, under rules.
import loadHighs, { type Highs } from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { sumOfCosts } from "../../../src/core/planning/decisions/mixProgram.ts";
import { DEFAULT_MIX_SEARCH_RULES, optionCost } from "../../../src/core/planning/decisions/mixSearch.ts";
import type { MixAnswer, MixFinding } from "../../../src/engine/decisions/decisionProtocol.ts";
import { preparedSearch } from "../../../src/engine/decisions/mixSearchWork.ts";
import { statedSearch } from "../../../src/engine/decisions/mixStatement.ts";
import { learnedFrom } from "../../../src/engine/decisions/posteriorOf.ts";
import { solveProgram } from "../../../src/engine/mixSolverWork.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { setMixRules } from "../../../src/job/edits/places.ts";
import type { MixRules } from "../../../src/job/jobDocument.ts";
import { demoDocuments } from "./demoJob.ts";

const SECONDS = 60;
const documents = demoDocuments();
const posterior = learnedFrom(documents.library);
const [front, back] = documents.job.places as [
  Documents["job"]["places"][number],
  Documents["job"]["places"][number],
];

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

function answerOn(on: Documents, placeId: string): MixAnswer {
  const place = on.job.places.find(({ id }) => id === placeId)!;
  const prepared = preparedSearch(on, place, posterior);
  return "program" in prepared ? prepared.finish(solveProgram(highs, prepared.program, SECONDS)) : prepared;
}

function found(on: Documents, placeId: string): MixFinding {
  const answer = answerOn(on, placeId);
  if (!answer.ok) throw new Error(JSON.stringify(answer));
  return answer;
}

const withRules = (rules: Partial<MixRules>): Documents =>
  setMixRules(documents, front.id, { ...front.mixRules, ...rules });

/** Mixes that a finding's garments end on. */
const mixesUsed = ({ proposal }: MixFinding) =>
  new Set(proposal.changes.flatMap(({ to }) => (to === null ? [] : [to.mixId])));

describe("the demo's mix search", () => {
  const stated = statedSearch(documents, front, posterior);
  // Every garment's own cheapest mix among those that are rather in band than out.
  const own = stated.lines.flatMap(({ line }) => {
    const inBand = stated.problem.options.filter(
      ({ garmentId, chanceInBand }) =>
        garmentId === line.id && chanceInBand >= DEFAULT_MIX_SEARCH_RULES.leastChance,
    );
    const [first, ...rest] = inBand;
    return first === undefined
      ? []
      : [rest.reduce((best, option) => (optionCost(option) < optionCost(best) ? option : best), first)];
  });
  let front217: MixFinding;
  beforeAll(() => {
    front217 = found(documents, front.id);
  });

  it("serves every garment that can be served, proven optimal, and names the others", () => {
    expect(front217.proven).toBe(true);
    expect(front217.proposal.gapFraction).toBe(0);
    const served =
      front217.proposal.changes.filter(({ to }) => to !== null).length + front217.proposal.unchangedCount;
    expect(served).toBe(own.length);
    expect(served + front217.unserved.length).toBe(documents.job.lines.length);
    expect(served).toBeGreaterThan(6);
  });

  it("takes no more mixes, and costs less, than each garment's own cheapest in-band mix", () => {
    expect(mixesUsed(front217).size).toBeLessThanOrEqual(new Set(own.map(({ mixId }) => mixId)).size);
    expect(front217.cost.total).toBeLessThan(sumOfCosts(stated.problem, own).total);
  });

  it("costs what its parts say, opened mixes and screens counted once", () => {
    const { cost, proposal } = front217;
    expect(cost.mixes + cost.setUps + cost.ink + cost.expectedLoss + cost.unserved).toBeCloseTo(
      cost.total,
      6,
    );
    const losses = proposal.changes.reduce((sum, { to }) => sum + (to?.expectedLoss ?? 0), 0);
    // The approved forest stays as it is: its loss is in the total and in no change.
    expect(losses).toBeLessThanOrEqual(cost.expectedLoss + 1e-6);
  });

  it("compares with the present choice on the garments that have one alone", () => {
    const { presentCost, proposedCost } = front217.proposal;
    // The approved forest is the one line with a choice: ink on 300 pieces and a small risk.
    expect(presentCost.ink).toBeGreaterThan(0);
    expect(proposedCost.ink).toBeGreaterThan(0);
    expect(presentCost.total).toBeLessThan(100);
  });

  it("serves the back, where white has to lighten", () => {
    const answer = found(documents, back.id);
    expect(answer.proposal.changes.filter(({ to }) => to !== null)).toHaveLength(3);
  });

  it("leaves an approved print that is chosen as it is, and changes it only without its approval", () => {
    const [choice] = documents.job.choices;
    expect(front217.proposal.changes.map(({ garmentId }) => garmentId)).not.toContain(choice!.lineId);
    expect(front217.proposal.unchangedCount).toBe(1);
    const { library } = documents;
    const testPrints = library.testPrints.map((print) => ({ ...print, verdict: "none" as const }));
    const unapproved = { ...documents, library: { ...library, testPrints, approvals: [] } };
    const optionsOf = (on: Documents) =>
      statedSearch(on, front, posterior).problem.options.filter(
        ({ garmentId }) => garmentId === choice!.lineId,
      );
    expect(optionsOf(documents)).toHaveLength(1);
    expect(optionsOf(unapproved).length).toBeGreaterThan(1);
  });

  it("keeps to at most so many mixes, at a price, and says so where so few cannot serve all", () => {
    const four = found(withRules({ atMostMixes: 4 }), front.id);
    expect(mixesUsed(four).size).toBeLessThanOrEqual(4);
    expect(four.cost.total).toBeGreaterThan(front217.cost.total);
    expect(answerOn(withRules({ atMostMixes: 1 }), front.id)).toEqual({
      ok: false,
      faults: [],
      impossible: true,
    });
  });

  it("takes low-cure bases alone where that is asked, and says whom the rule leaves out", () => {
    const low = found(withRules({ lowCureOnly: true }), front.id);
    const lowCureBases = documents.library.shelf.bases.filter(({ lowCure }) => lowCure).map(({ id }) => id);
    const bases = new Set(documents.library.shelf.bases.map(({ id }) => id));
    for (const key of mixesUsed(low)) {
      const { recipe } = low.mixes.find((mix) => mix.key === key)!;
      for (const { itemId } of recipe) if (bases.has(itemId)) expect(lowCureBases).toContain(itemId);
    }
    for (const { reason, nearest } of low.unserved) {
      if (nearest !== null && nearest.chanceInBand >= 0.5) expect(reason).toBe("rules");
    }
  });

  it("leaves a forbidden mix out and makes one that has to be kept", () => {
    const [worst] = [...mixesUsed(front217)];
    const without = found(withRules({ forbiddenRecipes: [worst!] }), front.id);
    expect(mixesUsed(without)).not.toContain(worst);
    const unused = front217.mixes.find(({ key }) => !mixesUsed(front217).has(key))!;
    const kept = found(withRules({ keptRecipes: [unused.key] }), front.id);
    // Its opening is paid whether a garment takes it or not.
    expect(kept.cost.mixes).toBeGreaterThanOrEqual(unused.openingCost);
  });

  it("says so where a mix is to be kept and forbidden at once", () => {
    const { key } = front217.mixes[0]!;
    const answer = answerOn(withRules({ keptRecipes: [key], forbiddenRecipes: [key] }), front.id);
    expect(answer).toEqual({
      ok: false,
      faults: [{ code: "kept-and-forbidden", mixId: key }],
      impossible: false,
    });
  });

  it("weighs each garment's exact tint besides the ladder where that is asked, and is no dearer for it", () => {
    const exact = found(withRules({ exactTints: true }), front.id);
    expect(exact.counts.mixes).toBeGreaterThan(front217.counts.mixes);
    expect(exact.cost.total).toBeLessThanOrEqual(front217.cost.total + 1e-6);
  });

  it("takes what is out of stock only without the rule", () => {
    const { shelf } = documents.library;
    const [used] = [...mixesUsed(front217)].map((key) => front217.mixes.find((mix) => mix.key === key)!);
    const baseId = used!.recipe.find(({ itemId }) => shelf.bases.some(({ id }) => id === itemId))!.itemId;
    const bases = shelf.bases.map((base) => (base.id === baseId ? { ...base, inStock: false } : base));
    const on = withRules({ stockOnly: true });
    const empty = { ...on, library: { ...on.library, shelf: { ...shelf, bases } } };
    for (const key of mixesUsed(found(empty, front.id))) {
      const mix = front217.mixes.find((one) => one.key === key)!;
      expect(mix.recipe.map(({ itemId }) => itemId)).not.toContain(baseId);
    }
  });
});
