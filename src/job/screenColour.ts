/** The colour in which a screen shows a lot's bare cloth. */
import { labFromReflectance } from "../core/colorimetry/cielab.ts";
import { labFromHex } from "../core/colorimetry/hex.ts";
import { reflectanceFromLab } from "../core/colorimetry/reconstruct.ts";
import { screenColourFromLab, screenColourFromReflectance } from "../core/colorimetry/screenColour.ts";
import { weightsFor } from "../core/colorimetry/weights.ts";
import type { ColourDocument, LabDocument, ViewingDocument } from "./colourDocument.ts";
import { meanLab } from "./colourSpectrum.ts";

export interface BareScreenColour {
  /** #rrggbb; null where no cloth has the stored colour. */
  readonly hex: string | null;
  /** Whether it lay outside what the screen can show. */
  readonly moved: boolean;
}

function computed(colour: ColourDocument): BareScreenColour {
  if (colour.kind === "hex") return { hex: screenColourFromLab(labFromHex(colour.hex)).hex, moved: false };
  if (colour.kind === "spectrum") {
    const shown = screenColourFromReflectance(Float64Array.from(colour.reflectance));
    return { hex: shown.hex, moved: shown.srgbMoved };
  }
  const lab = meanLab(colour.readings);
  const reconstruction = reflectanceFromLab(lab, colour.viewing);
  if (reconstruction.ok) {
    const shown = screenColourFromReflectance(reconstruction.spectrum);
    return { hex: shown.hex, moved: shown.srgbMoved };
  }
  return { hex: null, moved: true };
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
const known = new WeakMap<ColourDocument, BareScreenColour>();

/** The screen's colour of a stored colour, by way of a reconstructed reflectance under any light and observer. */
export function bareScreenColour(colour: ColourDocument): BareScreenColour {
  const before = known.get(colour);
  if (before !== undefined) return before;
  const shown = computed(colour);
  known.set(colour, shown);
  return shown;
}

/** `#rrggbb` of a lot's bare cloth; null where no cloth has the stored colour. */
export function screenHexFor(lot: { readonly bare: ColourDocument }): string | null {
  return bareScreenColour(lot.bare).hex;
}
