/** Recovering one line at one place: every change the shop can make now, predicted under what the record book knows by now. */
import { deltaE00 } from "../../core/colorimetry/ciede2000.ts";
import type { Lab } from "../../core/colorimetry/viewing.ts";
import { beliefFor } from "../../core/evidence/beliefFor.ts";
import type { Posterior } from "../../core/evidence/posterior.ts";
import { planRecovery, type RecoverPrediction } from "../../core/planning/decisions/recover.ts";
import type { Printing } from "../../core/planning/decisions/recoverChanges.ts";
import type { Prediction } from "../../core/prediction/prediction.ts";
import { predictPrint } from "../../core/prediction/predictPrint.ts";
import { lineBand, referenceChange } from "../../job/approvedReference.ts";
import { candidateOf } from "../../job/decisions/mixCandidates.ts";
import {
  printingOf,
  recipeOfPrinting,
  recoverEffort,
  recoverStock,
} from "../../job/decisions/recoverStock.ts";
import type { Documents } from "../../job/documents.ts";
import { evidencePrint } from "../../job/evidencePrints.ts";
import type { Line, Place } from "../../job/jobDocument.ts";
import { chosenCandidate, mixOf, setUpOf } from "../../job/lookup.ts";
import type { Problem } from "../../job/problem.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { RecoverAnswer, RecoverAsk, RecoverRecipe, UnexplainedFirstOff } from "./decisionProtocol.ts";
import { asRead, type FirstOffRead, firstOffRead, unexplainedBy } from "./firstOffRead.ts";
import { type ReadyLine, readyLines } from "./placePrints.ts";
import { learnedFrom } from "./posteriorOf.ts";
import { printingApplication } from "./printingApplication.ts";

interface Predicted {
  readonly prediction: Prediction;
  readonly recipe: Recipe;
  readonly setUpId: string | null;
}

/** The approved print's own colour under the job's light; null where it is unknown or another kind of print. */
function approvedLab(documents: Documents, line: Line, place: Place): Lab | null {
  const { follows } = lineBand(documents, line, place);
  const change = follows === null ? null : referenceChange(follows, documents.job.viewing);
  return change?.ok ? change.means.print : null;
}

function predictor(
  documents: Documents,
  place: Place,
  { lot, row, band }: ReadyLine,
  recipe: Recipe,
  posterior: Posterior | null,
): (printing: Printing) => Predicted | null {
  const { job, library } = documents;
  const { shelf } = library;
  return (printing) => {
    const changed = recipeOfPrinting(printing, recipe, shelf);
    const mix = changed === null ? null : candidateOf(changed, shelf);
    const applied = printingApplication(printing, place, shelf);
    if (changed === null || mix === null || applied === null) return null;
    const { application, setUpKey, setUpId } = applied;
    const { garment } = row;
    const print = evidencePrint(lot, {
      garment,
      recipe: changed,
      mix: mix.ink,
      application,
      setUpId: setUpKey,
    });
    const belief = posterior === null ? {} : { belief: beliefFor(posterior, print, job.viewing) };
    const prediction = predictPrint({
      garment,
      mix: mix.ink,
      application,
      viewing: job.viewing,
      band,
      ...belief,
    });
    return { prediction, recipe: changed, setUpId };
  };
}

function recoverPrediction({ prediction }: Predicted, approved: Lab | null): RecoverPrediction {
  const { spread, warnings } = prediction;
  return {
    deltaL5: spread.p5.deltaL,
    deltaL50: spread.p50.deltaL,
    deltaL95: spread.p95.deltaL,
    chanceInBand: spread.chanceInBand,
    milkyHaze: warnings.includes("milky-haze"),
    ...(approved === null ? {} : { deltaE00FromApproved: deltaE00(approved, spread.p50.lab) }),
  };
}

interface Recovering {
  readonly ready: ReadyLine;
  readonly place: Place;
  readonly recipe: Recipe;
  readonly printing: Printing;
}

/** The line as it is chosen to be printed; the problem where it is not. */
function recovering(documents: Documents, ask: RecoverAsk): Recovering | Problem {
  const { job, library } = documents;
  const place = job.places.find(({ id }) => id === ask.placeId);
  const ready = place && readyLines(documents, place).lines.find(({ line }) => line.id === ask.lineId);
  if (place === undefined || ready === undefined) return { code: "not-predictable", where: "line" };
  const candidate = chosenCandidate(job, ask.lineId, ask.placeId);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  const setUp = candidate === null ? null : setUpOf(library.shelf, candidate.setUpId);
  if (mix === null || setUp === null) return { code: "no-mix-chosen", where: "choice" };
  return { ready, place, recipe: mix.recipe, printing: printingOf(mix.recipe, setUp, place, library.shelf) };
}

function ranked(
  documents: Documents,
  ask: RecoverAsk,
  { ready, place, recipe, printing }: Recovering,
  read: FirstOffRead | null,
  posterior: Posterior | null,
): Extract<RecoverAnswer, { ok: true }> {
  const { shelf } = documents.library;
  const predict = predictor(documents, place, ready, recipe, posterior);
  const approved = approvedLab(documents, ready.line, place);
  const found = new Map<Printing, Predicted>();
  let unexplained: UnexplainedFirstOff | null = null;
  const plan = planRecovery({
    printing,
    stock: recoverStock(printing, ask.halftonesAllowed, shelf),
    approvedDeltaL: ready.band.deltaL,
    effort: recoverEffort(shelf),
    predict: (changed, changes) => {
      const predicted = predict(changed);
      if (predicted === null) return null;
      found.set(changed, predicted);
      const expected = recoverPrediction(predicted, approved);
      if (changes.length > 0 || read === null) return expected;
      unexplained = unexplainedBy(read, expected);
      return asRead(read, expected, ready.band);
    },
  });
  const recipes = plan.options.map(({ printing: changed }): RecoverRecipe => {
    const { prediction, recipe: after, setUpId } = found.get(changed)!;
    return {
      recipe: after,
      setUpId,
      greyScaleGrade: prediction.greyScaleGrade,
      evidence: prediction.evidence,
    };
  });
  return { ok: true, plan, recipes, band: ready.band, unexplained };
}

/**
 * The ranked changes for the line as it is chosen to be printed; the first-off is expected to be on record by then. Where
 * the record book does not explain it, the run is not what the lot's earlier prints were: they are left out of the ranking.
 */
export function recovery(documents: Documents, ask: RecoverAsk, posterior: Posterior | null): RecoverAnswer {
  const line = recovering(documents, ask);
  if ("code" in line) return { ok: false, problems: [line] };
  const read = firstOffRead(documents, ask, line.ready);
  const answer = ranked(documents, ask, line, read, posterior);
  const { unexplained } = answer;
  if (unexplained === null) return answer;
  const { library } = documents;
  const earlier = library.testPrints.filter(
    ({ id, garmentLotId }) => garmentLotId === line.ready.lot.id && id !== read?.recordId,
  );
  const alone = learnedFrom(library, new Set(earlier.map(({ id }) => id)));
  return { ...ranked(documents, ask, line, read, alone), unexplained };
}
