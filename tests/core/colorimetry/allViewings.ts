// Every light under every observer, and random reflectances to look at under them.
import fc from "fast-check";
import { ILLUMINANT_NAMES, OBSERVER_NAMES, type Viewing } from "../../../src/core/colorimetry/viewing.ts";
import { BAND_COUNT, type Spectrum, spectrumFrom } from "../../../src/core/spectrum/spectrum.ts";

export const ALL_VIEWINGS: readonly Viewing[] = ILLUMINANT_NAMES.flatMap((illuminant) =>
  OBSERVER_NAMES.map((observer) => ({ illuminant, observer })),
);

export const anyViewing = fc.constantFrom(...ALL_VIEWINGS);

/** Any reflectance in 0..1, however jagged. */
export const anyReflectance: fc.Arbitrary<Spectrum> = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: BAND_COUNT, maxLength: BAND_COUNT })
  .map((values) => Float64Array.from(values));

const share = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** What dyed cloth looks like: a level with one edge and one hump, within 0.005..0.98. */
export const clothReflectance: fc.Arbitrary<Spectrum> = fc
  .record({
    low: share(0.005, 0.9),
    rise: share(-0.85, 0.85),
    edgeNm: share(450, 650),
    edgeWidthNm: share(8, 60),
    hump: share(-0.4, 0.4),
    humpNm: share(420, 680),
    humpWidthNm: share(15, 80),
  })
  .map((s) =>
    spectrumFrom((nm) => {
      const edge = s.rise / (1 + Math.exp(-(nm - s.edgeNm) / s.edgeWidthNm));
      const hump = s.hump * Math.exp(-0.5 * ((nm - s.humpNm) / s.humpWidthNm) ** 2);
      return Math.min(0.98, Math.max(0.005, s.low + edge + hump));
    }),
  );
