/** The light that haze and the black itself scatter, which adds to a print in Y/Yn and not in L*. */
import { type CellResponse, scatteredSdL } from "./cellResponse.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { StrongAxes } from "./strongAxes.ts";

/** Scattered light that moves L* by less than this, beside a tint or in a clear, counts as a plain error of L*. */
const SMALL_TINTED_L = 0.2;
const SMALL_CLEAR_L = 0.02;

export interface ScatteredLight {
  /** How far it moves L*, as a standard deviation at the centre. */
  readonly sdL: number;
  /** Whether that is little enough to be a plain error. */
  readonly isSmall: boolean;
  /** What the exact model holds of it already: as expected, from the haze and from the black. */
  readonly expectedHaze: number;
  readonly expectedBlack: number;
  /** Means over what is uncertain of it, where film and tint are as meant. */
  readonly meanHaze: number;
  readonly meanBlack: number;
  /** Standard deviation of ln of the sum, given wet-out and tint. */
  readonly lnSd: number;
  /** ln haze and ln black per standard normal of each axis: further wet-out or more tint is likelier a thicker film. */
  readonly hazeOnMajor: number;
  readonly hazeOnMinor: number;
  readonly blackOnMajor: number;
  readonly blackOnMinor: number;
}

/**
 * Haze and the black's scattering are log-normal and independent; their sum is taken as the log-normal of its mean and
 * variance (Fenton 1960), which is exact where only one of them is there.
 */
export function scatteredLight(ink: PrintableInk, response: CellResponse, axes: StrongAxes): ScatteredLight {
  const { hazeLuminance, blackLuminance, tintSd } = response;
  const wetOutSd = response.wetOut.sd;
  const depositVariance = ink.lnDepositSd * ink.lnDepositSd;
  const hazeSdL = scatteredSdL(response, hazeLuminance, Math.sqrt(ink.lnHazeSd ** 2 + depositVariance));
  const blackSdL = scatteredSdL(response, blackLuminance, ink.lnBlackScatteringSd);
  const sdL = Math.sqrt(hazeSdL * hazeSdL + blackSdL * blackSdL);
  // Covariance of ln deposit with wet-out and tint, both as standard normals, and through them with the turned axes.
  const withWetOut = (ink.reachSlope * depositVariance) / wetOutSd;
  const withTint = ink.hasTint ? depositVariance / tintSd : 0;
  const { correlation } = axes;
  const own = ink.hasTint
    ? (withTint - correlation * withWetOut) / Math.sqrt(1 - correlation * correlation)
    : 0;
  const cosine = axes.wetOutOnMajor / wetOutSd;
  const sine = -axes.wetOutOnMinor / wetOutSd;
  const hazeOnMajor = cosine * withWetOut + sine * own;
  const hazeOnMinor = ink.hasTint ? cosine * own - sine * withWetOut : 0;
  const depositLeft = Math.max(0, depositVariance - hazeOnMajor * hazeOnMajor - hazeOnMinor * hazeOnMinor);
  const hazeVariance = ink.lnHazeSd * ink.lnHazeSd + depositLeft;
  const blackVariance = ink.lnBlackScatteringSd * ink.lnBlackScatteringSd;
  const meanHaze = hazeLuminance * Math.exp(hazeVariance / 2);
  const meanBlack = blackLuminance * Math.exp(blackVariance / 2);
  const mean = meanHaze + meanBlack;
  const variance =
    meanHaze * meanHaze * Math.expm1(hazeVariance) + meanBlack * meanBlack * Math.expm1(blackVariance);
  const lnVariance = mean === 0 ? 0 : Math.log1p(variance / (mean * mean));
  // On light cloth the two may pull against each other; a sum is never less certain than its less certain part.
  return {
    sdL,
    isSmall: sdL < (ink.hasTint ? SMALL_TINTED_L : SMALL_CLEAR_L),
    expectedHaze: hazeLuminance,
    expectedBlack: blackLuminance,
    meanHaze,
    meanBlack,
    lnSd: Math.sqrt(Math.min(lnVariance, Math.max(hazeVariance, blackVariance))),
    hazeOnMajor,
    hazeOnMinor,
    blackOnMajor: tintSd * axes.tintOnMajor,
    blackOnMinor: tintSd * axes.tintOnMinor,
  };
}
