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
  quantities: "size",
  garmentLots: "garment",
  blend: "fibre",
  testPrints: "test print",
  approvals: "approval",
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

type Sentence = (place: string, detail: string | undefined) => string;

const SENTENCES: Readonly<Record<string, Sentence>> = {
  "not-json": () => "This is not a Tonebench job: the file is damaged, cut short or of another kind.",
  "not-an-archive": () => "This is not a Tonebench job: the file does not say that it is one.",
  "no-version": () => "The file does not say which version of Tonebench wrote it.",
  "newer-version": (_place, detail) =>
    `This was written by a newer Tonebench (file version ${detail ?? "unknown"}). Update Tonebench, then open it again.`,
  "not-a-record": (place) => `What is stored for ${place} is not in a form that Tonebench wrote.`,
  "missing-field": (place) => `A field is missing: ${place}.`,
  "unknown-field": (place, detail) =>
    `There is a field that Tonebench does not know in ${place}: ${detail ?? ""}.`,
  "wrong-type": (place, detail) => `The value is of the wrong kind in ${place}${expected(detail)}.`,
  "wrong-value": (place) => `The value cannot be used in ${place}.`,
  "wrong-form": (place, detail) => `The value is not written as it has to be in ${place}${expected(detail)}.`,
  "out-of-range": (place, detail) => `The value is out of range in ${place}${expected(detail)}.`,
  "not-a-choice": (place, detail) => `The value is none of the allowed ones in ${place}${expected(detail)}.`,
  "blend-sum": (place) => `The fibres do not sum to 100 % in ${place}.`,
  "mix-sum": (place) => `The parts of the mix do not sum to 100 % in ${place}.`,
  "missing-reference": (place) => `Something is named that is not in the file: ${place}.`,
  "removed-from-shelf": (place) => `Something was removed from the shelf that is used here: ${place}.`,
  "repeated-id": (place) => `Two entries have the same id: ${place}.`,
  "kept-own": (place, detail) =>
    `The file says something else than your shop's own entry in ${place}${detail ? `, ${detail}` : ""}. Yours was kept.`,
  "second-reference-clear": (place) =>
    `A second clear came in as the reference of all strengths: ${place}. Keep one of them as the reference.`,
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
  return sentence === undefined ? `${problem.code}: ${place}.` : sentence(place, problem.detail);
}
