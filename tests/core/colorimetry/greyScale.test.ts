// The ISO 105-A02 grey scale for change.
import { describe, expect, it } from "vitest";
import { GREY_SCALE_STEPS, greyScaleGrade } from "../../../src/core/colorimetry/greyScale.ts";
import published from "../../published/iso-105-a02.json" with { type: "json" };

describe("the grey scale", () => {
  it("has the nine steps of ISO 105-A02, table 1", () => {
    expect(GREY_SCALE_STEPS).toEqual(published.rows.map(({ grade, deltaEab }) => ({ grade, deltaEab })));
  });

  it("names a step anywhere within its published tolerance", () => {
    for (const { grade, deltaEab, tolerance } of published.rows) {
      expect(greyScaleGrade(deltaEab)).toBe(grade);
      expect(greyScaleGrade(deltaEab + 0.99 * tolerance)).toBe(grade);
      expect(greyScaleGrade(Math.max(0, deltaEab - 0.99 * tolerance))).toBe(grade);
    }
  });

  it("changes grade at the midpoints, there to the stronger change", () => {
    expect(greyScaleGrade(0.3999)).toBe("5");
    expect(greyScaleGrade(0.4)).toBe("4-5");
    expect(greyScaleGrade(11.5999)).toBe("1-2");
    expect(greyScaleGrade(11.6)).toBe("1");
    expect(greyScaleGrade(80)).toBe("1");
  });

  it("refuses what is no difference", () => {
    expect(() => greyScaleGrade(-0.1)).toThrow(new RangeError("deltaEab must be >= 0; got -0.1"));
    expect(() => greyScaleGrade(Number.NaN)).toThrow(new RangeError("deltaEab must be >= 0; got NaN"));
  });
});
