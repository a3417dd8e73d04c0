/** A garment and an ink as test prints have taught them: what a prediction with evidence is made from. */
import type { CellBelief } from "./cellBelief.ts";
import { believedDoubt, believedTintSd, type CellDoubt } from "./cellDoubt.ts";
import { type InkSurprise, isSameInkSurprise } from "./inkSurprise.ts";
import type { Application, InkMix } from "./inputs.ts";
import { type PrintableInk, printableInk } from "./printableInk.ts";
import type { Surprise } from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

export interface BelievedCell {
  readonly cloth: WettableGarment;
  readonly ink: PrintableInk;
  readonly doubt: CellDoubt;
}

/** `cloth` with every fibre's gain moved to what `belief` expects of it under this ink; the bare cloth stays as it is. */
function believedCloth(cloth: WettableGarment, { mean }: CellBelief): WettableGarment {
  return {
    ...cloth,
    gains: cloth.gains.map((gain, i) => gain * Math.exp(mean.lnWetOut + (mean.lnFibreGain[i] ?? 0))),
  };
}

interface Remembered {
  readonly application: Application;
  readonly mean: InkSurprise;
  readonly tintSd: number;
  readonly ink: PrintableInk;
}

/** The last ink made of each mix: what is believed of an ink is mostly the same on every garment of a column. */
const last = new WeakMap<InkMix, Remembered>();

function believedInk(
  mix: InkMix,
  application: Application,
  mean: Required<Surprise>,
  tintSd: number,
): PrintableInk {
  const known = last.get(mix);
  const isKnown =
    known !== undefined &&
    known.application === application &&
    known.tintSd === tintSd &&
    isSameInkSurprise(known.mean, mean);
  if (isKnown) return known.ink;
  const ink = printableInk(mix, application, { mean, tintSd });
  last.set(mix, { application, mean, tintSd, ink });
  return ink;
}

/**
 * `mix` on `application` over `cloth`, moved to the means of `belief` and left with its doubt.
 * @throws RangeError as `printableInk`.
 */
export function believedCell(
  cloth: WettableGarment,
  mix: InkMix,
  application: Application,
  belief: CellBelief,
): BelievedCell {
  const ink = believedInk(mix, application, belief.mean, believedTintSd(belief));
  return { cloth: believedCloth(cloth, belief), ink, doubt: believedDoubt(ink, belief) };
}
