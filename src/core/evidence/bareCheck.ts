/** A record's bare reading against the lot's other bare readings: a wrong light on both readings of a pair shows only there. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import { isSameViewing, type Lab } from "../colorimetry/viewing.ts";
import { weightsFor } from "../colorimetry/weights.ts";
import type { FibrePart } from "../prediction/inputs.ts";
import { factorise, lnDeterminant, solveLower } from "./dense.ts";
import { AB_PER_L, PAIR_SD_HEATHER_L, PAIR_SD_SOLID_L } from "./readingNoise.ts";
import type { EvidenceRecord } from "./record.ts";

/** Shade of one piece against its lot, in L*; a* and b* AB_PER_L of it. Invented default. */
const PIECE_SHADE_SD_L = 0.3;
/** Readings and pieces behind a lot's stated bare colour, which says neither. Invented default. */
const STATED_READING_COUNT = 4;
const STATED_PIECE_COUNT = 1;

interface BareReading {
  readonly lab: Lab;
  readonly varianceL: number;
}

const isHeather = (fibres: readonly FibrePart[]): boolean =>
  fibres.some(({ dyed }) => dyed) && fibres.some(({ dyed }) => !dyed);

/** One reading has half the variance of a difference of two. */
function varianceOf(fibres: readonly FibrePart[], readingCount: number, pieceCount: number): number {
  const sd = isHeather(fibres) ? PAIR_SD_HEATHER_L : PAIR_SD_SOLID_L;
  return sd ** 2 / 2 / readingCount + PIECE_SHADE_SD_L ** 2 / pieceCount;
}

/** The other bare readings of the lot under the same light and observer, the lot's stated colour among them. */
function othersOf(record: EvidenceRecord, ofLot: readonly EvidenceRecord[]): BareReading[] {
  const { garment } = record.print.garment;
  const found: BareReading[] = [];
  const isStated =
    garment.bareSource === "measured" ||
    (garment.readUnder !== null && isSameViewing(garment.readUnder, record.viewing));
  if (isStated && garment.bareSource !== "approximate") {
    const lab = labFromReflectance(garment.bare, weightsFor(record.viewing));
    found.push({ lab, varianceL: varianceOf(garment.fibres, STATED_READING_COUNT, STATED_PIECE_COUNT) });
  }
  for (const other of ofLot) {
    if (
      other.id === record.id ||
      other.reading.kind !== "pair" ||
      !isSameViewing(other.viewing, record.viewing)
    )
      continue;
    const { bare, pairCount, pieceCount } = other.reading;
    found.push({ lab: bare, varianceL: varianceOf(garment.fibres, pairCount, pieceCount) });
  }
  return found;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** What the lot's other readings say the bare cloth is, and how surely; null where there is none. */
export interface BareExpectation {
  readonly lab: Lab;
  readonly varianceL: number;
}

/** The median of the lot's other bare readings, so that one wrong reading among them does not count. */
export function bareExpectation(
  record: EvidenceRecord,
  ofLot: readonly EvidenceRecord[],
): BareExpectation | null {
  if (record.reading.kind !== "pair") return null;
  const others = othersOf(record, ofLot);
  if (others.length === 0) return null;
  const { pairCount, pieceCount } = record.reading;
  const own = varianceOf(record.print.garment.garment.fibres, pairCount, pieceCount);
  const theirs = median(others.map(({ varianceL }) => varianceL)) / others.length;
  return {
    lab: {
      L: median(others.map(({ lab }) => lab.L)),
      a: median(others.map(({ lab }) => lab.a)),
      b: median(others.map(({ lab }) => lab.b)),
    },
    varianceL: own + MEDIAN_PER_MEAN * theirs,
  };
}

/** Variance of a median over that of a mean of as many normal values: pi / 2 for many, 1 for one or two; the larger taken. */
const MEDIAN_PER_MEAN = Math.PI / 2;

/**
 * Squared distance (3 degrees of freedom) of a bare reading from what the lot's others say, and ln of the determinant of its
 * covariance; `more` (3 x 3) is added where the reading itself is unsure.
 */
export function bareAgreement(
  bare: Lab,
  { lab, varianceL }: BareExpectation,
  more: Float64Array | null = null,
): { readonly distance2: number; readonly lnDeterminant: number } {
  const covariance = more?.slice() ?? new Float64Array(9);
  covariance[0]! += varianceL;
  covariance[4]! += AB_PER_L ** 2 * varianceL;
  covariance[8]! += AB_PER_L ** 2 * varianceL;
  factorise(covariance, 3);
  const off = Float64Array.of(bare.L - lab.L, bare.a - lab.a, bare.b - lab.b);
  solveLower(covariance, 3, off);
  return {
    distance2: off.reduce((sum, value) => sum + value * value, 0),
    lnDeterminant: lnDeterminant(covariance, 3),
  };
}
