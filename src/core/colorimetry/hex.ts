/**
 * CIELAB of a colour that someone typed or picked on a screen.
 */
import { converter, modeLab65, modeLrgb, modeRgb, modeXyz65, useMode as registerMode } from "culori/fn";
import type { Lab } from "./viewing.ts";

registerMode(modeRgb);
registerMode(modeLrgb);
registerMode(modeXyz65);
registerMode(modeLab65);
const lab65From = converter("lab65");

/**
 * CIELAB under D65/2 degrees of the sRGB colour `#rgb` or `#rrggbb` (IEC 61966-2-1 with the unrounded matrix of CSS
 * Color 4, through culori), relative to the screen's own white.
 * @throws RangeError where `hex` has another form.
 */
export function labFromHex(hex: string): Lab {
  if (!/^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(hex)) {
    throw new RangeError(`hex must be #rgb or #rrggbb; got ${JSON.stringify(hex)}`);
  }
  const digits = hex.length === 4 ? hex.replace(/[^#]/g, "$&$&") : hex;
  const channel = (at: number): number => Number.parseInt(digits.slice(at, at + 2), 16) / 255;
  const lab = lab65From({ mode: "rgb", r: channel(1), g: channel(3), b: channel(5) });
  return { L: lab.l, a: lab.a, b: lab.b };
}
