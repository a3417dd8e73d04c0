// Laws that every spread keeps, whatever its numbers are; the numbers themselves are held by spread.test.ts.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Application, Garment, InkMix, TargetBand } from "../../../src/core/prediction/inputs.ts";
import type { SpreadSource } from "../../../src/core/prediction/prediction.ts";
import { type PredictionRequest, predictPrint } from "../../../src/core/prediction/predictPrint.ts";
import { DARK_LIMIT_WIDENING } from "../../../src/core/prediction/unknowns.ts";
import { cloth, GARMENTS, HALF_AND_HALF, VIEWING } from "./cloths.ts";
import { base, black, mixOf, navy, red, SOFT_WHITE, STROKE, tinted } from "./inks.ts";
import { GRID_MIXES } from "./spreadGrid.ts";

const BAND: TargetBand = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };

function request(
  garment: Garment,
  mix: InkMix,
  more: Partial<Application> = {},
  band: Partial<TargetBand> = {},
) {
  const application = { ...STROKE, ...more };
  return {
    garment,
    mix,
    application,
    viewing: VIEWING,
    band: { ...BAND, ...band },
  } satisfies PredictionRequest;
}
const widthOf = (of: PredictionRequest): number => {
  const { p5, p95 } = predictPrint(of).spread;
  return p95.deltaL - p5.deltaL;
};
const garments = fc.constantFrom(...Object.values(GARMENTS));
const mixes = fc.constantFrom(...Object.values(GRID_MIXES).map(({ mix }) => mix));

describe("laws of the spread", () => {
  it("the same input gives the same output, and predicting something else between changes nothing", () => {
    const one = request(GARMENTS["forest 50/50"]!, tinted("curable", black, 0.005));
    const first = predictPrint(one);
    predictPrint(request(GARMENTS["red heather, cotton dyed"]!, mixOf(base("matt"))));
    predictPrint(request(GARMENTS["black filament polyester"]!, tinted("matt", navy, 0.02)));
    expect(predictPrint(one)).toEqual(first);
  });

  it("5 %, 50 % and 95 % stand in order, chance stays in 0..1, and each point's Lab has its delta-L*", () => {
    fc.assert(
      fc.property(
        garments,
        mixes,
        fc.boolean(),
        fc.integer({ min: 3, max: 80 }),
        (garment, mix, weighed, X) => {
          const { bare, spread } = predictPrint(
            request(garment, mix, { depositWeighed: weighed, depositUm: X }),
          );
          const { p5, p50, p95, chanceInBand } = spread;
          expect(p5.deltaL).toBeLessThan(p50.deltaL);
          expect(p50.deltaL).toBeLessThan(p95.deltaL);
          expect(chanceInBand).toBeGreaterThanOrEqual(0);
          expect(chanceInBand).toBeLessThanOrEqual(1 + 1e-12);
          for (const point of [p5, p50, p95]) expect(point.lab.L - bare.L).toBeCloseTo(point.deltaL, 10);
        },
      ),
    );
  });

  it("a deposit that was only estimated spreads wider than a weighed one wherever the deposit matters", () => {
    for (const name of [
      "forest 50/50",
      "denim tri-blend",
      "white filament polyester",
      "brick spun polyester",
    ]) {
      for (const mix of [tinted("curable", black, 0.005), SOFT_WHITE]) {
        const at = (depositWeighed: boolean) => widthOf(request(GARMENTS[name]!, mix, { depositWeighed }));
        expect(at(false)).toBeGreaterThan(at(true));
      }
    }
  });

  it("a resistant finish, a base that is not the reference, and a dark cloth each widen it", () => {
    const garment = GARMENTS["slate filament polyester, repellent"]!;
    const clear = mixOf(base("gloss"));
    const unfinished = { ...garment, resistantFinish: false };
    expect(widthOf(request(garment, clear))).toBeGreaterThan(widthOf(request(unfinished, clear)));
    const unsure = mixOf({ ...base("gloss"), reference: false });
    expect(widthOf(request(garment, unsure))).toBeGreaterThan(widthOf(request(garment, clear)));
    // a band just under R = 0.05 against all bands just above
    const flat = (R: number) => cloth([27, 0, 0], HALF_AND_HALF, { bare: new Float64Array(36).fill(R) });
    const ratio = widthOf(request(flat(0.0499), clear)) / widthOf(request(flat(0.0501), clear));
    expect(ratio).toBeGreaterThan(1 + (DARK_LIMIT_WIDENING - 1) / 2);
    expect(ratio).toBeLessThan(1 + 1.5 * (DARK_LIMIT_WIDENING - 1));
  });

  it("chance rises with the tolerance and reaches 1 where everything is allowed", () => {
    fc.assert(
      fc.property(garments, mixes, (garment, mix) => {
        let before = 0;
        for (const tolerance of [0.1, 0.5, 1.5, 4, 10, 30, 200]) {
          const { chanceInBand } = predictPrint(
            request(garment, mix, {}, { tolerance, hueLimit: 100 }),
          ).spread;
          expect(chanceInBand).toBeGreaterThanOrEqual(before - 1e-12);
          before = chanceInBand;
        }
        expect(before).toBeCloseTo(1, 9);
      }),
      { numRuns: 40 },
    );
  });

  it("half of all prints are darker than the 50 % point, a twentieth than the 5 % point", () => {
    const FAR = 500;
    for (const garment of Object.values(GARMENTS)) {
      for (const { mix } of Object.values(GRID_MIXES)) {
        const { p5, p50, p95 } = predictPrint(request(garment, mix)).spread;
        const below = (limit: number): number =>
          predictPrint(request(garment, mix, {}, { deltaL: limit - FAR, tolerance: FAR, hueLimit: 100 }))
            .spread.chanceInBand;
        // read from the same bins, so only the interpolation between bin edges parts them
        expect(below(p5.deltaL)).toBeCloseTo(0.05, 6);
        expect(below(p50.deltaL)).toBeCloseTo(0.5, 6);
        expect(below(p95.deltaL)).toBeCloseTo(0.95, 6);
      }
    }
  });

  it("no chance jumps while a tint is dragged: by 0.02 at most in 0.01 %, or, where it truly races, in 0.001 %", () => {
    const MOST = 0.02;
    const STEP = 1e-4;
    // On white cloth 0.01 % of black moves L* by 0.13 within a spread of 0.6: there the chance itself is that steep.
    const RACING = [
      "white filament polyester",
      "red heather, cotton dyed",
      "light grey heather",
      "slate filament polyester, repellent",
    ];
    for (const [name, garment] of Object.entries(GARMENTS)) {
      for (const tint of [black, navy, red]) {
        const at = (part: number): number =>
          predictPrint(request(garment, part === 0 ? mixOf(base("curable")) : tinted("curable", tint, part)))
            .spread.chanceInBand;
        let before = at(0);
        for (let step = 1; step <= 120; step++) {
          const after = at(step * STEP);
          const races = Math.abs(after - before) > MOST;
          if (races) expect(RACING).toContain(name);
          for (let tenth = 1; races && tenth <= 10; tenth++) {
            const next = at((step - 1 + tenth / 10) * STEP);
            expect(Math.abs(next - before)).toBeLessThanOrEqual(MOST);
            before = next;
          }
          before = after;
        }
      }
    }
  });

  it("a navy tint on a red shirt does not pass for a darker red", () => {
    const garment = cloth([45, 50, 28], HALF_AND_HALF);
    const at = (hueLimit: number): number =>
      predictPrint(
        request(garment, tinted("curable", navy, 0.02), {}, { deltaL: -6, tolerance: 3, hueLimit }),
      ).spread.chanceInBand;
    expect(at(100)).toBeGreaterThan(0.3);
    expect(at(2)).toBeLessThan(0.5 * at(100));
  });

  it("the darker end of a clear is the further wetted cloth: darker in every band", () => {
    const { p5, p95 } = predictPrint(request(GARMENTS["denim tri-blend"]!, mixOf(base("curable")))).spread;
    p5.reflectance.forEach((R, i) => {
      expect(R).toBeLessThan(p95.reflectance[i]!);
    });
  });
});

describe("the sources of the spread", () => {
  const sourcesOf = (of: PredictionRequest): SpreadSource[] =>
    predictPrint(of).spread.sources.map(({ source }) => source);

  it("come largest first and name only what is at work", () => {
    const clear = predictPrint(request(GARMENTS["forest 50/50"]!, mixOf(base("gloss")))).spread.sources;
    for (let i = 1; i < clear.length; i++) {
      expect(clear[i]!.sdDeltaL).toBeLessThanOrEqual(clear[i - 1]!.sdDeltaL);
    }
    expect(clear[0]!.source).toBe("mill");
    const names = clear.map(({ source }) => source);
    for (const absent of ["colourant-strength", "black-scattering", "haze", "finish", "base-strength"]) {
      expect(names).not.toContain(absent);
    }
    expect(sourcesOf(request(GARMENTS["forest 50/50"]!, tinted("curable", black, 0.005)))).toEqual(
      expect.arrayContaining(["colourant-strength", "black-scattering", "base-strength", "deposit"]),
    );
    expect(sourcesOf(request(GARMENTS["forest 50/50"]!, mixOf(base("matt"))))).toContain("haze");
    expect(
      sourcesOf(request(GARMENTS["slate filament polyester, repellent"]!, mixOf(base("gloss")))),
    ).toContain("finish");
  });

  it("add in squares to about the width of the spread: 90 % of a normal is 3.29 of its sd", () => {
    for (const name of ["denim tri-blend", "royal filament polyester", "forest 50/50"]) {
      const { sources, p5, p95 } = predictPrint(
        request(GARMENTS[name]!, tinted("curable", black, 0.005)),
      ).spread;
      const sd = Math.hypot(...sources.map(({ sdDeltaL }) => sdDeltaL));
      // the spread is skewed and heavy-tailed, slopes hold at the centre only
      expect((p95.deltaL - p5.deltaL) / (3.29 * sd)).toBeGreaterThan(0.8);
      expect((p95.deltaL - p5.deltaL) / (3.29 * sd)).toBeLessThan(1.3);
    }
  });
});
