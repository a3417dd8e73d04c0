/**
 * Brings a measured spectrum onto the grid of every computation, and says what it had to do to it.
 */
import { BAND_COUNT, FIRST_NM, LAST_NM, type Spectrum, STEP_NM } from "./spectrum.ts";

export interface MeasuredSpectrum {
  readonly firstNm: number;
  readonly stepNm: number;
  /** Reflectance factors, the i-th at firstNm + i * stepNm. */
  readonly values: readonly number[];
}

export type ResampleWarningCode =
  /** The value of the shortest measured band was repeated down to the grid's first. */
  | "short-end-extended"
  /** The value of the longest measured band was repeated up to the grid's last. */
  | "long-end-extended"
  /** Measured values outside the grid have no band (a 20 nm one may still serve to interpolate the band beside it). */
  | "short-end-dropped"
  | "long-end-dropped"
  /** Of 5 nm data every second value was taken. */
  | "picked-from-5-nm"
  /** Between 20 nm data the values were interpolated. */
  | "interpolated-from-20-nm"
  /** There a cubic between positive neighbours fell to 0 or below, so their mean was taken. */
  | "cubic-not-positive";

export interface ResampleWarning {
  readonly code: ResampleWarningCode;
  readonly fromNm: number;
  readonly toNm: number;
}

export interface Resampled {
  readonly spectrum: Spectrum;
  readonly warnings: readonly ResampleWarning[];
}

/** Every spectrum must cover this; what lies beyond weighs at most 0.23 % (X under A/2 degrees, by our own weights). */
const NEEDED_FIRST_NM = 400;
const NEEDED_LAST_NM = 700;

function check(measured: MeasuredSpectrum): void {
  const { firstNm, stepNm, values } = measured;
  if (stepNm !== 5 && stepNm !== 10 && stepNm !== 20)
    throw new RangeError(`stepNm must be 5, 10 or 20; got ${stepNm}`);
  const raster = Math.min(stepNm, STEP_NM);
  if (!Number.isInteger(firstNm / raster))
    throw new RangeError(`firstNm must be a multiple of ${raster}; got ${firstNm}`);
  const lastNm = firstNm + (values.length - 1) * stepNm;
  if (firstNm > NEEDED_FIRST_NM || !(lastNm >= NEEDED_LAST_NM)) {
    throw new RangeError(
      `values must cover ${NEEDED_FIRST_NM}-${NEEDED_LAST_NM} nm; got ${firstNm}-${lastNm} nm`,
    );
  }
  const wrong = values.findIndex((value) => !Number.isFinite(value));
  if (wrong >= 0)
    throw new RangeError(`values must be finite; got ${values[wrong]} at ${firstNm + wrong * stepNm} nm`);
}

/** Value midway between values `index` and `index + 1`: cubic Lagrange through four, through three at the ends. */
function middleValue(values: readonly number[], index: number): number {
  const at = (i: number): number => values[i]!;
  if (index === 0) return (3 * at(0) + 6 * at(1) - at(2)) / 8;
  if (index === values.length - 2) return (3 * at(index + 1) + 6 * at(index) - at(index - 1)) / 8;
  return (9 * (at(index) + at(index + 1)) - at(index - 1) - at(index + 2)) / 16;
}

/**
 * `measured` on the 380-730 nm, 10 nm grid, with a warning for everything that is not simply the measured value.
 * 10 nm: taken as it is. 5 nm: every second value is taken, not an average, because each is treated as the reflectance
 * at that wavelength, as the interpolation of weights.ts does. 20 nm: the values between by four-point cubic Lagrange,
 * three-point at the ends. Ends missing from the grid (at most 380-390 and 710-730 nm) repeat the nearest measured
 * band (the effect of ASTM E308's rule for missing ends, from memory); values beyond the grid are dropped.
 * @throws RangeError for a step other than 5, 10, 20 nm, a start off the raster, less than 400-700 nm, or a value that
 * is not finite.
 */
export function resampleSpectrum(measured: MeasuredSpectrum): Resampled {
  check(measured);
  const { firstNm, stepNm, values } = measured;
  const lastNm = firstNm + (values.length - 1) * stepNm;
  const spectrum = new Float64Array(BAND_COUNT);
  const warnings: ResampleWarning[] = [];
  const usedFirstNm = Math.max(FIRST_NM, STEP_NM * Math.ceil(firstNm / STEP_NM));
  const usedLastNm = Math.min(LAST_NM, STEP_NM * Math.floor(lastNm / STEP_NM));
  const warn = (code: ResampleWarningCode, fromNm: number, toNm: number): void => {
    warnings.push({ code, fromNm, toNm });
  };
  if (stepNm === 5) warn("picked-from-5-nm", usedFirstNm, usedLastNm);
  if (stepNm === 20) warn("interpolated-from-20-nm", usedFirstNm, usedLastNm);
  const stepsBelow = Math.ceil((FIRST_NM - firstNm) / stepNm);
  const stepsWithin = Math.floor((LAST_NM - firstNm) / stepNm);
  if (firstNm < FIRST_NM) warn("short-end-dropped", firstNm, firstNm + (stepsBelow - 1) * stepNm);
  if (lastNm > LAST_NM) warn("long-end-dropped", firstNm + (stepsWithin + 1) * stepNm, lastNm);
  if (usedFirstNm > FIRST_NM) warn("short-end-extended", FIRST_NM, usedFirstNm - STEP_NM);
  if (usedLastNm < LAST_NM) warn("long-end-extended", usedLastNm + STEP_NM, LAST_NM);
  for (let band = 0; band < BAND_COUNT; band++) {
    const wavelengthNm = FIRST_NM + band * STEP_NM;
    const position = (Math.min(usedLastNm, Math.max(usedFirstNm, wavelengthNm)) - firstNm) / stepNm;
    const below = Math.floor(position);
    if (position === below) {
      spectrum[band] = values[below]!;
      continue;
    }
    const middle = middleValue(values, below);
    const mean = (values[below]! + values[below + 1]!) / 2;
    const fell = middle <= 0 && values[below]! > 0 && values[below + 1]! > 0;
    if (fell) warn("cubic-not-positive", wavelengthNm, wavelengthNm);
    spectrum[band] = fell ? mean : middle;
  }
  return { spectrum, warnings };
}
