/** One garment under one mix as evidence sees it: the unknowns it depends on, and its colour as a function of them. */
import type { Viewing } from "../colorimetry/viewing.ts";
import type { Application, Garment, InkMix } from "../prediction/inputs.ts";
import type { Surprise } from "../prediction/unknowns.ts";
import { type WettableGarment, wettableGarment } from "../prediction/wettableGarment.ts";
import type { PriorScales } from "./priorScales.ts";
import type { EvidencePrint } from "./record.ts";
import { sharedUnknown, type Unknown, wetOutUnknowns } from "./unknown.ts";

/** No unknown stands behind this part. */
export const NONE = -1;

export interface Cell {
  readonly cloth: WettableGarment;
  readonly mix: InkMix;
  readonly application: Application;
  /** The unknowns the print depends on; the first `wetCount` add up to epsilon and belong to the garment's style. */
  readonly unknowns: readonly Unknown[];
  readonly wetCount: number;
  /** What one unit of each of them adds to epsilon: 1, but of what only dark cloth shares the cloth's dark share. */
  readonly wetLoadings: Float64Array;
  /** Position in `unknowns` by fibre, and by part of the mix; NONE where there is none. */
  readonly gainOf: Int32Array;
  readonly strengthOf: Int32Array;
  readonly scatteringOf: Int32Array;
  readonly closedOf: Int32Array;
  readonly depositAt: number;
}

/** Key of the base that carries the wet-out: the largest base of the mix, else its largest ready-made ink; "" for none. */
export function mainBaseKey(mix: InkMix, itemKeys: readonly string[]): string {
  let key = "";
  let most = 0;
  for (const wanted of ["base", "colourant"] as const) {
    mix.parts.forEach((part, i) => {
      const counts = part.kind === wanted && (part.kind === "base" || part.ownBaseStrength !== null);
      if (counts && part.massFraction > most) {
        most = part.massFraction;
        key = itemKeys[i]!;
      }
    });
    if (key !== "") return key;
  }
  return key;
}

/** The cloth of a garment under a viewing, made once. */
export type ClothCache = Map<Garment, Map<string, WettableGarment>>;

export function cachedCloth(cache: ClothCache, garment: Garment, viewing: Viewing): WettableGarment {
  const key = `${viewing.illuminant}/${viewing.observer}`;
  let byViewing = cache.get(garment);
  if (byViewing === undefined) {
    byViewing = new Map();
    cache.set(garment, byViewing);
  }
  let cloth = byViewing.get(key);
  if (cloth === undefined) {
    cloth = wettableGarment(garment, viewing);
    byViewing.set(key, cloth);
  }
  return cloth;
}

/**
 * The cell of `print` on its `cloth`.
 * @throws RangeError where `itemKeys` are not as many as the parts of the mix.
 */
export function cellOf(print: EvidencePrint, cloth: WettableGarment, scales: PriorScales): Cell {
  const { mix, itemKeys, application } = print;
  if (itemKeys.length !== mix.parts.length) {
    throw new RangeError(`itemKeys must be as many as parts (${mix.parts.length}); got ${itemKeys.length}`);
  }
  const found = wetOutUnknowns(print.garment, cloth.darkShare > 0, mainBaseKey(mix, itemKeys), scales);
  const wetCount = found.length;
  const wetLoadings = Float64Array.from(found, ({ kind }) => (kind === "dark" ? cloth.darkShare : 1));
  const positions = new Map<string, number>();
  const positionOf = (unknown: Unknown): number => {
    const known = positions.get(unknown.key);
    if (known !== undefined) return known;
    positions.set(unknown.key, found.push(unknown) - 1);
    return found.length - 1;
  };
  const gainOf = Int32Array.from(cloth.garment.fibres, ({ fibre }) =>
    positionOf(sharedUnknown("fibreGain", "fibre-gain", fibre, scales.fibreGain)),
  );
  const strengthOf = new Int32Array(mix.parts.length).fill(NONE);
  const scatteringOf = new Int32Array(mix.parts.length).fill(NONE);
  const closedOf = new Int32Array(mix.parts.length).fill(NONE);
  mix.parts.forEach((part, i) => {
    const key = itemKeys[i]!;
    if (part.massFraction === 0) return;
    if (part.kind === "base") {
      if (!part.reference) {
        strengthOf[i] = positionOf(sharedUnknown("baseStrength", "base-strength", key, scales.baseStrength));
      }
      if (part.hazePerUm > 0) scatteringOf[i] = positionOf(sharedUnknown("haze", "haze", key, scales.haze));
      closedOf[i] = positionOf(
        sharedUnknown("closedFraction", "closed-surface", key, scales.closedFraction, -part.closedFraction),
      );
      return;
    }
    strengthOf[i] = positionOf(
      sharedUnknown("colourantStrength", "colourant-strength", key, scales.colourantStrength),
    );
    if (part.family === "black") {
      scatteringOf[i] = positionOf(
        sharedUnknown("blackScattering", "black-scattering", key, scales.blackScattering),
      );
    }
  });
  let depositAt = NONE;
  if (!print.depositOfThisPrintWeighed) {
    const kind = application.depositWeighed ? "depositWeighed" : "depositEstimated";
    depositAt = positionOf(sharedUnknown(kind, "deposit", print.setUpKey, scales[kind]));
  }
  const positionsOf = { gainOf, strengthOf, scatteringOf, closedOf, depositAt };
  return { cloth, mix, application, unknowns: found, wetCount, wetLoadings, ...positionsOf };
}

const valueAt = (values: Float64Array, position: number): number =>
  position === NONE ? 0 : values[position]!;

/** epsilon at `values`. */
export function epsilonAt(cell: Cell, values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < cell.wetCount; i++) sum += cell.wetLoadings[i]! * values[i]!;
  return sum;
}

/** `values` of the cell's unknowns as the surprise that the prediction takes. */
export function surpriseAt(cell: Cell, values: Float64Array): Required<Surprise> {
  const at = (positions: Int32Array): number[] => Array.from(positions, (p) => valueAt(values, p));
  return {
    lnWetOut: epsilonAt(cell, values),
    lnFibreGain: at(cell.gainOf),
    lnPartStrength: at(cell.strengthOf),
    lnPartScattering: at(cell.scatteringOf),
    closedFractionShift: at(cell.closedOf),
    lnDeposit: valueAt(values, cell.depositAt),
  };
}
