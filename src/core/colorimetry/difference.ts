/**
 * Differences between two colours in CIELAB beside CIEDE2000: the plain ones, for the grey scale and for words.
 */
import type { Lab } from "./viewing.ts";

/** CIE 1976 colour difference: the Euclidean distance in CIELAB (ISO/CIE 11664-4). */
export function deltaEab(a: Lab, b: Lab): number {
  return Math.hypot(b.L - a.L, b.a - a.a, b.b - a.b);
}

/** Chroma C*ab. */
export function chroma(lab: Lab): number {
  return Math.hypot(lab.a, lab.b);
}

/** Signed change of chroma C*ab from `from` to `to`; positive: more colourful. */
export function deltaChroma(from: Lab, to: Lab): number {
  return chroma(to) - chroma(from);
}

/**
 * Signed hue difference dH*ab = 2 sqrt(C1 C2) sin(dh/2) from `from` to `to` (Seve 1991, Color Res. Appl. 16, 217, from
 * memory; ISO/CIE 11664-4); positive: anticlockwise in the a*b* plane, from red towards yellow. 0 where either is grey.
 * A dh of exactly 180 degrees counts as anticlockwise.
 */
export function deltaHueAb(from: Lab, to: Lab): number {
  const cross = from.a * to.b - from.b * to.a;
  const dot = from.a * to.a + from.b * to.b;
  return 2 * Math.sqrt(chroma(from) * chroma(to)) * Math.sin(Math.atan2(cross, dot) / 2);
}
