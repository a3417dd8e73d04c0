/** The light that haze and the black itself scatter, which adds to a print in Y/Yn and not in L*. */
import { type CellResponse, scatteredSdL } from "./cellResponse.ts";
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
export function scatteredLight(response: CellResponse, axes: StrongAxes): ScatteredLight {
  const { hazeLuminance, blackLuminance, doubt } = response;
  const { wetOutSd, tintSd, correlation, depositOnWetOut, depositOnTint } = doubt;
  const isClear = tintSd === 0;
  const depositVariance = doubt.depositSd * doubt.depositSd;
  const lnHazeVariance = doubt.hazeSd * doubt.hazeSd;
  const hazeSdL = scatteredSdL(response, hazeLuminance, Math.sqrt(lnHazeVariance + depositVariance));
  const blackSdL = scatteredSdL(response, blackLuminance, doubt.blackScatteringSd);
  const sdL = Math.sqrt(hazeSdL * hazeSdL + blackSdL * blackSdL);
  // Covariance of ln deposit with the tint's own normal, and through it and wet-out's with the turned axes.
  const own = isClear
    ? 0
    : (depositOnTint - correlation * depositOnWetOut) / Math.sqrt(1 - correlation * correlation);
  const cosine = axes.wetOutOnMajor / wetOutSd;
  const sine = -axes.wetOutOnMinor / wetOutSd;
  const hazeOnMajor = cosine * depositOnWetOut + sine * own;
  const hazeOnMinor = isClear ? 0 : cosine * own - sine * depositOnWetOut;
  const depositLeft = Math.max(0, depositVariance - hazeOnMajor * hazeOnMajor - hazeOnMinor * hazeOnMinor);
  const hazeVariance = lnHazeVariance + depositLeft;
  const blackVariance = doubt.blackScatteringSd * doubt.blackScatteringSd;
  const meanHaze = hazeLuminance * Math.exp(hazeVariance / 2);
  const meanBlack = blackLuminance * Math.exp(blackVariance / 2);
  const mean = meanHaze + meanBlack;
  const variance =
    meanHaze * meanHaze * Math.expm1(hazeVariance) + meanBlack * meanBlack * Math.expm1(blackVariance);
  const lnVariance = mean === 0 ? 0 : Math.log1p(variance / (mean * mean));
  // On light cloth the two may pull against each other; a sum is never less certain than its less certain part.
  return {
    sdL,
    isSmall: sdL < (isClear ? SMALL_CLEAR_L : SMALL_TINTED_L),
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
