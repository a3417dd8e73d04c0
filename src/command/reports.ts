/** Decisions as the command prints them: one object for JSON, and its list as rows for CSV. */
import type { MixOption } from "../core/planning/decisions/mixSearch.ts";
import type { RecoverChange } from "../core/planning/decisions/recoverChanges.ts";
import type { MixFinding, RecoverAnswer, TestsFinding } from "../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../job/documents.ts";
import { recipeItem } from "../job/lookup.ts";
import { lineText, recipeText, setUpName } from "./names.ts";

export type Row = Readonly<Record<string, string | number>>;

export interface Report {
  /** Everything, with every digit. */
  readonly whole: Readonly<Record<string, unknown>>;
  readonly rows: readonly Row[];
}

/** Digits of a CSV number: below anything that money or a chance is read to. */
const CSV_DECIMALS = 4;
const rounded = (value: number): number => Number(value.toFixed(CSV_DECIMALS)) + 0;

const placeName = ({ job }: Documents, placeId: string): string =>
  job.places.find(({ id }) => id === placeId)?.name ?? "";

export function mixesReport(documents: Documents, finding: MixFinding): Report {
  const { shelf } = documents.library;
  const { proposal, cost, proven, mixes, unserved, counts } = finding;
  const recipes = new Map(mixes.map(({ key, recipe }) => [key, recipeText(recipe, shelf)]));
  const printed = (option: MixOption | null) =>
    option === null
      ? null
      : {
          mix: recipes.get(option.mixId) ?? "",
          setUp: setUpName(option.setUpId, documents),
          chanceInBand: option.chanceInBand,
          expectedLoss: option.expectedLoss,
          inkCost: option.inkCost,
        };
  const changes = proposal.changes.map(({ garmentId, from, to, saved }) => ({
    lineId: garmentId,
    ...lineText(documents, garmentId),
    from: printed(from),
    to: printed(to),
    saved,
  }));
  const left = unserved.map(({ lineId, reason, helps, nearest, nearestDeltaL }) => ({
    lineId,
    ...lineText(documents, lineId),
    reason,
    helps,
    nearest: printed(nearest),
    nearestDeltaL,
  }));
  return {
    whole: {
      place: placeName(documents, finding.placeId),
      proven,
      gapFraction: proposal.gapFraction,
      weighed: counts,
      cost,
      present: proposal.presentCost,
      proposed: proposal.proposedCost,
      unchanged: proposal.unchangedCount,
      changes,
      unserved: left,
    },
    rows: [
      ...changes.map(({ garment, lot, from, to }) => ({
        garment,
        lot,
        from: from === null ? "" : `${from.mix}, ${from.setUp}`,
        mix: to?.mix ?? "",
        set_up: to?.setUp ?? "",
        chance_in_band: to === null ? "" : rounded(to.chanceInBand),
        expected_loss: to === null ? "" : rounded(to.expectedLoss),
        ink: to === null ? "" : rounded(to.inkCost),
        unserved: "",
      })),
      ...left.map(({ garment, lot, reason, nearest }) => ({
        garment,
        lot,
        from: "",
        mix: nearest?.mix ?? "",
        set_up: nearest?.setUp ?? "",
        chance_in_band: nearest === null ? "" : rounded(nearest.chanceInBand),
        expected_loss: nearest === null ? "" : rounded(nearest.expectedLoss),
        ink: "",
        unserved: reason,
      })),
    ],
  };
}

export function testsReport(documents: Documents, finding: TestsFinding): Report {
  const { shelf } = documents.library;
  const where = (at: { readonly lineId: string; readonly placeId: string }) => ({
    ...lineText(documents, at.lineId),
    place: placeName(documents, at.placeId),
  });
  const tests = finding.tests.map(({ recipe, setUpId, informs, ...test }) => ({
    ...test,
    ...where(test),
    mix: recipeText(recipe, shelf),
    setUp: setUpName(setUpId, documents),
    informs: informs.map((one) => ({ ...where(one), riskRemoved: one.riskRemoved })),
  }));
  const lines = finding.lines.map(({ best, ...line }) => ({
    ...line,
    ...where(line),
    best: { ...best, recipe: recipeText(best.recipe, shelf), setUp: setUpName(best.setUpId, documents) },
  }));
  return {
    whole: {
      ...finding,
      tests,
      lines,
      next: finding.next === null ? null : { ...finding.next, ...where(finding.next) },
    },
    rows: tests.map((test, index) => ({
      rank: index + 1,
      garment: test.garment,
      lot: test.lot,
      place: test.place,
      mix: test.mix,
      set_up: test.setUp,
      cost: rounded(test.cost),
      risk_removed: rounded(test.riskRemoved),
      share_settled: rounded(test.shareSettled),
      pieces: test.pieceCount,
      pairs: test.pairCount,
    })),
  };
}

/** What a change is, in the shelf's names. */
function changeText(change: RecoverChange, { library: { shelf } }: Documents): string {
  switch (change.kind) {
    case "base":
      return recipeItem(shelf, change.baseKey)?.item.name ?? "";
    case "tint":
      return `${Number((change.massFraction * 100).toFixed(4))} % ${recipeItem(shelf, change.colourantKey)?.item.name ?? ""}`;
    case "screen":
      return `mesh ${shelf.meshes.find(({ id }) => id === change.screenKey)?.name ?? ""}`;
    case "squeegee":
      return `squeegee ${shelf.squeegees.find(({ id }) => id === change.squeegeeKey)?.name ?? ""}`;
    case "strokes":
      return `${change.strokeCount} strokes`;
    case "halftone":
      return `${change.halftoneFraction * 100} % halftone`;
  }
}

export function recoverReport(documents: Documents, answer: Extract<RecoverAnswer, { ok: true }>): Report {
  const { plan, recipes, band, unexplained } = answer;
  const options = plan.options.map((option, index) => ({
    changes: option.changes.map((change) => changeText(change, documents)),
    recipe: recipeText(recipes[index]!.recipe, documents.library.shelf),
    setUp: setUpName(recipes[index]!.setUpId, documents),
    evidence: recipes[index]!.evidence,
    ...option.prediction,
    distance: option.distance,
    minutes: option.minutes,
    cost: option.cost,
    screenChange: option.screenChange,
    cautions: option.cautions,
  }));
  return {
    whole: {
      band,
      unexplained,
      sufficesOnThisScreen: plan.sufficesOnThisScreen,
      bestOnThisScreen:
        plan.bestOnThisScreen === null ? null : plan.options.indexOf(plan.bestOnThisScreen) + 1,
      predicted: plan.predictedCount,
      options,
    },
    rows: options.map((option, index) => ({
      rank: index + 1,
      changes: option.changes.join("; "),
      recipe: option.recipe,
      set_up: option.setUp,
      chance_in_band: rounded(option.chanceInBand),
      delta_L: rounded(option.deltaL50),
      delta_L_5: rounded(option.deltaL5),
      delta_L_95: rounded(option.deltaL95),
      distance: rounded(option.distance),
      minutes: rounded(option.minutes),
      cost: rounded(option.cost),
      screen_change: option.screenChange ? "yes" : "no",
      evidence: option.evidence,
      cautions: option.cautions.join(" "),
    })),
  };
}
