/** The ink film that a mix leaves on the cloth: its optics, how strongly it wets out, how much it closes and covers. */
import { requireFraction } from "../optics/brightener.ts";
import { filmLayer } from "../optics/inkFilm.ts";
import { CLOSED_FRACTION_AS_PRINTED, CLOSED_FRACTION_SMOOTHED } from "../optics/saunderson.ts";
import { depositReach } from "../optics/wetOut.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import type { Application, InkMix } from "./inputs.ts";
import { type ResidentBands, residentBands } from "./kernel/residentBands.ts";
import { requireMix } from "./requireMix.ts";
import type { Surprise } from "./unknowns.ts";

/** Cover of a thin scattering film on hairy cloth, reached at this much white in the mix. Invented defaults (model.md §4). */
const SCATTERING_COVER_FRACTION = 0.5;
const SCATTERING_COVER_WHITE_FRACTION = 0.5;

/** The optics of one film, whatever lies under it. */
export interface PrintedFilm {
  readonly transmittanceSquared: Spectrum;
  readonly reflectance: Spectrum;
  /** The two for the band kernel. */
  readonly resident: ResidentBands;
  /** beta F(X): what the fibres' gains are multiplied by. */
  readonly wetOutStrength: number;
  readonly closedFraction: number;
  readonly coverFraction: number;
  readonly halftoneFraction: number;
}

/**
 * Part of the cloth covered by a film: 1 for clears and tints, down to 0.5 for a mix that is half white or more,
 * in proportion between (invented default; model.md §4 states the end points).
 */
export function defaultCoverFraction(mix: InkMix): number {
  let white = 0;
  for (const part of mix.parts) {
    if (part.kind === "colourant" && part.family === "white") white += part.massFraction;
  }
  return 1 - (1 - SCATTERING_COVER_FRACTION) * Math.min(1, white / SCATTERING_COVER_WHITE_FRACTION);
}

/** beta of the mix: sum c beta / sum c over its bases, additives and ready-made inks; 0 where it holds none. */
function mixStrength(mix: InkMix, surprise: Surprise): number {
  let mass = 0;
  let strength = 0;
  mix.parts.forEach((part, i) => {
    if (part.kind === "base") {
      mass += part.massFraction;
      strength += part.massFraction * part.strength * Math.exp(surprise.lnPartStrength?.[i] ?? 0);
    } else if (part.ownBaseStrength !== null) {
      mass += part.massFraction;
      strength += part.massFraction * part.ownBaseStrength;
    }
  });
  return mass === 0 ? 0 : strength / mass;
}

/** phi: the bases' closed fractions averaged by mass, or the smoothed surface's; never below 0. */
function closedFractionOf(mix: InkMix, application: Application, surprise: Surprise): number {
  let mass = 0;
  let closed = 0;
  let shift = 0;
  mix.parts.forEach((part, i) => {
    if (part.kind !== "base") return;
    mass += part.massFraction;
    closed += part.massFraction * part.closedFraction;
    shift += part.massFraction * (surprise.closedFractionShift?.[i] ?? 0);
  });
  const asPrinted = mass === 0 ? CLOSED_FRACTION_AS_PRINTED : closed / mass;
  const mean = application.smoothed ? Math.max(CLOSED_FRACTION_SMOOTHED, asPrinted) : asPrinted;
  return Math.min(1, Math.max(0, mean + (mass === 0 ? 0 : shift / mass)));
}

/**
 * The film of `mix` as `application` lays it, with the deviations of `surprise` (model.md §4: Duncan mixture, Kubelka's
 * layer). `tintFactor` multiplies K and S of every colourant: 0 gives the clear alone.
 * @throws RangeError for mass fractions that do not sum to 1 or an application out of range.
 */
export function printedFilm(
  mix: InkMix,
  application: Application,
  surprise: Surprise = {},
  tintFactor = 1,
): PrintedFilm {
  requireMix(mix);
  requireFraction("halftoneFraction", application.halftoneFraction);
  const depositUm = application.depositUm * Math.exp(surprise.lnDeposit ?? 0);
  const absorption = new Float64Array(BAND_COUNT);
  const scattering = new Float64Array(BAND_COUNT);
  mix.parts.forEach((part, p) => {
    const scatter = Math.exp(surprise.lnPartScattering?.[p] ?? 0);
    if (part.kind === "base") {
      for (let i = 0; i < BAND_COUNT; i++) scattering[i]! += part.massFraction * part.hazePerUm * scatter;
      return;
    }
    const amount = tintFactor * part.massFraction * Math.exp(surprise.lnPartStrength?.[p] ?? 0);
    for (let i = 0; i < BAND_COUNT; i++) {
      absorption[i]! += amount * part.absorptionPerUm[i]!;
      scattering[i]! += amount * scatter * part.scatteringPerUm[i]!;
    }
  });
  const transmittanceSquared = new Float64Array(BAND_COUNT);
  const reflectance = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    const layer = filmLayer(absorption[i]!, scattering[i]!, depositUm);
    transmittanceSquared[i] = layer.transmittance * layer.transmittance;
    reflectance[i] = layer.reflectance;
  }
  return {
    transmittanceSquared,
    reflectance,
    resident: residentBands([transmittanceSquared, reflectance]),
    wetOutStrength: mixStrength(mix, surprise) * depositReach(depositUm),
    closedFraction: closedFractionOf(mix, application, surprise),
    coverFraction: mix.clothCoverFraction ?? defaultCoverFraction(mix),
    halftoneFraction: application.halftoneFraction,
  };
}
