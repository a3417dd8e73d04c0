/** From the bench form to a record: what is still missing, or the test print as it is appended. */

import type { BenchDraft } from "../benchChecks.ts";
import type { LabDocument } from "../colourDocument.ts";
import type { Problem } from "../problem.ts";
import { type Readings, readingsSchema, type TestPrint, testPrintSchema } from "../recordDocument.ts";
import type { BenchForm, TypedLab, TypedPair } from "./benchForm.ts";

export type FormReadings =
  | { readonly ok: true; readonly readings: Readings }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const missing = (where: string, values: Problem["values"] = {}): Problem => ({
  code: "bench-missing",
  where,
  values,
});

function wholeLab({ L, a, b }: TypedLab): LabDocument | null {
  return L === null || a === null || b === null ? null : { L, a, b };
}

function wholePair({ bare, print }: TypedPair): { bare: LabDocument; print: LabDocument } | null {
  const [cloth, ink] = [wholeLab(bare), wholeLab(print)];
  return cloth === null || ink === null ? null : { bare: cloth, print: ink };
}

const isUntouched = ({ bare, print }: TypedPair): boolean =>
  [bare, print].every(({ L, a, b }) => L === null && a === null && b === null);

/** The pairs that are typed whole, and whether one is begun and not whole. An untouched row at the end is no pair. */
function typedPairs(form: BenchForm): {
  whole: { bare: LabDocument; print: LabDocument }[];
  begun: number[];
} {
  const begun: number[] = [];
  const whole = form.pairs.flatMap((pair, index) => {
    const found = wholePair(pair);
    if (found === null && !isUntouched(pair)) begun.push(index + 1);
    return found === null ? [] : [found];
  });
  return { whole, begun };
}

function labReadings(form: BenchForm, isDraft: boolean): FormReadings {
  const problems: Problem[] = [];
  const { illuminant, observer, geometry, pieceCount, mean } = form;
  if (illuminant === null) problems.push(missing("illuminant"));
  if (observer === null) problems.push(missing("observer"));
  if (geometry === null) problems.push(missing("geometry"));
  let pairs: { bare: LabDocument; print: LabDocument }[];
  let pairCount: number | null;
  if (form.way === "mean") {
    const pair = wholePair(mean.pair);
    pairs = pair === null ? [] : [pair];
    pairCount = mean.pairCount;
    if (pair === null) problems.push(missing("mean"));
    if (pairCount === null) problems.push(missing("pairCount"));
  } else {
    const { whole, begun } = typedPairs(form);
    pairs = whole;
    pairCount = whole.length;
    if (whole.length === 0) problems.push(missing("pairs"));
    else if (begun.length > 0 && !isDraft) problems.push(missing("pair", { pair: begun.join(", ") }));
  }
  if (problems.length > 0 || illuminant === null || observer === null || geometry === null)
    return { ok: false, problems };
  return {
    ok: true,
    readings: {
      kind: "lab",
      viewing: { illuminant, observer },
      geometry,
      pairs,
      pairCount: pairCount ?? pairs.length,
      pieceCount: Math.min(pieceCount, Math.max(1, pairCount ?? 1)),
      sdPairDifference: form.way === "mean" ? mean.sdPairDifference : null,
    },
  };
}

/** The readings of a form. A draft counts its whole pairs while another one is being typed. */
export function readingsOfForm(form: BenchForm, isDraft = false): FormReadings {
  if (form.way === "by-eye") {
    const { grade, direction, light, observerCount } = form.byEye;
    if (grade === null) return { ok: false, problems: [missing("grade")] };
    if (direction === null && grade < 5) return { ok: false, problems: [missing("direction")] };
    return {
      ok: true,
      readings: { kind: "by-eye", grade, direction: direction ?? "darker", light, observerCount },
    };
  }
  if (form.way === "file") {
    if (form.fromFile === null) return { ok: false, problems: [missing("file")] };
    return { ok: true, readings: { ...form.fromFile, pieceCount: form.pieceCount } };
  }
  return labReadings(form, isDraft);
}

/** The form as the live checks take it. */
export function draftOfForm(form: BenchForm): BenchDraft {
  const { garmentLotId, recipe, actualGrams, printedAt, readAt, washCount } = form;
  const read = readingsOfForm(form, true);
  const isKnown = read.ok && readingsSchema.safeParse(read.readings).success;
  return {
    garmentLotId,
    recipe: recipe === null ? null : [...recipe],
    actualGrams,
    printedAt,
    readAt,
    washCount,
    readings: isKnown ? read.readings : null,
  };
}

export type FormPrint =
  | { readonly ok: true; readonly print: TestPrint }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function printFrom(form: BenchForm, id: string, readings: Readings, times: readonly [string, string]) {
  const { garmentLotId, recipe, setUpId } = form;
  const [printedAt, readAt] = times;
  return {
    id,
    garmentLotId,
    recipe,
    actualGrams: form.actualGrams,
    setUpId,
    depositGsm: form.depositGsm,
    halftoneFraction: form.halftoneFraction,
    smoothed: form.smoothed,
    cure: form.cure,
    printedAt,
    readAt,
    operator: form.operator,
    readings,
    instrument: form.way === "by-eye" ? "" : form.instrument,
    backing: form.backing,
    washCount: form.washCount,
    verdict: form.verdict,
    note: form.note,
    photo: form.photo,
    supersedesId: form.supersedesId,
  };
}

/** The record that the form stands for, or what is missing, in the order of the form. */
export function printOfForm(form: BenchForm, id: string): FormPrint {
  const problems: Problem[] = [];
  if (form.garmentLotId === null) problems.push(missing("garmentLotId"));
  if (form.recipe === null) problems.push(missing("recipe"));
  if (form.setUpId === null) problems.push(missing("setUpId"));
  const read = readingsOfForm(form);
  if (!read.ok) problems.push(...read.problems);
  const { printedAt, readAt } = form;
  if (printedAt === null) problems.push(missing("printedAt"));
  if (readAt === null) problems.push(missing("readAt"));
  if (form.operator.trim() === "") problems.push(missing("operator"));
  if (!read.ok || printedAt === null || readAt === null || problems.length > 0)
    return { ok: false, problems };
  const parsed = testPrintSchema.safeParse(printFrom(form, id, read.readings, [printedAt, readAt]));
  if (parsed.success) return { ok: true, print: parsed.data };
  const where = parsed.error.issues.map((issue) => issue.path.join("."));
  return { ok: false, problems: where.map((path) => ({ code: "bench-not-storable", where: path })) };
}

/** Stands for a draft that has no id yet; never stored. */
export const DRAFT_ID = "00000000-0000-4000-8000-000000000000";

/** Stands for the times of a draft that nobody has typed yet; times only order readings, they enter no figure. */
const NO_TIME = "1970-01-01T00:00:00.000Z";

/** The print of a form whose readings are there but not all else yet: what the reading says can be told at once. */
export function draftPrint(form: BenchForm, id: string): TestPrint | null {
  const read = readingsOfForm(form, true);
  if (!read.ok) return null;
  const times = [form.printedAt ?? NO_TIME, form.readAt ?? form.printedAt ?? NO_TIME] as const;
  const parsed = testPrintSchema.safeParse(printFrom(form, id, read.readings, times));
  return parsed.success ? parsed.data : null;
}
