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

export async function run(): Promise<number> {
  console.log(`spread of every cell against ${SPREAD_POINT_COUNT} random points, seed ${SEED}:`);
  const bad = soakSpread(SPREAD_POINT_COUNT, SEED, console.log);
  console.log(`${FUZZ_COUNT} spoiled job archives, seed ${SEED}:`);
  const fuzz = fc.check(neverInPart, { numRuns: FUZZ_COUNT, seed: SEED });
  console.log(
    fuzz.failed
      ? `  FAILED: ${fc.defaultReportMessage(fuzz)}`
      : `  ${fuzz.numRuns} taken whole or refused with reasons.`,
  );
  console.log(`${FUZZ_COUNT} spoiled readings files for each reader, seed ${SEED}:`);
  const failedReaders = await soakReadings(FUZZ_COUNT, SEED, console.log);
  console.log(`what test prints teach, ${SHOP_COUNT} synthetic shops, seed ${SEED}:`);
  const run = { shopCount: SHOP_COUNT, seed: SEED, perGroup: GARMENTS_PER_GROUP, withSlips: true };
  const missed = soakEvidence(run, console.log);
  console.log(
    `what the test plan saves, ${PLANNED_SHOP_COUNT} synthetic shops of each kind, seed ${PLANNED_SEED}:`,
  );
  const savedLess = soakTestPlan({ shopCount: PLANNED_SHOP_COUNT, seed: PLANNED_SEED }, console.log);
  const isSound = bad === 0 && !fuzz.failed && failedReaders === 0;
  return isSound && missed === 0 && savedLess === 0 ? 0 : 1;
}
