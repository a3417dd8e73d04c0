// A little white in a clear: 1 % of titanium dioxide is not 1 % of white ink (design notes on published physics).
import { describe, expect, it } from "vitest";
import { whiteInk } from "../../../../src/core/optics/colourant.ts";
import { filmReflectance } from "../../../../src/core/optics/inkFilm.ts";
import { printedFilm } from "../../../../src/core/prediction/printedFilm.ts";
import { base, mixOf, STROKE, white } from "../../prediction/inks.ts";

// 1 % TiO2 by mass, 30 um, 1.15 g/cm3, 0.55 m2/g (all but the film thickness stated there as assumptions, from memory)
const TITANIUM_GSM = 0.01 * 30 * 1.15;
const SCATTERING_TIMES_DEPOSIT = 0.55 * TITANIUM_GSM;
/** White ink's S over that of its titanium dioxide at 100 %: the share of TiO2 that our default white ink stands for. */
const TITANIUM_IN_WHITE = whiteInk().scatteringPerUm[0]! / (0.55 * 1.15);

describe("a scattering film", () => {
  it("of 1 % titanium dioxide has SX of about 0.19 and lifts 0.05 to 0.195, at the stated assumptions", () => {
    expect(TITANIUM_GSM).toBeCloseTo(0.345, 12);
    expect(Math.abs(SCATTERING_TIMES_DEPOSIT - 0.19)).toBeLessThan(0.005);
    const reflectance = filmReflectance(0, SCATTERING_TIMES_DEPOSIT / 30, 30, 0.05);
    expect(Math.abs(reflectance - 0.195)).toBeLessThan(0.0005);
  });

  it("of 1 % white ink holds 0.28 % of it and lifts 0.05 by less than a third as much", () => {
    expect(TITANIUM_IN_WHITE).toBeCloseTo(0.2846, 3);
    const lift = filmReflectance(0, 0.01 * whiteInk().scatteringPerUm[0]!, 30, 0.05) - 0.05;
    expect(lift).toBeGreaterThan(0.03);
    expect(lift).toBeLessThan((0.195 - 0.05) / 3);
  });

  it("in the planner's film is the same layer: a clear with the white ink that holds 1 % of titanium dioxide", () => {
    const part = 0.01 / TITANIUM_IN_WHITE;
    const film = printedFilm(mixOf(base("gloss", 1 - part), white(part)), { ...STROKE, depositUm: 30 });
    const [T2, R0] = [film.transmittanceSquared[0]!, film.reflectance[0]!];
    const reflectance = R0 + (T2 * 0.05) / (1 - 0.05 * R0);
    // the white ink's own little absorption takes a few thousandths
    expect(Math.abs(reflectance - 0.195)).toBeLessThan(0.003);
  });
});
