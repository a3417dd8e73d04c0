/** L* along the way it moves most: at each node mean, variance and third moment that the other unknowns make of it. */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import type { CellResponse } from "./cellResponse.ts";
import { normalCumulativeFast } from "./normalDistribution.ts";
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

/** L* of a print of `lightness` to which light of `added` (Y/Yn) is added. */
function lightened(lightness: number, added: number): number {
  return lightnessFromLuminanceRatio(Math.max(0, luminanceRatioFromLightness(lightness) + added));
}

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
function addMeanLight(values: Float64Array, light: ScatteredLight, minor: Float64Array): void {
  const hazeStep = Math.exp(light.hazeOnMajor * MAJOR_DISTANCE);
  const tintStep = Math.exp(light.tintOnMajor * MAJOR_DISTANCE);
  const blackStep = Math.exp(light.blackOnMajor * MAJOR_DISTANCE);
  for (let m = 0; m < minor.length; m++) {
    const z = minor[m]!;
    let haze = light.meanHaze * Math.exp(light.hazeOnMajor * FIRST + light.hazeOnMinor * z);
    let tint = Math.exp(light.tintOnMajor * FIRST + light.tintOnMinor * z);
    let black = light.meanBlack * Math.exp(light.blackOnMajor * FIRST + light.blackOnMinor * z);
    const start = m * MAJOR_COUNT;
    for (let k = 0; k < MAJOR_COUNT; k++) {
      const added = haze - light.expectedHaze + tint * (black - light.expectedBlack);
      values[start + k] = lightened(values[start + k]!, added);
      haze *= hazeStep;
      tint *= tintStep;
      black *= blackStep;
    }
  }
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
  const { means, variances, thirds } = room;
  const offBy = (z: number): number => Math.expm1(light.lnSd * (z - light.lnSd / 2));
  const [upBy, middleBy, downBy] = [offBy(OUTER), offBy(0), offBy(-OUTER)];
  const hazeStep = Math.exp(light.hazeOnMajor * MAJOR_DISTANCE);
  const blackOnMajor = light.tintOnMajor + light.blackOnMajor;
  const blackStep = Math.exp(blackOnMajor * MAJOR_DISTANCE);
  let haze = light.meanHaze * Math.exp(light.hazeOnMajor * FIRST);
  let black = light.meanBlack * Math.exp(blackOnMajor * FIRST);
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const mean = means[k]!;
    const Y = luminanceRatioFromLightness(mean);
    const scattered = haze + black;
    const up = lightnessFromLuminanceRatio(Math.max(0, Y + scattered * upBy)) - mean;
    const middle = lightnessFromLuminanceRatio(Math.max(0, Y + scattered * middleBy)) - mean;
    const down = lightnessFromLuminanceRatio(Math.max(0, Y + scattered * downBy)) - mean;
    const shift = OUTER_WEIGHT * (up + down) + MIDDLE_WEIGHT * middle;
    const above = up - shift;
    const about = middle - shift;
    const below = down - shift;
    means[k] = mean + shift;
    variances[k] =
      variances[k]! + OUTER_WEIGHT * (above * above + below * below) + MIDDLE_WEIGHT * about * about;
    thirds[k] = thirds[k]! + OUTER_WEIGHT * (cube(above) + cube(below)) + MIDDLE_WEIGHT * cube(about);
    haze *= hazeStep;
    black *= blackStep;
  }
}

/**
 * Chance that the hue holds at each node where its margin, in widths of its own error, is `values` at the three points:
 * mean of Phi over the parabola through them.
 */
function hueShares({ values, hueHolds }: SpreadRoom): void {
  const { points, weights } = PARABOLA_LINE;
  for (let k = 0; k < MAJOR_COUNT; k++) {
    const low = values[k]!;
    const middle = values[MAJOR_COUNT + k]!;
    const high = values[2 * MAJOR_COUNT + k]!;
    const slope = (high - low) / (2 * OUTER);
    const bend = (high + low - 2 * middle) / (2 * OUTER * OUTER);
    let holds = 0;
    for (let m = 0; m < points.length; m++) {
      const z = points[m]!;
      holds += weights[m]! * normalCumulativeFast(middle + z * (slope + bend * z));
    }
    hueHolds[k] = holds;
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
  if (light !== null) addMeanLight(room.values, light, minor);
  momentsOf(room, isClear);
  if (light !== null) addLightMoments(room, light);
}

/** Adds `perNormal` L* per standard normal of the major axis: what a weak unknown that goes with it does on average. */
export function tiltMeans({ means }: SpreadRoom, perNormal: number): void {
  if (perNormal === 0) return;
  for (let k = 0; k < MAJOR_COUNT; k++) means[k] = means[k]! + perNormal * MAJOR_NODES[k]!;
}
