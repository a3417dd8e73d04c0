/** What the mix search says in words: how far it is, what it found and how surely, what no mix serves and what would. */
import type { MixSearchFault } from "../../core/planning/decisions/mixSearch.ts";
import type { UnservedHelp, UnservedReason } from "../../core/planning/decisions/unservedReason.ts";
import type { MixFinding, SearchProgress } from "../../engine/decisions/decisionProtocol.ts";
import type { Band } from "../../job/jobDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { listed } from "./listed.ts";
import { moneyWords } from "./moneyWords.ts";
import { chanceWords, changeWords } from "./predictionSentences.ts";

/** "1 mix", "4 mixes". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

const mixes = (count: number) => counted(count, "mix", "mixes");

/** A small part of a cost: "0.3 %", never "0 %" of something. */
function smallPercent(fraction: number): string {
  const percent = fraction * 100;
  return percent < 0.01 ? "under 0.01\u00a0%" : `${Number(percent.toPrecision(2))}\u00a0%`;
}

export function progressWords({ stage, doneFraction }: SearchProgress, garmentCount: number): string {
  if (stage === "predicting") {
    const done = Math.round((doneFraction ?? 0) * garmentCount);
    return `Predicting: ${done} of ${counted(garmentCount, "garment")} done.`;
  }
  if (doneFraction === null) return "Solving: looking for a first plan.";
  return doneFraction === 0
    ? "Solving: nearly done."
    : `Solving: the best plan so far costs at most ${smallPercent(doneFraction)} more than the cheapest.`;
}

export interface Served {
  readonly mixCount: number;
  readonly setUpCount: number;
  readonly servedCount: number;
  readonly garmentCount: number;
}

/** "7 mixes through 2 set-ups serve 12 of 12 garments". */
export function headlineWords({ mixCount, setUpCount, servedCount, garmentCount }: Served): string {
  if (servedCount === 0) return `No mix serves any of ${counted(garmentCount, "garment")}`;
  const serve = mixCount === 1 ? "serves" : "serve";
  const through = counted(setUpCount, "set-up");
  return `${mixes(mixCount)} through ${through} ${serve} ${servedCount} of ${counted(garmentCount, "garment")}`;
}

/** How sure it is that nothing is cheaper. */
export function provenSentence({ proven, proposal }: Pick<MixFinding, "proven" | "proposal">): string {
  if (proven) return "Nothing can be cheaper under these rules.";
  return `Its cost is within ${smallPercent(proposal.gapFraction)} of the cheapest possible; the search ran out of time before it could say more.`;
}

export function weighedSentence({ counts }: Pick<MixFinding, "counts">): string {
  return `${mixes(counts.mixes)} through ${counted(counts.setUps, "set-up")} were weighed for ${counted(counts.lines, "garment")}.`;
}

/** A saving as a bare figure; what costs more carries a true minus sign. */
export function savedWords(amount: number): string {
  return moneyWords(amount, "").replace("-", "\u2212");
}

/** What the comparison with the present choices stands for; null where it is for every garment. */
export function comparedSentence(comparedCount: number, servedCount: number): string | null {
  if (comparedCount === servedCount) return null;
  if (comparedCount === 0) return "No garment here has a mix yet, so there is nothing to compare with.";
  return `\u201cNow\u201d and \u201csaved\u201d stand for the ${counted(comparedCount, "garment")} with a mix already; the other ${servedCount - comparedCount} have none to compare with. Mixes and screens count in full there, although the others share them.`;
}

const RULES = { "stock-only": "is not in stock", "low-cure-only": "is not of low-cure bases alone" } as const;

/** @param nameOf a mix in words */
export function faultSentence(fault: MixSearchFault, nameOf: (key: string) => string): string {
  switch (fault.code) {
    case "kept-and-forbidden":
      return `${nameOf(fault.mixId)} is to be kept and not to be used. Take one of the two back.`;
    case "kept-not-allowed":
      return `${nameOf(fault.mixId)} is to be kept, but it ${RULES[fault.rule]}. Keep it no longer, or allow it.`;
    case "kept-more-than-allowed":
      return `${mixes(fault.keptCount)} are to be kept, but no more than ${mixes(fault.atMostMixes)} are allowed.`;
  }
}

export const IMPOSSIBLE_SENTENCE =
  "So few mixes cannot serve all the garments that can be served. Allow more mixes, or leave a garment out of this print place.";
export const NONE_FOUND_SENTENCE =
  "No plan was found in a minute. Allow fewer mixes or leave some out, and search again.";

const isDarker = ({ deltaL }: Pick<Band, "deltaL">) => deltaL <= 0;

export function unservedSentence(reason: UnservedReason, band: Pick<Band, "deltaL">): string {
  const [more, verb] = isDarker(band) ? ["dark", "darkens"] : ["light", "lightens"];
  switch (reason) {
    case "nothing-predicted":
      return "Nothing can be predicted for it: its colour or blend is missing, or the shelf has no mix and set-up for this target.";
    case "rules":
      return "Something would serve it, but the rules shut it out.";
    case "not-known-well-enough":
      return "A print may land in the target, but too little is known of it: the chance is below one half.";
    case "white-only-tint":
      return "White cloth has no dye to deepen: only tint darkens it, and no tint here is strong enough.";
    case "clear-cannot":
      return "Cotton and what dyes like it hardly wet out: clear cannot darken it so far, and no tint here does.";
    case "no-headroom":
      return "The cloth is nearly as dark as ink can make it: no headroom is left.";
    case "hue":
      return `What is ${more} enough turns the hue too far.`;
    case "too-strong":
      return `Every print that ${verb} it enough ${verb} it too far.`;
    case "too-weak":
      return `Even the strongest print here does not get it ${more} enough.`;
  }
}

export const HELP_WORDS: Readonly<Record<UnservedHelp, string>> = {
  "allow-more": "rules that shut out less",
  tint: "more tint than the ladder has",
  "exact-tint": "an exact tint between two steps of the ladder",
  "soft-white": "a soft white, which lightens instead",
  "test-print": "a test print, to know it better",
  "weaker-print": "a weaker print: a finer mesh or a halftone",
  "wider-band": "a wider target band",
  "other-garment": "another garment",
};

/** "Nearest: Gloss clear through 90-48, 2.1 darker, 12 % in band." */
export function nearestSentence(
  mix: string,
  setUp: string,
  deltaL: number | null,
  chanceInBand: number,
): string {
  const change = deltaL === null ? "" : ` ${changeWords(deltaL)},`;
  return `Nearest: ${mix}, ${setUp};${change} ${chanceWords(chanceInBand)} in band.`;
}

export function unpricedSentence(names: readonly string[]): string {
  return `Ink of ${listed(names)} is counted as nothing: no price on the shelf.`;
}

/** Nothing was weighed at all: what is missing for that; null where something was. */
export function nothingWeighedSentence(
  { counts }: Pick<MixFinding, "counts">,
  { bases, setUps }: Pick<Shelf, "bases" | "setUps">,
): string | null {
  if (counts.mixes > 0 && counts.setUps > 0) return null;
  if (bases.length === 0) return "The shelf has no base yet: put the base that you print with on it.";
  if (setUps.length === 0) return "The shelf has no set-up yet: put mesh, squeegee and strokes on it.";
  return "The rules leave no mix to weigh: allow more, or put something else on the shelf.";
}

/** Whether a garment out of band costs nothing by what is entered: then the search cannot prefer what lands in it. */
export function isLossUnpriced({ cost, proposal }: Pick<MixFinding, "cost" | "proposal">): boolean {
  return cost.expectedLoss === 0 && proposal.changes.some(({ to }) => to !== null && to.chanceInBand < 1);
}

export const LOSS_UNPRICED_SENTENCE =
  "By what is entered, a print out of band costs nothing. So the search did not prefer mixes that land in the band: it took any with an even chance, the cheapest to make. Enter what a garment and a print cost, then search again.";

export function piecesUnpricedSentence(names: readonly string[]): string {
  const few = names.length <= 3 ? listed(names) : counted(names.length, "garment");
  return `No price of a piece is entered for ${few}: the expected loss counts the print alone.`;
}

export type BasisPart = "garments" | "target" | "light" | "mixes" | "choices" | "rules" | "records" | "shelf";

const PART_WORDS: Readonly<Record<BasisPart, string>> = {
  garments: "the garments",
  target: "the target or the print",
  light: "the light",
  mixes: "the mixes in the matrix",
  choices: "what is chosen",
  rules: "the rules",
  records: "the record book",
  shelf: "the shelf",
};

export function staleSentence(parts: readonly BasisPart[]): string {
  return `This proposal is older than the job. Changed since: ${listed(parts.map((part) => PART_WORDS[part]))}. Search again before you use it.`;
}

/** What "Use this proposal" would do. */
export function whatUseDoes(openCount: number, changeCount: number): string {
  return `Changes ${openCount === changeCount ? "" : "the other "}${counted(openCount, "garment")} in one step.`;
}

/** Said before an approved print is given up. */
export function approvedSentence(approvedCount: number): string {
  const has = approvedCount === 1 ? "1 of them has a print" : `${approvedCount} of them have prints`;
  return `! ${has} that the customer approved: a change asks for a new approval.`;
}

/** What one press did. */
export function appliedSentence(garmentCount: number, newMixCount: number): string {
  const added = newMixCount === 0 ? "" : ` ${mixes(newMixCount)} came into the matrix.`;
  return `Chosen for ${counted(garmentCount, "garment")}.${added}`;
}
