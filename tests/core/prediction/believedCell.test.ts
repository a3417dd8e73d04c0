// A belief in place of the prior: the same where it says the same, moved and narrowed where it has learned.
import { describe, expect, it } from "vitest";
import { BELIEF_AXIS_COUNT, type CellBelief } from "../../../src/core/prediction/cellBelief.ts";
import type { InkMix } from "../../../src/core/prediction/inputs.ts";
import { predictPrint } from "../../../src/core/prediction/predictPrint.ts";
import { printableInk } from "../../../src/core/prediction/printableInk.ts";
import { workspaceFor } from "../../../src/core/prediction/printedColour.ts";
import { wetOutSpread } from "../../../src/core/prediction/wetOutSpread.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { GARMENTS, VIEWING } from "./cloths.ts";
import { base, black, mixOf, STROKE, tinted } from "./inks.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const MIXES = { clear: mixOf(base("curable")), tinted: tinted("matt", black, 0.005) };

/** The prior of a cell, said as a belief: its unknowns independent, nothing moved. */
function priorAsBelief(garment: string, mix: InkMix): CellBelief {
  const cloth = wettableGarment(GARMENTS[garment]!, VIEWING);
  const ink = printableInk(mix, STROKE);
  const wetOut = wetOutSpread(workspaceFor(cloth), cloth, ink);
  const { lnDeposit, lnTint, closedFraction, lnHaze, lnBlackScattering } = ink.prior;
  const lnWetOut = Math.sqrt(wetOut.sd ** 2 - (ink.reachSlope * lnDeposit) ** 2);
  const covariance = new Float64Array(BELIEF_AXIS_COUNT ** 2);
  [lnWetOut, lnTint, lnDeposit, closedFraction, lnHaze, lnBlackScattering].forEach((sd, i) => {
    covariance[i * BELIEF_AXIS_COUNT + i] = sd * sd;
  });
  const none = mix.parts.map(() => 0);
  return {
    mean: {
      lnWetOut: 0,
      lnFibreGain: cloth.garment.fibres.map(() => 0),
      lnPartStrength: none,
      lnPartScattering: none,
      closedFractionShift: none,
      lnDeposit: 0,
    },
    covariance,
    evidence: "related prints",
    bySource: [
      { source: "mill", share: 0.64 },
      { source: "model", share: 0.36 },
    ],
  };
}

const request = (garment: string, mix: InkMix) => ({
  garment: GARMENTS[garment]!,
  mix,
  application: STROKE,
  viewing: VIEWING,
  band: BAND,
});
/** The same numbers by another way through square roots. */
const DIGITS = 9;

describe("a prediction with a belief", () => {
  it("is the prior's where the belief is the prior, in every number of the spread", () => {
    for (const garment of Object.keys(GARMENTS)) {
      for (const mix of Object.values(MIXES)) {
        const without = predictPrint(request(garment, mix));
        const withIt = predictPrint({ ...request(garment, mix), belief: priorAsBelief(garment, mix) });
        expect(withIt.evidence).toBe("related prints");
        expect(withIt.deltaL).toBeCloseTo(without.deltaL, DIGITS);
        expect(withIt.spread.chanceInBand).toBeCloseTo(without.spread.chanceInBand, DIGITS);
        expect(withIt.spread.p5.deltaL).toBeCloseTo(without.spread.p5.deltaL, DIGITS);
        expect(withIt.spread.p95.deltaL).toBeCloseTo(without.spread.p95.deltaL, DIGITS);
      }
    }
  });

  it("moves as far as a surprise of the same size does", () => {
    const garment = "forest 50/50";
    const prior = priorAsBelief(garment, MIXES.clear);
    const belief = { ...prior, mean: { ...prior.mean, lnWetOut: 0.3, lnFibreGain: [0.1, 0.1] } };
    const moved = predictPrint({ ...request(garment, MIXES.clear), belief });
    const stronger = wettableGarment(GARMENTS[garment]!, VIEWING).gains.map((gain) => gain * Math.exp(0.4));
    expect(stronger[0]! / wettableGarment(GARMENTS[garment]!, VIEWING).gains[0]!).toBeCloseTo(
      Math.exp(0.4),
      12,
    );
    expect(moved.deltaL).toBeLessThan(1.3 * predictPrint(request(garment, MIXES.clear)).deltaL);
  });

  it("narrows with the covariance and names the shares of what is left, largest first", () => {
    const garment = "denim 50/50";
    const prior = priorAsBelief(garment, MIXES.tinted);
    const belief = { ...prior, covariance: prior.covariance.map((value) => value / 9) };
    const { spread } = predictPrint({ ...request(garment, MIXES.tinted), belief });
    const before = predictPrint(request(garment, MIXES.tinted)).spread;
    const width = (of: typeof spread): number => of.p95.deltaL - of.p5.deltaL;
    expect(width(spread)).toBeLessThan(width(before) / 2);
    expect(spread.sources.map(({ source }) => source)).toEqual(["mill", "model"]);
    expect(spread.sources[0]!.sdDeltaL).toBeCloseTo((0.8 * width(spread)) / (2 * 1.6448536269514722), 9);
  });

  it("spreads as the covariance of a weak unknown with the wet-out says: less where the two pull against each other", () => {
    const garment = "denim 50/50";
    const prior = priorAsBelief(garment, MIXES.clear);
    const at = (one: number, other: number): number => one * BELIEF_AXIS_COUNT + other;
    const closed = 3;
    const tied = (correlation: number): number => {
      const covariance = prior.covariance.slice();
      covariance[at(0, 0)] = 0.01;
      const both = correlation * Math.sqrt(covariance[at(0, 0)]! * covariance[at(closed, closed)]!);
      covariance[at(0, closed)] = both;
      covariance[at(closed, 0)] = both;
      const { spread } = predictPrint({
        ...request(garment, MIXES.clear),
        belief: { ...prior, covariance },
      });
      return spread.p95.deltaL - spread.p5.deltaL;
    };
    // on a mid-tone both a further wet-out and a more closed surface darken
    expect(tied(-0.9)).toBeLessThan(tied(0));
    expect(tied(0)).toBeLessThan(tied(0.9));
  });
});
