/** What the checklist before a run is decided from: plain facts about one garment line at one print place. */
import type { PredictionWarning } from "../prediction/prediction.ts";

export interface ChecklistFibre {
  readonly fibre: "cotton" | "viscose" | "polyester" | "nylon" | "elastane";
  readonly massFraction: number;
  /** Whether this fibre carries the garment's colour. */
  readonly dyed: boolean;
}

/** What the mix is, as far as the rules ask. */
export interface ChecklistMix {
  /** `clear`: bases alone; `white`: any white ink in it; `tinted`: any other colourant in it. */
  readonly kind: "clear" | "tinted" | "white";
  /** How much of the mix cures low by its maker's word: every part, some of them, none. */
  readonly lowCure: "all" | "some" | "none";
  /** Film temperatures of the parts as the shop entered them from the data sheets, degrees Celsius. */
  readonly enteredCuresCelsius: readonly number[];
  /** Parts of the mix whose cure the shop has not entered. */
  readonly curesMissingCount: number;
}

/** Earlier test prints of this very lot; superseded records left out. */
export interface LotPrints {
  readonly any: boolean;
  /** With the base that makes up most of the mix. */
  readonly withThisBase: boolean;
  /** With this recipe through this set-up. */
  readonly ofThisRecipe: boolean;
}

/** Of the prediction for the chosen mix: all in CIELAB units of delta-L*, negative is darker. */
export interface ChecklistPrediction {
  readonly deltaL: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
  /** 0..1. */
  readonly chanceInBand: number;
  readonly warnings: readonly PredictionWarning[];
}

export interface ChecklistFacts {
  readonly fibres: readonly ChecklistFibre[];
  readonly finish: "none" | "wicking" | "softener" | "silicone" | "repellent";
  readonly heather: boolean;
  /** Known to give up dye under heat. */
  readonly bleeds: boolean;
  /** L* of the bare cloth; null where it was never read. */
  readonly bareL: number | null;
  readonly pieceCount: number;
  /** The shop's limit: above this many pieces an untested dyed polyester has to be tested. */
  readonly testAboveCount: number;
  /** Whether this lot stands in for another one that was approved. */
  readonly substituted: boolean;
  /** Which lot the customer approved: this one, another of the same garment, or none on record. */
  readonly approvedLot: "this" | "other" | "none";
  /**
   * From the latest goods-in check: change of L* under the quick draw on this lot over that on the approved one; null
   * where none was made.
   */
  readonly goodsInRatio: number | null;
  readonly forChildren: boolean;
  readonly prints: LotPrints;
  /** `refused`: it names something that the shelf lacks, or breaks a limit of its data sheet. */
  readonly choice: "none" | "refused" | "made";
  /** Null exactly while no mix is chosen. */
  readonly mix: ChecklistMix | null;
  readonly band: { readonly deltaL: number; readonly tolerance: number };
  /** Null while there is none: nothing chosen, refused, or not computed yet. */
  readonly prediction: ChecklistPrediction | null;
}
