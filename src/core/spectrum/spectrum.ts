/**
 * The wavelength grid every computation stands on, and the type of what is sampled on it.
 * 380-730 nm in 10 nm steps: the range of hand-held spectrophotometers, and enough for 0.005 in a* (model.md §1).
 */

export const FIRST_NM = 380;
export const LAST_NM = 730;
export const STEP_NM = 10;
export const BAND_COUNT = (LAST_NM - FIRST_NM) / STEP_NM + 1;

/** BAND_COUNT values, band i at FIRST_NM + i * STEP_NM; unit as the owner says (reflectance factor: 1; K, S: 1/um). */
export type Spectrum = Float64Array;

/** Wavelength of band `index`, nm. */
export function wavelengthNmAt(index: number): number {
  return FIRST_NM + index * STEP_NM;
}

/**
 * The spectrum whose band at each wavelength is `valueAt(wavelengthNm)`.
 * @throws RangeError where a value is not finite.
 */
export function spectrumFrom(valueAt: (wavelengthNm: number) => number): Spectrum {
  const values = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    const value = valueAt(wavelengthNmAt(i));
    if (!Number.isFinite(value)) {
      throw new RangeError(`spectrum must be finite at ${wavelengthNmAt(i)} nm; got ${value}`);
    }
    values[i] = value;
  }
  return values;
}

/** The spectrum that holds `value` in every band. */
export function constantSpectrum(value: number): Spectrum {
  return spectrumFrom(() => value);
}
