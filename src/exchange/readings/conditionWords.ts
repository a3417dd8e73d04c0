/** Light, observer and geometry out of the words that files use for them. Nothing is concluded from what is not said. */
import type { IlluminantName, ObserverName } from "../../core/colorimetry/viewing.ts";
import type { GeometryDocument } from "../../job/colourDocument.ts";

/** A word understood; one that names a standard light we do not compute with; or one not understood. */
export type LightWord =
  | { readonly kind: "known"; readonly light: IlluminantName }
  | { readonly kind: "other"; readonly text: string }
  | { readonly kind: "unclear"; readonly text: string };

const KNOWN_LIGHTS: readonly (readonly [RegExp, IlluminantName])[] = [
  [/^D65(?:00)?$/, "D65"],
  [/^D50(?:00)?$/, "D50"],
  [/^A$/, "A"],
  [/^FL?11$/, "F11"],
];
/**
 * Standard lights there are no weights for. A warm LED of CIE 015:2018 (B1...) is among them: ours is a model of one,
 * so a reading stated for B1 is not a reading under ours.
 */
const OTHER_LIGHT = /^(?:B|C|E|D\d\d|FL?\d{1,2}|LED[A-Z]*\d*|ID\d\d|HP\d)$/;

function words(text: string): string[] {
  return text
    .toUpperCase()
    .replace(/\b(?:STANDARD|CIE|ILLUMINANT|ILLUMINATION|ILL|LIGHT|SOURCE)\b/g, " ")
    .replace(/\bD_(?=\d\d)/g, "D")
    .split(/[\s,;:/()[\]=|"'_-]+/)
    .filter((word) => word !== "");
}

/** The light that `text` names; null where it is empty. */
export function lightFrom(text: string): LightWord | null {
  if (text.trim() === "") return null;
  for (const word of words(text.slice(0, 200))) {
    const known = KNOWN_LIGHTS.find(([pattern]) => pattern.test(word));
    if (known !== undefined) return { kind: "known", light: known[1] };
    if (OTHER_LIGHT.test(word)) return { kind: "other", text: word };
  }
  return { kind: "unclear", text };
}

/** The observer that `text` names (2 or 10 degrees, 1931 or 1964); null where it names none or both. */
export function observerFrom(text: string): ObserverName | null {
  const numbers = new Set(
    [...text.slice(0, 200).matchAll(/(?<![\d.,A-Za-z])(\d+)(?:[.,]0+)?(?![\d.,])/g)].map((m) => m[1]),
  );
  const two = numbers.has("2") || numbers.has("1931");
  const ten = numbers.has("10") || numbers.has("1964");
  if (two === ten) return null;
  return two ? "2deg" : "10deg";
}

/**
 * The geometry that `text` names. 45:0 and 0:45 count as one (reciprocity); a sphere only with its gloss part said:
 * in CIE 015's notation di:8 and de:8, in the trade's SCI/SPIN and SCE/SPEX. Null for all else: several angles, and a
 * polarising filter, which takes the gloss away that 45:0 keeps (condition M3 of ISO 13655; from memory).
 */
export function geometryFrom(text: string): GeometryDocument | null {
  const upper = text.slice(0, 200).toUpperCase().replaceAll("_", " ");
  if (/POLARI/.test(upper)) return null;
  const included = /\bSPECULAR[ -]*INC|\bINCLUDED\b|\bSCI\b|\bSPIN\b|\bR?SIN\b|\bDI\s*[:/]/.test(upper);
  const excluded = /\bSPECULAR[ -]*EXC|\bEXCLUDED\b|\bSCE\b|\bSPEX\b|\bR?SEX\b|\bDE\s*[:/]/.test(upper);
  const numbers = [...upper.matchAll(/\d+(?:[.,]\d+)?/g)].map((match) => Number(match[0].replace(",", ".")));
  const angles = new Set(numbers);
  const is45to0 = numbers.length === 2 && angles.has(45) && angles.has(0);
  if (Number(included) + Number(excluded) + Number(is45to0) !== 1) return null;
  if (is45to0) return "45:0";
  return included ? "specular-included" : "specular-excluded";
}
