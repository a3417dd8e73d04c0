/** The fixed grid over the unknowns on which a spread is computed: the same for every prediction, never random. */
import { normalCumulative, normalDensity, quantileOf } from "./normalDistribution.ts";

/** Nodes of the unknown that moves L* most, in its standard deviations, and the probability between neighbours. */
const MAJOR_REACH = 3.3;
const MAJOR_STEPS = 24;
export const MAJOR_NODES = Float64Array.from(
  { length: MAJOR_STEPS + 1 },
  (_, k) => MAJOR_REACH * ((2 * k) / MAJOR_STEPS - 1),
);
/** Probability between node k and k + 1; the two tails beyond the reach go to the outermost. */
export const MAJOR_MASSES = Float64Array.from({ length: MAJOR_STEPS }, (_, k) => {
  const below = k === 0 ? 0 : normalCumulative(MAJOR_NODES[k]!);
  const above = k === MAJOR_STEPS - 1 ? 1 : normalCumulative(MAJOR_NODES[k + 1]!);
  return above - below;
});

/** Nodes and weights of the other strong unknown: the trapezium rule, which converges exponentially on a normal. */
const MINOR_STEP = 1.1;
const MINOR_COUNT = 5;
export const MINOR_NODES = Float64Array.from(
  { length: MINOR_COUNT },
  (_, k) => MINOR_STEP * (k - (MINOR_COUNT - 1) / 2),
);
const minorTotal = MINOR_NODES.reduce((sum, z) => sum + normalDensity(z), 0);
export const MINOR_WEIGHTS = MINOR_NODES.map((z) => normalDensity(z) / minorTotal);

/**
 * Equally likely points of the two weak unknowns (haze, closed surface), standard normal each: rank-1 lattice 1, 5
 * mod 16, shifted by half a step (Korobov 1959, from memory).
 */
const WEAK_COUNT = 16;
const weakColumn = (multiplier: number): Float64Array =>
  Float64Array.from({ length: WEAK_COUNT }, (_, k) =>
    quantileOf(normalCumulative, (((k * multiplier) % WEAK_COUNT) + 0.5) / WEAK_COUNT),
  );
export const HAZE_POINTS = weakColumn(1);
export const CLOSED_POINTS = weakColumn(5);

/** The black's own scattering, which grows with the tint: three-point Gauss-Hermite (A&S 25.4.46). */
export const BLACK_SCATTERING_POINTS = Float64Array.of(-Math.sqrt(3), 0, Math.sqrt(3));
export const BLACK_SCATTERING_WEIGHTS = Float64Array.of(1 / 6, 2 / 3, 1 / 6);
