/**
 * CIEDE2000 without hue angles wherever they cancel: a prediction asks for it with every colour.
 */
import type { Lab } from "./viewing.ts";

/** 25^7 (CIE 142-2001). */
const CHROMA_POWER = 25 ** 7;
const RADIANS = Math.PI / 180;
const COS_30 = Math.cos(30 * RADIANS);
const SIN_30 = 0.5;
const COS_6 = Math.cos(6 * RADIANS);
const SIN_6 = Math.sin(6 * RADIANS);
const COS_63 = Math.cos(63 * RADIANS);
const SIN_63 = Math.sin(63 * RADIANS);
const COS_275 = Math.cos(275 * RADIANS);
const SIN_275 = Math.sin(275 * RADIANS);
const ROTATION_WIDTH = 25 * RADIANS;
const ROTATION_MOST = 30 * RADIANS;
/** Six widths from 275 degrees exp(-36) turns nothing that a double can hold. */
const ROTATION_REACH_COSINE = Math.cos(6 * ROTATION_WIDTH);

/** sqrt(C^7 / (C^7 + 25^7)). */
function chromaShare(chroma: number): number {
  const square = chroma * chroma;
  const power = square * square * square * chroma;
  return Math.sqrt(power / (power + CHROMA_POWER));
}

/** Of two colours whose hues are opposite, the one further round from the positive a' axis counts as the second. */
function isFurtherRound(a1: number, b1: number, a2: number, b2: number): boolean {
  const round = (a: number, b: number): number => (Math.atan2(b, a) + 2 * Math.PI) % (2 * Math.PI);
  return round(a2, b2) > round(a1, b1);
}

/**
 * CIEDE2000 colour difference with kL = kC = kH = 1 (CIE 142-2001; G. Sharma, W. Wu & E. N. Dalal 2005, Color Res. Appl.
 * 30, 21-30, whose rules for the mean hue are kept). Symmetric. Departs from their formulas in form only: with the hue
 * difference dh and mean hue h' between unit vectors, dH' = cross sqrt(2) / sqrt(C1'C2' + dot) and h' is the direction of
 * their sum; beyond a quarter turn, where that cancels, dH' = sqrt(2 (C1'C2' - dot)) and h' is square to their difference.
 * The cosines of T are those of multiples of h'. Where the hues are exactly opposite the angles decide, as in the paper.
 */
export function deltaE00({ L: L1, a: a1, b: b1 }: Lab, { L: L2, a: a2, b: b2 }: Lab): number {
  const chromaMean = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const stretch = 1.5 - 0.5 * chromaShare(chromaMean);
  const p1 = stretch * a1;
  const p2 = stretch * a2;
  const C1 = Math.sqrt(p1 * p1 + b1 * b1);
  const C2 = Math.sqrt(p2 * p2 + b2 * b2);
  const product = C1 * C2;
  let cosine = 1;
  let sine = 0;
  let dH = 0;
  if (product > 0) {
    const cross = p1 * b2 - b1 * p2;
    const dot = p1 * p2 + b1 * b2;
    if (dot >= 0) {
      const along = C2 * p1 + C1 * p2;
      const across = C2 * b1 + C1 * b2;
      const length = Math.sqrt(along * along + across * across);
      dH = (cross * Math.SQRT2) / Math.sqrt(product + dot);
      cosine = along / length;
      sine = across / length;
    } else {
      const along = C1 * p2 - C2 * p1;
      const across = C1 * b2 - C2 * b1;
      const length = Math.sqrt(along * along + across * across);
      const isForward = cross === 0 ? isFurtherRound(p1, b1, p2, b2) : cross > 0;
      dH = (isForward ? 1 : -1) * Math.sqrt(2 * (product - dot));
      cosine = (isForward ? across : -across) / length;
      sine = (isForward ? -along : along) / length;
    }
  } else if (C1 + C2 > 0) {
    cosine = (p1 + p2) / (C1 + C2);
    sine = (b1 + b2) / (C1 + C2);
  }
  const cosine2 = 2 * cosine * cosine - 1;
  const sine2 = 2 * sine * cosine;
  const cosine3 = cosine * cosine2 - sine * sine2;
  const sine3 = sine * cosine2 + cosine * sine2;
  const cosine4 = 2 * cosine2 * cosine2 - 1;
  const sine4 = 2 * sine2 * cosine2;
  const T =
    1 -
    0.17 * (cosine * COS_30 + sine * SIN_30) +
    0.24 * cosine2 +
    0.32 * (cosine3 * COS_6 - sine3 * SIN_6) -
    0.2 * (cosine4 * COS_63 + sine4 * SIN_63);
  const lightness = (L1 + L2) / 2 - 50;
  const chroma = (C1 + C2) / 2;
  const SL = 1 + (0.015 * lightness * lightness) / Math.sqrt(20 + lightness * lightness);
  const SC = 1 + 0.045 * chroma;
  const SH = 1 + 0.015 * chroma * T;
  const l = (L2 - L1) / SL;
  const c = (C2 - C1) / SC;
  const h = dH / SH;
  return Math.sqrt(l * l + c * c + h * h + rotation(cosine, sine, chroma) * c * h);
}

/**
 * R_T, which turns the axes of chroma and hue in the blues, at the mean hue of `cosine` and `sine`. The paper counts hues
 * from 0 to 360 degrees and the distance to 275 within that, so it ends at 0 and does not go on into the reds.
 */
function rotation(cosine: number, sine: number, chroma: number): number {
  const towardsBlue = cosine * COS_275 + sine * SIN_275;
  const isFirstQuarter = cosine > 0 && sine >= 0;
  if (isFirstQuarter || towardsBlue < ROTATION_REACH_COSINE) return 0;
  const fromBlue = Math.atan2(sine * COS_275 - cosine * SIN_275, towardsBlue) / ROTATION_WIDTH;
  const turn = ROTATION_MOST * Math.exp(-fromBlue * fromBlue);
  return -2 * Math.sin(2 * turn) * chromaShare(chroma);
}
