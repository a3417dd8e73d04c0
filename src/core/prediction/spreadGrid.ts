/** The fixed grid over the unknowns on which a spread is computed: the same for every prediction, never random. */
import { normalCumulative, normalDensity, quantileOf } from "./normalDistribution.ts";

const MAJOR_REACH = 3.3;
const MAJOR_STEPS = 24;
const MAJOR_STEP = (2 * MAJOR_REACH) / MAJOR_STEPS;
const majorEdge = (k: number): number => MAJOR_REACH * ((2 * k) / MAJOR_STEPS - 1);

/** Probability between major node k and k + 1; the two tails beyond the reach go to the outermost. */
export const MAJOR_MASSES = Float64Array.from({ length: MAJOR_STEPS }, (_, k) => {
  const below = k === 0 ? 0 : normalCumulative(majorEdge(k));
  const above = k === MAJOR_STEPS - 1 ? 1 : normalCumulative(majorEdge(k + 1));
  return above - below;
});

/**
 * Nodes of the unknown that moves L* most, in its standard deviations. A normal spread evenly over each step h has the
 * variance 1 + h^2/6 (Sheppard's h^2/12 for the grouping, as much again for the even spread), so the nodes are drawn in
 * by its root. Without that the 5 % points lay 0.05 L* too far out on average, 0.2 on the strongest cells.
 */
export const MAJOR_NODES = Float64Array.from(
  { length: MAJOR_STEPS + 1 },
  (_, k) => majorEdge(k) / Math.sqrt(1 + MAJOR_STEP ** 2 / 6),
);

/** Points at which all but the major unknown is taken, as independent standard normals; the weights sum to 1. */
export interface SideRule {
  /** The other of the two strong unknowns. */
  readonly minor: Float64Array;
  /** Light that haze or the black itself scatters. */
  readonly scattering: Float64Array;
  readonly weights: Float64Array;
}

/** The trapezium rule on one normal, which converges exponentially, cut off and then scaled to variance 1. */
function line(step: number, count: number): { points: Float64Array; weights: Float64Array } {
  const raw = Float64Array.from({ length: count }, (_, k) => step * (k - (count - 1) / 2));
  const total = raw.reduce((sum, z) => sum + normalDensity(z), 0);
  const weights = raw.map((z) => normalDensity(z) / total);
  const variance = raw.reduce((sum, z, k) => sum + weights[k]! * z * z, 0);
  return { points: raw.map((z) => z / Math.sqrt(variance)), weights };
}

/** Tint and wet-out are smoothed by each other along the major axis; scattered light alone needs a finer line. */
export const MINOR = line(1.1, 5);
const SCATTERING = line(0.85, 7);

/**
 * Both lines at once. Cubatures of fewer points (two and three rings, 4 x 5 Gauss-Hermite) were tried: their far points
 * show as steps in the tail, up to 0.3 L* at the 95 % point of black on black.
 */
const PRODUCT = Array.from(MINOR.points, (scattering, s) =>
  Array.from(MINOR.points, (minor, m) => ({
    minor,
    scattering,
    weight: MINOR.weights[s]! * MINOR.weights[m]!,
  })),
).flat();

/** Nothing but the major unknown. */
export const CENTRE_ONLY: SideRule = {
  minor: Float64Array.of(0),
  scattering: Float64Array.of(0),
  weights: Float64Array.of(1),
};
export const MINOR_LINE: SideRule = {
  minor: MINOR.points,
  scattering: new Float64Array(MINOR.points.length),
  weights: MINOR.weights,
};
export const SCATTERING_LINE: SideRule = {
  minor: new Float64Array(SCATTERING.points.length),
  scattering: SCATTERING.points,
  weights: SCATTERING.weights,
};
export const MINOR_AND_SCATTERING: SideRule = {
  minor: Float64Array.from(PRODUCT, (point) => point.minor),
  scattering: Float64Array.from(PRODUCT, (point) => point.scattering),
  weights: Float64Array.from(PRODUCT, (point) => point.weight),
};

/** Equally likely points of the closed fraction, standard normal before it is cut at 0. */
const CLOSED_COUNT = 8;
export const CLOSED_POINTS = Float64Array.from({ length: CLOSED_COUNT }, (_, k) =>
  quantileOf(normalCumulative, (k + 0.5) / CLOSED_COUNT),
);
