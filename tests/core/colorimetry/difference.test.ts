// Colour differences: CIEDE2000 against its published test data, the plain ones against their geometry.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chroma,
  deltaChroma,
  deltaE00,
  deltaEab,
  deltaHueAb,
} from "../../../src/core/colorimetry/difference.ts";
import type { Lab } from "../../../src/core/colorimetry/viewing.ts";
import published from "../../published/sharma-wu-dalal-2005.json" with { type: "json" };

const labOf = ([L, a, b]: readonly number[]): Lab => ({ L: L!, a: a!, b: b! });
const anyLab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -100, max: 100, noNaN: true }),
  b: fc.double({ min: -100, max: 100, noNaN: true }),
});

describe("CIEDE2000", () => {
  it("gives the 34 pairs of Sharma, Wu & Dalal 2005 to 4 decimals, in both orders", () => {
    // Pairs 10 and 14 sit exactly on a hue difference of 180 degrees: there only rounding picks the mean hue.
    expect(published.pairs).toHaveLength(34);
    for (const { pair, first, second, deltaE00: expected } of published.pairs) {
      const forward = deltaE00(labOf(first), labOf(second));
      const backward = deltaE00(labOf(second), labOf(first));
      expect(forward.toFixed(4), `pair ${pair}`).toBe(expected.toFixed(4));
      expect(backward.toFixed(4), `pair ${pair} swapped`).toBe(expected.toFixed(4));
    }
  });

  it("is 0 only between equal colours, and symmetric", () => {
    fc.assert(
      fc.property(anyLab, anyLab, (one, other) => {
        expect(deltaE00(one, one)).toBe(0);
        expect(deltaE00(one, other)).toBeCloseTo(deltaE00(other, one), 9);
      }),
    );
  });
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
