/** How long a record book takes to learn from, and one more record, with growth: off the main thread in the planner. */
import { extend } from "../../src/core/evidence/extend.ts";
import { learn } from "../../src/core/evidence/learn.ts";
import { modelShop } from "../core/evidence/modelShop.ts";

const SIZES = [250, 500, 1000, 2000];
const GARMENTS_PER_RECORD = 300 / 2000;
const SEED = 20260301;
const REPEATS = 5;
/** The most that the issue allows at 2,000 records of 300 garments. */
const WANTED_MS = { learn: 500, extend: 50 };

function medianMs(run: () => void): number {
  const times = Array.from({ length: REPEATS }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(REPEATS / 2)]!;
}

/** Prints a line per size. */
export function benchEvidence(say: (line: string) => void): void {
  let before: number | null = null;
  for (const size of SIZES) {
    const lots = Math.round(size * GARMENTS_PER_RECORD);
    const { records } = modelShop(SEED, lots, size + 1);
    const book = records.slice(0, size);
    const learning = medianMs(() => learn(book));
    const posterior = learn(book);
    const extending = medianMs(() => extend(posterior, records[size]!));
    const growth = before === null ? "" : `, ${(learning / before).toFixed(1)} x the half`;
    const verdict =
      size < SIZES.at(-1)!
        ? ""
        : learning < WANTED_MS.learn && extending < WANTED_MS.extend
          ? ": met"
          : ": NOT met";
    say(
      `${size} records of ${lots} garments: learned in ${learning.toFixed(0)} ms${growth}; one more in ${extending.toFixed(1)} ms${verdict}`,
    );
    before = learning;
  }
  say(
    `wanted at ${SIZES.at(-1)} records: under ${WANTED_MS.learn} ms, one more under ${WANTED_MS.extend} ms`,
  );
}
