/** What is typed on the bench form so far, and what it begins with: the last values of the shop, never a reading. */
import type { GeometryDocument, LabDocument, ViewingDocument } from "../colourDocument.ts";
import type { MeasuredReadings } from "../readingMeans.ts";
import type { Recipe } from "../recipeParts.ts";
import type { Readings, TestPrint } from "../recordDocument.ts";
import { standing } from "../standing.ts";

/** How the readings come in: pair by pair, as one mean pair, judged by eye, or from a file. */
export type ReadingWay = "pairs" | "mean" | "by-eye" | "file";

export type TypedLab = { readonly [Axis in keyof LabDocument]: number | null };
export interface TypedPair {
  readonly bare: TypedLab;
  readonly print: TypedLab;
}

type ByEye = Extract<Readings, { readonly kind: "by-eye" }>;

export interface BenchForm
  extends Pick<
    TestPrint,
    | "actualGrams"
    | "depositGsm"
    | "halftoneFraction"
    | "smoothed"
    | "cure"
    | "operator"
    | "instrument"
    | "backing"
    | "washCount"
    | "verdict"
    | "note"
    | "photo"
    | "supersedesId"
  > {
  readonly garmentLotId: string | null;
  readonly recipe: Recipe | null;
  readonly setUpId: string | null;
  readonly printedAt: string | null;
  readonly readAt: string | null;
  readonly way: ReadingWay;
  /** Always asked: the shop's own setting is offered where it was entered or used before. */
  readonly illuminant: ViewingDocument["illuminant"] | null;
  readonly observer: ViewingDocument["observer"] | null;
  readonly geometry: GeometryDocument | null;
  readonly pairs: readonly TypedPair[];
  readonly mean: {
    readonly pair: TypedPair;
    readonly pairCount: number | null;
    readonly sdPairDifference: number | null;
  };
  readonly byEye: Omit<ByEye, "kind" | "grade" | "direction"> & {
    readonly grade: number | null;
    readonly direction: ByEye["direction"] | null;
  };
  readonly fromFile: MeasuredReadings | null;
  /** Garments that the readings were spread over. */
  readonly pieceCount: number;
  /** The record whose print is read again; its cloth, ink, screen and hour then stand as they are. */
  readonly readsAgainId: string | null;
}

export const EMPTY_LAB: TypedLab = { L: null, a: null, b: null };
export const EMPTY_PAIR: TypedPair = { bare: EMPTY_LAB, print: EMPTY_LAB };

/** What the shop used last, offered again; the instrument's setting is the shop's where nothing was recorded yet. */
export interface LastUsed {
  readonly prints: readonly TestPrint[];
  readonly instrument: { readonly viewing: ViewingDocument; readonly geometry: GeometryDocument };
}

/** A form without readings: set-up, cure, instrument and backing as of the latest record of the book. */
export function newBenchForm({ prints, instrument }: LastUsed): BenchForm {
  const last = standing(prints).at(-1);
  const measured = standing(prints).findLast((print) => print.readings.kind !== "by-eye");
  const eye = standing(prints).findLast((print) => print.readings.kind === "by-eye");
  const viewing = measured?.readings.kind === "lab" ? measured.readings.viewing : instrument.viewing;
  const light = eye?.readings.kind === "by-eye" ? eye.readings.light : instrument.viewing.illuminant;
  return {
    garmentLotId: null,
    recipe: null,
    actualGrams: null,
    setUpId: last?.setUpId ?? null,
    depositGsm: null,
    halftoneFraction: 1,
    smoothed: false,
    cure: last?.cure ?? { filmCelsius: null, seconds: null },
    printedAt: null,
    readAt: null,
    operator: last?.operator ?? "",
    way: last?.readings.kind === "by-eye" ? "by-eye" : "pairs",
    ...viewing,
    geometry:
      measured !== undefined && measured.readings.kind !== "by-eye"
        ? measured.readings.geometry
        : instrument.geometry,
    pairs: [EMPTY_PAIR],
    mean: { pair: EMPTY_PAIR, pairCount: null, sdPairDifference: null },
    byEye: { grade: null, direction: null, light, observerCount: 1 },
    fromFile: null,
    pieceCount: 1,
    instrument: measured?.instrument ?? "",
    backing: last?.backing ?? "",
    washCount: 0,
    verdict: "none",
    note: "",
    photo: null,
    supersedesId: null,
    readsAgainId: null,
  };
}

/** What a record says of its readings, as the form shows it. */
function typedReadings({ readings }: TestPrint, empty: BenchForm): Partial<BenchForm> {
  if (readings.kind === "by-eye") {
    const { grade, direction, light, observerCount } = readings;
    return { way: "by-eye", byEye: { grade, direction, light, observerCount } };
  }
  const { geometry, pieceCount } = readings;
  if (readings.kind === "spectral") return { way: "file", fromFile: readings, geometry, pieceCount };
  const { viewing, pairs, pairCount, sdPairDifference } = readings;
  const [pair] = pairs;
  const isMean = pairs.length === 1 && pair !== undefined && pairCount > 1;
  return {
    ...viewing,
    geometry,
    pieceCount,
    way: isMean ? "mean" : "pairs",
    pairs: isMean ? empty.pairs : pairs,
    mean: isMean ? { pair, pairCount, sdPairDifference } : empty.mean,
  };
}

/** What a print is, whoever reads it: cloth, ink, screen, hour. */
function printedFields(print: TestPrint): Partial<BenchForm> {
  const { garmentLotId, recipe, actualGrams, setUpId, depositGsm, halftoneFraction, smoothed } = print;
  const { cure, printedAt } = print;
  return {
    garmentLotId,
    recipe,
    actualGrams,
    setUpId,
    depositGsm,
    halftoneFraction,
    smoothed,
    cure,
    printedAt,
  };
}

/** The whole record again, to be corrected: what is kept of it supersedes it. */
export function correctionForm(print: TestPrint, last: LastUsed): BenchForm {
  const empty = newBenchForm(last);
  const { readAt, operator, instrument, backing, washCount, verdict, note, photo } = print;
  return {
    ...empty,
    ...printedFields(print),
    ...typedReadings(print, empty),
    readAt,
    operator,
    instrument,
    backing,
    washCount,
    verdict,
    note,
    photo,
    supersedesId: print.id,
  };
}

/** The same print to be read again: after a day, after a wash. Readings, time and verdict are open. */
export function readAgainForm(print: TestPrint, last: LastUsed): BenchForm {
  const empty = newBenchForm(last);
  const { readings, operator, instrument, backing, washCount } = print;
  const same = typedReadings(print, empty);
  return {
    ...empty,
    ...printedFields(print),
    ...same,
    pairs: [EMPTY_PAIR],
    mean: { ...empty.mean, pairCount: null },
    byEye: { ...empty.byEye, ...(readings.kind === "by-eye" ? { light: readings.light } : {}) },
    fromFile: null,
    operator,
    instrument,
    backing,
    washCount,
    readsAgainId: print.id,
  };
}

/** The next print of a row: everything offered again but the garment, its readings, what was weighed, photo and note. */
export function nextForm(form: BenchForm): BenchForm {
  return {
    ...form,
    garmentLotId: null,
    actualGrams: null,
    depositGsm: null,
    pairs: [EMPTY_PAIR],
    mean: { pair: EMPTY_PAIR, pairCount: form.mean.pairCount, sdPairDifference: null },
    byEye: { ...form.byEye, grade: null, direction: null },
    fromFile: null,
    washCount: 0,
    verdict: "none",
    note: "",
    photo: null,
    supersedesId: null,
    readsAgainId: null,
  };
}
