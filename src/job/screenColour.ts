/** The colour in which a screen shows a lot's bare cloth. */
import { labFromReflectance } from "../core/colorimetry/cielab.ts";
import { labFromHex } from "../core/colorimetry/hex.ts";
import { reflectanceFromLab } from "../core/colorimetry/reconstruct.ts";
import {
  type ScreenColour,
  screenColourFromLab,
  screenColourFromReflectance,
} from "../core/colorimetry/screenColour.ts";
import { weightsFor } from "../core/colorimetry/weights.ts";
import type { ColourDocument, LabDocument, ViewingDocument } from "./colourDocument.ts";
import { meanLab } from "./colourSpectrum.ts";

/** What the channels of a screen's colour stand for. */
export type ScreenGamut = "srgb" | "display-p3";

export interface ShownColour {
  /** The gamma-encoded 8-bit channels in the gamut, as #rrggbb. */
  readonly hex: string;
  /** Whether it lay outside the gamut and the nearest inside is shown. */
  readonly moved: boolean;
}

export interface BareScreenColour {
  /** As in `ShownColour`; null where no cloth has the stored colour. */
  readonly hex: string | null;
  readonly moved: boolean;
}

/** A colour as a screen of this gamut is told it. */
export function shownIn(colour: ScreenColour, gamut: ScreenGamut): ShownColour {
  if (gamut === "srgb") return { hex: colour.hex, moved: colour.srgbMoved };
  const channels = colour.displayP3.map((part) =>
    Math.round(part * 255)
      .toString(16)
      .padStart(2, "0"),
  );
  return { hex: `#${channels.join("")}`, moved: colour.displayP3Moved };
}

const NO_COLOUR: BareScreenColour = { hex: null, moved: true };

function computed(colour: ColourDocument): ScreenColour | null {
  if (colour.kind === "hex") return screenColourFromLab(labFromHex(colour.hex));
  if (colour.kind === "spectrum") return screenColourFromReflectance(Float64Array.from(colour.reflectance));
  const reconstruction = reflectanceFromLab(meanLab(colour.readings), colour.viewing);
  return reconstruction.ok ? screenColourFromReflectance(reconstruction.spectrum) : null;
}

/**
 * L*, a*, b* of a stored colour, and the light and observer they stand for: the mean of readings under their own, a
 * spectrum under `viewing`; null for a screen colour, which is no measurement.
 */
export function bareLab(
  colour: ColourDocument,
  viewing: ViewingDocument,
): { readonly lab: LabDocument; readonly viewing: ViewingDocument } | null {
  if (colour.kind === "hex") return null;
  if (colour.kind === "readings") return { lab: meanLab(colour.readings), viewing: colour.viewing };
  return { lab: labFromReflectance(Float64Array.from(colour.reflectance), weightsFor(viewing)), viewing };
}

/** Documents are never changed in place, so a colour that is the same object is the same colour. */
const known = new WeakMap<ColourDocument, Readonly<Record<ScreenGamut, BareScreenColour>>>();

/** The screen's colour of a stored colour, by way of a reconstructed reflectance under any light and observer. */
export function bareScreenColour(colour: ColourDocument, gamut: ScreenGamut = "srgb"): BareScreenColour {
  const before = known.get(colour);
  if (before !== undefined) return before[gamut];
  const found = computed(colour);
  const shown = {
    srgb: found === null ? NO_COLOUR : shownIn(found, "srgb"),
    "display-p3": found === null ? NO_COLOUR : shownIn(found, "display-p3"),
  };
  known.set(colour, shown);
  return shown[gamut];
}

/** `#rrggbb` of a lot's bare cloth in sRGB; null where no cloth has the stored colour. */
export function screenHexFor(lot: { readonly bare: ColourDocument }): string | null {
  return bareScreenColour(lot.bare).hex;
}
