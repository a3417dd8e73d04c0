/** What a reading says: expected against found, what it teaches, what looks wrong with it. */

import type { Suspicion } from "../../core/evidence/suspicious.ts";
import type { Expected, RecordFinding } from "../../engine/recordFinding.ts";
import { chanceWords, changeWords, rangeWords } from "./predictionSentences.ts";
import { gradeWords } from "./testsWords.ts";

/** Less than this part of what was unknown is next to nothing: a navy cotton's clear takes away a tenth. Invented. */
const NEXT_TO_NOTHING = 0.15;
/** L* per ln of wet-out: below it twice the wet-out moves a print by half a unit at most. Invented. */
const FLAT_SLOPE = 0.7;
/** Less than this is little. Invented. */
const LITTLE = 0.5;

/** "3.6 darker, 1.5 to 9.6 in nine of ten". */
export function expectedWords(expected: Expected): string {
  return `${changeWords(expected.deltaL)}, ${rangeWords(expected)} in nine of ten`;
}

/** What was found against it, for an instrument's change of L*. */
export function residualSentence(foundDeltaL: number, expected: Expected): string {
  const off = foundDeltaL - expected.deltaL;
  const isInside = foundDeltaL >= expected.deltaL5 && foundDeltaL <= expected.deltaL95;
  if (Math.abs(off) < 0.05) return "That is what was expected.";
  const than = `${Math.abs(off).toFixed(1)} ${off < 0 ? "darker" : "lighter"} than expected`;
  const factor = foundDeltaL / expected.deltaL;
  const times =
    factor > 0 && Math.abs(expected.deltaL) >= 0.5 && (factor >= 1.2 || factor <= 0.8)
      ? `, ${factor.toFixed(1)} times the change`
      : "";
  return isInside
    ? `${than}${times}: inside what nine in ten prints would do.`
    : `${than}${times}: outside what nine in ten prints would do.`;
}

/** The same for an eye's step. */
export function byEyeResidualSentence(grade: number, expected: Expected): string {
  return `Seen as grade ${gradeWords(grade)}; the middle of what is expected is grade ${expected.greyScaleGrade}.`;
}

const partWords = (cut: number) => (cut >= 0.995 ? "all" : chanceWords(cut));

/** Almost nothing, little, or what part: of wet-out, of the tint. */
function taughtSentence(cut: number, of: string, why: string): string {
  if (cut < NEXT_TO_NOTHING) return `It teaches almost nothing about ${of}${why}.`;
  const part = `${partWords(cut)} of what is unknown about ${of}`;
  return cut < LITTLE
    ? `It teaches little about ${of}: it takes away ${partWords(cut)} of what is unknown.`
    : `It takes away ${part}.`;
}

/** What the reading teaches about this garment, and what it does not. */
export function teachingSentences(finding: RecordFinding): string[] {
  const { wetOutCut, tintCut, slopePerLnWetOut, expected } = finding;
  if (wetOutCut === null) return ["A washed print teaches durability; it moves no prediction."];
  const why =
    slopePerLnWetOut < FLAT_SLOPE
      ? ": on this cloth the change hardly depends on it"
      : expected.evidence === "this lot"
        ? ": other prints of this lot have taught it"
        : "";
  const sentences = [taughtSentence(wetOutCut, "wet-out on this garment", why)];
  if (tintCut !== null) sentences.push(taughtSentence(tintCut, "the strength of the tint", ""));
  return sentences;
}

const SLIPS: Readonly<Record<NonNullable<Suspicion["slip"]>, string>> = {
  "tint-times-ten": "With a tenth of the tint it would fit: was the point in the wrong place?",
  "swapped-pair": "With bare cloth and print the other way round it would fit: are they swapped?",
  "other-light":
    "Under another light setting (D50/2° for D65/10°, or the reverse) it would fit: check the instrument.",
};

/** What looks wrong with a record, in one or two sentences. */
export function suspicionSentence({ residualSd, slip, bareStandsOut, tintStandsOut }: Suspicion): string {
  const what = bareStandsOut
    ? "Its bare reading is unlike the lot's others"
    : tintStandsOut
      ? "Its tint is far above that of the shop's other prints"
      : "It is unlike what all other prints lead to expect";
  const far = `${what}, by ${residualSd.toFixed(1)} standard deviations.`;
  return slip === null ? `${far} No slip explains it.` : `${far} ${SLIPS[slip]}`;
}

/** The slip in two or three words, for a list. */
export const SLIP_WORDS: Readonly<Record<NonNullable<Suspicion["slip"]>, string>> = {
  "tint-times-ten": "tint ten times too high?",
  "swapped-pair": "bare and print swapped?",
  "other-light": "another light?",
};
