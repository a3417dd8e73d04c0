/** The fixed grid over the unknowns on which a spread is computed: the same for every prediction, never random. */
import { normalDensity } from "./normalDistribution.ts";

/**
 * The unknown that moves L* most is a sum of narrower normals of this width, evenly spaced along it: where their centres
 * spread as a normal of variance 1 - PART_SD^2, the sum is the standard normal but for a ripple of 2 exp(-2 pi^2 PART_SD^2
 * (1 - PART_SD^2) / distance^2) of its density, here 0.3 %, 1e-4 in probability (Poisson's sum).
 */
export const PART_SD = 0.34;
/** The even distance of their centres. */
export const MAJOR_DISTANCE = 0.58;
const MAJOR_REACH = 2.9;
export const MAJOR_COUNT = Math.round((2 * MAJOR_REACH) / MAJOR_DISTANCE) + 1;
/** Centres, in standard deviations of the unknown, and how much of it each part holds. */
export const MAJOR_NODES = Float64Array.from(
  { length: MAJOR_COUNT },
  (_, k) => k * MAJOR_DISTANCE - MAJOR_REACH,
);
const centreDensity = MAJOR_NODES.map((z) => normalDensity(z / Math.sqrt(1 - PART_SD * PART_SD)));
const centreTotal = centreDensity.reduce((sum, density) => sum + density, 0);
export const MAJOR_MASSES = centreDensity.map((density) => density / centreTotal);

/** A normal by few points: mean and variance of a function of it are sums over them. */
export interface NormalRule {
  readonly points: Float64Array;
  readonly weights: Float64Array;
}

/** Gauss-Hermite rule for the standard normal (Abramowitz & Stegun 1964, 25.4.46 and table 25.10, rescaled). */
export const THREE_POINTS: NormalRule = {
  points: Float64Array.of(-Math.sqrt(3), 0, Math.sqrt(3)),
  weights: Float64Array.of(1 / 6, 2 / 3, 1 / 6),
};
export const ONE_POINT: NormalRule = { points: Float64Array.of(0), weights: Float64Array.of(1) };

/**
 * The trapezium rule on a normal, for what may step where a polynomial rule sees three points: half a standard deviation
 * apart, as far as one in four hundred prints.
 */
const LINE_STEP = 0.5;
const LINE_REACH = 3;
const linePoints = Float64Array.from(
  { length: (2 * LINE_REACH) / LINE_STEP + 1 },
  (_, k) => LINE_STEP * k - LINE_REACH,
);
const lineTotal = linePoints.reduce((sum, z) => sum + normalDensity(z), 0);
export const PARABOLA_LINE: NormalRule = {
  points: linePoints,
  weights: linePoints.map((z) => normalDensity(z) / lineTotal),
};
