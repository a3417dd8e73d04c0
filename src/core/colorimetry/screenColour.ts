/**
 * The colour a screen can show of a reflectance: sRGB and Display P3 under D65/2 degrees, marked where it had to move.
 */
import {
  clampChroma,
  converter,
  formatHex,
  type Lch65,
  modeLab65,
  modeLch65,
  modeLrgb,
  modeP3,
  modeRgb,
  modeXyz65,
  type P3,
  type Rgb,
  useMode as registerMode,
} from "culori/fn";
import type { Spectrum } from "../spectrum/spectrum.ts";
import { labFromReflectance } from "./cielab.ts";
import type { Lab, Viewing } from "./viewing.ts";
import { weightsFor } from "./weights.ts";

registerMode(modeLrgb);
registerMode(modeXyz65);
registerMode(modeLab65);
registerMode(modeLch65);
const rgbFrom = registerMode(modeRgb);
const p3From = registerMode(modeP3);
const lchFrom = converter("lch65");

/** The viewing a screen stands for. */
export const SCREEN_VIEWING: Viewing = { illuminant: "D65", observer: "2deg" };

/** Channels this far outside 0..1 still count as inside: a fifth of an 8-bit step, so rounding of matrices moves nothing. */
const GAMUT_SLACK = 0.2 / 255;

export type Channels = readonly [number, number, number];

export interface ScreenColour {
  /** Gamma-encoded sRGB, 0..1 each. */
  readonly srgb: Channels;
  /** Gamma-encoded Display P3, 0..1 each. */
  readonly displayP3: Channels;
  /** Whether the colour lay outside the gamut and lost chroma (beyond white: lightness) to be shown. */
  readonly srgbMoved: boolean;
  readonly displayP3Moved: boolean;
  /** `srgb` as #rrggbb. */
  readonly hex: string;
}

const clipped = (value: number): number => Math.min(1, Math.max(0, value));
const inside = (value: number): boolean => value >= -GAMUT_SLACK && value <= 1 + GAMUT_SLACK;

function fitInto(lch: Lch65, gamut: "rgb" | "p3"): { channels: Channels; moved: boolean } {
  const convert = (colour: Lch65): Rgb | P3 => (gamut === "rgb" ? rgbFrom(colour) : p3From(colour));
  const exact = convert(lch);
  const moved = !(inside(exact.r) && inside(exact.g) && inside(exact.b));
  const shown = moved ? convert(clampChroma(lch, "lch65", gamut)) : exact;
  return { channels: [clipped(shown.r), clipped(shown.g), clipped(shown.b)], moved };
}

/**
 * Screen colours of `lab`, which stands under D65/2 degrees. Outside the gamut chroma is reduced at constant L* and hue
 * (culori's clampChroma in CIE LCh); above L* = 100 that is impossible and the channels are clipped. L*, a*, b* count
 * from their own white, so that the perfect diffuser is #ffffff and not the tint between two tables' white points.
 */
export function screenColourFromLab(lab: Lab): ScreenColour {
  const lch = lchFrom({ mode: "lab65", l: lab.L, a: lab.a, b: lab.b });
  const srgb = fitInto(lch, "rgb");
  const p3 = fitInto(lch, "p3");
  const [r, g, b] = srgb.channels;
  return {
    srgb: srgb.channels,
    displayP3: p3.channels,
    srgbMoved: srgb.moved,
    displayP3Moved: p3.moved,
    hex: formatHex({ mode: "rgb", r, g, b }),
  };
}

/** Screen colours of a reflectance factor (BAND_COUNT bands), see `screenColourFromLab`. */
export function screenColourFromReflectance(reflectance: Spectrum): ScreenColour {
  return screenColourFromLab(labFromReflectance(reflectance, weightsFor(SCREEN_VIEWING)));
}
