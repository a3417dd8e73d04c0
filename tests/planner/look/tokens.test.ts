/** The grey room by number: neutral greys, the surround at L* 50 to 70, text that can be read on its ground. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { labFromHex } from "../../../src/core/colorimetry/hex.ts";

const css = readFileSync("src/planner/look/tokens.css", "utf8").replace(/\/\*[\s\S]*?\*\//g, "");
const hexes = [...css.matchAll(/#[0-9a-f]{3,8}\b/gi)].map(([hex]) => hex);

/** The custom properties of the blocks whose whole selector is `wanted`. */
function tones(wanted: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const [, selector = "", body = ""] of css.matchAll(/([^{}]+)\{([^{}]*)\}/g)) {
    if (selector.replace(/\s+/g, " ").trim() !== wanted) continue;
    for (const [, name = "", value = ""] of body.matchAll(/(--[\w-]+):\s*([^;]+);/g)) {
      found.set(name, value.trim());
    }
  }
  return found;
}

/** WCAG 2.2, relative luminance of a grey; its linearisation is that of IEC 61966-2-1. */
function luminance(grey: string): number {
  const channel = Number.parseInt(grey.slice(1, 3), 16) / 255;
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
}

/** WCAG 2.2, contrast ratio. */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

const surround = tones(":root").get("--surround") ?? "";
const DARK_BY_SYSTEM = ':root:not([data-theme="light"]), :root:not([data-theme="light"]) .panel';
const DARK_BY_SWITCH = ':root[data-theme="dark"], :root[data-theme="dark"] .panel';
const grounds = {
  "light panel": tones(":root, .panel"),
  "dark panel": tones(DARK_BY_SWITCH),
  surround: tones(".surround").set("--ground", surround),
};

describe("the grey room", () => {
  it("has greys only, each with equal channels", () => {
    expect(hexes.length).toBeGreaterThan(20);
    for (const hex of hexes) expect(hex).toMatch(/^#([0-9a-f]{2})\1\1$/i);
  });

  it("surrounds swatches with L* 50 to 70, in both themes the same", () => {
    const { L } = labFromHex(surround);
    expect(L).toBeGreaterThan(50);
    expect(L).toBeLessThan(70);
    expect(css.match(/--surround:/g)).toHaveLength(1);
  });

  it.each(Object.entries(grounds))(
    "keeps text at 4.5:1 and control edges at 3:1 on the %s",
    (_name, ground) => {
      const tone = (name: string) => ground.get(name) ?? "";
      for (const under of ["--ground", "--ground-raised", "--field"]) {
        expect(contrast(tone("--ink"), tone(under))).toBeGreaterThanOrEqual(4.5);
        expect(contrast(tone("--quiet"), tone(under))).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(tone("--edge"), tone("--ground"))).toBeGreaterThanOrEqual(3);
      expect(contrast(tone("--bar"), tone("--bar-track"))).toBeGreaterThanOrEqual(3);
    },
  );

  it("gives the dark theme the same tones by switch as by system", () => {
    const bySystem = tones(DARK_BY_SYSTEM);
    expect(bySystem.size).toBeGreaterThan(5);
    expect(tones(DARK_BY_SWITCH)).toEqual(bySystem);
  });
});
