// Conformity after JCGM 106:2012: its own example and table, the laws of a guard band, and what the press is told.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  acceptanceInterval,
  conformanceProbability,
  largestUncertainty,
} from "../../../../src/core/planning/decisions/conformance.ts";
import { DEFAULT_FIRST_OFF_RULE, judgeFirstOff } from "../../../../src/core/planning/decisions/firstOff.ts";
import { meanReading } from "../../../../src/core/planning/decisions/readingUncertainty.ts";
import { between } from "../../optics/between.ts";
import { seededRandom } from "../../prediction/seededRandom.ts";

const noise = { pairSd: 0.3, pieceSd: 0.15, referenceSd: 0 };
const band = { deltaL: -3.1, tolerance: 1.5 };
const read = (deltaL: number[], pieceCount = deltaL.length) => meanReading({ deltaL, pieceCount }, noise);

describe("conformanceProbability", () => {
  // Figures of 7.4 (engine oil, kinematic viscosity at 100 degrees Celsius) as a metrologist's page quotes them; the
  // result 0.66 from memory of the document.
  it("gives 0.66 for 13.6 with u 1.8 within 12.5 to 16.3: JCGM 106:2012, 7.4", () => {
    expect(conformanceProbability(13.6, 1.8, { lower: 12.5, upper: 16.3 })).toBeCloseTo(0.66, 2);
  });

  // From memory of the document; the same figures are in any table of the normal distribution.
  it.each([
    [0.8, 0.84],
    [0.9, 1.28],
    [0.95, 1.64],
    [0.99, 2.33],
    [0.999, 3.09],
  ])("reaches %f one-sided at %f standard uncertainties from the limit: JCGM 106:2012, table 1", (p, z) => {
    const half = 0.005;
    const at = (y: number) => conformanceProbability(-y, 1, { lower: -Infinity, upper: 0 });
    expect(at(z - half)).toBeLessThan(p);
    expect(at(z + half)).toBeGreaterThan(p);
  });

  it("keeps its digits far outside on both sides alike", () => {
    const above = conformanceProbability(12, 1, { lower: -1, upper: 1 });
    expect(above).toBeGreaterThan(0);
    expect(conformanceProbability(-12, 1, { lower: -1, upper: 1 })).toBeCloseTo(above, 30);
  });
});

describe("acceptanceInterval", () => {
  it("is the tolerance less 1.645 u on each side where the band is wide: one-sided guard band at 95 %", () => {
    const accepted = acceptanceInterval({ lower: -4.6, upper: -1.6 }, 0.2, 0.95);
    expect(accepted?.upper).toBeCloseTo(-1.6 - 1.6449 * 0.2, 4);
    expect(accepted?.lower).toBeCloseTo(-4.6 + 1.6449 * 0.2, 4);
  });

  it("leaves a risk of 2.3 % for a guard band of one expanded uncertainty U = 2u: JCGM 106:2012, 8.3.2 (from memory)", () => {
    const accepted = acceptanceInterval({ lower: -10, upper: 10 }, 1, 1 - 0.02275);
    expect(accepted?.upper).toBeCloseTo(8, 3);
  });

  it("holds exactly the estimates that conform with the probability, or is null where none does", () => {
    fc.assert(
      fc.property(between(0.05, 3), between(0.5, 0.99), between(-4, 4), (u, p, y) => {
        const tolerance = { lower: -1.5, upper: 1.5 };
        const accepted = acceptanceInterval(tolerance, u, p);
        const conforms = conformanceProbability(y, u, tolerance) >= p;
        if (accepted === null) expect(conforms).toBe(false);
        else if (Math.abs(Math.abs(y) - accepted.upper) > 1e-9)
          expect(y > accepted.lower && y < accepted.upper).toBe(conforms);
      }),
      { numRuns: 400 },
    );
  });

  it("asks for no more uncertainty than just conforms", () => {
    const u = largestUncertainty(-2, { lower: -4.6, upper: -1.6 }, 0.95) ?? 0;
    expect(conformanceProbability(-2, u, { lower: -4.6, upper: -1.6 })).toBeCloseTo(0.95, 6);
    expect(largestUncertainty(-1.6, { lower: -4.6, upper: -1.6 }, 0.95)).toBeNull();
  });
});

describe("meanReading", () => {
  it("divides the pairs' variance by pairs and the pieces' by pieces", () => {
    const few = read([-3, -3.2, -2.9, -3.1], 2);
    const spread = read([-3, -3.2, -2.9, -3.1], 4);
    expect(few.mean).toBeCloseTo(-3.05, 12);
    expect(few.randomUncertainty ** 2 - spread.randomUncertainty ** 2).toBeCloseTo(
      0.15 ** 2 / 2 - 0.15 ** 2 / 4,
      12,
    );
  });

  it("covers the true mean nine times in ten with nine-tenths' interval, whatever the pairs' own scatter says", () => {
    const random = seededRandom(20261125);
    const trials = 20_000;
    let inside = 0;
    for (let i = 0; i < trials; i++) {
      const pairs = Array.from({ length: 5 }, () => -3 + 0.15 * random.normal() + 0.3 * random.normal());
      const { mean, standardUncertainty } = read(pairs);
      if (Math.abs(mean + 3) < 1.6449 * standardUncertainty) inside++;
    }
    // Pieces and pairs are each counted in full, and few pairs as less sure: on the wide side, never the narrow one.
    expect(inside / trials).toBeGreaterThan(0.9);
    expect(inside / trials).toBeLessThan(0.985);
  });
});

describe("judgeFirstOff", () => {
  it("runs in the middle, adjusts just outside, stops far outside: 1.5 times the band (common practice)", () => {
    expect(judgeFirstOff(read([-3, -3.2, -3.1, -3]), band).action).toBe("run");
    expect(judgeFirstOff(read([-5.1, -5.2, -5, -5.2, -5.1, -5.1]), band).action).toBe("adjust");
    expect(judgeFirstOff(read([-8.1, -8, -7.9, -8.2]), band)).toMatchObject({
      action: "stop",
      reason: "far-out-of-band",
    });
  });

  it("asks for the pairs that decide it: after them, with the same mean and scatter, it is decided", () => {
    const first = judgeFirstOff(read([-4.4, -4.5, -4.3, -4.4]), band);
    expect(first).toMatchObject({ action: "read-more", reason: "near-limit" });
    expect(first.readMoreCount).toBeGreaterThan(0);
    const all = Array.from({ length: 4 + first.readMoreCount }, (_, i) => -4.4 + 0.1 * ((i % 3) - 1));
    expect(judgeFirstOff(read(all), band).action).toBe("run");
  });

  it("adjusts on the limit, where no number of pairs would decide", () => {
    expect(judgeFirstOff(read([-4.6, -4.6, -4.6, -4.6]), band)).toMatchObject({
      action: "adjust",
      reason: "on-limit",
    });
  });

  it("says that the band is narrower than the readings' noise instead of passing it", () => {
    const verdict = judgeFirstOff(read([-3.1]), { deltaL: -3.1, tolerance: 0.4 });
    expect(verdict).toMatchObject({ action: "read-more", reason: "band-narrower-than-noise" });
    expect(verdict.acceptance).toBeNull();
  });

  it("never passes a run that is out of band more often than the rule allows", () => {
    const random = seededRandom(7);
    let passed = 0;
    const trials = 4000;
    for (let i = 0; i < trials; i++) {
      const pairs = Array.from({ length: 4 }, () => -4.6 + 0.15 * random.normal() + 0.3 * random.normal());
      if (judgeFirstOff(read(pairs), band).action === "run") passed++;
    }
    // The true mean lies on the limit: five in a hundred may pass, and chance adds three standard errors.
    expect(passed / trials).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / trials));
    expect(DEFAULT_FIRST_OFF_RULE.sureProbability).toBe(0.95);
  });
});
