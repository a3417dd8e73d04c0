/** `npm run soak`: the large counts, with seed and result. Ends with 1 where anything fails. */
import fc from "fast-check";
import { neverInPart } from "../exchange/archiveFuzz.ts";
import { soakSpread } from "./spreadSoak.ts";

const SEED = 20260301;
const SPREAD_POINT_COUNT = 100_000;
const FUZZ_COUNT = 20_000;

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
  return bad === 0 && !fuzz.failed ? 0 : 1;
}
