/** A shop without an instrument has the same prints and judges them in half steps, right on average. */
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { GREY_SCALE_STEPS } from "../../src/core/colorimetry/greyScale.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import { EYE_SD, shopByEye } from "./byEyeReadings.ts";
import { SHOP_VIEWING } from "./shopReadings.ts";
import { syntheticShop } from "./syntheticShop.ts";

const shops = Array.from({ length: 10 }, (_, i) => shopByEye(syntheticShop(20260370 + i)));
const judged = shops.flatMap(({ records }) =>
  records.map(({ record, truth: { reading } }) => {
    if (record.reading.kind !== "by-eye") throw new RangeError("readings are by eye here");
    const weights = weightsFor(SHOP_VIEWING);
    const bare = labFromReflectance(reading.bare, weights);
    const print = labFromReflectance(reading.printed, weights);
    const difference = Math.hypot(print.L - bare.L, print.a - bare.a, print.b - bare.b);
    return { ...record.reading, difference, isDarker: print.L < bare.L };
  }),
);

describe("a shop without an instrument", () => {
  it("judges in half steps from 5 to 1, and sees which of the two is darker", () => {
    for (const { grade, direction, isDarker } of judged) {
      expect(Number.isInteger(2 * grade)).toBe(true);
      expect(grade).toBeGreaterThanOrEqual(1);
      expect(grade).toBeLessThanOrEqual(5);
      expect(direction).toBe(isDarker ? "darker" : "lighter");
    }
  });

  it("errs by a quarter of the difference, and never beyond the end of the scale", () => {
    const errors = judged
      .filter(({ grade, difference }) => grade > 1.5 && grade < 4.5 && difference > 2 && difference < 7)
      .map(({ grade, difference }) => Math.log(GREY_SCALE_STEPS[(5 - grade) * 2]!.deltaEab / difference));
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    const sd = Math.sqrt(errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / errors.length);
    expect(errors.length).toBeGreaterThan(100);
    // Rounding to the nearest step adds about 0.1, choosing the middle of the scale takes a little off.
    expect(sd).toBeGreaterThan(0.8 * EYE_SD);
    expect(sd).toBeLessThan(1.3 * EYE_SD);
    expect(judged.filter(({ difference }) => difference > 16).every(({ grade }) => grade <= 2)).toBe(true);
  });
});
