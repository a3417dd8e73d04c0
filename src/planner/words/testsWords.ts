/** The words of the bench form and the record book: ways to read, grades by eye, verdicts, what is still missing. */
import { GREY_SCALE_GRADES } from "../../job/greyScaleGrades.ts";
import type { Problem } from "../../job/problem.ts";
import type { ReadingWay } from "../../job/recordBook/benchForm.ts";
import type { Readings, TestPrint } from "../../job/recordDocument.ts";
import { viewingWords } from "./garmentWords.ts";

interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

export const READING_WAYS: readonly Option<ReadingWay>[] = [
  { value: "pairs", label: "Pair by pair" },
  { value: "mean", label: "Mean of several pairs" },
  { value: "by-eye", label: "By eye" },
  { value: "file", label: "From a file" },
];

export const VERDICTS: readonly Option<TestPrint["verdict"]>[] = [
  { value: "none", label: "neither" },
  { value: "reference", label: "keep as reference" },
  { value: "rejected", label: "rejected" },
];

export const DIRECTIONS: readonly Option<"darker" | "lighter">[] = [
  { value: "darker", label: "darker" },
  { value: "lighter", label: "lighter" },
];

/** "4-5", as the grey scale writes its half steps. */
export function gradeWords(grade: number): string {
  return Number.isInteger(grade) ? String(grade) : `${Math.floor(grade)}-${Math.ceil(grade)}`;
}

export const GRADES: readonly { readonly grade: number; readonly words: string }[] = GREY_SCALE_GRADES.map(
  (grade) => ({ grade, words: gradeWords(grade) }),
);

const MISSING: Readonly<Record<string, string>> = {
  garmentLotId: "the garment lot",
  recipe: "the mix",
  setUpId: "the set-up",
  illuminant: "the light",
  observer: "the observer",
  geometry: "the geometry",
  pairs: "a whole pair of readings",
  mean: "the mean pair",
  pairCount: "how many pairs the mean is of",
  grade: "the grade",
  direction: "whether it is darker or lighter",
  file: "a file with readings",
  printedAt: "when it was printed",
  readAt: "when it was read",
  operator: "who read it",
};

/** "Still missing: the mix, when it was printed." Null where nothing is. */
export function missingSentence(problems: readonly Problem[]): string | null {
  const lacking = problems.flatMap(({ code, where, values }) => {
    if (code !== "bench-missing") return [];
    return where === "pair"
      ? [`the rest of pair ${values?.pair ?? ""}`]
      : MISSING[where] === undefined
        ? []
        : [MISSING[where]];
  });
  const others = problems.filter(({ code }) => code !== "bench-missing");
  if (lacking.length > 0) return `Still missing: ${lacking.join(", ")}.`;
  return others.length === 0
    ? null
    : `This cannot be kept as it is typed: ${others.map(({ where }) => where).join(", ")}.`;
}

/** How long a print rested: "40 min", "18 h", "3 days". */
export function restWords(hours: number): string {
  if (!Number.isFinite(hours)) return "unknown";
  if (hours === 0) return "0";
  if (hours < 1) return `${Math.round(hours * 60)}\u00a0min`;
  if (hours < 96) return `${Number(hours.toFixed(hours < 10 ? 1 : 0))}\u00a0h`;
  return `${Math.round(hours / 24)} days`;
}

export function washWords(count: number): string {
  return count === 0 ? "not washed" : count === 1 ? "after 1 wash" : `after ${count} washes`;
}

/** What was read, and how: "5 pairs, D65/10°"; "by eye under D65". */
export function readingsWords(readings: Readings): string {
  if (readings.kind === "by-eye") {
    const people = readings.observerCount === 1 ? "" : `, ${readings.observerCount} people`;
    return `by eye under ${readings.light}${people}`;
  }
  const count = readings.kind === "lab" ? readings.pairCount : readings.pairs.length;
  const under = readings.kind === "lab" ? viewingWords(readings.viewing) : "spectra";
  return `${count} ${count === 1 ? "pair" : "pairs"}, ${under}`;
}

/** What an eye saw: "grade 3, darker". */
export function byEyeWords({
  grade,
  direction,
}: {
  readonly grade: number;
  readonly direction: string;
}): string {
  return grade === 5 ? "grade 5, no change" : `grade ${gradeWords(grade)}, ${direction}`;
}
