/** The films of an ink at one state of the shop's inks: the film itself, and one step along each part's strength and scattering. */

import { depositReach } from "../optics/wetOut.ts";
import { type InkSurprise, isSameInkSurprise } from "../prediction/inkSurprise.ts";
import type { Application, InkMix } from "../prediction/inputs.ts";
import { type PrintedFilm, printedFilm } from "../prediction/printedFilm.ts";
import type { EvidencePrint } from "./record.ts";

/** Step in natural logarithms of the films' differences. */
export const LN_STEP = 1e-4;

/** Step in natural logarithms of second differences: about as far as the unknowns are open. */
export const BEND_STEP = 0.3;

export interface InkFilms {
  readonly film: PrintedFilm;
  /** By part of the mix: the film where the part is that much stronger, or scatters that much more; null where not asked. */
  readonly stronger: readonly (PrintedFilm | null)[];
  readonly scattering: readonly (PrintedFilm | null)[];
  /** The film with all colourants BEND_STEP weaker and stronger; null without any. */
  readonly lessTint: PrintedFilm | null;
  readonly moreTint: PrintedFilm | null;
}

interface Remembered {
  readonly application: Application;
  readonly at: InkSurprise;
  readonly films: InkFilms;
}

/** The last films of each mix: all records and garments under one ink ask for the same ones in a row. */
const last = new WeakMap<InkMix, Remembered>();

const stepped = (values: readonly number[], at: number): number[] =>
  values.map((value, i) => (i === at ? value + LN_STEP : value));

/** The films of `mix` where its parts are as `at` says; a colourant's strength and whatever `scatters` names get a step. */
export function inkFilms(
  mix: InkMix,
  application: Application,
  at: InkSurprise,
  scatters: (part: number) => boolean,
): InkFilms {
  const known = last.get(mix);
  if (known !== undefined && known.application === application && isSameInkSurprise(known.at, at))
    return known.films;
  const hasTint = mix.parts.some((part) => part.kind === "colourant" && part.massFraction > 0);
  const films: InkFilms = {
    lessTint: hasTint ? printedFilm(mix, application, at, Math.exp(-BEND_STEP)) : null,
    moreTint: hasTint ? printedFilm(mix, application, at, Math.exp(BEND_STEP)) : null,
    film: printedFilm(mix, application, at),
    stronger: mix.parts.map((part, i) =>
      part.kind === "base" || part.massFraction === 0
        ? null
        : printedFilm(mix, application, { ...at, lnPartStrength: stepped(at.lnPartStrength, i) }),
    ),
    scattering: mix.parts.map((_, i) =>
      scatters(i)
        ? printedFilm(mix, application, { ...at, lnPartScattering: stepped(at.lnPartScattering, i) })
        : null,
    ),
  };
  last.set(mix, { application, at, films });
  return films;
}

/** One object for each ink and application that are alike: what the films are remembered by. */
export type InkCache = Map<string, Pick<EvidencePrint, "mix" | "application">>;

/** `print` with its mix and application the same objects as those of every print alike. */
export function withSharedInk(print: EvidencePrint, inks: InkCache): EvidencePrint {
  const { mix, itemKeys, application } = print;
  const parts = mix.parts.map((part, i) => {
    const common = `${itemKeys[i]} ${part.massFraction}`;
    if (part.kind === "base") return `${common} ${part.strength} ${part.hazePerUm} ${part.closedFraction}`;
    const { absorptionPerUm, scatteringPerUm, ownBaseStrength } = part;
    const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
    return `${common} ${sum(absorptionPerUm)} ${sum(scatteringPerUm)} ${ownBaseStrength}`;
  });
  const { depositUm, depositWeighed, halftoneFraction, smoothed } = application;
  const how = `${mix.clothCoverFraction} ${depositUm} ${depositWeighed} ${halftoneFraction} ${smoothed}`;
  const key = `${parts.join("|")}|${how}`;
  const known = inks.get(key);
  if (known === undefined) {
    inks.set(key, { mix, application });
    return print;
  }
  return { ...print, ...known };
}

/** d ln F / d ln X at `depositUm`, with F of optics/wetOut.ts; 1 for a film of no thickness. */
export function reachSlope(depositUm: number): number {
  if (depositUm === 0) return 1;
  const step = Math.exp(LN_STEP);
  return Math.log(depositReach(depositUm * step) / depositReach(depositUm)) / LN_STEP;
}
