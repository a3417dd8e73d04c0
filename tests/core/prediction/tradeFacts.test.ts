/** The twelve facts of the trade that the default parameters must reproduce: common practice, no source. */
import { describe, expect, it } from "vitest";
import { chroma, deltaE00 } from "../../../src/core/colorimetry/difference.ts";
import type { Application, Garment, InkMix } from "../../../src/core/prediction/inputs.ts";
import { type PredictionRequest, predictPrint } from "../../../src/core/prediction/predictPrint.ts";
import {
  BASE_ON_STYLE_SD,
  COLOURWAY_SD,
  LOT_SD,
  MILL_SD,
  STYLE_SD,
} from "../../../src/core/prediction/unknowns.ts";
import {
  ALL_COTTON,
  cloth,
  FILAMENT_POLYESTER,
  GARMENTS,
  HALF_AND_HALF,
  TRI_BLEND,
  VIEWING,
} from "./cloths.ts";
import {
  BASES,
  type BaseName,
  base,
  black,
  FINE_DEPOSIT_UM,
  mixOf,
  SOFT_WHITE,
  STROKE,
  tinted,
  white,
} from "./inks.ts";

const BAND: PredictionRequest["band"] = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const CLEAR = mixOf(base("gloss"));

function printed(garment: Garment, mix: InkMix, application: Application = STROKE) {
  return predictPrint({ garment, mix, application, viewing: VIEWING, band: BAND });
}
const deltaL = (garment: Garment, mix: InkMix, application: Application = STROKE): number =>
  printed(garment, mix, application).deltaL;

const MID_TONE: readonly [number, number, number] = [48, -3, -20];
const MID_RED: readonly [number, number, number] = [45, 40, 20];

describe("facts of the trade (common practice, no source)", () => {
  it("1: clear on dyed polyester darkens a mid-tone 50/50 and a tri-blend by at least 2 in L*", () => {
    expect(deltaL(cloth(MID_TONE, HALF_AND_HALF), CLEAR)).toBeLessThanOrEqual(-2);
    expect(deltaL(cloth(MID_TONE, TRI_BLEND), CLEAR)).toBeLessThanOrEqual(-2);
  });

  it("2: clear on cotton shows nothing: under 1 in CIEDE2000 for any all-cotton colour, without the mirrored part", () => {
    for (const lab of [
      [15, 1, -3],
      [21.5, 1.5, -14],
      [40, 45, 25],
      [60, -20, 15],
      [80, 2, 40],
      [95, 0, 2],
    ] as const) {
      for (const geometry of ["45:0", "specular-excluded"] as const) {
        for (const name of ["gloss", "halftone", "stretch", "curable", "softHand"] as const) {
          const result = printed(cloth(lab, ALL_COTTON, { geometry }), mixOf(base(name)));
          expect(result.deltaE00, `${lab} ${name}`).toBeLessThan(1);
        }
      }
    }
  });

  it("3: white polyester does not darken: under 1 in CIEDE2000 at L* 95, and for blends at L* 93", () => {
    expect(printed(cloth([95, 0.5, -2], FILAMENT_POLYESTER), CLEAR).deltaE00).toBeLessThan(1);
    expect(printed(cloth([95, 0, 0], [["polyester-spun", 1]]), CLEAR).deltaE00).toBeLessThan(1);
    expect(printed(cloth([93, 0.5, -1], HALF_AND_HALF), CLEAR).deltaE00).toBeLessThan(1);
  });

  it("4: one clear gives different strengths over L* 15..90 of one blend, the largest at least twice the smallest", () => {
    const changes = [15, 25, 35, 45, 55, 65, 75, 85, 90].map(
      (L) => -deltaL(cloth([L, 2, -4], HALF_AND_HALF), CLEAR),
    );
    expect(Math.max(...changes)).toBeGreaterThanOrEqual(2 * Math.min(...changes));
    expect(Math.min(...changes)).toBeGreaterThan(0);
  });

  it("5: clears differ less on one garment than garments do under one clear", () => {
    const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
    const clears = (Object.keys(BASES) as BaseName[]).map((name) =>
      deltaL(GARMENTS["forest 50/50"]!, mixOf(base(name))),
    );
    const garments = Object.values(GARMENTS).map((garment) => deltaL(garment, mixOf(base("curable"))));
    expect(range(clears)).toBeLessThan(range(garments));
  });

  it("6: an all-polyester filament garment reacts less than a tri-blend or 50/50 of the same colour", () => {
    const filament = -deltaL(cloth(MID_TONE, FILAMENT_POLYESTER), CLEAR);
    expect(filament).toBeLessThan(-deltaL(cloth(MID_TONE, TRI_BLEND), CLEAR));
    expect(filament).toBeLessThan(-deltaL(cloth(MID_TONE, HALF_AND_HALF), CLEAR));
  });

  it("7: half a percent of black deepens a mid red 1.7 to 3 times as much as the clear alone", () => {
    for (const blend of [HALF_AND_HALF, TRI_BLEND]) {
      const red = cloth(MID_RED, blend);
      const ratio = deltaL(red, tinted("curable", black, 0.005)) / deltaL(red, mixOf(base("curable")));
      expect(ratio).toBeGreaterThanOrEqual(1.7);
      expect(ratio).toBeLessThanOrEqual(3);
    }
  });

  it("8: the same half percent on neutral white reads as a very light grey: L* 80..90, C* under 3", () => {
    const { printed: lab } = printed(cloth([95, 0, 0], HALF_AND_HALF), tinted("curable", black, 0.005));
    expect(lab.L).toBeGreaterThanOrEqual(80);
    expect(lab.L).toBeLessThanOrEqual(90);
    expect(chroma(lab)).toBeLessThan(3);
  });

  it("9: twice the expected wet-out lies in the 95 % interval of epsilon, three times in the 99.5 % one", () => {
    const sd = Math.hypot(STYLE_SD, MILL_SD, COLOURWAY_SD, LOT_SD, BASE_ON_STYLE_SD);
    // Two-sided normal points from Abramowitz & Stegun 1964, table 26.5: 1.96 and 2.81.
    expect(Math.log(2)).toBeLessThan(1.96 * sd);
    expect(Math.log(3)).toBeLessThan(2.81 * sd);
    expect(Math.log(3)).toBeGreaterThan(1.96 * sd);
  });

  it("10: a weaker clear rescues a run that prints 2.6 times too dark, still a little darker than approved", () => {
    const forest = GARMENTS["forest 50/50"]!;
    const approved = deltaL(forest, mixOf(base("curable")));
    const weaker = deltaL(forest, mixOf(base("matt")));
    expect(weaker).toBeGreaterThan(approved);
    expect(weaker / approved).toBeGreaterThan(1 / 2.6);
  });

  it("11: half white, half soft-hand additive lightens L* 20 to 40..75; a full white at three times the deposit to 85", () => {
    const dark = cloth([20, 1, -4], ALL_COTTON);
    const soft = printed(dark, SOFT_WHITE, { ...STROKE, depositUm: FINE_DEPOSIT_UM }).printed.L;
    expect(soft).toBeGreaterThanOrEqual(40);
    expect(soft).toBeLessThanOrEqual(75);
    const opaque: InkMix = { parts: [white(1)], clothCoverFraction: 1 };
    expect(
      printed(dark, opaque, { ...STROKE, depositUm: 3 * FINE_DEPOSIT_UM }).printed.L,
    ).toBeGreaterThanOrEqual(85);
  });

  it("12: a thinner deposit has a weaker effect, all the way down", () => {
    let last = 0;
    for (const depositUm of [3, 6, 9, 12, 16, 20, 28, 40, 60, 80]) {
      const change = -deltaL(GARMENTS["denim 50/50"]!, mixOf(base("curable")), { ...STROKE, depositUm });
      expect(change).toBeGreaterThan(last);
      last = change;
    }
  });
});

describe("the heather pair that the design computed (spun polyester, reference clear, 20 um, no closed surface)", () => {
  /** The design gives one decimal; its observer is not stated, 2 and 10 degrees differ by less than this. */
  const ROUNDING = 0.06;
  const openClear = mixOf(base("gloss", 1, 0));
  const heather = (dyed: "polyester" | "cotton") =>
    cloth(
      [60, 0, -1],
      [
        ["polyester-spun", 0.5, dyed === "polyester"],
        ["cotton", 0.5, dyed === "cotton"],
      ],
    );

  it("darkens by 6.6 with the polyester dyed and by 0.6 with the cotton dyed", () => {
    expect(Math.abs(deltaL(heather("polyester"), openClear) + 6.6)).toBeLessThan(ROUNDING);
    expect(Math.abs(deltaL(heather("cotton"), openClear) + 0.6)).toBeLessThan(ROUNDING);
  });

  it("would darken by 7.3 and 0.3 with dye shares alone", () => {
    const solid = (blend: Parameters<typeof cloth>[1]) => deltaL(cloth([60, 0, -1], blend), openClear);
    expect(Math.abs(solid([["polyester-spun", 1]]) + 7.3)).toBeLessThan(ROUNDING);
    expect(Math.abs(solid([["cotton", 1]]) + 0.3)).toBeLessThan(ROUNDING);
  });

  it("is symmetric in nothing: CIEDE2000 of the two prints differs plainly", () => {
    const a = printed(heather("polyester"), openClear).printed;
    const b = printed(heather("cotton"), openClear).printed;
    expect(deltaE00(a, b)).toBeGreaterThan(4);
  });
});
