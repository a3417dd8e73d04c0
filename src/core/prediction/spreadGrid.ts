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

/** Light that haze or the black itself scatters, on the same rule: fewer points would show as steps in the tail. */
export const SCATTERING_POINTS = MINOR_NODES;
export const SCATTERING_WEIGHTS = MINOR_WEIGHTS;

/** Equally likely points of the closed fraction, standard normal before it is cut at 0. */
const CLOSED_COUNT = 8;
export const CLOSED_POINTS = Float64Array.from({ length: CLOSED_COUNT }, (_, k) =>
  quantileOf(normalCumulative, (k + 0.5) / CLOSED_COUNT),
);
