/** The weights of a light and observer where the band kernel finds them. */
import type { WeightSet } from "../../colorimetry/weights.ts";
import { type ResidentBands, residentBands } from "./residentBands.ts";

export interface ResidentWeights extends WeightSet {
  readonly resident: ResidentBands;
}

const known = new WeakMap<WeightSet, ResidentWeights>();

/** `weights` with a place in the kernel's memory, the same for the same weights. */
export function residentWeights(weights: WeightSet): ResidentWeights {
  let made = known.get(weights);
  if (made === undefined) {
    made = { ...weights, resident: residentBands([weights.x, weights.y, weights.z]) };
    known.set(weights, made);
  }
  return made;
}
