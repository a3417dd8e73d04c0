/** Why no mix serves a garment, and what would: codes, so that the planner owns the sentences. */
import { WHITE_L } from "../runChecklist.ts";

export type UnservedReason =
  /** The garment's colour or blend cannot be predicted, or the shelf holds nothing for it. */
  | "nothing-predicted"
  /** Something would serve, but the rules of the search shut it out. */
  | "rules"
  /** The print is expected in band, and too little is known to say so surely enough. */
  | "not-known-well-enough"
  /** White cloth has no dye to deepen: only tint darkens it. */
  | "white-only-tint"
  /** Cotton and other cellulose hardly wet out: clear cannot. */
  | "clear-cannot"
  /** The cloth is nearly as dark as ink can make it. */
  | "no-headroom"
  /** Even the weakest print is too dark. */
  | "too-strong"
  /** Even the strongest print is too weak. */
  | "too-weak"
  /** What is dark enough turns the hue too far. */
  | "hue";

export type UnservedHelp =
  | "allow-more"
  | "tint"
  | "exact-tint"
  | "soft-white"
  | "test-print"
  | "weaker-print"
  | "wider-band"
  | "other-garment";

/** A print that was predicted for the garment. */
export interface UnservedOption {
  readonly chanceInBand: number;
  readonly deltaL50: number;
  readonly tinted: boolean;
}

export interface UnservedFacts {
  readonly why: "nothing-predicted" | "rules" | "chance-too-small";
  /** All that was predicted for it, the rules aside. */
  readonly options: readonly UnservedOption[];
  readonly bareL: number | null;
  /** Whether a dyed fibre wets out: polyester or nylon. */
  readonly wets: boolean;
  readonly band: { readonly deltaL: number; readonly tolerance: number };
}

/** A print whose middle lies in the band and that lands there less often than this is kept out by something else. Invented default. */
const HUE_CHANCE = 0.15;
/** Below this L* black ink has little left to darken. Invented default. */
const DARK_L = 25;

export interface Unserved {
  readonly reason: UnservedReason;
  /** What would help, the nearest first. */
  readonly helps: readonly UnservedHelp[];
}

/** The plainest reason that holds; every limit in it is an invented default, every remedy common practice, no source. */
export function unservedReason({ why, options, bareL, wets, band }: UnservedFacts): Unserved {
  if (why === "nothing-predicted" || options.length === 0) return { reason: "nothing-predicted", helps: [] };
  if (why === "rules") return { reason: "rules", helps: ["allow-more"] };
  const [lower, upper] = [band.deltaL - band.tolerance, band.deltaL + band.tolerance];
  const lightest = Math.max(...options.map(({ deltaL50 }) => deltaL50));
  const darkest = Math.min(...options.map(({ deltaL50 }) => deltaL50));
  if (band.deltaL > 0) {
    const reason = lightest < lower ? "too-weak" : darkest > upper ? "too-strong" : "not-known-well-enough";
    return { reason, helps: ["wider-band", "other-garment"] };
  }
  const isTooWeak = darkest > upper;
  if (isTooWeak) {
    if (bareL !== null && bareL >= WHITE_L)
      return { reason: "white-only-tint", helps: ["tint", "other-garment"] };
    if (bareL !== null && bareL < DARK_L)
      return { reason: "no-headroom", helps: ["soft-white", "other-garment"] };
    if (!wets) return { reason: "clear-cannot", helps: ["tint", "soft-white", "other-garment"] };
    return { reason: "too-weak", helps: ["tint", "soft-white", "other-garment"] };
  }
  if (lightest < lower)
    return { reason: "too-strong", helps: ["weaker-print", "test-print", "other-garment"] };
  const within = options.filter(({ deltaL50 }) => deltaL50 >= lower && deltaL50 <= upper);
  if (within.length === 0)
    return { reason: "too-strong", helps: ["exact-tint", "weaker-print", "wider-band"] };
  // In the middle of the band by lightness and yet hardly ever in band: the hue shuts it out.
  const isHue = within.every(({ tinted, chanceInBand }) => tinted && chanceInBand < HUE_CHANCE);
  if (isHue) return { reason: "hue", helps: ["other-garment", "wider-band"] };
  return { reason: "not-known-well-enough", helps: ["test-print", "wider-band"] };
}
