/** What a prediction returns, its limits, its errors, its warnings and reasons. */
import { describe, expect, it } from "vitest";
import { blendReflectance, UNDYED_FIBRE_REFLECTANCE } from "../../../src/core/optics/fibreBlend.ts";
import { filmLayer, reflectanceOverSubstrate } from "../../../src/core/optics/inkFilm.ts";
import { withClosedSurface } from "../../../src/core/optics/saunderson.ts";
import { wettedReflectance } from "../../../src/core/optics/wetOut.ts";
import { halftoneReflectance } from "../../../src/core/optics/yuleNielsen.ts";
import type { Application, Garment, InkMix } from "../../../src/core/prediction/inputs.ts";
import { predictPrint } from "../../../src/core/prediction/predictPrint.ts";
import { defaultCoverFraction, printedFilm } from "../../../src/core/prediction/printedFilm.ts";
import {
  gainsUnder,
  layFilmOver,
  printedReflectance,
} from "../../../src/core/prediction/printedReflectance.ts";
import { wetInto, wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { ALL_COTTON, cloth, FILAMENT_POLYESTER, GARMENTS, HALF_AND_HALF, VIEWING } from "./cloths.ts";
import { base, black, mixOf, SOFT_WHITE, STROKE, tinted, white } from "./inks.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const predict = (garment: Garment, mix: InkMix, application: Application = STROKE, viewing = VIEWING) =>
  predictPrint({ garment, mix, application, viewing, band: BAND });
const CURABLE = mixOf(base("curable"));
/** Sums of 36 products in another order. */
const ROUNDING = 1e-12;

describe("the prediction's loops", () => {
  it.each(["45:0", "specular-included", "specular-excluded"] as const)(
    "lay the film as optics does: layer, cover, closed surface, halftone, under %s",
    (geometry) => {
      const garment = { ...GARMENTS["denim 50/50"]!, geometry };
      const prepared = wettableGarment(garment, VIEWING);
      const film = {
        ...printedFilm(mixOf(base("matt", 0.7), black(0.05), white(0.25)), {
          ...STROKE,
          halftoneFraction: 0.6,
        }),
        coverFraction: 0.8,
        closedFraction: 0.3,
      };
      const wetted = garment.bare.map((r) => 0.9 * r);
      const out = new Float64Array(wetted.length);
      layFilmOver(out, wetted, prepared, film);
      out.forEach((value, i) => {
        const layer = {
          transmittance: Math.sqrt(film.transmittanceSquared[i]!),
          reflectance: film.reflectance[i]!,
        };
        const solid = withClosedSurface(reflectanceOverSubstrate(layer, wetted[i]!), 0.3, geometry);
        const covered = garment.bare[i]! + 0.8 * (solid - garment.bare[i]!);
        expect(Math.abs(value - halftoneReflectance(garment.bare[i]!, covered, 0.6))).toBeLessThan(ROUNDING);
      });
    },
  );

  it("wet a solid as optics does, and a heather fibre by fibre", () => {
    const solid = wettableGarment(GARMENTS["denim tri-blend"]!, VIEWING);
    const gains = Float64Array.of(0.5, 0.02, 0.05);
    const out = new Float64Array(36);
    wetInto(out, solid, gains);
    const factor = 0.5 * Math.exp(0.5) + 0.25 * Math.exp(0.02) + 0.25 * Math.exp(0.05);
    out.forEach((value, i) => {
      expect(Math.abs(value - wettedReflectance(solid.garment.bare[i]!, factor))).toBeLessThan(ROUNDING);
    });
    const heather = wettableGarment(GARMENTS["graphite heather, polyester dyed"]!, VIEWING);
    wetInto(out, heather, Float64Array.of(0, 0));
    out.forEach((value, i) => {
      // Not wetted at all, unmixing and remixing must give the cloth back.
      expect(Math.abs(value - heather.garment.bare[i]!)).toBeLessThan(1e-9);
    });
    wetInto(out, heather, Float64Array.of(0.4, 0.1));
    const undyed = wettedReflectance(UNDYED_FIBRE_REFLECTANCE, Math.exp(0.1));
    const dyedKs = heather.dyedFibreKs!;
    const dyed = (q: number) => 1 + q - Math.sqrt(q * q + 2 * q);
    out.forEach((value, i) => {
      const expected = blendReflectance([dyed(dyedKs[i]! * Math.exp(0.4)), undyed], [0.5, 0.5]);
      expect(Math.abs(value - expected)).toBeLessThan(1e-9);
    });
  });

  it("give the film of one ink as filmLayer does", () => {
    const film = printedFilm(tinted("curable", black, 0.01), STROKE);
    const { absorptionPerUm, scatteringPerUm } = black(1);
    const layer = filmLayer(0.01 * absorptionPerUm[10]!, 0.01 * scatteringPerUm[10]!, 20);
    expect(film.transmittanceSquared[10]!).toBeCloseTo(layer.transmittance ** 2, 12);
    expect(film.reflectance[10]!).toBeCloseTo(layer.reflectance, 12);
  });
});

describe("limits", () => {
  const open = mixOf(base("curable", 1, 0));

  it("no deposit and no closed surface leave the bare cloth", () => {
    for (const garment of Object.values(GARMENTS)) {
      const result = predict(garment, open, { ...STROKE, depositUm: 0 });
      expect(result.deltaE00).toBeLessThan(1e-6);
    }
  });

  it("no halftone dot leaves the bare cloth, a full one the solid", () => {
    const garment = GARMENTS["denim 50/50"]!;
    expect(predict(garment, CURABLE, { ...STROKE, halftoneFraction: 0 }).deltaL).toBeCloseTo(0, 9);
    const solid = predict(garment, CURABLE).deltaL;
    const half = predict(garment, CURABLE, { ...STROKE, halftoneFraction: 0.5 }).deltaL;
    expect(half).toBeLessThan(0);
    expect(half).toBeGreaterThan(solid);
  });

  it("more black never lightens, in any cell", () => {
    for (const garment of Object.values(GARMENTS)) {
      let last = predict(garment, CURABLE).printed.L;
      for (const part of [0.001, 0.0025, 0.005, 0.01]) {
        const now = predict(garment, tinted("curable", black, part)).printed.L;
        // On black cloth the black's own scattering weighs against its absorption: 0.1 in L* is no lightening to see.
        expect(now).toBeLessThan(last + 0.1);
        last = now;
      }
    }
  });

  it("a surprise of ln 2 in wet-out doubles the gain", () => {
    const prepared = wettableGarment(GARMENTS["brick spun polyester"]!, VIEWING);
    const film = printedFilm(CURABLE, STROKE);
    const [usual] = gainsUnder(prepared, film);
    expect(gainsUnder(prepared, film, { lnWetOut: Math.LN2 })[0]!).toBeCloseTo(2 * usual!, 12);
    expect(gainsUnder(prepared, film, { lnFibreGain: [Math.LN2] })[0]!).toBeCloseTo(2 * usual!, 12);
    const stronger = printedReflectance(prepared, CURABLE, STROKE, { lnWetOut: Math.LN2 });
    const asExpected = printedReflectance(prepared, CURABLE, STROKE);
    expect(stronger[20]!).toBeLessThan(asExpected[20]!);
  });

  it("covers the cloth less the more white a mix holds, down to half", () => {
    expect(defaultCoverFraction(CURABLE)).toBe(1);
    expect(defaultCoverFraction(tinted("softHand", white, 0.25))).toBeCloseTo(0.75, 12);
    expect(defaultCoverFraction(SOFT_WHITE)).toBe(0.5);
    expect(defaultCoverFraction(mixOf(white(1)))).toBe(0.5);
  });

  it("takes a mix of white alone, which counts as its own base, and a concentrate that does not", () => {
    expect(printedFilm(mixOf(white(1)), STROKE).wetOutStrength).toBeCloseTo(1, 12);
    expect(printedFilm(mixOf({ ...white(1), ownBaseStrength: null }), STROKE).wetOutStrength).toBe(0);
    expect(printedFilm(CURABLE, { ...STROKE, smoothed: true }).closedFraction).toBe(0.2);
  });
});

describe("errors name the value and its range", () => {
  it("for a mix that does not sum to 1", () => {
    expect(() => predict(GARMENTS["navy cotton"]!, mixOf(base("gloss", 0.9)))).toThrow(/sum to 1; got 0.9/);
  });
  it("for fibres that do not sum to 1, and for a spectrum of another length", () => {
    const short = cloth([40, 0, 0], [["cotton", 0.8]]);
    expect(() => predict(short, CURABLE)).toThrow(/fibre mass fractions must sum to 1; got 0.8/);
    const bare = new Float64Array(31).fill(0.4);
    expect(() => predict({ ...GARMENTS["navy cotton"]!, bare }, CURABLE)).toThrow(/36 bands; got 31/);
  });
  it("for a reflectance above what cloth gives", () => {
    const bare = new Float64Array(36).fill(1.6);
    expect(() => predict({ ...GARMENTS["navy cotton"]!, bare }, CURABLE)).toThrow(/0..1.5/);
  });
});

describe("warnings", () => {
  const plain = cloth([60, 5, 5], HALF_AND_HALF);
  const warned = (garment: Garment, mix = CURABLE, application = STROKE, viewing = VIEWING) =>
    predict(garment, mix, application, viewing).warnings;

  it("come with none of the causes: none", () => {
    expect(warned(plain)).toEqual([]);
  });
  it("dark-limit under R = 0.05, and the spread of epsilon is half as wide again", () => {
    expect(warned(GARMENTS["black filament polyester"]!)).toContain("dark-limit");
  });
  it("brightener over R = 0.99, whose excess comes back as it is", () => {
    const bare = new Float64Array(36).fill(0.9);
    bare[6] = 1.1;
    const garment: Garment = { ...cloth([95, 0, 0], ALL_COTTON), bare };
    expect(warned(garment)).toContain("brightener");
    const result = predict(garment, mixOf(base("gloss", 1, 0)));
    expect(result.printedReflectance[6]!).toBeCloseTo(1.1, 12);
  });
  it("deposit-outside-range below 3 and above 80 um", () => {
    for (const [depositUm, expected] of [
      [2.9, true],
      [3, false],
      [80, false],
      [81, true],
    ] as const) {
      expect(warned(plain, CURABLE, { ...STROKE, depositUm }).includes("deposit-outside-range")).toBe(
        expected,
      );
    }
  });
  it("heather-as-solid where no dyed fibre could give the blend, or it would be lighter than white", () => {
    const dark = cloth(
      [20, 0, 0],
      [
        ["cotton", 0.9, false],
        ["polyester-spun", 0.1],
      ],
    );
    expect(warned(dark)).toContain("heather-as-solid");
    const light = cloth(
      [97, 0, 0],
      [
        ["cotton", 0.5, false],
        ["polyester-spun", 0.5],
      ],
    );
    expect(warned(light)).toContain("heather-as-solid");
    expect(warned(GARMENTS["graphite heather, polyester dyed"]!)).not.toContain("heather-as-solid");
  });
  it("milky-haze for a little white, not for half white", () => {
    expect(warned(plain, tinted("curable", white, 0.05))).toContain("milky-haze");
    expect(warned(plain, SOFT_WHITE)).not.toContain("milky-haze");
  });
  it("bare-approximate for a screen colour; light-indicative for a reconstruction under another light", () => {
    expect(warned({ ...plain, bareSource: "approximate" })).toContain("bare-approximate");
    const underA = { illuminant: "A", observer: "10deg" } as const;
    expect(warned(plain, CURABLE, STROKE, underA)).toContain("light-indicative");
    const measured: Garment = { ...plain, bareSource: "measured", readUnder: null };
    expect(warned(measured, CURABLE, STROKE, underA)).not.toContain("light-indicative");
  });
});

describe("reasons", () => {
  const reasons = (garment: Garment, mix: InkMix) => predict(garment, mix).reasons;
  it("say what carries or prevents the change", () => {
    expect(reasons(GARMENTS["denim 50/50"]!, CURABLE)).toContain("polyester-deepens");
    expect(reasons(GARMENTS["navy cotton"]!, CURABLE)).toContain("cotton-hardly-wets");
    expect(reasons(GARMENTS["white filament polyester"]!, CURABLE)).toContain("no-colour-to-deepen");
    expect(reasons(GARMENTS["red heather, cotton dyed"]!, CURABLE)).toContain(
      "undyed-fibre-carries-the-wetting",
    );
    expect(reasons(GARMENTS["black filament polyester"]!, CURABLE)).toContain("little-room-to-darken");
    expect(reasons(GARMENTS["navy cotton"]!, tinted("curable", black, 0.005))).toContain(
      "tint-does-the-work",
    );
    expect(reasons(GARMENTS["denim 50/50"]!, tinted("curable", black, 0.001))).not.toContain(
      "tint-does-the-work",
    );
    expect(reasons(cloth([40, 0, 0], FILAMENT_POLYESTER), SOFT_WHITE)).toContain("white-ink-lightens");
  });
});

describe("what a prediction returns", () => {
  it("hangs together: differences are those of its own two colours", () => {
    const result = predict(GARMENTS["denim 50/50"]!, tinted("curable", black, 0.0025));
    expect(result.deltaL).toBeCloseTo(result.printed.L - result.bare.L, 12);
    expect(result.deltaEab ** 2).toBeCloseTo(
      result.deltaL ** 2 + result.deltaChroma ** 2 + result.deltaHue ** 2,
      6,
    );
    expect(result.evidence).toBe("model only");
    expect(["2", "2-3", "3", "3-4"]).toContain(result.greyScaleGrade);
  });
});
