// The published tables: complete, and consistent with what they must give.
import { describe, expect, it } from "vitest";
import { daylightFactors, daylightPower, relativePower } from "../../../src/core/colorimetry/illuminants.ts";
import { ILLUMINANT_NAMES } from "../../../src/core/colorimetry/viewing.ts";
import { DAYLIGHT_S0, DAYLIGHT_S1, DAYLIGHT_S2 } from "../../../src/core/tables/daylightBasis.ts";
import { POWER_D65 } from "../../../src/core/tables/illuminantD65.ts";
import { POWER_F11 } from "../../../src/core/tables/illuminantF11.ts";
import { X_BAR_2_DEG, Y_BAR_2_DEG, Z_BAR_2_DEG } from "../../../src/core/tables/observer2Deg.ts";
import { X_BAR_10_DEG, Y_BAR_10_DEG, Z_BAR_10_DEG } from "../../../src/core/tables/observer10Deg.ts";
import { TABLE_COUNT, TABLE_FIRST_NM, TABLE_STEP_NM } from "../../../src/core/tables/tableGrid.ts";

const OBSERVERS = {
  "1931 2 degree": [X_BAR_2_DEG, Y_BAR_2_DEG, Z_BAR_2_DEG],
  "1964 10 degree": [X_BAR_10_DEG, Y_BAR_10_DEG, Z_BAR_10_DEG],
} as const;

const at = (nm: number): number => (nm - TABLE_FIRST_NM) / TABLE_STEP_NM;
const total = (values: Iterable<number>): number => [...values].reduce((sum, value) => sum + value, 0);

describe("the 5 nm tables", () => {
  it("have 81 figures each, 380-780 nm", () => {
    expect(TABLE_COUNT).toBe(81);
    const tables = [
      ...Object.values(OBSERVERS).flat(),
      POWER_D65,
      POWER_F11,
      DAYLIGHT_S0,
      DAYLIGHT_S1,
      DAYLIGHT_S2,
    ];
    for (const table of tables) expect(table).toHaveLength(TABLE_COUNT);
  });

  /** Both observers are normalised to equal sums; cutting at 380 and 780 nm and rounding leave this much. */
  const EQUAL_ENERGY_TOLERANCE = 1e-4;
  it.each(Object.entries(OBSERVERS))(
    "give equal-energy light x = y = 1/3 under the %s observer (CIE normalisation)",
    (_, observer) => {
      const sums = observer.map((table) => total(table));
      for (const sum of sums)
        expect(Math.abs(sum / total(sums) - 1 / 3)).toBeLessThan(EQUAL_ENERGY_TOLERANCE);
    },
  );

  it("peak in ybar at 1 at 555 nm under 2 degrees (CIE 1924 photopic efficiency)", () => {
    expect(Y_BAR_2_DEG[at(555)]).toBe(1);
    expect(Math.max(...Y_BAR_2_DEG)).toBe(1);
  });

  /** D65 is published to six figures; the daylight components to four. */
  const D65_TOLERANCE = 0.001;
  it("give the D65 of the CIE table again from the daylight components with M1 = -0.295, M2 = -0.689", () => {
    const temperatureKelvin = (6500 * 1.4388) / 1.438;
    expect(daylightFactors(temperatureKelvin)).toEqual({ m1: -0.295, m2: -0.689 });
    const recomputed = daylightPower(temperatureKelvin);
    POWER_D65.forEach((value, i) => {
      expect(Math.abs(recomputed[i]! - value)).toBeLessThan(D65_TOLERANCE);
    });
    expect(POWER_D65[at(560)]).toBe(100);
  });
});

describe("the lights given by formula", () => {
  it("give the CIE table of illuminant A to six figures (five values, CIE-A.sp of colord-data 1.4.6)", () => {
    const power = relativePower("A");
    const published = { 380: 9.7951, 460: 37.8121, 560: 100, 660: 171.963, 780: 241.675 };
    for (const [nm, value] of Object.entries(published)) {
      expect(Number(power[at(Number(nm))]!.toPrecision(6))).toBe(value);
    }
  });

  it("refuse a daylight outside the 4000-7000 K that its first chromaticity formula holds for", () => {
    for (const kelvin of [3999, 7001, Number.NaN]) {
      expect(() => daylightPower(kelvin)).toThrow(
        new RangeError(`temperatureKelvin must be 4000..7000; got ${kelvin}`),
      );
    }
  });

  it("are positive at every wavelength, like the tabled ones", () => {
    for (const illuminant of ILLUMINANT_NAMES) {
      const power = relativePower(illuminant);
      expect(power).toHaveLength(TABLE_COUNT);
      for (const value of power) expect(value).toBeGreaterThan(0);
    }
  });
});
