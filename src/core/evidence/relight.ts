/** A colour read under one light as it would read under another, and how unsure that is: many spectra have one colour. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import { reflectanceFromLab } from "../colorimetry/reconstruct.ts";
import type { Lab, Viewing } from "../colorimetry/viewing.ts";
import { weightsFor } from "../colorimetry/weights.ts";
import type { Spectrum } from "../spectrum/spectrum.ts";
import {
  bandSlopes,
  conditionedCovariance,
  conditioningOn,
  labSlopesInto,
  stepVariance,
  threeRows,
  tristimulusSlopes,
} from "./spectrumWalk.ts";

/** Least standard deviation of one step when relighting. Invented default: a dye's band takes z by 0.25 per step over 60 nm. */
const RELIT_STEP_SD = 0.15;

/** A relit colour with what its uncertainty is made of. */
export interface Relit {
  readonly lab: Lab;
  /** Covariance (3 x 3) of `lab`. */
  readonly covariance: Float64Array;
  /** dX, dY, dZ by z under the light it was read in, and dL*, da*, db* by z under the other: 3 rows of BAND_COUNT each. */
  readonly readSlopes: readonly Spectrum[];
  readonly labSlopes: readonly Spectrum[];
  /** Variance of one step of the walk of z. */
  readonly step: number;
}

/** `lab`, read under `actual`, as it would read under `stated`; null for a colour that no reflectance has. */
export function relit(lab: Lab, actual: Viewing, stated: Viewing): Relit | null {
  const found = reflectanceFromLab(lab, actual);
  if (!found.ok) return null;
  const { spectrum } = found;
  const slopes = bandSlopes(spectrum);
  const step = Math.max(stepVariance(spectrum), RELIT_STEP_SD ** 2);
  const readSlopes = tristimulusSlopes(slopes, weightsFor(actual));
  const labSlopes = threeRows();
  labSlopesInto(labSlopes, spectrum, slopes, weightsFor(stated));
  return {
    lab: labFromReflectance(spectrum, weightsFor(stated)),
    covariance: conditionedCovariance(labSlopes, conditioningOn(readSlopes, step)),
    step,
    readSlopes,
    labSlopes,
  };
}

/**
 * Covariance of the change from `bare` to `print`, both relit: a dye that relighting misjudges on the cloth it misjudges
 * on the print as well, so only the difference of their slopes counts.
 */
export function changeCovariance(bare: Relit, print: Relit): Float64Array {
  const wanted = print.labSlopes.map((row, c) => row.map((value, i) => value - bare.labSlopes[c]![i]!));
  return conditionedCovariance(wanted, conditioningOn([...bare.readSlopes, ...print.readSlopes], bare.step));
}
