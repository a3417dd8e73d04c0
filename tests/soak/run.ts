/** `npm run soak`: the large counts, with seed and result. Ends with 1 where anything fails. */
import fc from "fast-check";
import { neverInPart } from "../exchange/archiveFuzz.ts";
import { soakEvidence } from "./evidenceSoak.ts";
import { soakReadings } from "./readingsSoak.ts";
import { soakSpread } from "./spreadSoak.ts";
import { soakTestPlan } from "./testPlanSoak.ts";

const SEED = 20260301;
const SPREAD_POINT_COUNT = 100_000;
const FUZZ_COUNT = 20_000;
const SHOP_COUNT = 200;
const GARMENTS_PER_GROUP = 8;
/** Of its own: what the plan saves was looked at on the other seed's shops before it was known how to count it. */
const PLANNED_SEED = 20261125;
const PLANNED_SHOP_COUNT = 240;

/** Each part prints what it found; true where all is as asked. */
const PARTS: Readonly<Record<string, () => boolean | Promise<boolean>>> = {
  spread() {
    console.log(`spread of every cell against ${SPREAD_POINT_COUNT} random points, seed ${SEED}:`);
    return soakSpread(SPREAD_POINT_COUNT, SEED, console.log) === 0;
  },
  archives() {
    console.log(`${FUZZ_COUNT} spoiled job archives, seed ${SEED}:`);
    const fuzz = fc.check(neverInPart, { numRuns: FUZZ_COUNT, seed: SEED });
    console.log(
      fuzz.failed
        ? `  FAILED: ${fc.defaultReportMessage(fuzz)}`
        : `  ${fuzz.numRuns} taken whole or refused with reasons.`,
    );
    return !fuzz.failed;
  },
  async readings() {
    console.log(`${FUZZ_COUNT} spoiled readings files for each reader, seed ${SEED}:`);
    return (await soakReadings(FUZZ_COUNT, SEED, console.log)) === 0;
  },
  evidence() {
    console.log(`what test prints teach, ${SHOP_COUNT} synthetic shops, seed ${SEED}:`);
    const run = { shopCount: SHOP_COUNT, seed: SEED, perGroup: GARMENTS_PER_GROUP, withSlips: true };
    return soakEvidence(run, console.log) === 0;
  },
  plan() {
    console.log(
      `what the test plan saves, ${PLANNED_SHOP_COUNT} synthetic shops of each kind, seed ${PLANNED_SEED}:`,
    );
    return soakTestPlan({ shopCount: PLANNED_SHOP_COUNT, seed: PLANNED_SEED }, console.log) === 0;
  },
};

/** Runs the parts that are named, all of them where none is; 1 where one is not as asked, 2 for a part that there is not. */
export async function run(named: readonly string[] = []): Promise<number> {
  const unknown = named.find((name) => PARTS[name] === undefined);
  if (unknown !== undefined) {
    console.error(`no part ${unknown}; there are ${Object.keys(PARTS).join(", ")}`);
    return 2;
  }
  let isSound = true;
  for (const name of named.length === 0 ? Object.keys(PARTS) : named) {
    if (!(await PARTS[name]!())) isSound = false;
  }
  return isSound ? 0 : 1;
}
