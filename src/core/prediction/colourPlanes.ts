/** Planes of sums in the kernel's memory, or beside it, and how they become colours: f of CIELAB, hue shifts. */
import { compress } from "../colorimetry/cielab.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { bandKernel } from "./kernel/bandKernel.ts";
import { LUMINANCES_AT, MOST_POINTS, MOST_SUMS, SUMS_AT } from "./kernel/residentBands.ts";
import { DISCREPANCY_AB } from "./unknowns.ts";

const NUMBER_BYTES = 8;

/** One plane of sums, and what turns a sum into its ratio to the white point. */
export interface SumPlane {
  /** Sum of film f at wetting w, at [w * films + f]. */
  readonly sums: Float64Array;
  /** Where the plane lies in the kernel's memory. */
  readonly at: number;
  scale: number;
  offset: number;
  /** Undoes, in f, what the tie to the colour by all bands does: the cloth's groups by themselves are nearer for a clear. */
  untied: number;
}

export interface ColourSums {
  readonly x: SumPlane;
  readonly y: SumPlane;
  readonly z: SumPlane;
}

function planeAt(at: number, length: number): SumPlane {
  const first = at / NUMBER_BYTES;
  const sums = bandKernel?.numbers.subarray(first, first + length) ?? new Float64Array(length);
  return { sums, at, scale: 1, offset: 0, untied: 1 };
}

const sumPlane = (index: number): SumPlane => planeAt(SUMS_AT + index * MOST_SUMS * NUMBER_BYTES, MOST_SUMS);

/** A plane for luminances (Y/Yn) of up to MOST_POINTS points, likewise. */
export function luminancePlane(): SumPlane {
  return planeAt(LUMINANCES_AT, MOST_POINTS);
}

/** Up to MOST_SUMS sums, in the kernel's memory where there is one: they hold until anything else is predicted. */
export function colourSums(): ColourSums {
  return { x: sumPlane(0), y: sumPlane(1), z: sumPlane(2) };
}

/** Writes f of CIELAB over the first `count` sums of `plane`. */
export function compressSums({ sums, at, scale, offset }: SumPlane, count: number): void {
  if (bandKernel !== null) {
    bandKernel.compress(at, at + count * NUMBER_BYTES, scale, offset);
    return;
  }
  for (let i = 0; i < count; i++) sums[i] = compress(scale * sums[i]! + offset);
}

/** On grey cloth no hue shifts and on a grey print any error turns it: the width of an error is held within these. */
const SMALLEST_HUE_RATIO = 0.1;
const LARGEST_HUE_RATIO = 3;

/**
 * Writes, over the first `count` of f of X, |dH*ab| from the bare cloth, without an angle: sqrt(2 (C1 C2 - a1 a2 - b1 b2)), the
 * product form of the same difference; and over f of Z one over the width of what the model misses: an error across the hue of
 * the print turns it by error / C2, and dH*ab = 2 sqrt(C1 C2) sin(dh / 2), so it counts sqrt(C1 / C2).
 */
export function hueShifts({ x, y, z }: ColourSums, count: number, bare: Lab, bareChroma: number): void {
  const least = 1 / LARGEST_HUE_RATIO;
  const most = 1 / SMALLEST_HUE_RATIO;
  if (bandKernel !== null) {
    const end = x.at + count * NUMBER_BYTES;
    bandKernel.hueShifts(x.at, end, bare.a, bare.b, bareChroma, DISCREPANCY_AB, least, most);
    return;
  }
  for (let i = 0; i < count; i++) {
    const a = 500 * (x.sums[i]! - y.sums[i]!);
    const b = 200 * (y.sums[i]! - z.sums[i]!);
    const chroma = Math.sqrt(a * a + b * b);
    x.sums[i] = Math.sqrt(2 * Math.max(0, bareChroma * chroma - bare.a * a - bare.b * b));
    // NaN, of two greys, counts as the least.
    z.sums[i] = Math.min(most, Math.max(least, Math.sqrt(chroma / bareChroma) || 0)) / DISCREPANCY_AB;
  }
}
