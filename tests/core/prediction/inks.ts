// The mixes and applications that predictions are tried with: the shelf's invented defaults (model.md, starting values).
import { blackInk, type Colourant, tintFromMasstone, whiteInk } from "../../../src/core/optics/colourant.ts";
import type {
  Application,
  BasePart,
  ColourantPart,
  InkMix,
  MixPart,
} from "../../../src/core/prediction/inputs.ts";
import { spectrumOf } from "./cloths.ts";

/** Strength and haze (1/um) of the shelf's bases, additives and reducers. */
export const BASES = {
  gloss: { strength: 1, hazePerUm: 0, reference: true },
  halftone: { strength: 1, hazePerUm: 0, reference: false },
  stretch: { strength: 0.9, hazePerUm: 0.00003, reference: false },
  curable: { strength: 0.85, hazePerUm: 0, reference: false },
  extender: { strength: 0.9, hazePerUm: 0.0001, reference: false },
  softHand: { strength: 0.85, hazePerUm: 0, reference: false },
  reducer: { strength: 0.6, hazePerUm: 0, reference: false },
  matt: { strength: 0.6, hazePerUm: 0.0001, reference: false },
} as const;
export type BaseName = keyof typeof BASES;

export function base(name: BaseName, massFraction = 1, closedFraction = 0.02): BasePart {
  return { kind: "base", massFraction, closedFraction, ...BASES[name] };
}

function part({ absorptionPerUm, scatteringPerUm }: Colourant, family: ColourantPart["family"]) {
  return (massFraction: number): ColourantPart => ({
    kind: "colourant",
    massFraction,
    absorptionPerUm,
    scatteringPerUm,
    ownBaseStrength: 1,
    family,
  });
}
export const black = part(blackInk(), "black");
export const white = part(whiteInk(), "white");
export const navy = part(tintFromMasstone(spectrumOf([22, 4, -24]), 0.5, "ready-made-ink"), "tint");
export const red = part(tintFromMasstone(spectrumOf([46, 58, 38]), 0.35, "ready-made-ink"), "tint");

export function mixOf(...parts: MixPart[]): InkMix {
  return { parts, clothCoverFraction: null };
}

/** A base with a part of a tint. */
export function tinted(name: BaseName, tint: (massFraction: number) => ColourantPart, part: number): InkMix {
  return mixOf(base(name, 1 - part), tint(part));
}

export const SOFT_WHITE = mixOf(base("softHand", 0.5), white(0.5));

/** One weighed stroke of the reference deposit, solid, as printed. */
export const STROKE: Application = {
  depositUm: 20,
  depositWeighed: true,
  halftoneFraction: 1,
  smoothed: false,
};
/** The fine mesh that soft white goes through, um (invented: weighed through 90-48 in the demo). */
export const FINE_DEPOSIT_UM = 11.6;
