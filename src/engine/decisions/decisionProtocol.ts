/** What the planner asks of the decision workers and what it gets back: plain data. */
import type { MixCost } from "../../core/planning/decisions/mixProgram.ts";
import type { MixProposal } from "../../core/planning/decisions/mixProposal.ts";
import type { MixOption, MixSearchFault } from "../../core/planning/decisions/mixSearch.ts";
import type { RecoverPlan } from "../../core/planning/decisions/recover.ts";
import type { Unserved } from "../../core/planning/decisions/unservedReason.ts";
import type { EvidenceLevel } from "../../core/prediction/prediction.ts";
import type { Band } from "../../job/jobDocument.ts";
import type { Problem } from "../../job/problem.ts";
import type { Recipe } from "../../job/recipeParts.ts";

/** A mix that a proposal speaks of. */
export interface FoundMix {
  /** What `MixOption.mixId` names it by. */
  readonly key: string;
  readonly recipe: Recipe;
  /** The job's mix; null where it would be a new one. */
  readonly jobMixId: string | null;
  readonly openingCost: number;
  /** Parts that the shelf has no price of: its ink is counted too low. */
  readonly unpriced: readonly string[];
}

/** A line that no mix serves. */
export interface UnservedLine extends Unserved {
  readonly lineId: string;
  /** What comes nearest; null where nothing was predicted. */
  readonly nearest: MixOption | null;
  readonly nearestDeltaL: number | null;
}

/** What was asked and how far it is. */
export interface SearchProgress {
  readonly stage: "predicting" | "solving";
  /** While predicting: part of the lines done, 0..1. While solving: how far the best found may be from the best there is; null until one is found. */
  readonly doneFraction: number | null;
}

export interface MixFinding {
  readonly ok: true;
  readonly placeId: string;
  /** Garment ids in it are line ids. */
  readonly proposal: MixProposal;
  readonly cost: MixCost;
  /** Whether nothing can be cheaper, or the search ran out of time with the gap that `proposal` states. */
  readonly proven: boolean;
  /** Every mix that the proposal, the present choices or an unserved line names, by its key. */
  readonly mixes: readonly FoundMix[];
  readonly unserved: readonly UnservedLine[];
  /** How many mixes through how many set-ups were weighed for how many lines. */
  readonly counts: { readonly mixes: number; readonly setUps: number; readonly lines: number };
}

export type MixAnswer =
  | MixFinding
  /** The rules contradict each other, or too few mixes are allowed to serve all that have to be. */
  | { readonly ok: false; readonly faults: readonly MixSearchFault[]; readonly impossible: boolean };

/** A test print that is worth making. */
export interface WorthwhileTest {
  readonly lineId: string;
  readonly placeId: string;
  readonly recipe: Recipe;
  readonly setUpId: string;
  /** The matrix's column; null where the mix is in no column. */
  readonly candidateId: string | null;
  /** Money. */
  readonly cost: number;
  /** What skipping it costs in expectation, money: the risk that it removes, made after those before it. */
  readonly riskRemoved: number;
  readonly informs: readonly {
    readonly lineId: string;
    readonly placeId: string;
    readonly riskRemoved: number;
  }[];
  /** Part of the avoidable risk that is gone with it and all before it, 0..1. */
  readonly shareSettled: number;
  readonly pieceCount: number;
  /** Pairs to read for the precision. */
  readonly pairCount: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
}

/** What is at stake on a line as it would be printed best today. */
export interface LineRisk {
  readonly lineId: string;
  readonly placeId: string;
  /**
   * Expected loss of its best print today, and were all known that tests can tell, less what cheaper ink would save then;
   * money.
   */
  readonly lossNow: number;
  readonly lossIfKnown: number;
  readonly best: {
    readonly recipe: Recipe;
    readonly setUpId: string;
    readonly candidateId: string | null;
    readonly chanceInBand: number;
    readonly evidence: EvidenceLevel;
  };
  /** Expected loss and chance of the print that is chosen; null where none is or it cannot be predicted. */
  readonly chosen: { readonly expectedLoss: number; readonly chanceInBand: number } | null;
}

export interface TestsFinding {
  readonly tests: readonly WorthwhileTest[];
  /** Candidates that were weighed. */
  readonly candidateCount: number;
  /** Expected loss of the best prints today; the part that tests could take away; what the plan saves, its own cost off. */
  readonly lossNow: number;
  readonly avoidable: number;
  readonly netWorth: number;
  /** The best test left, which is not worth its price; null where none is left. */
  readonly next: {
    readonly lineId: string;
    readonly placeId: string;
    readonly cost: number;
    readonly riskRemoved: number;
  } | null;
  readonly lines: readonly LineRisk[];
  /** Tests that can be made before the run; null where nothing limits them. */
  readonly atMostTests: number | null;
  /** Lines that could not be predicted. */
  readonly left: readonly { readonly lineId: string; readonly placeId: string }[];
}

export interface RecoverAsk {
  readonly lineId: string;
  readonly placeId: string;
  readonly halftonesAllowed: boolean;
  /** The first-off's record; without it the latest first-off of the line in the press log. */
  readonly firstOffId?: string;
}

/** A first-off that the record book does not explain: something else than the garment may have changed. */
export interface UnexplainedFirstOff {
  readonly readDeltaL: number;
  readonly expectedDeltaL5: number;
  readonly expectedDeltaL95: number;
}

/** What the planner needs to show and to adopt one of the options: by position in `plan.options`. */
export interface RecoverRecipe {
  readonly recipe: Recipe;
  /** The shelf's set-up of that mesh, squeegee and strokes; null where it is not on the shelf yet. */
  readonly setUpId: string | null;
  readonly greyScaleGrade: string;
  readonly evidence: EvidenceLevel;
}

export type RecoverAnswer =
  | {
      readonly ok: true;
      readonly plan: RecoverPlan;
      readonly recipes: readonly RecoverRecipe[];
      readonly band: Band;
      /** Look for the cause before changing the mix: strokes, blade, mesh, pot, lot. */
      readonly unexplained: UnexplainedFirstOff | null;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };
