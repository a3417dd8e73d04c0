// The mix search on the demo job: fewer mixes and less cost than giving each garment its own cheapest mix, proven optimal.
import { readFileSync } from "node:fs";
import loadHighs from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { beliefFor } from "../../../../src/core/evidence/beliefFor.ts";
import { learnWatchfully } from "../../../../src/core/evidence/learnWatchfully.ts";
import { withoutDearOptions } from "../../../../src/core/planning/decisions/dearOptions.ts";
import { expectedLossOf } from "../../../../src/core/planning/decisions/expectedLoss.ts";
import {
  type MixAssignment,
  mixProgram,
  readAssignment,
  sumOfCosts,
} from "../../../../src/core/planning/decisions/mixProgram.ts";
import {
  allowedSearch,
  type MixOption,
  type MixSearchProblem,
  optionCost,
} from "../../../../src/core/planning/decisions/mixSearch.ts";
import { predictPrint } from "../../../../src/core/prediction/predictPrint.ts";
import { solveProgram } from "../../../../src/engine/mixSolverWork.ts";
import { readJobArchive } from "../../../../src/exchange/jobArchive.ts";
import { evidenceInputs } from "../../../../src/job/evidenceInputs.ts";
import { evidencePrint } from "../../../../src/job/evidencePrints.ts";
import { applicationFor, garmentFor, inkMixFor } from "../../../../src/job/predictionInputs.ts";

const DEMO = new URL("../../../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url);
const read = readJobArchive(readFileSync(DEMO, "utf8"));
if (!read.ok) throw new Error("the demo cannot be read");
const { job, library } = read.documents;
const { shelf } = library;
const place = job.places[0]!;
const { posterior } = learnWatchfully(evidenceInputs(library).records);
const black = shelf.colourants.find(({ name }) => name.toLowerCase().includes("black"))!;

/** Ink per piece is an invented 0.02; ink change 12 and screen 25 as the demo's prices. */
const INK_PER_PIECE = 0.02;
const LADDER = [0, 0.001, 0.0025, 0.005, 0.01];
const mixes = shelf.bases
  .filter(({ role }) => role === "base")
  .flatMap((base) =>
    LADDER.map((tint) => ({
      id: `${base.name} ${tint}`,
      recipe:
        tint === 0
          ? [{ itemId: base.id, massFraction: 1 }]
          : [
              { itemId: base.id, massFraction: 1 - tint },
              { itemId: black.id, massFraction: tint },
            ],
    })),
  );
const setUps = shelf.setUps.slice(0, 2);

function optionsOf(line: (typeof job.lines)[number]): MixOption[] {
  const lot = library.garmentLots.find(({ id }) => id === line.garmentLotId)!;
  const cloth = garmentFor(lot, shelf);
  if (!cloth.ok) throw new Error("a demo garment cannot be predicted");
  const pieceCount = line.quantities.reduce((sum, { count }) => sum + count, 0);
  return mixes.flatMap((mix) => {
    const ink = inkMixFor({ name: mix.id, clothCoverFraction: null, ...mix }, shelf);
    if (!ink.ok) return [];
    return setUps.map((setUp): MixOption => {
      const application = applicationFor(setUp, place, shelf);
      const print = evidencePrint(lot, {
        garment: cloth.garment,
        recipe: mix.recipe,
        mix: ink.mix,
        application,
        setUpId: setUp.id,
      });
      const { chanceInBand } = predictPrint({
        garment: cloth.garment,
        mix: ink.mix,
        application,
        viewing: job.viewing,
        band: place.band,
        belief: beliefFor(posterior, print, job.viewing),
      }).spread;
      const { expectedLoss } = expectedLossOf({
        pieceCount,
        piecePrice: line.piecePrice ?? 0,
        suppliedBy: line.suppliedBy,
        liableShare: 1,
        printCost: 0.39,
        chanceInBand,
        refusedShare: 0.7,
      });
      const inkCost = pieceCount * INK_PER_PIECE;
      return { garmentId: line.id, mixId: mix.id, setUpId: setUp.id, inkCost, expectedLoss, chanceInBand };
    });
  });
}

const problem: MixSearchProblem = {
  garments: job.lines.map(({ id }) => ({ id, unservedCost: null })),
  mixes: mixes.map(({ id }) => ({ id, openingCost: 12, inStock: true, lowCure: false })),
  setUps: setUps.map(({ id }) => ({ id, openingCost: 25, inStock: true })),
  options: job.lines.flatMap(optionsOf),
};

describe("the demo's mixes", () => {
  let proposed: MixAssignment;
  let own: MixOption[];
  let lowerBound: number;
  beforeAll(async () => {
    const found = allowedSearch(problem);
    if (!found.ok) throw new Error("the rules are sound");
    own = found.search.garments.map(({ id }) =>
      found.search.options
        .filter(({ garmentId }) => garmentId === id)
        .reduce((best, option) => (optionCost(option) < optionCost(best) ? option : best)),
    );
    const lean = withoutDearOptions(found.search);
    const solution = solveProgram(await loadHighs(), mixProgram(lean), 60);
    expect(solution.status).toBe("optimal");
    proposed = readAssignment(lean, solution.values);
    lowerBound = solution.lowerBound;
  });

  it("serve every garment that can be served, proven optimal", () => {
    expect(proposed.chosen.map(({ garmentId }) => garmentId)).toEqual(own.map(({ garmentId }) => garmentId));
    expect(proposed.chosen.length).toBeGreaterThan(6);
    expect(proposed.unservedIds).toEqual([]);
    expect(proposed.cost.total).toBeCloseTo(lowerBound, 5);
  });

  it("are no more, and cost less, than each garment's own cheapest mix that is rather in band than out", () => {
    const ownMixes = new Set(own.map(({ mixId }) => mixId));
    expect(proposed.mixIds.length).toBeLessThanOrEqual(ownMixes.size);
    expect(proposed.cost.total).toBeLessThan(sumOfCosts(problem, own).total);
  });
});
