// CIEDE2000 against its published test data and against culori, an independent implementation.
import { differenceCiede2000, modeLab65, useMode as registerMode } from "culori/fn";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deltaE00 } from "../../../src/core/colorimetry/ciede2000.ts";
import type { Lab } from "../../../src/core/colorimetry/viewing.ts";
import published from "../../published/sharma-wu-dalal-2005.json" with { type: "json" };
import { between } from "../optics/between.ts";

registerMode(modeLab65);
const culori = differenceCiede2000();
const byCulori = (one: Lab, other: Lab): number =>
  culori(
    { mode: "lab65", l: one.L, a: one.a, b: one.b },
    { mode: "lab65", l: other.L, a: other.a, b: other.b },
  );

/** Differences up to 100 or so, each from a dozen roundings. */
const ROUNDING = 1e-9;
const labOf = ([L, a, b]: readonly number[]): Lab => ({ L: L!, a: a!, b: b! });
const anyLab = fc.record({ L: between(0, 100), a: between(-100, 100), b: between(-100, 100) });
const nearGrey = fc.record({ L: between(0, 100), a: between(-3, 3), b: between(-3, 3) });
const onAxes = fc.record({
  L: between(0, 100),
  a: fc.constantFrom(0, 10, -10),
  b: fc.constantFrom(0, 10, -10),
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

  it("is what culori computes, for any two colours, near greys and opposite hues on the axes", () => {
    fc.assert(
      fc.property(fc.oneof(anyLab, nearGrey, onAxes), fc.oneof(anyLab, nearGrey, onAxes), (one, other) => {
        expect(Math.abs(deltaE00(one, other) - byCulori(one, other))).toBeLessThan(ROUNDING);
      }),
      { numRuns: 3000 },
    );
  });

  it("ends the blues' rotation at a mean hue of 0, as the paper counts hues, and does not carry it into the reds", () => {
    const blue: Lab = { L: 50, a: 60, b: -62 };
    const red: Lab = { L: 50, a: 60, b: 64 };
    expect(Math.abs(deltaE00(blue, red) - byCulori(blue, red))).toBeLessThan(ROUNDING);
  });
});
