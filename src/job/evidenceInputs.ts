/** From the record book to what evidence learns from, with every record that cannot teach named and why. */

import type { Viewing } from "../core/colorimetry/viewing.ts";
import { DEFAULT_PRIOR_SCALES, type PriorScales } from "../core/evidence/priorScales.ts";
import type { EvidenceRecord, GoodsInRecord } from "../core/evidence/record.ts";
import { mixDensityGramsPerCm3 } from "../core/planning/ink/inkQuantity.ts";
import type { Application } from "../core/prediction/inputs.ts";
import { depositUmFromGsm } from "../core/screen/mesh.ts";
import { evidenceGarment, evidencePrint } from "./evidencePrints.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import type { Library } from "./libraryDocument.ts";
import { setUpOf } from "./lookup.ts";
import type { MixComponent } from "./mixDocument.ts";
import { applicationFor, applicationProblems, garmentFor, pouredInkFor } from "./predictionInputs.ts";
import type { Problem } from "./problem.ts";
import { readingMeans } from "./readingMeans.ts";
import { partsOf, type Recipe } from "./recipeParts.ts";
import type { GoodsInCheck, Readings, SlipAnswer, TestPrint } from "./recordDocument.ts";
import { recordedGarment } from "./recordedGarment.ts";
import type { Shelf } from "./shelfDocument.ts";
import { standing } from "./standing.ts";

/** A record that is in the book and does not teach. */
export interface LeftOut {
  readonly recordId: string;
  readonly problems: readonly Problem[];
}

export interface EvidenceInputs {
  /** Standing records that the model can take, washed ones with their count; those set aside are among them. */
  readonly records: readonly EvidenceRecord[];
  readonly goodsIn: readonly GoodsInRecord[];
  /** Ids that somebody set aside, and ids that somebody answered for: they teach whatever they look like. */
  readonly setAside: ReadonlySet<string>;
  readonly kept: ReadonlySet<string>;
  readonly scales: PriorScales;
  readonly leftOut: readonly LeftOut[];
}

/** Fractions of what was poured where that is known, else as wanted. */
export function printedRecipe({
  recipe,
  actualGrams,
}: Pick<TestPrint, "recipe" | "actualGrams">): MixComponent[] {
  if (actualGrams === null) return recipe;
  const total = actualGrams.reduce((sum, part) => sum + part.grams, 0);
  return actualGrams.map(({ itemId, grams }) => ({ itemId, massFraction: grams / total }));
}

/** The physical print of a record: its readings after an hour, a day or a wash name the same cloth, ink, screen and hour. */
export function printKeyOf(print: TestPrint): string {
  const { garmentLotId, setUpId, printedAt, halftoneFraction, smoothed } = print;
  const recipe = printedRecipe(print)
    .map(({ itemId, massFraction }) => `${itemId}=${massFraction.toFixed(9)}`)
    .sort()
    .join("+");
  return [garmentLotId, setUpId, printedAt, halftoneFraction, smoothed ? "smoothed" : "plain", recipe].join(
    " ",
  );
}

/** How a record's print got onto the cloth: by its own weighing where there is one, else as its set-up prints. */
function recordedApplication(
  print: TestPrint,
  recipe: Recipe,
  shelf: Shelf,
):
  | { readonly ok: true; readonly application: Application }
  | { readonly ok: false; readonly problems: Problem[] } {
  const { depositGsm, halftoneFraction, smoothed } = print;
  if (depositGsm !== null) {
    const parts = partsOf(recipe, shelf).map(({ item, massFraction }) => ({
      massFraction,
      densityGramsPerCm3: item.densityGramsPerCm3,
    }));
    const depositUm = depositUmFromGsm(depositGsm, mixDensityGramsPerCm3(parts));
    return { ok: true, application: { depositUm, depositWeighed: true, halftoneFraction, smoothed } };
  }
  const setUp = setUpOf(shelf, print.setUpId);
  if (setUp === null) {
    return { ok: false, problems: [{ code: "set-up-missing", where: "setUpId", detail: print.setUpId }] };
  }
  const problems = applicationProblems(setUp, shelf);
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, application: applicationFor(setUp, { halftoneFraction, smoothed }, shelf) };
}

/** The answers that count: the latest of each record, in the order of the ledger; times are for people, clocks differ. */
export function latestAnswers(answers: readonly SlipAnswer[]): ReadonlyMap<string, SlipAnswer> {
  return new Map(answers.map((answer) => [answer.testPrintId, answer]));
}

/** Garments of lots, each made once: evidence prepares a cloth once for every object it meets. */
function lotGarments({ garmentLots, shelf }: Library) {
  const lots = new Map(garmentLots.map((lot) => [lot.id, lot]));
  const made = new Map<string, ReturnType<typeof garmentFor>>();
  return (
    lotId: string,
  ): { readonly lot: GarmentLot; readonly own: ReturnType<typeof garmentFor> } | null => {
    const lot = lots.get(lotId);
    if (lot === undefined) return null;
    const own = made.get(lotId) ?? garmentFor(lot, shelf);
    made.set(lotId, own);
    return { lot, own };
  };
}

type GarmentsOf = ReturnType<typeof lotGarments>;

const missing = (where: string, detail: string): Problem[] => [{ code: "missing-reference", where, detail }];

/** What was observed, and the light and observer it stands for. */
function observedIn(readings: Readings, viewing: Viewing): Pick<EvidenceRecord, "viewing" | "reading"> {
  if (readings.kind === "by-eye") {
    const { grade, direction, light } = readings;
    // An eye sees more than two degrees of a shirt.
    return {
      viewing: { illuminant: light, observer: "10deg" },
      reading: { kind: "by-eye", grade, direction },
    };
  }
  const {
    bare,
    print,
    pairCount,
    pieceCount,
    sdPairDeltaL,
    viewing: under,
  } = readingMeans(readings, viewing);
  return {
    viewing: under,
    reading: { kind: "pair", bare, printed: print, pairCount, pieceCount, sdPairDeltaL },
  };
}

function recordOf(
  print: TestPrint,
  shelf: Shelf,
  garmentOf: GarmentsOf,
  viewing: Viewing,
): EvidenceRecord | readonly Problem[] {
  const { readings } = print;
  const found = garmentOf(print.garmentLotId);
  if (found === null) return missing("garmentLotId", print.garmentLotId);
  const observed = observedIn(readings, viewing);
  const reading =
    readings.kind === "by-eye" || observed.reading.kind === "by-eye"
      ? null
      : { readings, bare: observed.reading.bare, viewing: observed.viewing };
  const garment = recordedGarment(found.lot, shelf, found.own, reading);
  const recipe = printedRecipe(print);
  const ink = pouredInkFor({ recipe, clothCoverFraction: null }, shelf);
  if (!garment.ok || !ink.ok)
    return [...(garment.ok ? [] : garment.problems), ...(ink.ok ? [] : ink.problems)];
  const applied = recordedApplication(print, recipe, shelf);
  if (!applied.ok) return applied.problems;
  return {
    id: print.id,
    printKey: printKeyOf(print),
    print: evidencePrint(found.lot, {
      garment: garment.garment,
      recipe,
      mix: ink.mix,
      application: applied.application,
      setUpId: print.setUpId,
      depositOfThisPrintWeighed: print.depositGsm !== null,
    }),
    ...observed,
    at: print.readAt,
    washCount: print.washCount,
  };
}

function goodsInOf(
  check: GoodsInCheck,
  shelf: Shelf,
  garmentOf: GarmentsOf,
): GoodsInRecord | readonly Problem[] {
  const [approved, arriving] = [garmentOf(check.approvedLotId), garmentOf(check.arrivingLotId)];
  if (approved === null) return missing("approvedLotId", check.approvedLotId);
  if (arriving === null) return missing("arrivingLotId", check.arrivingLotId);
  const recipe = [{ itemId: check.baseId, massFraction: 1 }];
  const ink = pouredInkFor({ recipe, clothCoverFraction: null }, shelf);
  if (!ink.ok) return ink.problems;
  if (!approved.own.ok) return approved.own.problems;
  if (!arriving.own.ok) return arriving.own.problems;
  return {
    id: check.id,
    approved: evidenceGarment(approved.lot, approved.own.garment),
    arriving: evidenceGarment(arriving.lot, arriving.own.garment),
    baseKey: check.baseId,
    mix: ink.mix,
    viewing: check.viewing,
    approvedDeltaL: check.approvedChange,
    arrivingDeltaL: check.arrivingChange,
  };
}

/** The scales that the shop consented to, over the model's own. */
export function priorScalesOf({ defaults }: Shelf): PriorScales {
  const own = defaults.priorScales ?? {};
  const names = Object.keys(DEFAULT_PRIOR_SCALES) as (keyof PriorScales)[];
  return Object.fromEntries(
    names.map((name) => [name, own[name] ?? DEFAULT_PRIOR_SCALES[name]]),
  ) as unknown as PriorScales;
}

/**
 * What the library's records teach from. A record that a later one corrects is left out silently: it was wrong. One that
 * the model cannot take is named with the reason; spectra are seen under the shop's own light and observer.
 */
export function evidenceInputs(library: Library): EvidenceInputs {
  const { shelf } = library;
  const { viewing } = shelf.defaults.instrument;
  const garmentOf = lotGarments(library);
  const records: EvidenceRecord[] = [];
  const goodsIn: GoodsInRecord[] = [];
  const leftOut: LeftOut[] = [];
  for (const print of standing(library.testPrints)) {
    const record = recordOf(print, shelf, garmentOf, viewing);
    if ("id" in record) records.push(record);
    else leftOut.push({ recordId: print.id, problems: record });
  }
  for (const check of standing(library.goodsInChecks)) {
    const record = goodsInOf(check, shelf, garmentOf);
    if ("id" in record) goodsIn.push(record);
    else leftOut.push({ recordId: check.id, problems: record });
  }
  const answers = [...latestAnswers(library.slipAnswers).values()];
  const answered = (isKept: boolean) =>
    new Set(
      answers.filter(({ answer }) => (answer === "keep") === isKept).map(({ testPrintId }) => testPrintId),
    );
  return {
    records,
    goodsIn,
    setAside: answered(false),
    kept: answered(true),
    scales: priorScalesOf(shelf),
    leftOut,
  };
}
