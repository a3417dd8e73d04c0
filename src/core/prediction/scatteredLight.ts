/** The light that haze and the black itself scatter, which adds to a print in Y/Yn and not in L*. */
import { type CellResponse, lightnessPerLuminance, scatteredSdL } from "./cellResponse.ts";
import { type StrongAxes, turned } from "./strongAxes.ts";

/** Scattered light that moves L* by less than this, beside a tint or in a clear, counts as a plain error of L*. */
const SMALL_TINTED_L = 0.2;
const SMALL_CLEAR_L = 0.02;

export interface ScatteredLight {
  /** How far it moves L*, as a standard deviation at the centre. */
  readonly sdL: number;
  /** Whether that is little enough to be a plain error. */
  readonly isSmall: boolean;
  /** What it moves L* by per standard normal of the major axis, where it is small. */
  readonly onMajorL: number;
  /** What the exact model holds of it already: as expected, from the haze and from the black. */
  readonly expectedHaze: number;
  readonly expectedBlack: number;
  /** Means over what is uncertain of it, where film and tint are as meant. */
  readonly meanHaze: number;
  readonly meanBlack: number;
  /** Standard deviation of ln of the sum, given wet-out and tint. */
  readonly lnSd: number;
  /** ln haze and ln tint per standard normal of each axis: further wet-out or more tint is likelier a thicker film. */
  readonly hazeOnMajor: number;
  readonly hazeOnMinor: number;
  readonly tintOnMajor: number;
  readonly tintOnMinor: number;
  /** Of the black's own scattering, beside what the tint brings. */
  readonly blackOnMajor: number;
  readonly blackOnMinor: number;
}

/**
 * Haze and the black's scattering are log-normal and independent; their sum is taken as the log-normal of its mean and
 * variance (Fenton 1960), which is exact where only one of them is there.
 */
export function scatteredLight(response: CellResponse, axes: StrongAxes): ScatteredLight {
  const { hazeLuminance, blackLuminance, doubt } = response;
  const { tintSd } = doubt;
  const hazeSdL = scatteredSdL(response, hazeLuminance, Math.sqrt(doubt.haze.variance));
  const blackSdL = scatteredSdL(response, blackLuminance, Math.sqrt(doubt.black.variance));
  const sdL = Math.sqrt(hazeSdL * hazeSdL + blackSdL * blackSdL);
  const perLuminance = lightnessPerLuminance(response.centreL);
  const hazePerLn = perLuminance * hazeLuminance;
  const blackPerLn = perLuminance * blackLuminance;
  const haze = turned(doubt, axes, doubt.haze);
  const black = turned(doubt, axes, doubt.black);
  const meanHaze = hazeLuminance * Math.exp(haze.varianceLeft / 2);
  const meanBlack = blackLuminance * Math.exp(black.varianceLeft / 2);
  const mean = meanHaze + meanBlack;
  const variance =
    meanHaze * meanHaze * Math.expm1(haze.varianceLeft) +
    meanBlack * meanBlack * Math.expm1(black.varianceLeft);
  const lnVariance = mean === 0 ? 0 : Math.log1p(variance / (mean * mean));
  // On light cloth the two may pull against each other; a sum is never less certain than its less certain part.
  return {
    sdL,
    isSmall: sdL < (tintSd === 0 ? SMALL_CLEAR_L : SMALL_TINTED_L),
    onMajorL: hazePerLn * haze.onMajor + blackPerLn * black.onMajor,
    expectedHaze: hazeLuminance,
    expectedBlack: blackLuminance,
    meanHaze,
    meanBlack,
    lnSd: Math.sqrt(Math.min(lnVariance, Math.max(haze.varianceLeft, black.varianceLeft))),
    hazeOnMajor: haze.onMajor,
    hazeOnMinor: haze.onMinor,
    tintOnMajor: tintSd * axes.tintOnMajor,
    tintOnMinor: tintSd * axes.tintOnMinor,
    blackOnMajor: black.onMajor,
    blackOnMinor: black.onMinor,
  };
}
