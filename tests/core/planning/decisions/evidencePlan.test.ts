// The test plan under evidence: drivers against core/evidence's own covariance and against one more record, and the demo's plan.
import { describe, expect, it } from "vitest";
import { beliefFor, examine } from "../../../../src/core/evidence/beliefFor.ts";
import { extend } from "../../../../src/core/evidence/extend.ts";
import { learnWatchfully } from "../../../../src/core/evidence/learnWatchfully.ts";
import type { Posterior } from "../../../../src/core/evidence/posterior.ts";
import type { EvidencePrint } from "../../../../src/core/evidence/record.ts";
import {
  driverCovariance,
  driverCovariances,
  printDriver,
  sharedFactor,
} from "../../../../src/core/planning/decisions/evidenceDrivers.ts";
import { evidencePlanProblem, testIdOf } from "../../../../src/core/planning/decisions/evidencePlan.ts";
import { expectedLossOf } from "../../../../src/core/planning/decisions/expectedLoss.ts";
import { planTests } from "../../../../src/core/planning/decisions/testPlan.ts";
import { predictPrint } from "../../../../src/core/prediction/predictPrint.ts";
import { evidenceInputs } from "../../../../src/job/evidenceInputs.ts";
import { evidencePrint } from "../../../../src/job/evidencePrints.ts";
import { applicationFor, garmentFor, inkMixFor } from "../../../../src/job/predictionInputs.ts";
import { demoDocuments } from "../../../engine/decisions/demoJob.ts";

const { job, library } = demoDocuments();
const place = job.places[0]!;
const { viewing } = job;
const { posterior } = learnWatchfully(evidenceInputs(library).records);
const TERMS = { cost: 25, pieceCount: 2, pairCount: 6, pairSd: 0.3 };

const garments = job.lines.map((line) => {
  const lot = library.garmentLots.find(({ id }) => id === line.garmentLotId)!;
  const cloth = garmentFor(lot, library.shelf);
  if (!cloth.ok) throw new Error("a demo garment cannot be predicted");
  const pieceCount = line.quantities.reduce((sum, { count }) => sum + count, 0);
  const choices = place.candidates.map(({ id, mixId, setUpId }) => {
    const mix = job.mixes.find((one) => one.id === mixId)!;
    const ink = inkMixFor(mix, library.shelf);
    if (!ink.ok) throw new Error("a demo mix cannot be predicted");
    const setUp = library.shelf.setUps.find((one) => one.id === setUpId)!;
    const application = applicationFor(setUp, place, library.shelf);
    const { garment } = cloth;
    const print = evidencePrint(lot, {
      garment,
      recipe: mix.recipe,
      mix: ink.mix,
      application,
      setUpId,
    });
    const belief = beliefFor(posterior, print, viewing);
    const chanceWithin = (lower: number, upper: number, hueLimit: number) => {
      const band = { deltaL: (lower + upper) / 2, tolerance: (upper - lower) / 2, hueLimit };
      return predictPrint({ garment, mix: ink.mix, application, viewing, band, belief }).spread.chanceInBand;
    };
    const darkEnd = place.band.deltaL - place.band.tolerance;
    const chanceInBand = chanceWithin(darkEnd, place.band.deltaL + place.band.tolerance, place.band.hueLimit);
    const chanceBelow = Math.min(chanceWithin(-100, darkEnd, 1e3), 1 - chanceInBand);
    const { lossIfOutOfBand } = expectedLossOf({
      pieceCount,
      piecePrice: line.piecePrice ?? 0,
      suppliedBy: line.suppliedBy,
      liableShare: 1,
      printCost: 0.39,
      chanceInBand,
      refusedShare: 0.7,
    });
    return { choiceId: id, print, chanceBelow, chanceInBand, lossIfOutOfBand, otherCost: 0, testable: true };
  });
  return { garmentId: line.id, choices, lot };
});
const prints: readonly EvidencePrint[] = garments.flatMap(({ choices }) => choices.map(({ print }) => print));

function varianceUnder(known: Posterior, print: EvidencePrint): number {
  const { cell, covariance, slopes } = examine(known, print, viewing);
  const n = cell.unknowns.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) sum += slopes.jacobian[i]! * covariance[i * n + j]! * slopes.jacobian[j]!;
  }
  return sum;
}

describe("printDriver", () => {
  const shared = sharedFactor(posterior);

  it("has the variance that core/evidence's covariance gives along the print's slopes, on every cell of the demo", () => {
    for (const print of prints) {
      const { settleableVariance } = printDriver(shared, print, viewing, 1);
      expect(settleableVariance).toBeCloseTo(varianceUnder(posterior, print), 8);
    }
  });

  it("has the same covariances by unknowns as by pairs", () => {
    const drivers = prints.map((print) => printDriver(shared, print, viewing, 1));
    const rows = [0, 5, drivers.length - 1];
    const all = driverCovariances(drivers, rows);
    rows.forEach((row, r) => {
      drivers.forEach((driver, c) => {
        expect(all[r * drivers.length + c]).toBeCloseTo(driverCovariance(drivers[row]!, driver), 10);
      });
    });
  });

  it("foretells how much one more record takes off another garment's variance, as learning it then does", () => {
    const tested = garments.find(({ lot }) => lot.mill === "Mill B")!.choices[0]!.print;
    const driver = printDriver(shared, tested, viewing, TERMS.pieceCount);
    const { slopes } = examine(posterior, tested, viewing);
    const bare = predictPrint({
      garment: tested.garment.garment,
      mix: tested.mix,
      application: tested.application,
      viewing,
      band: place.band,
    }).bare;
    // A reading just where it is expected leaves the slopes as they are.
    const printed = {
      L: bare.L + slopes.change.L,
      a: bare.a + slopes.change.a,
      b: bare.b + slopes.change.b,
    };
    const after = extend(posterior, {
      id: "one more",
      printKey: "one more",
      print: tested,
      viewing,
      reading: {
        kind: "pair",
        bare,
        printed,
        pairCount: TERMS.pairCount,
        pieceCount: TERMS.pieceCount,
        sdPairDeltaL: null,
      },
      at: "2026-02-17T09:00:00.000Z",
      washCount: 0,
    });
    const answer = driver.settleableVariance + driver.residualVariance + TERMS.pairSd ** 2 / TERMS.pairCount;
    let compared = 0;
    for (const print of prints) {
      const before = varianceUnder(posterior, print);
      const covariance = driverCovariance(driver, printDriver(shared, print, viewing, 1));
      const foretold = covariance ** 2 / answer;
      if (foretold < 0.05 * before) continue;
      compared++;
      // The record's a* and b* teach as well, so that it takes off somewhat more; a new centre moves the slopes a little.
      const taken = before - varianceUnder(after, print);
      expect(taken / foretold).toBeGreaterThan(0.85);
      expect(taken / foretold).toBeLessThan(1.35);
    }
    expect(compared).toBeGreaterThan(3);
  });
});

describe("the demo's test plan", () => {
  const problem = evidencePlanProblem(posterior, garments, viewing, TERMS);

  it("keeps every cell's chance in band", () => {
    const plan = planTests({ ...problem, tests: [], covariance: new Float64Array() });
    const least = garments.map(({ choices }) =>
      Math.min(...choices.map(({ chanceInBand, lossIfOutOfBand }) => lossIfOutOfBand * (1 - chanceInBand))),
    );
    const costNow = least.reduce((sum, cost) => sum + cost, 0);
    expect(Math.abs(plan.costNow / costNow - 1)).toBeLessThan(1e-3);
  });

  it("names the mill B forest first, a test that pays many times over", () => {
    const plan = planTests(problem);
    const forest = garments.find(({ lot }) => lot.mill === "Mill B")!;
    const ids = forest.choices.map(({ choiceId }) => testIdOf(forest.garmentId, choiceId));
    expect(ids).toContain(plan.tests[0]?.testId);
    expect(plan.tests[0]!.riskRemoved).toBeGreaterThan(5 * plan.tests[0]!.cost);
  });
});
