/** How far a print may land from what is expected, and how likely it lands in the target band (model.md §5). */
import { momentsAlongMajor, tiltMeans } from "./cellMoments.ts";
import { type CellResponse, cellResponse } from "./cellResponse.ts";
import type { TargetBand } from "./inputs.ts";
import { type NormalMixture, probabilityBelow, quantileOf } from "./normalMixture.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import { scatteredLight } from "./scatteredLight.ts";
import { MAJOR_COUNT, MAJOR_DISTANCE, MAJOR_MASSES, MAJOR_NODES, PART_SD } from "./spreadGrid.ts";
import type { SpreadRoom } from "./spreadRoom.ts";
import { strongAxes, turned } from "./strongAxes.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** The spread of one cell in delta-L*, and how L* answers to what it is made of. */
export interface CellSpread {
  readonly chanceInBand: number;
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  readonly response: CellResponse;
}

/** Normal quantile of 95 %. */
const Z_95 = 1.6448536269514722;
const MAJOR_MIDDLE = (MAJOR_COUNT - 1) / 2;
/** From differences of neighbours to the slope times PART_SD and to half the bend times its square. */
const PER_SLOPE = PART_SD / (2 * MAJOR_DISTANCE);
const BEND_STEP = MAJOR_DISTANCE / PART_SD;
const PER_BEND = 1 / (2 * BEND_STEP * BEND_STEP);
/** No part of the mixture reaches farther than this many standard deviations of the widest. */
const PART_REACH = 7;

/** What the quantiles lie between. */
interface Extent {
  readonly low: number;
  readonly high: number;
}

/**
 * A skewed part is split in two normals, the smaller of this share lying out on its tail. Of skewnesses of the two-point
 * distribution between 1.25 and 5, 4 met the random reference best, on black cloth under a hazy film above all.
 */
const SPLIT_SKEWNESS = 4;
const TAIL_SHARE = 0.5 * (1 - SPLIT_SKEWNESS / Math.sqrt(4 + SPLIT_SKEWNESS * SPLIT_SKEWNESS));
const TAIL_DISTANCE = Math.sqrt((1 - TAIL_SHARE) / TAIL_SHARE);
const BODY_DISTANCE = Math.sqrt(TAIL_SHARE / (1 - TAIL_SHARE));
/** Of its variance at most this much lies between the two; a part with less than this is not split. */
const MOST_SPLIT = 0.8;
const LEAST_SPLIT_CUBED = 0.1 ** 3;

/**
 * The moments of `room` as a mixture, a part for every major node, widened by `extraVariance` and shifted by `shift`. Within
 * a part, which is PART_SD wide, L* runs on the parabola through its node and its neighbours: mean and variance of that are
 * exact. A third moment that the other unknowns make is kept by two normals instead of one, a two-point distribution of
 * fixed skewness, and so of fixed shares, that has it; what the parabola's bend makes within a part is left out.
 */
function fillMixture(room: SpreadRoom, shift: number, extraVariance: number): Extent {
  const { means, variances, thirds, slopes, partOf, all } = room;
  const { masses, precisions } = all;
  let count = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let widest = 0;
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const middle = Math.min(MAJOR_COUNT - 2, Math.max(1, k));
    const bend = (means[middle + 1]! - 2 * means[middle]! + means[middle - 1]!) * PER_BEND;
    const slope = (means[middle + 1]! - means[middle - 1]!) * PER_SLOPE + (k - middle) * 2 * bend * BEND_STEP;
    const mean = means[k]! + bend + shift;
    const variance = variances[k]! + slope * slope + 2 * bend * bend + extraVariance;
    const third = thirds[k]!;
    slopes[k] = slope;
    const mass = MAJOR_MASSES[k]!;
    if (mean < low) low = mean;
    if (mean > high) high = mean;
    if (variance > widest) widest = variance;
    const skewed = third / SPLIT_SKEWNESS;
    if (skewed * skewed < LEAST_SPLIT_CUBED * variance * variance * variance) {
      masses[count] = mass;
      all.means[count] = mean;
      precisions[count] = 1 / Math.sqrt(variance);
      partOf[count] = k;
      count++;
      continue;
    }
    const between = Math.min(MOST_SPLIT * variance, Math.cbrt(skewed * skewed));
    const apart = third > 0 ? Math.sqrt(between) : -Math.sqrt(between);
    const precision = 1 / Math.sqrt(variance - between);
    masses[count] = TAIL_SHARE * mass;
    all.means[count] = mean + TAIL_DISTANCE * apart;
    precisions[count] = precision;
    masses[count + 1] = (1 - TAIL_SHARE) * mass;
    all.means[count + 1] = mean - BODY_DISTANCE * apart;
    precisions[count + 1] = precision;
    partOf[count] = k;
    partOf[count + 1] = k;
    count += 2;
  }
  all.count = count;
  const reach = PART_REACH * Math.sqrt(widest);
  return { low: low - reach, high: high + reach };
}

/**
 * `room.all`, each part counting only by the share of it whose hue holds. Where that share changes along a part, what holds
 * lies off its middle by the covariance of share and L* over the share.
 */
function withHue({ all, inHue, hueHolds, slopes, partOf }: SpreadRoom): NormalMixture {
  for (let p = 0; p < all.count; p++) {
    const k = partOf[p]!;
    const middle = Math.min(MAJOR_COUNT - 2, Math.max(1, k));
    const before = hueHolds[middle - 1]!;
    const after = hueHolds[middle + 1]!;
    const change = (after - before) * PER_SLOPE;
    const holds = Math.min(
      1,
      Math.max(0, hueHolds[k]! + (after - 2 * hueHolds[middle]! + before) * PER_BEND),
    );
    const most = Math.max(holds, Math.abs(change));
    inHue.masses[p] = all.masses[p]! * holds;
    inHue.means[p] = all.means[p]! + (most === 0 ? 0 : (slopes[k]! * change) / most);
    inHue.precisions[p] = all.precisions[p]!;
  }
  inHue.count = all.count;
  return inHue;
}

/**
 * Quantile of `room.all` for which the major unknown alone, were it all there is, would stand at `z`, -Z_95, 0 or Z_95 (L*
 * rises along it): looked for from there on, what the other unknowns add in quadrature.
 */
function quantileAt(
  { means, variances, all }: SpreadRoom,
  { low, high }: Extent,
  z: number,
  shift: number,
  extraVariance: number,
): number {
  const middle = means[MAJOR_MIDDLE]!;
  if (z === 0) return quantileOf(all, 0.5, low, high, middle + shift);
  const position = (z - MAJOR_NODES[0]!) / MAJOR_DISTANCE;
  const k = Math.floor(position);
  const alone = means[k]! + (position - k) * (means[k + 1]! - means[k]!) - middle;
  const away = Math.sqrt(alone * alone + Z_95 * Z_95 * (variances[k]! + extraVariance));
  const isUpper = z > 0;
  const guess = middle + shift + (isUpper ? away : -away);
  return quantileOf(all, isUpper ? 0.95 : 0.05, low, high, guess);
}

/**
 * Spread of `ink` on `cloth`. Without random sampling: along the unknown that moves L* most a fixed line of nodes, at each
 * of them the other unknowns by the mean and variance they make, all of it a mixture of normals (ours; within the
 * promise of model.md §5 of a 100,000-point reference). Light that haze or the black scatters is added in luminance, the
 * closed surface and what the model misses as an error in L*.
 * Where the hue shift exceeds that of the clear alone by more than the limit a print does not count as in band; like L*,
 * the hue carries the model's own discrepancy, so that the chance does not jump while a tint is dragged.
 * @param response of the same cell and hue limit, where it is known already.
 */
export function spreadOf(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  band: TargetBand,
  response: CellResponse = cellResponse(room, cloth, ink, band.hueLimit),
): CellSpread {
  const axes = strongAxes(response);
  const light = scatteredLight(response, axes);
  const { spread } = room;
  const closed = turned(response.doubt, axes, response.doubt.closed);
  momentsAlongMajor(spread, response, axes, light.isSmall ? null : light);
  let tilt = response.closedSlope * closed.onMajor;
  let extraVariance =
    response.discrepancyL * response.discrepancyL +
    response.closedSlope * response.closedSlope * (closed.varianceLeft + closed.onMinor * closed.onMinor);
  if (light.isSmall) {
    tilt += light.onMajorL;
    extraVariance += Math.max(0, light.sdL * light.sdL - light.onMajorL * light.onMajorL);
  }
  tiltMeans(spread, tilt);
  const shift = response.closedSlope * response.doubt.closedMean - cloth.bareLab.L;
  const extent = fillMixture(spread, shift, extraVariance);
  const inHue = response.hueMargin === null ? spread.all : withHue(spread);
  const at = (z: number): number => quantileAt(spread, extent, z, shift, extraVariance);
  return {
    chanceInBand:
      probabilityBelow(inHue, band.deltaL + band.tolerance) -
      probabilityBelow(inHue, band.deltaL - band.tolerance),
    deltaL5: at(-Z_95),
    deltaL50: at(0),
    deltaL95: at(Z_95),
    response,
  };
}
