/** The screen's colour of a bare cloth follows what is stored, whatever way it was entered. */
import { describe, expect, it } from "vitest";
import type { ColourDocument } from "../../src/job/colourDocument.ts";
import { meanLab } from "../../src/job/colourSpectrum.ts";
import { bareLab, bareScreenColour, screenHexFor } from "../../src/job/screenColour.ts";

const readings = (...list: [number, number, number][]): ColourDocument => ({
  kind: "readings",
  viewing: { illuminant: "D65", observer: "10deg" },
  geometry: "45:0",
  readings: list.map(([L, a, b]) => ({ L, a, b })),
});

describe("screenHexFor", () => {
  it("gives a neutral reading a neutral grey: sRGB of L* 50 is 119 by IEC 61966-2-1 and CIE 15", () => {
    expect(screenHexFor({ bare: readings([50, 0, 0]) })).toMatch(/^#77777[678]$/);
  });

  it("shows the mean of several readings", () => {
    const many = readings([40, 10, -10], [44, 12, -14]);
    expect(screenHexFor({ bare: many })).toBe(screenHexFor({ bare: readings([42, 11, -12]) }));
  });

  it("gives a picked colour back as it was picked", () => {
    expect(screenHexFor({ bare: { kind: "hex", hex: "#30503a" } })).toBe("#30503a");
  });

  it("gives a flat spectrum of 1 white", () => {
    const white: ColourDocument = {
      kind: "spectrum",
      geometry: "45:0",
      reflectance: new Array(36).fill(1),
      assumptions: [],
    };
    expect(screenHexFor({ bare: white })).toBe("#ffffff");
  });

  it("gives none where no cloth has the colour", () => {
    expect(screenHexFor({ bare: readings([10, 120, 100]) })).toBeNull();
  });

  it("computes a colour once", () => {
    const bare = readings([30, 5, 5]);
    expect(bareScreenColour(bare)).toBe(bareScreenColour(bare));
  });
});

describe("meanLab", () => {
  it("throws where there is nothing to take a mean of", () => {
    expect(() => meanLab([])).toThrow(RangeError);
  });
});

describe("bareLab", () => {
  const viewing = { illuminant: "A", observer: "2deg" } as const;

  it("leaves readings under the light that they were read under", () => {
    expect(bareLab(readings([30, 5, -5]), viewing)).toEqual({
      lab: { L: 30, a: 5, b: -5 },
      viewing: { illuminant: "D65", observer: "10deg" },
    });
  });

  it("gives a perfect white spectrum L* 100 under any light, by the definition of CIELAB", () => {
    const white: ColourDocument = {
      kind: "spectrum",
      geometry: "45:0",
      reflectance: new Array(36).fill(1),
      assumptions: [],
    };
    const known = bareLab(white, viewing);
    expect(known?.viewing).toEqual(viewing);
    expect(known?.lab.L).toBeCloseTo(100, 6);
    expect(Math.hypot(known?.lab.a ?? 9, known?.lab.b ?? 9)).toBeLessThan(1e-6);
  });

  it("gives none for a screen colour, which is no measurement", () => {
    expect(bareLab({ kind: "hex", hex: "#123456" }, viewing)).toBeNull();
  });
});
