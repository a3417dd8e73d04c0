/** The checklist before the run of one line at one place, from the documents and the prediction of what was chosen. */
import { SMALLEST_DRAW_DELTA_L } from "../core/evidence/teaching.ts";
import type {
  ChecklistFacts,
  ChecklistMix,
  ChecklistPrediction,
  LotPrints,
} from "../core/planning/checklistFacts.ts";
import type { ChecklistItem } from "../core/planning/checklistItem.ts";
import { runChecklist } from "../core/planning/runChecklist.ts";
import { lineBand } from "./approvedReference.ts";
import { chosenPrint } from "./chosenPrint.ts";
import type { Documents } from "./documents.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import type { Candidate, Line, Place } from "./jobDocument.ts";
import { lotOfLine, mixOf, pieceCount } from "./lookup.ts";
import { isSameRecipe, mainBaseId, partsOf, type Recipe } from "./recipeParts.ts";
import type { GoodsInCheck, TestPrint } from "./recordDocument.ts";
import { bareLab } from "./screenColour.ts";
import type { Shelf } from "./shelfDocument.ts";
import { standing } from "./standing.ts";

function lotPrints(prints: readonly TestPrint[], recipe: Recipe, setUpId: string, shelf: Shelf): LotPrints {
  const baseId = mainBaseId(recipe, shelf);
  return {
    any: prints.length > 0,
    withThisBase: prints.some((print) => mainBaseId(print.recipe, shelf) === baseId),
    ofThisRecipe: prints.some((print) => print.setUpId === setUpId && isSameRecipe(print.recipe, recipe)),
  };
}

function checklistMix(recipe: Recipe, shelf: Shelf): ChecklistMix {
  const parts = partsOf(recipe, shelf);
  const colourants = parts.flatMap((part) => (part.kind === "colourant" ? [part.item] : []));
  const isWhite = colourants.some((colourant) => colourant.optics.kind === "white");
  const lowCureCount = parts.filter((part) => part.kind === "base" && part.item.lowCure).length;
  const cures = parts.flatMap((part) => part.item.cure.filmCelsius ?? []);
  return {
    kind: isWhite ? "white" : colourants.length > 0 ? "tinted" : "clear",
    lowCure: lowCureCount === 0 ? "none" : lowCureCount === parts.length ? "all" : "some",
    enteredCuresCelsius: cures,
    curesMissingCount: parts.length - cures.length,
  };
}

/** The lot that the customer approved and that a line's garment is held against; null where none is on record. */
export function approvedLotOf({ library }: Documents, line: Line): GarmentLot | null {
  const { garmentLots, approvals } = library;
  const lotWith = (id: string | null) => garmentLots.find((lot) => lot.id === id) ?? null;
  const own = lotWith(line.garmentLotId);
  const approved = new Set(standing(approvals).map((approval) => approval.garmentLotId));
  if (approved.has(line.garmentLotId)) return own;
  const substituted = lotWith(line.substitutedForLotId);
  if (substituted !== null) return substituted;
  const isSameGarment = (lot: GarmentLot) => lot.style === own?.style && lot.colourway === own.colourway;
  return garmentLots.findLast((lot) => approved.has(lot.id) && isSameGarment(lot)) ?? null;
}

/** Of the latest standing check between the two lots; null without one, or where the approved one hardly changed. */
function goodsInRatio(checks: readonly GoodsInCheck[], approvedLotId: string, line: Line): number | null {
  const check = standing(checks).findLast(
    (one) => one.approvedLotId === approvedLotId && one.arrivingLotId === line.garmentLotId,
  );
  if (check === undefined || Math.abs(check.approvedChange) < SMALLEST_DRAW_DELTA_L) return null;
  return check.arrivingChange / check.approvedChange;
}

function chosenRecipe({ job }: Documents, candidate: Candidate): Recipe {
  return mixOf(job, candidate.mixId)?.recipe ?? [];
}

/** The facts of a line at a place. `prediction` is that of the chosen candidate, or null while there is none. */
export function checklistFacts(
  documents: Documents,
  line: Line,
  place: Place,
  prediction: ChecklistPrediction | null,
): ChecklistFacts {
  const { job, library } = documents;
  const { shelf } = library;
  const lot = lotOfLine(documents, line);
  const chosen = chosenPrint(documents, line, place);
  const candidate = chosen.kind === "none" ? null : chosen.candidate;
  const recipe = candidate === null ? [] : chosenRecipe(documents, candidate);
  const prints = standing(library.testPrints).filter((print) => print.garmentLotId === line.garmentLotId);
  const approved = approvedLotOf(documents, line);
  return {
    fibres: lot?.blend ?? [],
    finish: lot?.finish ?? "none",
    heather: lot?.heather ?? false,
    bleeds: lot?.bleeds ?? false,
    bareL: lot === null ? null : (bareLab(lot.bare, job.viewing)?.lab.L ?? null),
    pieceCount: pieceCount(line),
    testAboveCount: shelf.defaults.testAboveCount,
    substituted: line.substitutedForLotId !== null,
    goodsInRatio: approved === null ? null : goodsInRatio(library.goodsInChecks, approved.id, line),
    forChildren: job.forChildren,
    approvedLot: approved === null ? "none" : approved.id === line.garmentLotId ? "this" : "other",
    prints: lotPrints(prints, recipe, candidate?.setUpId ?? "", shelf),
    choice: chosen.kind === "ready" ? "made" : chosen.kind,
    mix: candidate === null ? null : checklistMix(recipe, shelf),
    band: lineBand(documents, line, place).band,
    prediction: chosen.kind === "ready" ? prediction : null,
  };
}

/** What has to be true before a line is run at a place, each item with its reasons. */
export function lineChecklist(
  documents: Documents,
  line: Line,
  place: Place,
  prediction: ChecklistPrediction | null,
): ChecklistItem[] {
  return runChecklist(checklistFacts(documents, line, place, prediction));
}
