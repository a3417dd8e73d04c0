// What a shop's jobs cost under one rule of testing or another, when every print comes out as it truly would.
import { learn } from "../../../../src/core/evidence/learn.ts";
import type { Posterior } from "../../../../src/core/evidence/posterior.ts";
import { evidencePlanProblem, testIdOf } from "../../../../src/core/planning/decisions/evidencePlan.ts";
import { planTests } from "../../../../src/core/planning/decisions/testPlan.ts";
import { SHOP_VIEWING } from "../../../generator/shopReadings.ts";
import { type SyntheticShop, syntheticShop } from "../../../generator/syntheticShop.ts";
import { type JobLine, jobOf, leastLoss, likeliest, lossUnder, outlooksOf, tested } from "./shopJob.ts";

/** Issue "Which mixes, which test prints, and how to recover". */
const TEST_COST = 25;
/** The plain rule: above this many pieces a new lot of dyed polyester is tested. */
const RULE_PIECES = 300;
/** Choices that are weighed for each garment while planning, likeliest first, and of those tested: as the app has them. */
const WEIGHED = 6;
const TESTED = 2;

/** Money of each rule above what the oracle pays, which knows every print beforehand. */
export interface AvoidableCosts {
  readonly oracle: number;
  readonly plan: number;
  readonly nothing: number;
  readonly everything: number;
  readonly largest: number;
  readonly plainRule: number;
  readonly planTestCount: number;
}

/** The plan's next test on what is known, made and learned, until none is worth its price. */
function planned(shop: SyntheticShop, start: Posterior, job: readonly JobLine[]) {
  let posterior = start;
  const made = new Set<string>();
  for (;;) {
    const candidates = new Map<string, { readonly line: JobLine; readonly c: number }>();
    const garments = job.map((line) => {
      const outlooks = outlooksOf(posterior, line);
      const weighed = likeliest(outlooks).slice(0, WEIGHED);
      const garmentId = line.lot.lotKey;
      const choices = weighed.map((c, rank) => {
        const testId = testIdOf(garmentId, `${c}`);
        candidates.set(testId, { line, c });
        return {
          choiceId: `${c}`,
          print: line.cells[c]!.print,
          ...outlooks[c]!,
          lossIfOutOfBand: line.stake,
          otherCost: 0,
          testable: rank < TESTED && !made.has(testId),
        };
      });
      return { garmentId, choices };
    });
    const terms = { cost: TEST_COST, pieceCount: 2, pairCount: 4, pairSd: 0.4 };
    const [first] = planTests(evidencePlanProblem(posterior, garments, SHOP_VIEWING, terms)).tests;
    if (first === undefined) return { posterior, testCount: made.size };
    made.add(first.testId);
    const { line, c } = candidates.get(first.testId)!;
    posterior = tested(shop, posterior, line, c);
  }
}

/** The costs of one shop's job, with its library or without any record. */
export function avoidableCosts(seed: number, withLibrary: boolean): AvoidableCosts {
  const shop = syntheticShop(seed);
  const start = learn(withLibrary ? shop.records.map(({ record }) => record) : []);
  const job = jobOf(shop, withLibrary);
  const oracle = leastLoss(job);
  const afterTesting = (lines: readonly JobLine[]) => {
    const known = lines.reduce(
      (posterior, line) => tested(shop, posterior, line, likeliest(outlooksOf(posterior, line))[0]!),
      start,
    );
    return lossUnder(known, job) + lines.length * TEST_COST - oracle;
  };
  const { posterior, testCount } = planned(shop, start, job);
  const bySize = job.toSorted((one, other) => other.pieces - one.pieces);
  const ruled = job.filter(
    ({ classes, group, pieces }) =>
      classes.includes("dyed polyester") && group !== "tested-lot" && pieces > RULE_PIECES,
  );
  return {
    oracle,
    plan: lossUnder(posterior, job) + testCount * TEST_COST - oracle,
    nothing: lossUnder(start, job) - oracle,
    everything: afterTesting(job),
    largest: afterTesting(bySize.slice(0, testCount)),
    plainRule: afterTesting(ruled),
    planTestCount: testCount,
  };
}
