// Ink by print and batch: published wet heights and volumes, the trade's grams per print, US units, spoilage, pots.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batchSize, SCREEN_WET_GRAMS } from "../../../../src/core/planning/ink/batchSize.ts";
import {
  gramsPerPrint,
  inkToMix,
  mixDensityGramsPerCm3,
  printedAreaM2,
} from "../../../../src/core/planning/ink/inkQuantity.ts";
import { potLimitGrams, potsFor, USUAL_POT_SIZES } from "../../../../src/core/planning/ink/pots.ts";
import {
  SPARE_PIECE_COUNTS,
  SPOILAGE_STATUS,
  spoilageFraction,
  spoiledPieceCount,
} from "../../../../src/core/planning/ink/spoilage.ts";
import { publishedWetHeightUm } from "../../../../src/core/planning/ink/wetHeightRule.ts";
import { openAreaFraction, openingUm, theoreticalInkVolume } from "../../../../src/core/screen/mesh.ts";
import { GRAM, INCH, OUNCE, PER_INCH, show } from "../../../../src/units/unit.ts";
import published from "../../../published/ink-quantity.json";
import { between } from "../../optics/between.ts";

const DENSITY = 1.15;
/** Printed to a whole unit. */
const HALF_A_UNIT = 0.5 + 1e-9;

const size = { widthMm: 280, heightMm: 330, coverFraction: 0.5, halftoneFraction: 1 };

describe("the published wet height (trade article, April 2000)", () => {
  it("gives 61.76, 14.25 and 28 um for its three rows", () => {
    for (const row of published.wetHeight) {
      const decimals = row.wetHeightUm.split(".")[1]?.length ?? 0;
      const miss = Math.abs(publishedWetHeightUm(row) - Number(row.wetHeightUm));
      expect(miss, row.rule).toBeLessThan(0.5 * 10 ** -decimals + 1e-9);
    }
  });

  it("is about 0.81 of the theoretical volume at 120-34 with a fabric of 55 um", () => {
    const mesh = { threadsPerCm: 120, threadDiameterUm: 34, fabricThicknessUm: 55 };
    const ratio = publishedWetHeightUm(mesh) / theoreticalInkVolume(mesh).volumeUm;
    expect(ratio).toBeCloseTo(published.wetHeightOverVolumeAt120, 2);
  });

  it("changes its rule at 43 and 140 threads/cm, and takes 1.6 threads where the thickness is not given", () => {
    const at = (threadsPerCm: number) => publishedWetHeightUm({ threadsPerCm, threadDiameterUm: 31 });
    expect(at(42)).toBeCloseTo(1.82 * 31 * (1 - 0.42 * 0.31) ** 2, 12);
    expect(at(43)).toBeCloseTo(0.285 * 1.6 * 31, 12);
    expect(at(139)).toBe(at(43));
    expect(at(140)).toBeCloseTo(0.35 * 1.6 * 31, 12);
  });

  it("refuses a mesh that is none", () => {
    expect(() => publishedWetHeightUm({ threadsPerCm: 0, threadDiameterUm: 60 })).toThrow(
      "threadsPerCm must be above 0",
    );
    expect(() => publishedWetHeightUm({ threadsPerCm: 100, threadDiameterUm: 100 })).toThrow(
      "below the pitch of 100",
    );
  });
});

describe("the trade's table of meshes (computed there at 1.55 threads)", () => {
  it("has our opening, open area and volume to its rounding", () => {
    for (const row of published.volumes) {
      const mesh = { ...row, fabricThicknessUm: published.thicknessPerThread * row.threadDiameterUm };
      const at = `${row.threadsPerCm}-${row.threadDiameterUm}`;
      expect(Math.abs(openingUm(mesh) - row.openingUm), at).toBeLessThanOrEqual(HALF_A_UNIT);
      expect(Math.abs(100 * openAreaFraction(mesh) - row.openAreaPercent), at).toBeLessThanOrEqual(
        HALF_A_UNIT,
      );
      expect(Math.abs(theoreticalInkVolume(mesh).volumeUm - row.volumeUm), at).toBeLessThanOrEqual(
        HALF_A_UNIT,
      );
    }
  });
});

describe("grams per print", () => {
  it("fall in the trade's range for 28 x 33 cm at 50 % cover, for all four meshes, counted at transfer 1.0", () => {
    expect(published.gramsPerPrint.rows).toHaveLength(4);
    for (const row of published.gramsPerPrint.rows) {
      const { inkToMixUm, weighed } = inkToMix(row, { strokeCount: 1 }, null);
      const grams = gramsPerPrint(printedAreaM2(size), inkToMixUm, DENSITY);
      expect(weighed).toBe(false);
      expect(grams, `${row.threadsPerInch} mesh`).toBeGreaterThanOrEqual(row.fewestGrams);
      expect(grams, `${row.threadsPerInch} mesh`).toBeLessThanOrEqual(row.mostGrams);
      expect(Math.abs(show(row.threadsPerCm, PER_INCH) - row.threadsPerInch)).toBeLessThan(2);
    }
  });

  it("are 1.93 g on 0.06 m2 through 43-80 at transfer 0.5 (calculated for the design notes)", () => {
    expect(Math.abs(gramsPerPrint(0.06, 55.9 * 0.5, 1.15) - 1.93)).toBeLessThan(0.005);
  });

  it("come from the weighed figure once there is one: area x g/m2, whatever mesh and strokes say", () => {
    const mesh = { threadsPerCm: 61, threadDiameterUm: 64 };
    const found = inkToMix(mesh, { strokeCount: 3 }, { meanGsm: 24, densityGramsPerCm3: 1.2 });
    expect(found.weighed).toBe(true);
    expect(gramsPerPrint(printedAreaM2(size), found.inkToMixUm, 1.2)).toBeCloseTo(0.0462 * 24, 12);
    // the mesh meters volume: a denser ink weighs more
    expect(gramsPerPrint(0.0462, found.inkToMixUm, 1.5)).toBeCloseTo(0.0462 * 20 * 1.5, 12);
  });

  it("are the same of an artwork given in inches, and show in ounces by the NIST factors", () => {
    const inches = { ...size, widthMm: INCH.toStored(11), heightMm: INCH.toStored(13) };
    const areaM2 = printedAreaM2(inches);
    expect(areaM2).toBeCloseTo(11 * 13 * 0.0254 * 0.0254 * 0.5, 15);
    const grams = gramsPerPrint(areaM2, 38, DENSITY);
    expect(show(grams, OUNCE) * 28.349523125).toBeCloseTo(grams, 12);
    expect(show(grams, GRAM)).toBe(grams);
  });

  it("grow in proportion to every side, cover, halftone, film and density", () => {
    fc.assert(
      fc.property(between(0.01, 1), between(1, 60), between(0.9, 1.6), (part, filmUm, density) => {
        const whole = gramsPerPrint(printedAreaM2(size), filmUm, density);
        expect(
          gramsPerPrint(printedAreaM2({ ...size, halftoneFraction: part }), filmUm, density),
        ).toBeCloseTo(part * whole, 10);
        expect(gramsPerPrint(printedAreaM2({ ...size, widthMm: 280 * part }), filmUm, density)).toBeCloseTo(
          part * whole,
          10,
        );
      }),
    );
  });

  it("use the density of the mix, volumes added up: equal masses of 1.5 and 1.2 make 4/3", () => {
    const half = (densityGramsPerCm3: number) => ({ massFraction: 0.5, densityGramsPerCm3 });
    expect(mixDensityGramsPerCm3([half(1.5), half(1.2)])).toBeCloseTo(4 / 3, 12);
    expect(() => mixDensityGramsPerCm3([])).toThrow("a mix must hold something");
  });

  it("refuse figures out of range by name", () => {
    expect(() => printedAreaM2({ ...size, widthMm: 0 })).toThrow("widthMm must be above 0 and finite; got 0");
    expect(() => printedAreaM2({ ...size, coverFraction: 1.1 })).toThrow(
      "coverFraction must be in 0..1; got 1.1",
    );
    expect(() => gramsPerPrint(-1, 20, 1)).toThrow("areaM2 must be >= 0 and finite; got -1");
    expect(() => gramsPerPrint(1, 20, Number.NaN)).toThrow(
      "densityGramsPerCm3 must be above 0 and finite; got NaN",
    );
  });
});

describe("a batch", () => {
  const use = { printCount: 1000, spoilageFraction: 0.02, mixedGramsPerPrint: 2, expectedGramsPerPrint: 1.2 };

  it("is prints x (1 + spoilage) x grams x 1.1 + what keeps the screens wet, over all uses (common practice)", () => {
    const size = batchSize([use, { ...use, printCount: 500 }], 2, 300);
    expect(size.batchGrams).toBeCloseTo(1500 * 1.02 * 2 * 1.1 + 600, 9);
    expect(size.printGrams + size.handlingGrams + size.screenGrams).toBe(size.batchGrams);
    expect(size.printCount).toBeCloseTo(1530, 12);
    expect(size.leftOverGrams).toBeCloseTo(size.batchGrams - 1530 * 1.2, 9);
  });

  it("takes 400 g a screen by default, and nothing where nothing is printed", () => {
    expect(batchSize([use], 1).screenGrams).toBe(SCREEN_WET_GRAMS);
    expect(batchSize([], 1)).toMatchObject({ batchGrams: 0, leftOverGrams: 0 });
  });

  it("refuses negative figures and half screens", () => {
    expect(() => batchSize([{ ...use, printCount: -1 }], 1)).toThrow(
      "printCount must be >= 0 and finite; got -1",
    );
    expect(() => batchSize([use], 1.5)).toThrow("screenCount must be a whole number; got 1.5");
    expect(() => batchSize([use], -1)).toThrow("screenCount must be >= 0");
    expect(() => batchSize([use], 1, Number.NaN)).toThrow("screenWetGrams must be >= 0");
  });
});

describe("spoilage by posted terms", () => {
  it("is 3 %; 1.5 % or a piece; 1 % over 1,000, 2 % over 144, 5 % below; or the shop's own", () => {
    expect(spoilageFraction({ code: "three-percent" }, 10)).toBe(0.03);
    expect(spoiledPieceCount({ code: "one-and-a-half-percent" }, 20)).toBe(1);
    expect(spoiledPieceCount({ code: "one-and-a-half-percent" }, 2000)).toBe(30);
    expect(spoilageFraction({ code: "one-and-a-half-percent" }, 0)).toBe(0.015);
    const byQuantity = [144, 145, 1000, 1001].map((count) =>
      spoilageFraction({ code: "by-quantity" }, count),
    );
    expect(byQuantity).toEqual([0.05, 0.02, 0.02, 0.01]);
    expect(spoiledPieceCount({ code: "shop", fraction: 0.02 }, 2100)).toBe(42);
    expect(spoiledPieceCount({ code: "shop", fraction: 0.02 }, 120)).toBe(3);
    expect(SPOILAGE_STATUS.shop).toBe("shop");
    expect(SPARE_PIECE_COUNTS).toEqual({ fewest: 6, most: 12 });
  });

  it("refuses counts and fractions that are none", () => {
    expect(() => spoilageFraction({ code: "three-percent" }, 1.5)).toThrow("whole number >= 0; got 1.5");
    expect(() => spoilageFraction({ code: "shop", fraction: 2 }, 10)).toThrow(
      "fraction must be in 0..1; got 2",
    );
  });
});

describe("pots", () => {
  it("are the smallest that takes the batch, else the fewest of the largest in equal shares, with room to correct", () => {
    expect(potsFor(500, USUAL_POT_SIZES, 1.2)).toMatchObject({
      size: { id: "quart" },
      potCount: 1,
      gramsPerPot: 500,
    });
    const many = potsFor(40_000, USUAL_POT_SIZES, 1.2);
    expect(many).toMatchObject({ size: { id: "five-gallons" }, potCount: 3 });
    fc.assert(
      fc.property(between(0, 80_000), (batchGrams) => {
        const pots = potsFor(batchGrams, USUAL_POT_SIZES, 1.2);
        expect(pots.gramsPerPot * pots.potCount).toBeCloseTo(batchGrams, 6);
        expect(pots.gramsPerPot).toBeLessThanOrEqual(pots.potLimitGrams * (0.7 / 0.9) * (1 + 1e-12));
        const one = USUAL_POT_SIZES.filter((pot) => pot.volumeCm3 * 0.7 * 1.2 >= batchGrams);
        if (one.length > 0) expect(pots.size.volumeCm3).toBe(Math.min(...one.map((pot) => pot.volumeCm3)));
        else expect(pots.potCount).toBe(Math.ceil(batchGrams / (18927 * 0.7 * 1.2)));
      }),
    );
  });

  it("refuse what is none", () => {
    expect(() => potsFor(100, [], 1.2)).toThrow("sizes must have a pot; got none");
    expect(() => potsFor(-1, USUAL_POT_SIZES, 1.2)).toThrow("batchGrams must be >= 0 and finite; got -1");
    expect(() => potLimitGrams({ id: "x", volumeCm3: 0 }, 1)).toThrow("volumeCm3 must be above 0; got 0");
    expect(() => potLimitGrams({ id: "x", volumeCm3: 1 }, 0)).toThrow(
      "densityGramsPerCm3 must be above 0; got 0",
    );
  });
});
