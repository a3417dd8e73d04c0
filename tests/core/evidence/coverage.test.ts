/** What test prints teach holds on shops whose physics is not the predictor's: the soak's figures on twenty of them. */
import { describe, expect, it } from "vitest";
import { evidenceScores } from "../../soak/evidenceSoak.ts";
import { standardErrorsOutside } from "../../soak/forecastScores.ts";

/** Another seed than the soak's: these twenty shops are not among its two hundred. */
const RUN = { shopCount: 20, seed: 20261100, perGroup: 4, withSlips: true };
/** Issue 3: within 3 standard errors of the band. */
const MOST_STANDARD_ERRORS = 3;

const { before, learned } = evidenceScores(RUN);

describe("on twenty synthetic shops", () => {
  it.each(learned.map((score) => [score.text, score] as const))("%s", (_, score) => {
    expect(score.figure.count).toBeGreaterThan(0);
    expect(standardErrorsOutside(score)).toBeLessThanOrEqual(MOST_STANDARD_ERRORS);
  });

  it("test prints halve the median error on dyed polyester lots that were printed", () => {
    const name = "median error, one print on the lot, same base";
    const errorIn = (scores: typeof learned): number =>
      scores.find((score) => score.name === name)!.figure.value;
    expect(errorIn(learned)).toBeLessThan(0.5 * errorIn(before));
  });
});
