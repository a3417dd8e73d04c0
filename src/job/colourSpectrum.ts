/** The reflectance behind a stored colour: measured, or the smoothest curve that has the colour. */

import { nearestReflectanceFromHex, reflectanceFromLab } from "../core/colorimetry/reconstruct.ts";
import type { Viewing } from "../core/colorimetry/viewing.ts";
import type { Spectrum } from "../core/spectrum/spectrum.ts";
import type { ColourDocument, LabDocument } from "./colourDocument.ts";
import type { Problem } from "./problem.ts";

export interface ColourSpectrum {
  readonly ok: true;
  readonly reflectance: Spectrum;
  readonly source: "measured" | "reconstructed" | "approximate";
  /** The light and observer the colour was stated for; null for a measured spectrum. */
  readonly readUnder: Viewing | null;
  /** Whether a screen colour had to move to become one that cloth can have. */
  readonly moved: boolean;
}

/** What a screen colour is stated for (sRGB's white and observer). */
const HEX_VIEWING: Viewing = { illuminant: "D65", observer: "2deg" };

/** The mean of readings under one condition, axis by axis. @throws RangeError where there are none. */
export function meanLab(readings: readonly LabDocument[]): LabDocument {
  if (readings.length === 0) throw new RangeError("readings must not be empty");
  const mean = (axis: keyof LabDocument) =>
    readings.reduce((sum, reading) => sum + reading[axis], 0) / readings.length;
  return { L: mean("L"), a: mean("a"), b: mean("b") };
}

/** The reflectance of `colour`, or why no cloth can have it; never throws for a colour its schema accepts. */
export function colourSpectrum(
  colour: ColourDocument,
  where: string,
): ColourSpectrum | { readonly ok: false; readonly problems: readonly Problem[] } {
  switch (colour.kind) {
    case "spectrum":
      return {
        ok: true,
        reflectance: Float64Array.from(colour.reflectance),
        source: "measured",
        readUnder: null,
        moved: false,
      };
    case "hex": {
      const { spectrum, moved } = nearestReflectanceFromHex(colour.hex);
      return { ok: true, reflectance: spectrum, source: "approximate", readUnder: HEX_VIEWING, moved };
    }
    case "readings": {
      const lab = meanLab(colour.readings);
      const found = reflectanceFromLab(lab, colour.viewing);
      if (!found.ok) {
        const code =
          found.reason === "outside-object-colour-solid" ? "colour-no-cloth-has" : "colour-at-the-limit";
        const { illuminant, observer } = colour.viewing;
        return {
          ok: false,
          problems: [{ code, where: `${where}.readings`, values: { ...lab, illuminant, observer } }],
        };
      }
      return {
        ok: true,
        reflectance: found.spectrum,
        source: "reconstructed",
        readUnder: colour.viewing,
        moved: false,
      };
    }
  }
}
