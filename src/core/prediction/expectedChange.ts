/** The change of L* that is expected of a print, without how sure that is: a small part of what its spread costs. */

import { type InkSurprise, isSameInkSurprise } from "./inkSurprise.ts";
import type { Application, InkMix } from "./inputs.ts";
import { type Workspace, wetCloth } from "./printedColour.ts";
import { type PrintedFilm, printedFilm } from "./printedFilm.ts";
import { lightnessOver } from "./printedLab.ts";
import type { Surprise } from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

interface Remembered {
  readonly application: Application;
  readonly mean: InkSurprise;
  readonly film: PrintedFilm;
}

/** The last film of each mix: what is believed of an ink is mostly the same on every garment of a column. */
const last = new WeakMap<InkMix, Remembered>();

function believedFilm(mix: InkMix, application: Application, mean: Required<Surprise>): PrintedFilm {
  const known = last.get(mix);
  if (known !== undefined && known.application === application && isSameInkSurprise(known.mean, mean)) {
    return known.film;
  }
  const film = printedFilm(mix, application, mean);
  last.set(mix, { application, mean, film });
  return film;
}

/**
 * Delta-L* at the means `mean`: the centre of the spread that `believedCell` leads to, which its median follows within the
 * bend of the response. @throws RangeError as `printedFilm`.
 */
export function expectedDeltaL(
  room: Workspace,
  cloth: WettableGarment,
  mix: InkMix,
  application: Application,
  mean: Required<Surprise>,
): number {
  const film = believedFilm(mix, application, mean);
  const gains = cloth.gains.map((gain, i) => gain * Math.exp(mean.lnFibreGain[i] ?? 0));
  const believed = { ...cloth, gains };
  wetCloth(room, believed, film, mean.lnWetOut);
  return lightnessOver(room, believed, film) - cloth.bareLab.L;
}
