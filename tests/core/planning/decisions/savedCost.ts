// What a shop's jobs cost under one rule of testing or another, when every print comes out as it truly would.
import { beliefFor } from "../../../../src/core/evidence/beliefFor.ts";
import { extend } from "../../../../src/core/evidence/extend.ts";
import { learn } from "../../../../src/core/evidence/learn.ts";
import type { Posterior } from "../../../../src/core/evidence/posterior.ts";
import { evidencePlanProblem, testIdOf } from "../../../../src/core/planning/decisions/evidencePlan.ts";
import { planTests } from "../../../../src/core/planning/decisions/testPlan.ts";
import { believedCell } from "../../../../src/core/prediction/believedCell.ts";
import { cellResponse } from "../../../../src/core/prediction/cellResponse.ts";
import { normalCumulative } from "../../../../src/core/prediction/normalDistribution.ts";
import { workspaceFor } from "../../../../src/core/prediction/printedColour.ts";
import { spreadOf } from "../../../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../../../src/core/prediction/wettableGarment.ts";
import { drawsFor } from "../../../generator/draws.ts";
import { pairReading, readPrint, SHOP_VIEWING } from "../../../generator/shopReadings.ts";
import { type SyntheticShop, syntheticShop } from "../../../generator/syntheticShop.ts";
import { type TargetGarment, targetGarments } from "../../../generator/targetGarments.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const DARK_END = BAND.deltaL - BAND.tolerance;
const JOB_GARMENTS = 14;
/** Issue "Which mixes, which test prints, and how to recover": spoiled piece, share refused, test print. */
const SPOILED_PIECE = 3.2;
const REFUSED_SHARE = 0.7;
const TEST_COST = 25;
/** The plain rule: above this many pieces a new lot of dyed polyester is tested. */
const RULE_PIECES = 300;
/** Choices that are weighed for each garment while planning, likeliest first, and of those tested. Invented. */
const WEIGHED = 6;
const TESTED = 2;
const NINETY_PERCENT_REACH = 1.6448536269514722;

interface JobLine extends TargetGarment {
  readonly pieces: number;
}

interface Outlook {
  readonly chanceBelow: number;
  readonly chanceInBand: number;
}

/** Money of each rule besides what the oracle pays. */
export interface AvoidableCosts {
  readonly plan: number;
  readonly nothing: number;
  readonly everything: number;
  readonly largest: number;
  readonly plainRule: number;
  readonly planTestCount: number;
}

function jobOf(shop: SyntheticShop, records: readonly unknown[]): JobLine[] {
  const draws = drawsFor(shop.seed, "job");
  return draws
    .shuffled(targetGarments(shop))
    .slice(0, JOB_GARMENTS)
    .map((target) => ({
      ...target,
      group: records.length === 0 ? "untested" : target.group,
      // 50 to 2,500 pieces, as often below 350 as above. Invented.
      pieces: Math.round(50 * Math.exp(draws.between(0, Math.log(50)))),
    }));
}

function outlook(posterior: Posterior, { cells }: JobLine): Outlook[] {
  const cloth = wettableGarment(cells[0]!.print.garment.garment, SHOP_VIEWING);
  const room = workspaceFor(cloth);
  return cells.map(({ print }) => {
    const belief = beliefFor(posterior, print, SHOP_VIEWING);
    const cell = believedCell(cloth, print.mix, print.application, belief);
    const response = cellResponse(room, cell.cloth, cell.ink, BAND.hueLimit, cell.doubt);
    const spread = spreadOf(room, cell.cloth, cell.ink, BAND, response);
    const { deltaL5, deltaL50, deltaL95, chanceInBand } = spread;
    const half = DARK_END < deltaL50 ? deltaL50 - deltaL5 : deltaL95 - deltaL50;
    const below = normalCumulative(((DARK_END - deltaL50) / half) * NINETY_PERCENT_REACH);
    return { chanceInBand, chanceBelow: Math.min(below, 1 - chanceInBand) };
  });
}

const stakeOf = ({ pieces }: JobLine) => pieces * SPOILED_PIECE * REFUSED_SHARE;
const isRight = ({ cells }: JobLine, c: number) =>
  Math.abs(cells[c]!.deltaLUsual - BAND.deltaL) <= BAND.tolerance;

function likeliest(outlooks: readonly Outlook[]): number[] {
  return outlooks
    .map((_, c) => c)
    .sort((one, other) => outlooks[other]!.chanceInBand - outlooks[one]!.chanceInBand);
}

/** What the job loses where each garment gets its likeliest mix. */
function lossUnder(posterior: Posterior, job: readonly JobLine[]): number {
  return job.reduce((sum, line) => {
    const best = likeliest(outlook(posterior, line))[0]!;
    return sum + (isRight(line, best) ? 0 : stakeOf(line));
  }, 0);
}

/** One test print of `line` made and learned. */
function tested(shop: SyntheticShop, posterior: Posterior, line: JobLine, c: number): Posterior {
  const { baseKey, blackFraction, print } = line.cells[c]!;
  const base = shop.bases.find(({ key }) => key === baseKey)!;
  const colourant = blackFraction === 0 ? null : shop.colourants[0]!;
  const recipe = { base, colourant, fraction: blackFraction };
  const id = `job ${line.lot.lotKey} ${c}`;
  const reading = readPrint(drawsFor(shop.seed, id), shop.effects, line.lot, recipe, shop.setUps[0]!);
  return extend(posterior, {
    id,
    printKey: id,
    print,
    viewing: SHOP_VIEWING,
    reading: pairReading(reading),
    at: "2026-06-01T00:00:00.000Z",
    washCount: 0,
  });
}

function planned(shop: SyntheticShop, start: Posterior, job: readonly JobLine[]) {
  let posterior = start;
  const made = new Set<string>();
  for (;;) {
    const garments = job.map((line) => {
      const outlooks = outlook(posterior, line);
      const weighed = likeliest(outlooks).slice(0, WEIGHED);
      const choices = weighed.map((c, rank) => {
        const testable = rank < TESTED && !made.has(testIdOf(line.lot.lotKey, `${c}`));
        const { print } = line.cells[c]!;
        return {
          choiceId: `${c}`,
          print,
          ...outlooks[c]!,
          lossIfOutOfBand: stakeOf(line),
          otherCost: 0,
          testable,
        };
      });
      return { garmentId: line.lot.lotKey, choices };
    });
    const terms = { cost: TEST_COST, pieceCount: 2, pairCount: 4, pairSd: 0.4 };
    const [first] = planTests(evidencePlanProblem(posterior, garments, SHOP_VIEWING, terms)).tests;
    if (first === undefined) return { posterior, testCount: made.size };
    made.add(first.testId);
    const line = job.find(({ lot, cells }) =>
      cells.some((_, c) => testIdOf(lot.lotKey, `${c}`) === first.testId),
    )!;
    const c = line.cells.findIndex((_, each) => testIdOf(line.lot.lotKey, `${each}`) === first.testId);
    posterior = tested(shop, posterior, line, c);
  }
}

/** The costs of one shop's job, with its library or without any record. */
export function avoidableCosts(seed: number, withLibrary: boolean): AvoidableCosts {
  const shop = syntheticShop(seed);
  const records = withLibrary ? shop.records.map(({ record }) => record) : [];
  const start = learn(records);
  const job = jobOf(shop, records);
  const oracle = job.reduce(
    (sum, line) => sum + (line.cells.some((_, c) => isRight(line, c)) ? 0 : stakeOf(line)),
    0,
  );
  const afterTesting = (lines: readonly JobLine[]) => {
    const known = lines.reduce(
      (posterior, line) => tested(shop, posterior, line, likeliest(outlook(posterior, line))[0]!),
      start,
    );
    return lossUnder(known, job) + lines.length * TEST_COST - oracle;
  };
  const { posterior, testCount } = planned(shop, start, job);
  const bySize = [...job].sort((one, other) => other.pieces - one.pieces);
  const ruled = job.filter(
    ({ classes, group, pieces }) =>
      classes.includes("dyed polyester") && group !== "tested-lot" && pieces > RULE_PIECES,
  );
  return {
    plan: lossUnder(posterior, job) + testCount * TEST_COST - oracle,
    nothing: lossUnder(start, job) - oracle,
    everything: afterTesting(job),
    largest: afterTesting(bySize.slice(0, testCount)),
    plainRule: afterTesting(ruled),
    planTestCount: testCount,
  };
}
