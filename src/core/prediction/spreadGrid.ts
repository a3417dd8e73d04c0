/** The fixed grid over the unknowns on which a spread is computed: the same for every prediction, never random. */
import { normalCumulative, normalDensity } from "./normalDistribution.ts";

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
export const MAJOR_COUNT = MAJOR_NODES.length;
/** Their even distance. */
export const MAJOR_DISTANCE = MAJOR_NODES[1]! - MAJOR_NODES[0]!;

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
