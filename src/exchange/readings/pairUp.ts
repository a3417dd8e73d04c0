/** Proposes which samples are the bare cloth and which the print on it. Always to be confirmed, never taken silently. */
import type { ReadSample } from "./readSample.ts";

export type Side = "bare" | "print";

export interface ProposedPair {
  /** Places in the list of samples. */
  readonly bare: number;
  readonly print: number;
  /** What the proposal rests on: words in the names, or nothing but the order. */
  readonly from: "names" | "order";
  /** Why the two cannot be compared as they stand; null where they can. */
  readonly unlike: "light" | "observer" | "geometry" | "kind" | null;
}

export interface PairProposal {
  readonly pairs: readonly ProposedPair[];
  /** Places of the samples that no pair was found for. */
  readonly unpaired: readonly number[];
}

/** Words that shops and instruments' users put into names (common practice, no source). */
const BARE_WORDS = new Set([
  "bare",
  "blank",
  "cloth",
  "garment",
  "shirt",
  "unprinted",
  "fabric",
  "substrate",
  "before",
]);
const PRINT_WORDS = new Set(["print", "printed", "ink", "inked", "after"]);

/** Which side a name says it is, and what is left of it without that word; null side where it says neither or both. */
export function sideOf(name: string): { readonly side: Side | null; readonly stem: string } {
  const words = name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
  const isBare = words.some((word) => BARE_WORDS.has(word));
  const isPrint = words.some((word) => PRINT_WORDS.has(word));
  const stem = words.filter((word) => !BARE_WORDS.has(word) && !PRINT_WORDS.has(word)).join(" ");
  return { side: isBare === isPrint ? null : isBare ? "bare" : "print", stem };
}

/** The first condition in which two samples differ, so that no change may be taken from them. */
export function unlikeIn(bare: ReadSample, print: ReadSample): ProposedPair["unlike"] {
  if (bare.geometry !== print.geometry) return "geometry";
  if (bare.spectrum !== null && print.spectrum !== null) return null;
  const hasColour = (sample: ReadSample) => sample.lab !== null || sample.tristimulus !== null;
  if (!hasColour(bare) || !hasColour(print)) return "kind";
  if (bare.light !== print.light) return "light";
  return bare.observer === print.observer ? null : "observer";
}

/** The pairs that names tell: within one stem, the first bare with the first print, where there are as many of each. */
function fromNames(samples: readonly ReadSample[]): [bare: number, print: number][] {
  const stems = new Map<string, { bare: number[]; print: number[] }>();
  for (const [index, { name }] of samples.entries()) {
    const { side, stem } = sideOf(name);
    if (side === null) continue;
    const group = stems.get(stem) ?? { bare: [], print: [] };
    stems.set(stem, group);
    group[side].push(index);
  }
  return [...stems.values()].flatMap(({ bare, print }) =>
    bare.length === print.length ? bare.map((place, i): [number, number] => [place, print[i] ?? place]) : [],
  );
}

/**
 * Pairs by the words in the names; where no name says which side it is, neighbours in order, the first of two as bare.
 * Where names speak but do not pair up evenly, the rest stays unpaired: order would then be a guess against the names.
 */
export function pairUp(samples: readonly ReadSample[]): PairProposal {
  const named = samples.some(({ name }) => sideOf(name).side !== null);
  let found: [bare: number, print: number][] = [];
  if (named) found = fromNames(samples);
  else if (samples.length % 2 === 0)
    found = samples.flatMap((_, i): [number, number][] => (i % 2 === 0 ? [[i, i + 1]] : []));
  const pairs = found.flatMap(([bare, print]): ProposedPair[] => {
    const [one, other] = [samples[bare], samples[print]];
    if (one === undefined || other === undefined) return [];
    return [{ bare, print, from: named ? "names" : "order", unlike: unlikeIn(one, other) }];
  });
  pairs.sort((one, other) => one.bare - other.bare);
  const used = new Set(pairs.flatMap(({ bare, print }) => [bare, print]));
  return { pairs, unpaired: samples.flatMap((_, i) => (used.has(i) ? [] : [i])) };
}
