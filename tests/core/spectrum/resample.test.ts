// Measured spectra brought onto the grid, with everything that was done to them said.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MeasuredSpectrum, resampleSpectrum } from "../../../src/core/spectrum/resample.ts";
import { BAND_COUNT, spectrumFrom, wavelengthNmAt } from "../../../src/core/spectrum/spectrum.ts";

function measuredFrom(
  firstNm: number,
  lastNm: number,
  stepNm: number,
  valueAt: (nm: number) => number,
): MeasuredSpectrum {
  const count = (lastNm - firstNm) / stepNm + 1;
  return { firstNm, stepNm, values: Array.from({ length: count }, (_, i) => valueAt(firstNm + i * stepNm)) };
}

const slope = (nm: number): number => nm / 1000;
const cubic = (nm: number): number => 0.3 + 0.2 * ((nm - 550) / 170) - 0.1 * ((nm - 550) / 170) ** 3;

describe("10 nm data", () => {
  it("on the grid come back as they are, without a warning", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(380, 730, 10, slope));
    expect(spectrum).toEqual(spectrumFrom(slope));
    expect(warnings).toEqual([]);
  });

  it("from 400 to 700 nm repeat their ends, and say so", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(400, 700, 10, slope));
    expect(spectrum).toEqual(spectrumFrom((nm) => slope(Math.min(700, Math.max(400, nm)))));
    expect(warnings).toEqual([
      { code: "short-end-extended", fromNm: 380, toNm: 390 },
      { code: "long-end-extended", fromNm: 710, toNm: 730 },
    ]);
  });

  it("from 360 to 750 nm lose what lies outside the grid, and say so", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(360, 750, 10, slope));
    expect(spectrum).toEqual(spectrumFrom(slope));
    expect(warnings).toEqual([
      { code: "short-end-dropped", fromNm: 360, toNm: 370 },
      { code: "long-end-dropped", fromNm: 740, toNm: 750 },
    ]);
  });
});

describe("5 nm data", () => {
  it("give every second value, not an average, and say so", () => {
    const jagged = (nm: number): number => (nm % 10 === 0 ? slope(nm) : 1);
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(380, 730, 5, jagged));
    expect(spectrum).toEqual(spectrumFrom(slope));
    expect(warnings).toEqual([{ code: "picked-from-5-nm", fromNm: 380, toNm: 730 }]);
  });

  it("may start and end between the bands", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(385, 705, 5, slope));
    expect(spectrum).toEqual(spectrumFrom((nm) => slope(Math.min(700, Math.max(390, nm)))));
    expect(warnings).toEqual([
      { code: "picked-from-5-nm", fromNm: 390, toNm: 700 },
      { code: "short-end-extended", fromNm: 380, toNm: 380 },
      { code: "long-end-extended", fromNm: 710, toNm: 730 },
    ]);
  });

  it("drop what lies outside the grid", () => {
    expect(resampleSpectrum(measuredFrom(365, 740, 5, slope)).warnings).toEqual([
      { code: "picked-from-5-nm", fromNm: 380, toNm: 730 },
      { code: "short-end-dropped", fromNm: 365, toNm: 375 },
      { code: "long-end-dropped", fromNm: 735, toNm: 740 },
    ]);
  });
});

describe("20 nm data", () => {
  it("keep their values and are interpolated between by a cubic: exact for one, but for the quadratic ends", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(400, 700, 20, cubic));
    for (let band = 0; band < BAND_COUNT; band++) {
      const nm = wavelengthNmAt(band);
      const inner = nm >= 420 && nm <= 680;
      const measured = nm >= 400 && nm <= 700 && nm % 20 === 0;
      if (inner || measured) expect(spectrum[band]).toBeCloseTo(cubic(nm), 12);
    }
    expect(warnings).toEqual([
      { code: "interpolated-from-20-nm", fromNm: 400, toNm: 700 },
      { code: "short-end-extended", fromNm: 380, toNm: 390 },
      { code: "long-end-extended", fromNm: 710, toNm: 730 },
    ]);
  });

  it("are exact for a quadratic to the very ends", () => {
    const quadratic = (nm: number): number => 0.2 + ((nm - 500) / 400) ** 2;
    const { spectrum } = resampleSpectrum(measuredFrom(400, 700, 20, quadratic));
    for (const nm of [410, 430, 670, 690]) expect(spectrum[(nm - 380) / 10]).toBeCloseTo(quadratic(nm), 12);
  });

  it("that straddle the grid use the value outside only to interpolate", () => {
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(370, 750, 20, slope));
    for (let band = 0; band < BAND_COUNT; band++)
      expect(spectrum[band]).toBeCloseTo(slope(wavelengthNmAt(band)), 12);
    expect(warnings).toEqual([
      { code: "interpolated-from-20-nm", fromNm: 380, toNm: 730 },
      { code: "short-end-dropped", fromNm: 370, toNm: 370 },
      { code: "long-end-dropped", fromNm: 750, toNm: 750 },
    ]);
  });

  it("never invent a reflectance at or below 0 between positive ones: the mean is taken, and said", () => {
    const edge = (nm: number): number => (nm < 560 ? 0.01 : 0.9);
    const { spectrum, warnings } = resampleSpectrum(measuredFrom(380, 740, 20, edge));
    expect(spectrum[(530 - 380) / 10]).toBeCloseTo(0.01, 12);
    expect(warnings).toContainEqual({ code: "cubic-not-positive", fromNm: 530, toNm: 530 });
    expect(Math.min(...spectrum)).toBeGreaterThan(0);
  });
});

describe("any measured spectrum", () => {
  it("keeps a value at every wavelength it shares with the grid", () => {
    const step = fc.constantFrom(5, 10, 20);
    const start = fc.constantFrom(340, 360, 380, 390, 400);
    fc.assert(
      fc.property(step, start, fc.integer({ min: 0, max: 8 }), (stepNm, firstNm, extra) => {
        const lastNm = firstNm + stepNm * (Math.ceil((700 - firstNm) / stepNm) + extra);
        const { spectrum } = resampleSpectrum(measuredFrom(firstNm, lastNm, stepNm, slope));
        for (let nm = firstNm; nm <= lastNm; nm += stepNm) {
          if (nm % 10 === 0 && nm >= 380 && nm <= 730) expect(spectrum[(nm - 380) / 10]).toBe(slope(nm));
        }
      }),
    );
  });

  it.each([
    [{ ...measuredFrom(400, 700, 10, slope), stepNm: 1 }, "stepNm must be 5, 10 or 20; got 1"],
    [measuredFrom(395, 705, 10, slope), "firstNm must be a multiple of 10; got 395"],
    [measuredFrom(398, 703, 5, slope), "firstNm must be a multiple of 5; got 398"],
    [measuredFrom(410, 700, 10, slope), "values must cover 400-700 nm; got 410-700 nm"],
    [measuredFrom(400, 690, 10, slope), "values must cover 400-700 nm; got 400-690 nm"],
    [{ firstNm: 400, stepNm: 10, values: [] }, "values must cover 400-700 nm; got 400-390 nm"],
    [
      measuredFrom(400, 700, 10, (nm) => (nm === 550 ? Number.NaN : 0.5)),
      "values must be finite; got NaN at 550 nm",
    ],
  ])("is refused where it cannot be used: case %#", (measured, message) => {
    expect(() => resampleSpectrum(measured)).toThrow(new RangeError(message));
  });
});
