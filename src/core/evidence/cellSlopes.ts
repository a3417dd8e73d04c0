/** How the colour of a cell answers to each of its unknowns: differences of the exact model, as few films as it takes. */

import type { Lab } from "../colorimetry/viewing.ts";
import { type Cell, epsilonAt, NONE, surpriseAt } from "./cell.ts";
import { clothRoom, difference, gainsUnder, labThrough, wettedAsSolid, wettedBy } from "./clothUnderFilm.ts";
import { inkFilms, LN_STEP, reachSlope } from "./inkFilms.ts";
import { smallArray } from "./smallArrays.ts";
import { darkBandMiss, spectrumDoubt } from "./spectrumDoubt.ts";

/** The error of a one-sided difference is half its step times the curvature: far below any reading. */
const CLOSED_STEP = 1e-3;

/** Filled anew at each call. */
const room = clothRoom();

export interface CellSlopes {
  /** Change of colour at the point of linearisation. */
  readonly change: Lab;
  /** 3 x unknowns, row by row: L*, a*, b*. */
  readonly jacobian: Float64Array;
  /** Columns of length 3: ln wet-out, ln of all colourants at once, ln deposit. */
  readonly wetOut: readonly number[];
  readonly tint: readonly number[];
  readonly deposit: readonly number[];
  /** L*, a*, b* by which the other of a heather's two models differs; 0 for other cloth. */
  readonly heatherGap: readonly number[];
  /**
   * Covariance (3 x 3) of the change from not knowing the bare spectrum; null where it was measured. Found when asked for:
   * only a reading's noise needs it, and it costs as much as the slopes.
   */
  readonly doubt: () => Float64Array | null;
  /** Change of colour that a weak model in dark bands may be off by; null where it is not. Found when asked for. */
  readonly darkMiss: () => readonly number[] | null;
}

/** Three numbers: a plain array, which costs less to make than a typed one. */
const column = (to: Lab, from: Lab, step: number): number[] => [
  (to.L - from.L) / step,
  (to.a - from.a) / step,
  (to.b - from.b) / step,
];

/** Change and slopes of `cell` where its unknowns are `values`. */
export function cellSlopes(cell: Cell, values: Float64Array): CellSlopes {
  const { cloth, mix, unknowns, wetCount, wetLoadings } = cell;
  const count = unknowns.length;
  const jacobian = smallArray(3 * count);
  const add = (position: number, slope: readonly number[], share = 1): void => {
    for (let row = 0; row < 3; row++) jacobian[row * count + position]! += share * slope[row]!;
  };
  const at = surpriseAt(cell, values);
  const epsilon = epsilonAt(cell, values);
  const { film, stronger, scattering } = inkFilms(
    mix,
    cell.application,
    at,
    (i) => cell.scatteringOf[i] !== NONE,
  );
  const strength = film.wetOutStrength;
  const clothAt = (reach: number, lnWetOut: number, lnGain: readonly number[]) =>
    wettedBy(room, cloth, gainsUnder(cloth, reach, lnWetOut, lnGain));
  const wetter = labThrough(film, cloth, clothAt(strength, epsilon + LN_STEP, at.lnFibreGain));
  const gainColumns: Lab[] = [];
  if (cell.gainOf.length > 1) {
    for (let i = 0; i < cell.gainOf.length; i++) {
      gainColumns.push(labThrough(film, cloth, clothAt(strength, epsilon, stepped(at.lnFibreGain, i))));
    }
  }
  const wetted = clothAt(strength, epsilon, at.lnFibreGain);
  const centre = labThrough(film, cloth, wetted);
  const wetOut = column(wetter, centre, LN_STEP);
  for (let i = 0; i < wetCount; i++) add(i, wetOut, wetLoadings[i]!);
  cell.gainOf.forEach((position, i) => {
    add(position, gainColumns.length === 0 ? wetOut : column(gainColumns[i]!, centre, LN_STEP));
  });

  const tint = [0, 0, 0];
  const scattered = [0, 0, 0];
  const { baseMass, strengthMass } = masses(cell, at.lnPartStrength);
  const closedSlope = column(
    labThrough(film, cloth, wetted, film.closedFraction + CLOSED_STEP),
    centre,
    CLOSED_STEP,
  );
  mix.parts.forEach((part, i) => {
    const strengthAt = cell.strengthOf[i]!;
    if (part.kind === "base") {
      if (strengthAt !== NONE) {
        const strength = part.massFraction * part.strength * Math.exp(at.lnPartStrength[i]!);
        add(strengthAt, wetOut, strengthMass === 0 ? 0 : strength / strengthMass);
      }
      if (cell.closedOf[i] !== NONE) add(cell.closedOf[i]!, closedSlope, part.massFraction / baseMass);
    } else if (strengthAt !== NONE) {
      const slope = column(labThrough(stronger[i]!, cloth, wetted), centre, LN_STEP);
      add(strengthAt, slope);
      for (let row = 0; row < 3; row++) tint[row]! += slope[row]!;
    }
    if (cell.scatteringOf[i] !== NONE) {
      const slope = column(labThrough(scattering[i]!, cloth, wetted), centre, LN_STEP);
      add(cell.scatteringOf[i]!, slope);
      if (part.kind === "base") for (let row = 0; row < 3; row++) scattered[row]! += slope[row]!;
    }
  });

  // A thicker film holds more of every colourant, more haze, and wets further: the sum of their slopes.
  const reach = reachSlope(cell.application.depositUm * Math.exp(at.lnDeposit));
  const deposit = wetOut.map((slope, row) => reach * slope + tint[row]! + scattered[row]!);
  if (cell.depositAt !== NONE) add(cell.depositAt, deposit);
  let heatherGap = [0, 0, 0];
  const gains = gainsUnder(cloth, strength, epsilon, at.lnFibreGain);
  if (cloth.dyedFibreKs !== null) {
    heatherGap = column(labThrough(film, cloth, wettedAsSolid(room, cloth, gains)), centre, 1);
  }
  return {
    doubt: () => spectrumDoubt(cloth, film, gains),
    darkMiss: () => darkBandMiss(cloth, film, gains, wetOut),
    change: difference(centre, cloth.bareLab),
    jacobian,
    wetOut,
    tint,
    deposit,
    heatherGap,
  };
}

function stepped(values: readonly number[], at: number): number[] {
  const moved = values.slice();
  moved[at] = moved[at]! + LN_STEP;
  return moved;
}

/** Mass of the bases, and strength summed by mass over all that counts as a base. */
function masses(cell: Cell, lnPartStrength: readonly number[]): { baseMass: number; strengthMass: number } {
  let baseMass = 0;
  let strengthMass = 0;
  cell.mix.parts.forEach((part, i) => {
    if (part.kind === "base") {
      baseMass += part.massFraction;
      strengthMass += part.massFraction * part.strength * Math.exp(lnPartStrength[i]!);
    } else if (part.ownBaseStrength !== null) strengthMass += part.massFraction * part.ownBaseStrength;
  });
  return { baseMass, strengthMass };
}
