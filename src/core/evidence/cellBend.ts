/** How much the mean colour of a cell differs from the colour at the means, because the model bends. */
import type { Lab } from "../colorimetry/viewing.ts";
import { BELIEF_AXIS_COUNT } from "../prediction/cellBelief.ts";
import { type Cell, epsilonAt, NONE, surpriseAt } from "./cell.ts";
import { axesOf } from "./cellAxes.ts";
import { clothRoom, gainsUnder, labThrough, wettedBy } from "./clothUnderFilm.ts";
import { BEND_STEP, inkFilms, reachSlope } from "./inkFilms.ts";

/** Filled anew at each call. */
const room = clothRoom();
const furtherRoom = clothRoom();

const second = (above: Lab, centre: Lab, below: Lab): number[] => [
  (above.L - 2 * centre.L + below.L) / BEND_STEP ** 2,
  (above.a - 2 * centre.a + below.a) / BEND_STEP ** 2,
  (above.b - 2 * centre.b + below.b) / BEND_STEP ** 2,
];

/**
 * 1/2 tr(H C) for L*, a* and b*: H the second derivatives along ln wet-out and ln tint, the two ways in which the model
 * bends, at `values`; C the covariance of the unknowns. `jacobian` is that of cellSlopes.
 */
export function cellBend(
  cell: Cell,
  values: Float64Array,
  jacobian: Float64Array,
  covariance: Float64Array,
): number[] {
  const { cloth, mix, application, unknowns } = cell;
  const at = surpriseAt(cell, values);
  const { film, lessTint, moreTint } = inkFilms(mix, application, at, (i) => cell.scatteringOf[i] !== NONE);
  const wet = (out: typeof room, lnWetOut: number) =>
    wettedBy(out, cloth, gainsUnder(cloth, film.wetOutStrength, lnWetOut, at.lnFibreGain));
  const epsilon = epsilonAt(cell, values);
  const drier = labThrough(film, cloth, wet(room, epsilon - BEND_STEP));
  const centreCloth = wet(room, epsilon);
  const further = wet(furtherRoom, epsilon + BEND_STEP);
  const centre = labThrough(film, cloth, centreCloth);
  const wetter = labThrough(film, cloth, further);
  const byWetOut = second(wetter, centre, drier);

  const axes = lumpedAxes(cell, values, jacobian);
  const variances = variancesAlong(axes, covariance, unknowns.length);
  if (moreTint === null || lessTint === null) return byWetOut.map((h) => 0.5 * h * variances.wetOut);
  const more = labThrough(moreTint, cloth, centreCloth);
  const byTint = second(more, centre, labThrough(lessTint, cloth, centreCloth));
  const both = labThrough(moreTint, cloth, further);
  const cross = (["L", "a", "b"] as const).map(
    (axis) => (both[axis] - wetter[axis] - more[axis] + centre[axis]) / BEND_STEP ** 2,
  );
  return byWetOut.map(
    (h, row) =>
      0.5 * (h * variances.wetOut + byTint[row]! * variances.tint) + cross[row]! * variances.together,
  );
}

/** Rows of ln wet-out and ln tint over the unknowns, the deposit's part in both included. */
function lumpedAxes(cell: Cell, values: Float64Array, jacobian: Float64Array): [Float64Array, Float64Array] {
  const count = cell.unknowns.length;
  const axes = axesOf(cell, jacobian, values);
  if (axes.length !== BELIEF_AXIS_COUNT * count) throw new RangeError("axes must be as many as the belief's");
  const wetOut = axes.slice(0, count);
  const tint = axes.slice(count, 2 * count);
  if (cell.depositAt !== NONE) {
    const lnDeposit = values[cell.depositAt]!;
    wetOut[cell.depositAt]! += reachSlope(cell.application.depositUm * Math.exp(lnDeposit));
    tint[cell.depositAt]! += 1;
  }
  return [wetOut, tint];
}

function variancesAlong(
  [wetOut, tint]: [Float64Array, Float64Array],
  covariance: Float64Array,
  count: number,
): { wetOut: number; tint: number; together: number } {
  const found = { wetOut: 0, tint: 0, together: 0 };
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const c = covariance[i * count + j]!;
      found.wetOut += wetOut[i]! * c * wetOut[j]!;
      found.tint += tint[i]! * c * tint[j]!;
      found.together += wetOut[i]! * c * tint[j]!;
    }
  }
  return found;
}
