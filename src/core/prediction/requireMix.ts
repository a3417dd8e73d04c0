/** Refuses a mix that no ink can be: every part by name and value, then their sum. */
import { requireFraction } from "../optics/brightener.ts";
import { MASS_FRACTION_TOLERANCE } from "../optics/mix.ts";
import { BAND_COUNT } from "../spectrum/spectrum.ts";
import type { InkMix, MixPart } from "./inputs.ts";

function requireAtLeastZero(name: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
  }
}

function requirePart(part: MixPart): void {
  requireFraction("massFraction", part.massFraction);
  if (part.kind === "base") {
    requireAtLeastZero("strength", part.strength);
    requireAtLeastZero("hazePerUm", part.hazePerUm);
    requireFraction("closedFraction", part.closedFraction);
    return;
  }
  if (part.ownBaseStrength !== null) requireAtLeastZero("ownBaseStrength", part.ownBaseStrength);
  for (const name of ["absorptionPerUm", "scatteringPerUm"] as const) {
    if (part[name].length !== BAND_COUNT) {
      throw new RangeError(`${name} must have ${BAND_COUNT} bands; got ${part[name].length}`);
    }
  }
}

/**
 * @throws RangeError for a part out of range, a cloth cover outside 0..1, or mass fractions that do not sum to 1. What a
 * colourant absorbs and scatters in each band is checked where its film is computed.
 */
export function requireMix({ parts, clothCoverFraction }: InkMix): void {
  let sum = 0;
  for (const part of parts) {
    requirePart(part);
    sum += part.massFraction;
  }
  if (!(Math.abs(sum - 1) <= MASS_FRACTION_TOLERANCE)) {
    throw new RangeError(`mass fractions of a mix must sum to 1; got ${sum}`);
  }
  if (clothCoverFraction !== null) requireFraction("clothCoverFraction", clothCoverFraction);
}
