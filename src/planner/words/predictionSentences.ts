/** What a prediction says in words: how much darker, how sure, on what evidence, and why. */
import type {
  EvidenceLevel,
  PredictionReason,
  PredictionWarning,
  SpreadSource,
} from "../../core/prediction/prediction.ts";
import type { Band } from "../../job/jobDocument.ts";

/** Below this nothing has changed: 0.0 with one decimal. */
const NO_CHANGE_DELTA_L = 0.05;

const oneDecimal = (value: number) => Math.abs(value).toFixed(1);
const isNothing = (deltaL: number) => Math.abs(deltaL) < NO_CHANGE_DELTA_L;
const direction = (deltaL: number) => (deltaL < 0 ? "darker" : "lighter");

/** "3.2 darker", "2.0 lighter", "no change". */
export function changeWords(deltaL: number): string {
  return isNothing(deltaL) ? "no change" : `${oneDecimal(deltaL)} ${direction(deltaL)}`;
}

/** The change, and the dark and the light end of its nine-in-ten range. */
export interface ChangeRange {
  readonly deltaL: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
}

/**
 * The nine-in-ten range to stand behind `changeWords`, in its direction: "1.4 to 7.8", from the weak end to the strong
 * one. An end on the other side is named: "0.3 lighter to 0.5". Beside "no change" it is how far it may be: "within 0.4".
 */
export function rangeWords({ deltaL, deltaL5, deltaL95 }: ChangeRange): string {
  if (isNothing(deltaL)) return `within ${Math.max(Math.abs(deltaL5), Math.abs(deltaL95)).toFixed(1)}`;
  const [weak, strong] = deltaL < 0 ? [deltaL95, deltaL5] : [deltaL5, deltaL95];
  const crosses = !isNothing(weak) && direction(weak) !== direction(deltaL);
  return `${oneDecimal(weak)}${crosses ? ` ${direction(weak)}` : ""} to ${oneDecimal(strong)}`;
}

/** The whole of it in a sentence: "3.2 darker, between 1.4 and 7.8 in nine of ten." */
export function changeSentence(range: ChangeRange): string {
  const words = rangeWords(range);
  if (words.startsWith("within")) return `No change, ${words} in nine of ten.`;
  return `${changeWords(range.deltaL)}, between ${words.replace(" to ", " and ")} in nine of ten.`;
}

/** Whole percent; a chance is never called sure or impossible when it is only nearly so. */
export function chanceWords(chance: number): string {
  if (chance > 0 && chance < 0.005) return "under 1\u00a0%";
  if (chance < 1 && chance >= 0.995) return "over 99\u00a0%";
  return `${Math.round(chance * 100)}\u00a0%`;
}

/** "4.0 darker ± 1.5". */
export function bandWords({ deltaL, tolerance }: Pick<Band, "deltaL" | "tolerance">): string {
  return `${changeWords(deltaL)} ± ${tolerance.toFixed(1)}`;
}

/** What is known, and from where. */
export const EVIDENCE_SENTENCES: Readonly<Record<EvidenceLevel, string>> = {
  "this lot": "This lot was printed with this base, and read.",
  "related prints": "Related garments were printed and read; this lot was not.",
  "model only": "No print backs this well: it rests on the label and the bare colour.",
};

/** Two or three words for a cell. */
export const SHORT_WARNINGS: Readonly<Record<PredictionWarning, string>> = {
  "dark-limit": "dark cloth",
  brightener: "brightener",
  "deposit-outside-range": "deposit",
  "heather-as-solid": "heather",
  "light-indicative": "indicative",
  "bare-approximate": "approximate",
  "screen-colour-moved": "screen",
  "milky-haze": "milky",
};

/** Nothing is wrong and nothing can be done: said in passing, where others ask for attention. */
const IN_PASSING: readonly PredictionWarning[] = ["light-indicative", "dark-limit", "screen-colour-moved"];

/** Warnings in the order in which they matter, each with whether it asks for attention. */
export function byWeight(
  warnings: readonly PredictionWarning[],
): readonly { readonly warning: PredictionWarning; readonly isLoud: boolean }[] {
  const weighed = warnings.map((warning) => ({ warning, isLoud: !IN_PASSING.includes(warning) }));
  return [...weighed.filter(({ isLoud }) => isLoud), ...weighed.filter(({ isLoud }) => !isLoud)];
}

export const WARNING_SENTENCES: Readonly<Record<PredictionWarning, string>> = {
  "dark-limit":
    "The bare cloth reflects under 5 % somewhere in the spectrum. The model is weak on so dark a cloth; the spread is widened for it.",
  brightener:
    "The cloth carries an optical brightener: part of its light is not reflection. That part is kept as it is.",
  "deposit-outside-range":
    "The deposit is outside 3 to 80 µm, the range that the model was made for. Weigh it, or choose another set-up.",
  "heather-as-solid":
    "This heather could not be taken apart into its fibres; it is predicted as if it were evenly dyed.",
  "light-indicative":
    "The bare colour was read under another light and its spectrum is reconstructed: under this light the figures are only indicative.",
  "bare-approximate":
    "The bare colour is a screen colour, not a measurement. Read the cloth before you promise anything.",
  "screen-colour-moved":
    "The screen cannot show one of these colours; the nearest it can is shown. The figures hold.",
  "milky-haze": "A little white in a clear veils dark cloth: it may look milky.",
};

export const REASON_SENTENCES: Readonly<Record<PredictionReason, string>> = {
  "polyester-deepens": "Dyed polyester deepens where clear ink wets it.",
  "cotton-hardly-wets": "Cotton hardly wets out under plastisol: a clear alone shows almost nothing here.",
  "no-colour-to-deepen": "Cloth this light carries no dye to deepen; only a tint can be seen on it.",
  "undyed-fibre-carries-the-wetting":
    "The fibre that wets out is the undyed one, so the clear changes little; the dyed fibre hardly takes ink.",
  "little-room-to-darken": "The cloth is so dark already that little room is left.",
  "tint-does-the-work": "Most of the change comes from the tint, not from wetting.",
  "white-ink-lightens": "The white in the mix scatters light and lifts the cloth.",
};

/** What a part of the spread is called. */
export const SPREAD_WORDS: Readonly<Record<SpreadSource, string>> = {
  style: "style",
  mill: "mill",
  colourway: "colourway",
  lot: "lot",
  "base-on-style": "base on this style",
  finish: "finish",
  "fibre-gain": "fibre gain",
  "base-strength": "base strength",
  haze: "haze",
  "closed-surface": "surface",
  "colourant-strength": "tint strength",
  "black-scattering": "scattering of black",
  deposit: "deposit",
  model: "the model itself",
};

/** Where the band of a line is not the place's. */
export const BAND_FOLLOWS_APPROVED =
  "The target band of this line follows its approved print, not the target of the place.";
