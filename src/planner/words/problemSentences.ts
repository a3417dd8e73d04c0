/** The sentences for problem codes: what is wrong, and where. */
import type { Problem } from "../../job/problem.ts";

/** Names of the lists and fields as a printer knows them; a field that is not here is shown as it is written. */
const FIELD_NAMES: Readonly<Record<string, string>> = {
  job: "the job",
  library: "the shop's library",
  shelf: "the shelf",
  lines: "garment line",
  places: "print place",
  candidates: "mix column",
  mixes: "mix",
  recipe: "component",
  choices: "choice",
  checklist: "checklist entry",
  pressLog: "press log entry",
  quantities: "size",
  garmentLots: "garment",
  blend: "fibre",
  testPrints: "test print",
  approvals: "approval",
  goodsInChecks: "goods-in check",
  slipAnswers: "answer about a record",
  pots: "pot",
  dilutions: "master's weigh sheet",
  potEntries: "pot entry",
  lots: "lot",
  actualGrams: "weighed component",
  baseLots: "lot in the pot",
  bases: "base",
  colourants: "colourant",
  masters: "master",
  meshes: "mesh",
  squeegees: "squeegee",
  setUps: "set-up",
  readings: "reading",
  pairs: "pair of readings",
};

/** A path in words: "job.lines[3].piecePrice" reads "garment line 4, piecePrice (job.lines[3].piecePrice)". */
export function placeInWords(where: string): string {
  if (where === "") return "the file";
  const words: string[] = [];
  for (const [, field = "", index] of where.matchAll(/([^.[\]]+)(?:\[(\d+)\])?/g)) {
    const known = FIELD_NAMES[field] ?? field;
    words.push(index === undefined ? known : `${known} ${Number(index) + 1}`);
  }
  const inside = words.length > 1 ? words.filter((word) => !word.startsWith("the ")) : words;
  const shown = inside.length > 0 ? inside : words.slice(-1);
  const text = shown.join(", ");
  return text === where ? text : `${text} (${where})`;
}

type Sentence = (place: string, problem: Pick<Problem, "detail" | "values">) => string;

function named(values: Problem["values"]): string {
  const name = values?.name;
  return name === undefined || name === "" ? "without a name" : String(name);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A fraction as percent, with no more digits than it has. */
function percent(fraction: string | number | undefined): string {
  return typeof fraction === "number" ? `${Number((fraction * 100).toFixed(3))} %` : "an unknown part";
}

const SENTENCES: Readonly<Record<string, Sentence>> = {
  "not-json": () => "This is not a Tonebench job: the file is damaged, cut short or of another kind.",
  "not-an-archive": () => "This is not a Tonebench job: the file does not say that it is one.",
  "no-version": () => "The file does not say which version of Tonebench wrote it.",
  "newer-version": (_place, { detail }) =>
    `This was written by a newer Tonebench (file version ${detail ?? "unknown"}). Update Tonebench, then open it again.`,
  "not-a-record": (place) => `What is stored for ${place} is not in a form that Tonebench wrote.`,
  "missing-field": (place) => `A field is missing: ${place}.`,
  "unknown-field": (place, { detail }) =>
    `There is a field that Tonebench does not know in ${place}: ${detail ?? ""}.`,
  "wrong-type": (place, { detail }) => `The value is of the wrong kind in ${place}${expected(detail)}.`,
  "wrong-value": (place) => `The value cannot be used in ${place}.`,
  "wrong-form": (place, { detail }) =>
    `The value is not written as it has to be in ${place}${expected(detail)}.`,
  "out-of-range": (place, { detail }) => `The value is out of range in ${place}${expected(detail)}.`,
  "not-a-choice": (place, { detail }) =>
    `The value is none of the allowed ones in ${place}${expected(detail)}.`,
  "blend-sum": (place) => `The fibres do not sum to 100 % in ${place}.`,
  "mix-sum": (place) => `The parts of the mix do not sum to 100 % in ${place}.`,
  "not-heavier": (place) => `A piece is not heavier after printing than before: ${place}.`,
  "pair-count": (place) =>
    `There are more pairs of readings than one, but not as many as were said to be read: ${place}.`,
  "more-pieces-than-pairs": (place) =>
    `There are more pieces than pairs of readings that were read on them: ${place}.`,
  "repeated-line": (place) => `A weigh sheet has the same line twice: ${place}.`,
  "no-grams": (place) => `Nothing has any weight: ${place}.`,
  "missing-reference": (place) => `Something is named that is not in the file: ${place}.`,
  "component-missing": (place) => `An ink that was removed from the shelf is used here: ${place}.`,
  "set-up-missing": (place) => `A set-up that was removed from the shelf is used here: ${place}.`,
  "mesh-missing": (place) => `The set-up's mesh is not on the shelf: ${place}.`,
  "squeegee-missing": (place) => `The set-up's squeegee is not on the shelf: ${place}.`,
  "mesh-without-opening": (place, { values }) =>
    `The mesh ${named(values)} has no opening: its threads fill the whole width (${place}).`,
  "above-data-sheet-limit": (_place, { values }) =>
    `${capital(named(values))} is ${percent(values?.massFraction)} of the mix; its data sheet allows ${percent(values?.largestFraction)}.`,
  "no-base": () => "The mix has no base: nothing in it wets the cloth.",
  "colourant-without-strength": (_place, { values }) =>
    `${capital(named(values))} has no strength on the shelf, so its tint cannot be predicted.`,
  "masstone-impossible": (_place, { values }) =>
    `The masstone of ${named(values)} is not a colour that an opaque layer can have.`,
  "white-not-ready-made": (_place, { values }) =>
    `${capital(named(values))} is not a ready-made ink; only a ready-made white can be predicted.`,
  "colour-no-cloth-has": (place) => `No cloth can have the colour that was entered: ${place}.`,
  "colour-at-the-limit": (place) =>
    `The colour that was entered is too close to the limit of what cloth can have: ${place}.`,
  "repeated-component": (place) => `The same ink is in the mix twice: ${place}.`,
  "repeated-choice": (place) => `There is a second choice for the same garment and print place: ${place}.`,
  "choice-not-printed": (place) => `A choice is for a garment that is not printed at its place: ${place}.`,
  "used-by-mix": (_place, { values }) => `The mix ${named(values)} uses it.`,
  "used-by-master": (_place, { values }) => `A master of ${named(values)} uses it.`,
  "used-by-set-up": (_place, { values }) => `The set-up ${named(values)} uses it.`,
  "used-by-candidate": (_place, { values }) => `The matrix prints ${named(values)} with it.`,
  "used-by-other-job": (_place, { values }) => `The job ${named(values)} uses it.`,
  "used-by-pot": (_place, { values }) => `A pot of ${named(values)} was mixed with it.`,
  "used-by-dilution": (_place, { values }) =>
    `A master made on ${String(values?.name ?? "") || "an unknown day"} was mixed with it.`,
  "used-by-goods-in-check": (_place, { values }) =>
    `A goods-in check of ${String(values?.name ?? "").slice(0, 10) || "an unknown day"} used it.`,
  "used-by-test-print": (_place, { values }) =>
    `A test print of ${String(values?.name ?? "").slice(0, 10) || "an unknown day"} uses it.`,
  "repeated-id": (place) => `Two entries have the same id: ${place}.`,
  "kept-own": (place, { detail }) =>
    `The file says something else than your shop's own entry in ${place}${detail ? `, ${detail}` : ""}. Yours was kept.`,
  "second-reference-clear": (_place, { values }) =>
    `${capital(named(values))} was the reference of all strengths in the file; it came in as an ordinary base, and your own reference stays.`,
  "changed-elsewhere": () =>
    "Another tab saved this in the meantime. Nothing was written over; reload to see what it saved.",
};

function expected(detail: string | undefined): string {
  return detail === undefined ? "" : `; expected: ${detail}`;
}

/** Every code that has a sentence of its own. */
export const KNOWN_PROBLEM_CODES: readonly string[] = Object.keys(SENTENCES);

/** What is wrong and where, in one sentence. An unknown code is said as it is, never swallowed. */
export function sentenceForProblem(problem: Problem): string {
  const place = placeInWords(problem.where);
  const sentence = SENTENCES[problem.code];
  return sentence === undefined ? `${problem.code}: ${place}.` : sentence(place, problem);
}
