/** A record as the fit sees it: which unknowns it speaks of, what was observed, and what the model expects of it. */
import { GREY_SCALE_STEPS } from "../colorimetry/greyScale.ts";
import type { Cell } from "./cell.ts";
import { cellBend } from "./cellBend.ts";
import { type CellSlopes, cellSlopes } from "./cellSlopes.ts";
import { pairNoise, printNoise } from "./readingNoise.ts";
import type { ByEyeReading, PairReading } from "./record.ts";
import type { Unknown } from "./unknown.ts";

/** What the model expects of a record where its unknowns have certain values, and how that changes with them. */
export interface Linearised {
  readonly expected: Float64Array;
  /** dimension x unknowns, row by row. */
  readonly jacobian: Float64Array;
  /** dimension x dimension covariance of the observation about `expected`. */
  readonly noise: Float64Array;
}

export interface Teaching {
  readonly id: string;
  /** 3 for an instrument's L*, a*, b*; 1 for an eye's step and a goods-in ratio. */
  readonly dimension: number;
  readonly unknowns: readonly Unknown[];
  /** The first so many unknowns belong to a style, the rest are shared by the shop. */
  readonly wetCount: number;
  readonly observed: Float64Array;
  readonly cells: readonly Cell[];
  readonly linearise: (values: Float64Array) => Linearised;
  /**
   * By how much the observation's mean over the unknowns (normal about `values` with `covariance`) differs from what is
   * expected at `values`; null where that is not worth counting.
   */
  readonly bend:
    | ((values: Float64Array, jacobian: Float64Array, covariance: Float64Array) => readonly number[])
    | null;
}

/** An instrument's pair: the change of L*, a*, b* from bare cloth to print. */
export function pairTeaching(id: string, cell: Cell, reading: PairReading): Teaching {
  const { bare, printed } = reading;
  return {
    id,
    dimension: 3,
    unknowns: cell.unknowns,
    wetCount: cell.wetCount,
    observed: Float64Array.of(printed.L - bare.L, printed.a - bare.a, printed.b - bare.b),
    cells: [cell],
    bend: (values, jacobian, covariance) => cellBend(cell, values, jacobian, covariance),
    linearise: (values) => {
      const slopes = cellSlopes(cell, values);
      const { L, a, b } = slopes.change;
      return {
        expected: Float64Array.of(L, a, b),
        jacobian: slopes.jacobian,
        noise: pairNoise(cell, slopes, reading),
      };
    },
  };
}

/** An eye's error, as part of the difference it judges: 0.25 in ln g (model.md §6 and issue 3; invented default). */
export const BY_EYE_SD = 0.25;
/** Below this difference no direction can be seen; invented default, half the scale's first step. */
const SMALLEST_SEEN = 0.4;
/** What an eye is off by even where there is nothing to see, in CIELAB. Invented default, just under the scale's first step. */
const LEAST_EYE_SD = 0.4;
/** The scale's last step, which stands for everything stronger as well. */
const STRONGEST_GRADE = 1;

/** Nominal CIELAB difference of grey-scale grade `grade` (5, 4.5, ... 1). @throws RangeError for any other grade. */
export function deltaEabOfGrade(grade: number): number {
  const step = GREY_SCALE_STEPS[(5 - grade) * 2];
  if (step === undefined) throw new RangeError(`grade must be 1 to 5 in half steps; got ${grade}`);
  return step.deltaEab;
}

/** Standard deviation of the rounding to the nearest step: uniform over the half gaps to its neighbours, both signs for 5. */
function roundingSd(grade: number): number {
  const at = deltaEabOfGrade(grade);
  const stronger = grade === STRONGEST_GRADE ? at : deltaEabOfGrade(grade - 0.5);
  const weaker = grade === 5 ? -stronger : deltaEabOfGrade(grade + 0.5);
  return (stronger - weaker) / 2 / Math.sqrt(12);
}

/** Variance of an eye's step, CIELAB: what an eye is off by and the rounding to the scale's nearest step. */
export function byEyeVariance(grade: number): number {
  return (BY_EYE_SD * deltaEabOfGrade(grade)) ** 2 + LEAST_EYE_SD ** 2 + roundingSd(grade) ** 2;
}

/** Signed CIELAB difference (darker is negative) of a change, and its derivative by L*, a*, b*. */
function signedDifference(slopes: CellSlopes): { value: number; by: readonly [number, number, number] } {
  const { L, a, b } = slopes.change;
  const size = Math.hypot(L, a, b);
  if (size < SMALLEST_SEEN) return { value: L, by: [1, 0, 0] };
  const sign = L <= 0 ? -1 : 1;
  return { value: sign * size, by: [(sign * L) / size, (sign * a) / size, (sign * b) / size] };
}

/** An eye's grey-scale step: the CIELAB difference of the print from its bare cloth, with its direction. */
export function byEyeTeaching(id: string, cell: Cell, reading: ByEyeReading): Teaching {
  const seen = deltaEabOfGrade(reading.grade);
  const observed = reading.direction === "darker" ? -seen : seen;
  const count = cell.unknowns.length;
  return {
    id,
    dimension: 1,
    unknowns: cell.unknowns,
    wetCount: cell.wetCount,
    observed: Float64Array.of(observed),
    cells: [cell],
    // An eye's error is far wider than this.
    bend: null,
    linearise: (values) => {
      const slopes = cellSlopes(cell, values);
      const { value, by } = signedDifference(slopes);
      // Grade 1 has no end: a print expected to be stronger still agrees with it, and is taught nothing.
      if (reading.grade === STRONGEST_GRADE && value / observed >= 1) {
        const noise = Float64Array.of((BY_EYE_SD * seen) ** 2);
        return { expected: Float64Array.of(observed), jacobian: new Float64Array(count), noise };
      }
      const jacobian = new Float64Array(count);
      for (let k = 0; k < count; k++) {
        for (let row = 0; row < 3; row++) jacobian[k]! += by[row]! * slopes.jacobian[row * count + k]!;
      }
      const print = printNoise(cell, slopes, 1);
      let variance = byEyeVariance(reading.grade);
      for (let i = 0; i < 3; i++) {
        for (let j = 0; j < 3; j++) variance += by[i]! * by[j]! * print[i * 3 + j]!;
      }
      return { expected: Float64Array.of(value), jacobian, noise: Float64Array.of(variance) };
    },
  };
}

/** ln of the ratio of two quick draws, beyond what the cured prints would give: uncured is not cured. Invented default. */
export const GOODS_IN_SD = 0.25;
/** Standard deviation of one drawn change of L*. Invented default, as for pairs on solid cloth. */
const DRAW_SD_L = 0.3;
/** A draw that changes L* by less than this says nothing of wet-out. Invented default. */
export const SMALLEST_DRAW_DELTA_L = 0.5;

/**
 * The same quick draw on two garments: ln of the ratio of their changes of L*. Null where either change is too small, or
 * goes the other way, to say anything.
 */
export function goodsInTeaching(
  id: string,
  approved: Cell,
  arriving: Cell,
  approvedDeltaL: number,
  arrivingDeltaL: number,
): Teaching | null {
  if (approvedDeltaL > -SMALLEST_DRAW_DELTA_L || arrivingDeltaL > -SMALLEST_DRAW_DELTA_L) return null;
  const union = unionOf(approved, arriving);
  const count = union.unknowns.length;
  const drawVariance = (DRAW_SD_L / approvedDeltaL) ** 2 + (DRAW_SD_L / arrivingDeltaL) ** 2;
  return {
    id,
    dimension: 1,
    unknowns: union.unknowns,
    wetCount: union.wetCount,
    observed: Float64Array.of(Math.log(arrivingDeltaL / approvedDeltaL)),
    cells: [approved, arriving],
    bend: null,
    linearise: (values) => {
      const jacobian = new Float64Array(count);
      let expected = 0;
      [approved, arriving].forEach((cell, which) => {
        const at = union.positions[which]!;
        const slopes = cellSlopes(
          cell,
          Float64Array.from(at, (position) => values[position]!),
        );
        const deltaL = Math.min(slopes.change.L, -SMALLEST_DRAW_DELTA_L / 4);
        const sign = which === 0 ? -1 : 1;
        expected += sign * Math.log(-deltaL);
        at.forEach((position, k) => {
          jacobian[position]! += (sign * slopes.jacobian[k]!) / deltaL;
        });
      });
      return {
        expected: Float64Array.of(expected),
        jacobian,
        noise: Float64Array.of(GOODS_IN_SD ** 2 + drawVariance),
      };
    },
  };
}

/** The unknowns of two cells together, those of their styles first, and where each cell's lie among them. */
function unionOf(
  one: Cell,
  other: Cell,
): { unknowns: Unknown[]; wetCount: number; positions: readonly (readonly number[])[] } {
  const unknowns: Unknown[] = [];
  const places = new Map<string, number>();
  const place = (unknown: Unknown): void => {
    if (!places.has(unknown.key)) places.set(unknown.key, unknowns.push(unknown) - 1);
  };
  for (const cell of [one, other]) cell.unknowns.slice(0, cell.wetCount).forEach(place);
  const wetCount = unknowns.length;
  for (const cell of [one, other]) cell.unknowns.slice(cell.wetCount).forEach(place);
  const positions = [one, other].map((cell) => cell.unknowns.map(({ key }) => places.get(key)!));
  return { unknowns, wetCount, positions };
}
