/** The many unknowns of one cell lumped into the few axes along which its colour moves. */

import { BELIEF_AXIS_COUNT } from "../prediction/cellBelief.ts";
import { type Cell, NONE } from "./cell.ts";
import { smallArray } from "./smallArrays.ts";

/** A slope of L* smaller than this per unit of ln wet-out is no measure of the fibres' parts. */
const SMALLEST_WET_SLOPE = 1e-3;

/** Rows of the lumping matrix, in the order of BELIEF_AXES. */
const [WET_OUT, TINT, DEPOSIT, CLOSED, HAZE, BLACK] = [0, 1, 2, 3, 4, 5] as const;

/**
 * BELIEF_AXIS_COUNT x unknowns: what one unit of each unknown moves each axis by, at `values`. Each fibre counts by its
 * share of the effect on L*, each base by its strength, each colourant by what it absorbs and scatters over all bands,
 * haze by what each base scatters, the closed fraction by mass: as in prediction/printableInk.ts and wetOutSpread.ts.
 */
export function axesOf(cell: Cell, jacobian: Float64Array, values: Float64Array): Float64Array {
  const { unknowns, wetCount, wetLoadings, mix } = cell;
  const count = unknowns.length;
  const axes = smallArray(BELIEF_AXIS_COUNT * count);
  const add = (axis: number, position: number, share: number): void => {
    if (position !== NONE && Number.isFinite(share)) axes[axis * count + position]! += share;
  };
  for (let k = 0; k < wetCount; k++) add(WET_OUT, k, wetLoadings[k]!);
  for (const [position, share] of fibreShares(cell, jacobian, values)) add(WET_OUT, position, share);

  const amounts = mix.parts.map((part, i) => {
    const scale = cell.strengthOf[i] === NONE ? 1 : Math.exp(values[cell.strengthOf[i]!]!);
    if (part.kind === "base") return part.massFraction * part.strength * scale;
    return part.massFraction * scale * (sum(part.absorptionPerUm) + sum(part.scatteringPerUm));
  });
  let strength = 0;
  let tint = 0;
  let haze = 0;
  let blackMass = 0;
  let baseMass = 0;
  mix.parts.forEach((part, i) => {
    if (part.kind === "base") {
      strength += amounts[i]!;
      baseMass += part.massFraction;
      haze += part.massFraction * part.hazePerUm;
      return;
    }
    tint += amounts[i]!;
    if (part.ownBaseStrength !== null) strength += part.massFraction * part.ownBaseStrength;
    if (part.family === "black") blackMass += part.massFraction;
  });
  mix.parts.forEach((part, i) => {
    const strengthAt = cell.strengthOf[i]!;
    const scatteringAt = cell.scatteringOf[i]!;
    if (part.kind === "base") {
      add(WET_OUT, strengthAt, amounts[i]! / strength);
      add(CLOSED, cell.closedOf[i]!, part.massFraction / baseMass);
      add(HAZE, scatteringAt, (part.massFraction * part.hazePerUm) / haze);
    } else {
      add(TINT, strengthAt, amounts[i]! / tint);
      if (part.family === "black") add(BLACK, scatteringAt, part.massFraction / blackMass);
    }
  });
  add(DEPOSIT, cell.depositAt, 1);
  return axes;
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);

/** Position and share of each fibre's gain in ln wet-out; the shares sum to 1. */
function fibreShares(
  cell: Cell,
  jacobian: Float64Array,
  values: Float64Array,
): readonly (readonly [position: number, share: number])[] {
  // The first unknown is the style's part of epsilon: its slope is that of ln wet-out itself.
  const wetSlope = jacobian[0]!;
  const positions = [...new Set(cell.gainOf)];
  if (Math.abs(wetSlope) >= SMALLEST_WET_SLOPE) {
    return positions.map((position) => [position, jacobian[position]! / wetSlope]);
  }
  const { gains, dyeShares } = cell.cloth;
  const parts = Array.from(cell.gainOf, (position, i) => {
    const gain = gains[i]! * Math.exp(values[position]!);
    return dyeShares[i]! * gain * Math.exp(gain);
  });
  const total = parts.reduce((all, part) => all + part, 0);
  return parts.map((part, i) => [cell.gainOf[i]!, total === 0 ? 0 : part / total]);
}

/** Position of the fibre gain that carries most of the wet-out. */
export function dominatingGain(cell: Cell, jacobian: Float64Array, values: Float64Array): number {
  const shares = fibreShares(cell, jacobian, values);
  return shares.reduce((best, share) => (share[1] > best[1] ? share : best), shares[0]!)[0];
}
