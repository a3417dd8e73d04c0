/** What is said at the press: the verdict on a first-off, what to do about a pull and why, what was changed. */
import type { FirstOffVerdict } from "../../core/planning/decisions/firstOff.ts";
import type { PulledPoint, RunSignal } from "../../core/planning/decisions/runRule.ts";
import type { LineBand } from "../../job/approvedReference.ts";
import { halfInterval95 } from "../../job/press/firstOffReading.ts";
import type { PressAction } from "../../job/press/pressRun.ts";
import type { PullChange } from "../../job/press/pullForm.ts";
import type { PressReadings } from "../../job/pressDocument.ts";
import { pieces } from "./pieceWords.ts";
import { chanceWords } from "./predictionSentences.ts";
import { byEyeWords } from "./testsWords.ts";

interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

const pairsWords = (count: number, more = "") => `${count} ${more}${count === 1 ? "pair" : "pairs"}`;

/** The word that stands large beside a first-off. */
export function verdictWords({
  action,
  readMoreCount,
}: Pick<FirstOffVerdict, "action" | "readMoreCount">): string {
  switch (action) {
    case "run":
      return "Run";
    case "adjust":
      return "Adjust";
    case "stop":
      return "Stop";
    case "read-more":
      return readMoreCount === 0
        ? "Read it with the instrument"
        : `Read ${pairsWords(readMoreCount, "more ")}`;
  }
}

/** "4.9 too dark", "0.4 on the light side": where the mean lies against the middle of the band. */
export function offsetWords(offset: number, tolerance: number): string {
  const size = Math.abs(offset).toFixed(1);
  if (Math.abs(offset) > tolerance) return `${size} ${offset < 0 ? "too dark" : "too light"}`;
  if (Math.abs(offset) < 0.05) return "in the middle";
  return `${size} on the ${offset < 0 ? "dark" : "light"} side`;
}

/** The chance asked for before a run, as `DEFAULT_FIRST_OFF_RULE` has it. */
const ASKED = "95\u00a0%";

/** Why, in words. */
export function reasonWords(verdict: FirstOffVerdict, tolerance: number): string {
  const chance = chanceWords(verdict.conformanceProbability);
  const off = offsetWords(verdict.offset, tolerance);
  const isEye = verdict.action === "read-more" && verdict.readMoreCount === 0;
  if (isEye) {
    return `An eye alone cannot tell: the chance that it is in the target is ${chance}, and ${ASKED} is asked before a run.`;
  }
  switch (verdict.reason) {
    case "in-band-surely":
      return `It is ${off} of the target, and in it with a chance of ${chance}; ${ASKED} is asked before a run.`;
    case "near-limit":
      return `It is too near the limit to tell: in the target with a chance of ${chance}. If the mean stays, so many more pairs decide it, on further pieces.`;
    case "band-narrower-than-noise":
      return "So few readings could not show it even in the middle of the target. If the mean stays, so many more pairs do, on further pieces.";
    case "on-limit":
      return `It is ${off}, so near the limit that no sensible number of pairs would decide it. Bring it nearer to the middle and read again.`;
    case "out-of-band":
      return `It is ${off}: surely out of the target, by little. Pressure, blade or strokes may bring it back; read again.`;
    case "far-out-of-band":
      return `It is ${off}, further than pressure, blade or strokes bring back. Do not print on: see what can be changed.`;
  }
}

/** "7.9 darker, 95 % between 7.4 and 8.4". */
export function intervalWords({ mean, interval }: Pick<FirstOffVerdict, "mean" | "interval">): string {
  const [near, far] = mean < 0 ? [interval.upper, interval.lower] : [interval.lower, interval.upper];
  const figure = (value: number) => {
    const size = Math.abs(value).toFixed(1);
    const crosses = Math.sign(value) !== Math.sign(mean) && size !== "0.0";
    return crosses ? `${size} ${value < 0 ? "darker" : "lighter"}` : size;
  };
  return `95\u00a0% between ${figure(near)} and ${figure(far)}`;
}

/** What the guard band takes off, or that it takes all. */
export function guardWords({ guardBand }: Pick<FirstOffVerdict, "guardBand">): string {
  return guardBand === null
    ? "With these readings no mean could be passed: the guard band takes up the whole target."
    : `Guard band ${guardBand.toFixed(1)} at each limit: what the readings may be off by.`;
}

/** Of an entry that was kept. */
export const ACTION_WORDS: Readonly<Record<PressAction, string>> = {
  run: "Run",
  look: "Look for the cause",
  adjust: "Adjust",
  stop: "Stop",
  "read-more": "Read more",
  "first-off": "Take a first-off",
};

/** The same in one or two words, under a point of the chart. */
export const ACTION_MARKS: Readonly<Record<PressAction, string>> = {
  run: "run",
  look: "look",
  adjust: "adjust",
  stop: "stop",
  "read-more": "read more",
  "first-off": "first-off",
};

export const PULL_SENTENCES: Readonly<Record<PulledPoint["action"], string>> = {
  run: "Print on: the run stands where it stood.",
  look: "It is still in the target, but it has moved: look for what changed before you print on.",
  adjust: "It is no longer surely in the target: bring it back before you print on.",
  stop: "It is rather out of the target than in it: stop, set aside what was printed since the last good pull.",
  "first-off": "Another lot or pot may print otherwise: read this one as a first-off before the run goes on.",
};

const SIGNALS: Readonly<Record<RunSignal, string>> = {
  "one-beyond-3-sd": "this pull is further from the level than readings scatter (3 standard deviations)",
  "two-of-three-beyond-2-sd": "two of the last three are 2 standard deviations off on one side",
  "four-of-five-beyond-1-sd": "four of the last five are 1 standard deviation off on one side",
  "eight-on-one-side": "the last eight are all on one side of the level",
};

/** "Moved: two of the last three …". Null where nothing was seen. */
export function signalSentence(signals: readonly RunSignal[]): string | null {
  return signals.length === 0
    ? null
    : `It has moved: ${signals.map((signal) => SIGNALS[signal]).join("; ")}.`;
}

export const CHANGES: readonly Option<PullChange>[] = [
  { value: "none", label: "nothing" },
  { value: "lot", label: "another lot" },
  { value: "pot", label: "another pot" },
  { value: "shift", label: "another shift" },
  { value: "restart", label: "a restart" },
  { value: "recovery", label: "a change to recover" },
];

/** For a mark in the chart or the log; empty where nothing was changed. */
export function changeMark(change: PullChange): string {
  const words: Readonly<Record<PullChange, string>> = {
    none: "",
    lot: "new lot",
    pot: "new pot",
    shift: "new shift",
    restart: "restart",
    recovery: "recovered",
  };
  return words[change];
}

/** "6 pairs on 3 pieces", "by eye, grade 2, darker". */
export function pressReadingsWords(readings: PressReadings): string {
  if (readings.kind === "by-eye") return `by eye, ${byEyeWords(readings)}`;
  const count = readings.kind === "pairs" ? readings.deltaL.length : readings.pairCount;
  const { pieceCount } = readings;
  return `${pairsWords(count)} on ${pieces(pieceCount)}`;
}

/** "± 0.4": how far a mean may be off, in 95 of 100. */
export function plusMinusWords(standardUncertainty: number): string {
  return `± ${halfInterval95(standardUncertainty).toFixed(1)}`;
}

const NOT_FOLLOWED: Readonly<Record<NonNullable<LineBand["notFollowed"]>, string>> = {
  "by-eye": "it was judged by eye, and a grade is no change of L*",
  "other-light": "it was read under another light",
  "other-direction": "it changes the cloth the other way",
};

/** Where the band comes from. `approvedName` is the garment of the approved print. */
export function bandSourceWords({ follows, notFollowed }: LineBand, approvedName: string): string {
  if (follows !== null) {
    const what = follows.approval === null ? "the reference print" : "the approved print";
    return `as ${what} of ${approvedName}`;
  }
  return notFollowed === null
    ? "the target of the place"
    : `the target of the place; the approved print is not followed: ${NOT_FOLLOWED[notFollowed]}`;
}

export const OTHER_LIGHT =
  "This was read under another light or observer than the target is for. They are never compared: set the instrument, or record it in the Tests view.";

export const NO_TOLERANCE = "The target of this place has no tolerance: nothing that is read can be judged.";

/** Shown where the work happens. */
export const FIRST_OFF_STEPS: readonly string[] = [
  "Take it after warm-up: platens warm over the first 20 to 50 pieces and deepen the print (from memory, no source).",
  "Cure it as the run will be cured, to the ink maker's data sheet, and let it cool: warm cloth reads differently.",
  "Read bare cloth and print side by side on one piece, on several pieces.",
];

export const PRESS_CAUTIONS: readonly string[] = [
  "Dryers, flashes and heat presses burn: keep guards on, gloves at the exit, and let pieces cool before you handle them.",
  "Heat makes polyester bleed, shrink, glaze or scorch. Ventilate, and follow the safety data sheets.",
  "Second person: who printed it does not pass it (common practice, no source).",
];
