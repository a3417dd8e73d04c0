/** A garment made ready for many predictions: its absorption over scattering, fibre by fibre where it is a heather. */
import { labFromTristimulus } from "../colorimetry/cielab.ts";
import { tristimulusFromReflectance } from "../colorimetry/tristimulus.ts";
import type { Lab, Tristimulus, Viewing } from "../colorimetry/viewing.ts";
import { weightsFor } from "../colorimetry/weights.ts";
import { BRIGHTENER_LIMIT_REFLECTANCE, requireReflectance } from "../optics/brightener.ts";
import {
  blendValue,
  reflectanceFromBlendValue,
  UNDYED_FIBRE_REFLECTANCE,
  unmixReflectance,
} from "../optics/fibreBlend.ts";
import {
  absorptionOverScattering,
  DARK_LIMIT_REFLECTANCE,
  reflectanceFromAbsorptionOverScattering,
} from "../optics/kubelkaMunk.ts";
import { WET_OUT_GAIN } from "../optics/wetOut.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { type CoarseCloth, coarseCloth } from "./coarseCloth.ts";
import { darkShareOf } from "./darkShare.ts";
import type { Garment } from "./inputs.ts";
import { type ResidentBands, residentBands } from "./kernel/residentBands.ts";
import { type ResidentWeights, residentWeights } from "./kernel/residentWeights.ts";

/** A band reading below this counts as this: K/S of 0 is infinite. Invented default, a tenth of any real black cloth. */
const FLOOR_REFLECTANCE = 0.0005;
/** A fibre that makes less of the cloth than this carries no colour: rounding, not cloth. */
const NEGLIGIBLE_MASS = 1e-6;
const SUM_TOLERANCE = 0.005 + 1e-9;

export interface WettableGarment {
  readonly garment: Garment;
  readonly weights: ResidentWeights;
  readonly bareTristimulus: Tristimulus;
  readonly bareLab: Lab;
  /** Gain of each fibre, ln(K/S) under the reference clear at the reference deposit. */
  readonly gains: Float64Array;
  /** Part of the colour that each fibre carries, sum 1. */
  readonly dyeShares: Float64Array;
  readonly massFractions: Float64Array;
  readonly dyed: readonly boolean[];
  /** K/S of the bare cloth by band; 0 in a brightened band. */
  readonly clothKs: Spectrum;
  /** K/S of the dyed fibre alone where the cloth is a heather that could be unmixed, else null. */
  readonly dyedFibreKs: Spectrum | null;
  /** Blend value of an undyed fibre, the same in every band. */
  readonly undyedKs: number;
  /** `clothKs` and `dyedFibreKs` for the band kernel. */
  readonly resident: ResidentBands;
  /** The same by groups of bands. */
  readonly coarse: CoarseCloth;
  readonly isDark: boolean;
  /** How much of what wet-out does to L* happens in such bands, 0..1. */
  readonly darkShare: number;
  readonly isBrightened: boolean;
  /** A heather predicted as a solid because no dyed fibre could give this blend. */
  readonly fellBackToSolid: boolean;
}

const ksOf = (reflectance: number): number =>
  reflectance > BRIGHTENER_LIMIT_REFLECTANCE
    ? 0
    : absorptionOverScattering(Math.max(reflectance, FLOOR_REFLECTANCE));

function unmixDyedFibre(bare: Spectrum, undyedMassFraction: number): Spectrum | null {
  const dyed = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    const reflectance = unmixReflectance(bare[i]!, UNDYED_FIBRE_REFLECTANCE, undyedMassFraction);
    if (reflectance === null || reflectance > BRIGHTENER_LIMIT_REFLECTANCE) return null;
    dyed[i] = reflectance;
  }
  return dyed;
}

/**
 * Makes `garment` ready to be predicted under `viewing` (model.md §3).
 * A cloth with both dyed and undyed fibres is unmixed by Stearns & Noechel; a cloth with no dyed fibre at all (white,
 * natural) is treated as evenly coloured.
 * @throws RangeError for fibres that do not sum to 1 (label rounding of 0.005 allowed) or a band outside 0..1.5.
 */
export function wettableGarment(garment: Garment, viewing: Viewing): WettableGarment {
  const { bare, fibres } = garment;
  if (bare.length !== BAND_COUNT)
    throw new RangeError(`bare must have ${BAND_COUNT} bands; got ${bare.length}`);
  for (const reflectance of bare) requireReflectance("bare reflectance", reflectance);
  const total = fibres.reduce((sum, part) => sum + part.massFraction, 0);
  if (!(Math.abs(total - 1) <= SUM_TOLERANCE))
    throw new RangeError(`fibre mass fractions must sum to 1; got ${total}`);
  const massFractions = Float64Array.from(fibres, (part) => part.massFraction / total);
  const noneDyed = !fibres.some((part) => part.dyed && part.massFraction > NEGLIGIBLE_MASS);
  const dyed = fibres.map((part) => noneDyed || part.dyed);
  const dyedMass = massFractions.reduce((sum, mass, i) => sum + (dyed[i] ? mass : 0), 0);
  const isHeather = dyedMass < 1 - NEGLIGIBLE_MASS;
  const dyedFibre = isHeather ? unmixDyedFibre(bare, 1 - dyedMass) : null;
  const weights = residentWeights(weightsFor(viewing));
  const bareTristimulus = tristimulusFromReflectance(bare, weights);
  const clothKs = bare.map(ksOf);
  const dyedFibreKs = dyedFibre === null ? null : dyedFibre.map(ksOf);
  const gains = Float64Array.from(fibres, (part) => WET_OUT_GAIN[part.fibre]);
  const dyeShares = massFractions.map((mass, i) => (dyed[i] ? mass / dyedMass : 0));
  const undyedKs = ksOf(UNDYED_FIBRE_REFLECTANCE);
  const parts: Fibres = { dyeShares, massFractions, dyed, undyedKs };
  const wetted = new Float64Array(BAND_COUNT);
  wetSpectrum(wetted, parts, clothKs, dyedFibreKs, gains);
  const coarse = coarseCloth({ weights, bare, dyedFibre, wetted }, ksOf, (out, groupKs, dyedGroupKs) =>
    wetSpectrum(out, parts, groupKs, dyedGroupKs, gains),
  );
  // Written out: an object made by spreading another is slower to read from, in every prediction.
  return {
    garment,
    weights,
    bareTristimulus,
    bareLab: labFromTristimulus(bareTristimulus, weights.white),
    gains,
    dyeShares,
    massFractions,
    dyed,
    clothKs,
    dyedFibreKs,
    undyedKs,
    resident: dyedFibreKs === null ? residentBands([clothKs]) : residentBands([clothKs, dyedFibreKs]),
    coarse,
    isDark: bare.some((reflectance) => reflectance < DARK_LIMIT_REFLECTANCE),
    darkShare: darkShareOf(bare, weights),
    isBrightened: bare.some((reflectance) => reflectance > BRIGHTENER_LIMIT_REFLECTANCE),
    fellBackToSolid: isHeather && dyedFibre === null,
  };
}

/** What wetting needs to know of a cloth beside its K/S. */
type Fibres = Pick<WettableGarment, "dyeShares" | "massFractions" | "dyed" | "undyedKs">;

/**
 * Writes the reflectance of wetted cloth of K/S `ks`, that of its dyed fibre alone `dyedFibreKs` where it is a heather, into
 * `out`, all of one length, given the gain of each fibre, ln(K/S). Solid: K/S times D = sum d_i exp(g_i). Heather: each fibre
 * wetted by its own gain and remixed by Stearns & Noechel.
 */
export function wetSpectrum(
  out: Spectrum,
  fibres: Fibres,
  ks: Spectrum,
  dyedFibreKs: Spectrum | null,
  gains: Float64Array,
): void {
  if (dyedFibreKs !== null) {
    wetHeatherInto(out, fibres, dyedFibreKs, gains);
    return;
  }
  const { dyeShares } = fibres;
  let factor = 0;
  for (let i = 0; i < dyeShares.length; i++)
    if (dyeShares[i]! > 0) factor += dyeShares[i]! * Math.exp(gains[i]!);
  for (let i = 0; i < out.length; i++) out[i] = reflectanceFromAbsorptionOverScattering(factor * ks[i]!);
}

/** Writes the reflectance of the wetted cloth into `out` (BAND_COUNT bands), given the gain of each fibre, ln(K/S). */
export function wetInto(out: Spectrum, cloth: WettableGarment, gains: Float64Array): void {
  if (cloth.dyedFibreKs === null) wetSolidInto(out, cloth, gains);
  else wetHeatherInto(out, cloth, cloth.dyedFibreKs, gains);
}

/** `wetInto` with dye shares, whatever the cloth: for a heather the other of its two models (model.md §3). */
export function wetSolidInto(out: Spectrum, cloth: WettableGarment, gains: Float64Array): void {
  wetSpectrum(out, cloth, cloth.clothKs, null, gains);
  if (!cloth.isBrightened) return;
  cloth.garment.bare.forEach((reflectance, i) => {
    if (reflectance > BRIGHTENER_LIMIT_REFLECTANCE) out[i] = reflectance;
  });
}

function wetHeatherInto(out: Spectrum, fibres: Fibres, dyedKs: Spectrum, gains: Float64Array): void {
  const { massFractions, dyed, undyedKs } = fibres;
  const { length } = out;
  out.fill(0);
  for (let k = 0; k < gains.length; k++) {
    const factor = Math.exp(gains[k]!);
    const mass = massFractions[k]!;
    if (!dyed[k]) {
      const value = mass * blendValue(reflectanceFromAbsorptionOverScattering(factor * undyedKs));
      for (let i = 0; i < length; i++) out[i] = out[i]! + value;
    } else {
      for (let i = 0; i < length; i++) {
        out[i] = out[i]! + mass * blendValue(reflectanceFromAbsorptionOverScattering(factor * dyedKs[i]!));
      }
    }
  }
  for (let i = 0; i < length; i++) out[i] = reflectanceFromBlendValue(out[i]!);
}
