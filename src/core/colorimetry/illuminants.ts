/**
 * The relative spectral power of every light at 5 nm: tables where the CIE publishes tables, formulas where it gives them.
 */
import { DAYLIGHT_S0, DAYLIGHT_S1, DAYLIGHT_S2 } from "../tables/daylightBasis.ts";
import { POWER_D65 } from "../tables/illuminantD65.ts";
import { POWER_F11 } from "../tables/illuminantF11.ts";
import { TABLE_COUNT, TABLE_FIRST_NM, TABLE_STEP_NM } from "../tables/tableGrid.ts";
import type { IlluminantName } from "./viewing.ts";

/** Published: CIE 015:2018, second radiation constant 1.4388e-2 m K, against 1.4380e-2 when D50 was defined. */
const D50_TEMPERATURE_KELVIN = (5000 * 1.4388) / 1.438;

/** Published: CIE 015:2018, illuminant A as Planck's law at 2848 K with c2 = 1.435e-2 m K (1.435e7 nm K). */
const A_EXPONENT_NM = 1.435e7 / 2848;
const A_NORM_NM = 560;

/** Our model of a warm phosphor LED (model.md §1): blue chip and phosphor, tuned to x, y of CIE LED-B1. */
const LED_PARTS = [
  { peakNm: 450, sdNm: 10, height: 0.445 },
  { peakNm: 600.9, sdNm: 55, height: 1 },
] as const;

function onTableGrid(valueAt: (wavelengthNm: number, index: number) => number): Float64Array {
  return Float64Array.from({ length: TABLE_COUNT }, (_, i) => valueAt(TABLE_FIRST_NM + i * TABLE_STEP_NM, i));
}

/**
 * M1, M2 of the CIE daylight of a correlated colour temperature, rounded to three decimals as the CIE prescribes.
 * CIE 015:2018 (Judd, MacAdam & Wyszecki 1964). Valid 4000-7000 K.
 * @throws RangeError outside 4000-7000 K.
 */
export function daylightFactors(temperatureKelvin: number): { readonly m1: number; readonly m2: number } {
  if (!(temperatureKelvin >= 4000 && temperatureKelvin <= 7000)) {
    throw new RangeError(`temperatureKelvin must be 4000..7000; got ${temperatureKelvin}`);
  }
  const t = temperatureKelvin;
  const x = -4.607e9 / t ** 3 + 2.9678e6 / t ** 2 + 99.11 / t + 0.244063;
  const y = -3 * x * x + 2.87 * x - 0.275;
  const m = 0.0241 + 0.2562 * x - 0.7341 * y;
  const threeDecimals = (value: number): number => Math.round(value * 1000) / 1000;
  return {
    m1: threeDecimals((-1.3515 - 1.7703 * x + 5.9114 * y) / m),
    m2: threeDecimals((0.03 - 31.4424 * x + 30.0717 * y) / m),
  };
}

/** Relative power of the CIE daylight S0 + M1 S1 + M2 S2 on the 5 nm table grid, 100 at 560 nm. */
export function daylightPower(temperatureKelvin: number): Float64Array {
  const { m1, m2 } = daylightFactors(temperatureKelvin);
  return onTableGrid((_, i) => DAYLIGHT_S0[i]! + m1 * DAYLIGHT_S1[i]! + m2 * DAYLIGHT_S2[i]!);
}

function incandescentPower(): Float64Array {
  const atNorm = Math.expm1(A_EXPONENT_NM / A_NORM_NM);
  return onTableGrid((nm) => (100 * (A_NORM_NM / nm) ** 5 * atNorm) / Math.expm1(A_EXPONENT_NM / nm));
}

function ledPower(): Float64Array {
  return onTableGrid((nm) =>
    LED_PARTS.reduce(
      (sum, part) => sum + part.height * Math.exp(-0.5 * ((nm - part.peakNm) / part.sdNm) ** 2),
      0,
    ),
  );
}

/** Relative spectral power of `illuminant` on the 5 nm table grid; only its shape has a meaning, not its scale. */
export function relativePower(illuminant: IlluminantName): Float64Array {
  switch (illuminant) {
    case "D65":
      return Float64Array.from(POWER_D65);
    case "D50":
      return daylightPower(D50_TEMPERATURE_KELVIN);
    case "A":
      return incandescentPower();
    case "F11":
      return Float64Array.from(POWER_F11);
    case "LED":
      return ledPower();
  }
}
