// Plain colour differences against their geometry.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chroma, deltaChroma, deltaEab, deltaHueAb } from "../../../src/core/colorimetry/difference.ts";
import type { Lab } from "../../../src/core/colorimetry/viewing.ts";

const anyLab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -100, max: 100, noNaN: true }),
  b: fc.double({ min: -100, max: 100, noNaN: true }),
});

describe("plain differences", () => {
  it("split deltaEab into lightness, chroma and hue (ISO/CIE 11664-4)", () => {
    fc.assert(
      fc.property(anyLab, anyLab, (from, to) => {
        const parts = Math.hypot(to.L - from.L, deltaChroma(from, to), deltaHueAb(from, to));
        expect(parts).toBeCloseTo(deltaEab(from, to), 6);
      }),
    );
  });

  it("turn the sign of the hue difference when the colours swap, positive from red towards yellow", () => {
    const red: Lab = { L: 40, a: 30, b: 0 };
    const yellow: Lab = { L: 40, a: 0, b: 30 };
    expect(deltaHueAb(red, yellow)).toBeCloseTo(Math.hypot(30, 30), 12);
    expect(deltaHueAb(yellow, red)).toBeCloseTo(-Math.hypot(30, 30), 12);
  });

  it("see no hue difference from or to a grey, and the full distance between opposite hues", () => {
    const grey: Lab = { L: 40, a: 0, b: 0 };
    expect(deltaHueAb(grey, { L: 40, a: 20, b: 5 })).toBe(0);
    expect(deltaHueAb({ L: 40, a: 20, b: 5 }, grey)).toBe(0);
    expect(deltaHueAb({ L: 40, a: 20, b: 0 }, { L: 40, a: -20, b: 0 })).toBeCloseTo(40, 12);
  });

  it("count chroma as the distance from the grey axis", () => {
    expect(chroma({ L: 10, a: 3, b: -4 })).toBe(5);
    expect(deltaChroma({ L: 10, a: 3, b: -4 }, { L: 90, a: 0, b: 2 })).toBe(-3);
  });
});
