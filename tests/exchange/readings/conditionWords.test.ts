/** Words for light, observer and geometry: understood as they stand, or left to be asked. */
import { describe, expect, it } from "vitest";
import { geometryFrom, lightFrom, observerFrom } from "../../../src/exchange/readings/conditionWords.ts";

describe("words for conditions", () => {
  it.each([
    ["D65", "D65"],
    ["D_50", "D50"],
    ["CIE Illuminant A", "A"],
    ["ILLUMINANT, D50", "D50"],
    ["D65/10°", "D65"],
    ["d65-10", "D65"],
    ["F11", "F11"],
    ["FL11", "F11"],
  ])("light %s is %s", (text, light) => {
    expect(lightFrom(text)).toEqual({ kind: "known", light });
  });

  it.each(["C", "D55", "F2", "D75", "LED-B1", "E"])(
    "light %s is a standard one we have no weights for",
    (text) => {
      expect(lightFrom(text)?.kind).toBe("other");
    },
  );

  it.each(["our booth", "daylight", "M1"])("light %s is not understood", (text) => {
    expect(lightFrom(text)?.kind).toBe("unclear");
  });

  it.each([
    ["2", "2deg"],
    ["10", "10deg"],
    ["OBSERVER, 2 degree", "2deg"],
    ["10_Degree", "10deg"],
    ["D65/10°", "10deg"],
    ["D50, 2 deg", "2deg"],
    ["CIE 1931", "2deg"],
    ["CIE 1964 (10°)", "10deg"],
    ["2.0", "2deg"],
    ["2 and 10", null],
    ["12", null],
    ["", null],
    ["D65", null],
  ])("observer %s is %s", (text, observer) => {
    expect(observerFrom(text)).toBe(observer);
  });

  it.each([
    ["45/0", "45:0"],
    ["45:0", "45:0"],
    ["45°/0°", "45:0"],
    ["0/45", "45:0"],
    ["45a:0", "45:0"],
    ["45.0:0.0", "45:0"],
    ["d/8 specular included", "specular-included"],
    ["Specular_Included", "specular-included"],
    ["SCI", "specular-included"],
    ["di:8", "specular-included"],
    ["d/8 SCE", "specular-excluded"],
    ["de:8", "specular-excluded"],
    ["SPEX", "specular-excluded"],
    ["d/8", null],
    ["sphere", null],
    ["SCI + SCE", null],
    ["45:0 45:15", null],
    ["45/45", null],
    ["", null],
  ])("geometry %s is %s", (text, geometry) => {
    expect(geometryFrom(text)).toBe(geometry);
  });
});
