/** L* along the way it moves most: at each node mean, variance and third moment that the other unknowns make of it. */
import { luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import type { CellResponse } from "./cellResponse.ts";
import { compressSums } from "./colourPlanes.ts";
import { normalCumulativeFast, normalDensity } from "./normalDistribution.ts";
import { type FactorAxis, positionOfPower } from "./responseSurface.ts";
import type { ScatteredLight } from "./scatteredLight.ts";
import {
  MAJOR_COUNT,
  MAJOR_DISTANCE,
  MAJOR_NODES,
  ONE_POINT,
  PARABOLA_LINE,
  THREE_POINTS,
} from "./spreadGrid.ts";
import type { SpreadRoom } from "./spreadRoom.ts";
import type { StrongAxes } from "./strongAxes.ts";
import { clearSurfaceAt, tintedSurfaceAt } from "./surfacePoints.ts";

const FIRST = MAJOR_NODES[0]!;
/** The outer two of three points lie this far out and weigh this much. */
const OUTER = THREE_POINTS.points[2]!;
const OUTER_WEIGHT = THREE_POINTS.weights[2]!;
const MIDDLE_WEIGHT = THREE_POINTS.weights[1]!;

const cube = (x: number): number => x * x * x;

/** Writes into `to` the positions on `axis` at which ln(factor) is `onMajor` times each major node plus `across`. */
function placeAlong(
  to: Float64Array,
  start: number,
  axis: FactorAxis,
  onMajor: number,
  across: number,
): void {
  let power = Math.exp(axis.power * (onMajor * FIRST + across));
  const step = Math.exp(axis.power * onMajor * MAJOR_DISTANCE);
  for (let k = 0; k < MAJOR_COUNT; k++) {
    to[start + k] = positionOfPower(axis, power);
    power *= step;
  }
}

/**
 * Places the points of a cell: major node k and minor point m at [m * MAJOR_COUNT + k]. What is exponential along the major
 * axis goes from node to node by one factor, since the nodes are evenly spaced.
 */
function placePoints(room: SpreadRoom, response: CellResponse, axes: StrongAxes, minor: Float64Array): void {
  const { x, y } = room.points;
  const { wetAxis, tintAxis, tintCount, doubt } = response;
  const { tintSd } = doubt;
  for (let m = 0; m < minor.length; m++) {
    const start = m * MAJOR_COUNT;
    const wetAcross = axes.wetOutOnMinor * minor[m]! + doubt.wetOutShift;
    placeAlong(x, start, wetAxis, axes.wetOutOnMajor, wetAcross);
    if (tintCount === 1) continue;
    placeAlong(y, start, tintAxis, tintSd * axes.tintOnMajor, tintSd * axes.tintOnMinor * minor[m]!);
  }
}

/** Adds to the L* of every point the light that is scattered there on average, beyond what the exact model holds of it. */
function addMeanLight({ values, luminances }: SpreadRoom, light: ScatteredLight, minor: Float64Array): void {
  const hazeStep = Math.exp(light.hazeOnMajor * MAJOR_DISTANCE);
  const tintStep = Math.exp(light.tintOnMajor * MAJOR_DISTANCE);
  const blackStep = Math.exp(light.blackOnMajor * MAJOR_DISTANCE);
  const { sums } = luminances;
  for (let m = 0; m < minor.length; m++) {
    const z = minor[m]!;
    let haze = light.meanHaze * Math.exp(light.hazeOnMajor * FIRST + light.hazeOnMinor * z);
    let tint = Math.exp(light.tintOnMajor * FIRST + light.tintOnMinor * z);
    let black = light.meanBlack * Math.exp(light.blackOnMajor * FIRST + light.blackOnMinor * z);
    const start = m * MAJOR_COUNT;
    for (let k = 0; k < MAJOR_COUNT; k++) {
      const added = haze - light.expectedHaze + tint * (black - light.expectedBlack);
      sums[start + k] = Math.max(0, luminanceRatioFromLightness(values[start + k]!) + added);
      haze *= hazeStep;
      tint *= tintStep;
      black *= blackStep;
    }
  }
  const count = minor.length * MAJOR_COUNT;
  compressSums(luminances, count);
  for (let p = 0; p < count; p++) values[p] = 116 * sums[p]! - 16;
}

/** Moments of the three (or the one) values of each node. */
function momentsOf(room: SpreadRoom, isOne: boolean): void {
  const { values, means, variances, thirds } = room;
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const middle = values[(isOne ? 0 : MAJOR_COUNT) + k]!;
    const low = isOne ? middle : values[k]!;
    const high = isOne ? middle : values[2 * MAJOR_COUNT + k]!;
    const mean = OUTER_WEIGHT * (low + high) + MIDDLE_WEIGHT * middle;
    const below = low - mean;
    const about = middle - mean;
    const above = high - mean;
    means[k] = mean;
    variances[k] = OUTER_WEIGHT * (below * below + above * above) + MIDDLE_WEIGHT * about * about;
    thirds[k] = OUTER_WEIGHT * (cube(below) + cube(above)) + MIDDLE_WEIGHT * cube(about);
  }
}

/** Adds to the moments what scattered light may be off by: three points of its log-normal about its mean. */
function addLightMoments(room: SpreadRoom, light: ScatteredLight): void {
  const { means, variances, thirds, luminances } = room;
  const { sums } = luminances;
  const offBy = (z: number): number => Math.expm1(light.lnSd * (z - light.lnSd / 2));
  const downBy = offBy(-OUTER);
  const middleBy = offBy(0);
  const upBy = offBy(OUTER);
  const hazeStep = Math.exp(light.hazeOnMajor * MAJOR_DISTANCE);
  const blackOnMajor = light.tintOnMajor + light.blackOnMajor;
  const blackStep = Math.exp(blackOnMajor * MAJOR_DISTANCE);
  let haze = light.meanHaze * Math.exp(light.hazeOnMajor * FIRST);
  let black = light.meanBlack * Math.exp(blackOnMajor * FIRST);
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const Y = luminanceRatioFromLightness(means[k]!);
    const scattered = haze + black;
    sums[k] = Math.max(0, Y + scattered * downBy);
    sums[MAJOR_COUNT + k] = Math.max(0, Y + scattered * middleBy);
    sums[2 * MAJOR_COUNT + k] = Math.max(0, Y + scattered * upBy);
    haze *= hazeStep;
    black *= blackStep;
  }
  compressSums(luminances, 3 * MAJOR_COUNT);
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const down = 116 * sums[k]! - 16;
    const middle = 116 * sums[MAJOR_COUNT + k]! - 16;
    const up = 116 * sums[2 * MAJOR_COUNT + k]! - 16;
    const mean = OUTER_WEIGHT * (up + down) + MIDDLE_WEIGHT * middle;
    const above = up - mean;
    const about = middle - mean;
    const below = down - mean;
    means[k] = mean;
    variances[k] =
      variances[k]! + OUTER_WEIGHT * (above * above + below * below) + MIDDLE_WEIGHT * about * about;
    thirds[k] = thirds[k]! + OUTER_WEIGHT * (cube(above) + cube(below)) + MIDDLE_WEIGHT * cube(about);
  }
}

/** From this skewness on a parabola of a normal is no normal with a little skewness. */
const LARGE_SKEWNESS = 0.3;

/** Mean of Phi over the parabola `middle` + `slope` z + `bend` z^2 of a standard normal z, point by point. */
function meanPhi(middle: number, slope: number, bend: number): number {
  const { points, weights } = PARABOLA_LINE;
  let sum = 0;
  for (let m = 0; m < points.length; m++) {
    const z = points[m]!;
    sum += weights[m]! * normalCumulativeFast(middle + z * (slope + bend * z));
  }
  return sum;
}

/**
 * Chance that the hue holds at each node where its margin, in widths of its own error, is `values` at the three points:
 * that of the parabola through them plus a standard normal to lie above 0, by its mean, variance and skewness (Edgeworth's
 * first term), or point by point where it is bent too much for that.
 */
function hueShares({ values, hueHolds }: SpreadRoom): void {
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const low = values[k]!;
    const middle = values[MAJOR_COUNT + k]!;
    const high = values[2 * MAJOR_COUNT + k]!;
    const slope = (high - low) / (2 * OUTER);
    const bend = (high + low - 2 * middle) / (2 * OUTER * OUTER);
    const variance = 1 + slope * slope + 2 * bend * bend;
    const sd = Math.sqrt(variance);
    const skewness = (bend * (6 * slope * slope + 8 * bend * bend)) / (variance * sd);
    if (skewness > LARGE_SKEWNESS || skewness < -LARGE_SKEWNESS) {
      hueHolds[k] = meanPhi(middle, slope, bend);
      continue;
    }
    const at = (middle + bend) / sd;
    const holds = normalCumulativeFast(at);
    const isSure = holds === 0 || holds === 1;
    hueHolds[k] = isSure
      ? holds
      : Math.min(1, Math.max(0, holds + (skewness / 6) * (at * at - 1) * normalDensity(at)));
  }
}

/**
 * Fills the moments and hue shares of `room` at every major node. The minor unknown counts by three points, scattered
 * light by its mean at each of them and by three points about that; without it (`light` null) L* is as the surface has it.
 */
export function momentsAlongMajor(
  room: SpreadRoom,
  response: CellResponse,
  axes: StrongAxes,
  light: ScatteredLight | null,
): void {
  const { lightness, hueMargin, tintCount } = response;
  const isClear = tintCount === 1;
  const minor = (isClear ? ONE_POINT : THREE_POINTS).points;
  const count = minor.length * MAJOR_COUNT;
  placePoints(room, response, axes, minor);
  if (hueMargin !== null) {
    tintedSurfaceAt(room.values, hueMargin, tintCount, room.points, count);
    hueShares(room);
  }
  if (isClear) clearSurfaceAt(room.values, lightness, room.points, count);
  else tintedSurfaceAt(room.values, lightness, tintCount, room.points, count);
  if (light !== null) addMeanLight(room, light, minor);
  momentsOf(room, isClear);
  if (light !== null) addLightMoments(room, light);
}

/** Adds `perNormal` L* per standard normal of the major axis: what a weak unknown that goes with it does on average. */
export function tiltMeans({ means }: SpreadRoom, perNormal: number): void {
  if (perNormal === 0) return;
  for (let k = 0; k < MAJOR_COUNT; k++) means[k] = means[k]! + perNormal * MAJOR_NODES[k]!;
}
