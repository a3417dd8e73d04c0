// The wavelength grid.
import { describe, expect, it } from "vitest";
import {
  BAND_COUNT,
  constantSpectrum,
  spectrumFrom,
  wavelengthNmAt,
} from "../../../src/core/spectrum/spectrum.ts";

describe("the grid", () => {
  it("is 380-730 nm in 36 bands of 10 nm", () => {
    expect(BAND_COUNT).toBe(36);
    expect(wavelengthNmAt(0)).toBe(380);
    expect(wavelengthNmAt(BAND_COUNT - 1)).toBe(730);
  });

  it("is filled at its wavelengths", () => {
    expect([...spectrumFrom((nm) => nm)].every((nm, i) => nm === 380 + 10 * i)).toBe(true);
    expect([...constantSpectrum(0.4)]).toEqual(new Array(36).fill(0.4));
  });

  it("refuses a value that is not finite, naming the wavelength", () => {
    expect(() => spectrumFrom((nm) => 1 / (nm - 500))).toThrow(
      new RangeError("spectrum must be finite at 500 nm; got Infinity"),
    );
  });
});
