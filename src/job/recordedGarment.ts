/** The cloth that a record was read on: the lot's own colour where it compares with the reading, else the bare reading. */
import { reflectanceFromLab } from "../core/colorimetry/reconstruct.ts";
import { isSameViewing, type Lab, type Viewing } from "../core/colorimetry/viewing.ts";
import type { Garment } from "../core/prediction/inputs.ts";
import type { Spectrum } from "../core/spectrum/spectrum.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import { garmentFor } from "./predictionInputs.ts";
import type { Problem } from "./problem.ts";
import type { MeasuredReadings } from "./readingMeans.ts";
import type { Shelf } from "./shelfDocument.ts";

/** Readings under another light, observer or geometry are never compared: then the pair's own bare cloth stands in. */
function compares({ bare }: GarmentLot, readings: MeasuredReadings, viewing: Viewing): boolean {
  if (bare.kind === "hex" || bare.geometry !== readings.geometry) return false;
  if (bare.kind === "spectrum") return true;
  return isSameViewing(bare.viewing, viewing);
}

function meanSpectrum(spectra: readonly (readonly number[])[]): Spectrum {
  const first = spectra[0] ?? [];
  return Float64Array.from(
    first,
    (_, band) => spectra.reduce((sum, one) => sum + one[band]!, 0) / spectra.length,
  );
}

/** The pair's own bare cloth; null where no cloth can have that colour. */
function readBare(
  readings: MeasuredReadings,
  bare: Lab,
  viewing: Viewing,
): Pick<Garment, "bare" | "bareSource" | "readUnder"> | null {
  if (readings.kind === "spectral") {
    const spectrum = meanSpectrum(readings.pairs.map((pair) => pair.bare));
    return { bare: spectrum, bareSource: "measured", readUnder: null };
  }
  const found = reflectanceFromLab(bare, viewing);
  return found.ok ? { bare: found.spectrum, bareSource: "reconstructed", readUnder: viewing } : null;
}

/**
 * The garment under an instrument's reading. `lotGarment` is the lot's own, made once, so that all records on it share
 * one object.
 */
export function recordedGarment(
  lot: GarmentLot,
  shelf: Shelf,
  lotGarment: ReturnType<typeof garmentFor>,
  reading: { readonly readings: MeasuredReadings; readonly bare: Lab; readonly viewing: Viewing } | null,
):
  | { readonly ok: true; readonly garment: Garment }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  if (reading === null) return lotGarment;
  const { readings, bare, viewing } = reading;
  if (lotGarment.ok && compares(lot, readings, viewing)) return lotGarment;
  const own = readBare(readings, bare, viewing);
  if (own === null) return lotGarment;
  // A lot whose colour no cloth can have is still a lot with fibres: only its colour is taken from the pair.
  const cloth = lotGarment.ok
    ? lotGarment
    : garmentFor({ ...lot, bare: { kind: "hex", hex: "#808080" } }, shelf);
  if (!cloth.ok) return cloth;
  return { ok: true, garment: { ...cloth.garment, ...own, geometry: readings.geometry } };
}
