/** One batch of ink as the Ink view shows it: a mix, where it is printed, how much of it, and how it is weighed. */
import type { BatchSize } from "../../core/planning/ink/batchSize.ts";
import type { DyeMigrationRisk } from "../../core/planning/ink/dyeMigration.ts";
import type { MixRestrictions } from "../../core/planning/ink/mixRestrictions.ts";
import type { ComponentRole, ItemFraction } from "../../core/planning/ink/potRecipe.ts";
import type { Pots } from "../../core/planning/ink/pots.ts";
import type { PrintQualityNote } from "../../core/planning/ink/printQualityNotes.ts";
import type {
  RefusedWeighSheet,
  WeighSheetLine,
  WrittenWeighSheet,
} from "../../core/planning/ink/weighSheet.ts";
import type { Pot } from "../potDocument.ts";
import type { Problem } from "../problem.ts";
import type { InkLot } from "../shelfDocument.ts";
import type { Scale } from "../shopDefaultsDocument.ts";
import type { WeighedDeposit } from "../weighedDeposit.ts";
import type { Poured } from "./poured.ts";

/** Garments of one line that get this ink. */
export interface InkUseLine {
  readonly lineId: string;
  readonly name: string;
  readonly pieceCount: number;
  /** Whether the cloth draws thin ink in unevenly: a wicking finish. */
  readonly thirsty: boolean;
  /** The risk that white takes up dye from this cloth; null where there is none to speak of or the lot is missing. */
  readonly dyeMigration: DyeMigrationRisk | null;
}

/** The film that a set-up leaves, for the colour and for the ink to mix. */
export interface InkUseDeposit {
  /** What the prediction takes, um. */
  readonly colourUm: number;
  /** What ink is mixed for, um: at transfer 1.0 until the set-up was weighed. */
  readonly inkToMixUm: number;
  /** Null: estimated from the mesh. */
  readonly weighed: WeighedDeposit | null;
  /** A published rule's wet height, um, beside the estimate; null for a set-up without its mesh on the shelf. */
  readonly publishedWetHeightUm: number | null;
}

/** One place printed with the mix through one set-up: one screen. */
export interface InkUse {
  readonly id: string;
  readonly placeId: string;
  readonly placeName: string;
  readonly setUpId: string;
  readonly setUpName: string;
  readonly lines: readonly InkUseLine[];
  readonly pieceCount: number;
  /** By the shop's rule of spoilage on this use's pieces. */
  readonly spoilageFraction: number;
  readonly spoiledPieceCount: number;
  readonly printedAreaM2: number;
  readonly deposit: InkUseDeposit;
  readonly mixedGramsPerPrint: number;
  readonly expectedGramsPerPrint: number;
  readonly notes: readonly PrintQualityNote[];
}

export interface RecipeLine extends ItemFraction {
  readonly name: string;
  readonly role: ComponentRole;
}

/** A line of the sheet with the name it is printed under. */
export interface NamedSheetLine extends WeighSheetLine {
  readonly name: string;
}

export type BatchSheet =
  | (Omit<WrittenWeighSheet, "lines"> & { readonly lines: readonly NamedSheetLine[] })
  | RefusedWeighSheet;

/** Deliveries that a part may be taken from. */
export interface PartLots {
  readonly itemId: string;
  readonly name: string;
  /** Still fit for use, the first received first. */
  readonly usable: readonly InkLot[];
  readonly expired: readonly InkLot[];
  /** The one to take: the first received (first in, first out: common practice, no source); null where none is entered. */
  readonly chosen: InkLot | null;
}

/** What stands in the way of a good weighing besides what the sheet says itself. */
export interface BatchNotice {
  readonly code: /** The pot is heavier than any scale carries. figures: potGrams, maxGrams. */
    | "scale-overloaded"
    /** Less of a master is left than the batch needs. figures: neededGrams, gramsLeft. */
    | "master-runs-out"
    /** A master is past its day and was not offered. */
    | "master-expired"
    /** The pots that are recorded were mixed by another recipe than the mix has now. */
    | "recipe-changed";
  /** The item, master or scale it is about. */
  readonly id: string;
  readonly name: string;
  readonly figures: Readonly<Record<string, number>>;
}

/** A pot on record with what was poured into it. */
export interface RecordedPot {
  readonly pot: Pot;
  readonly poured: Poured;
}

export interface InkBatch {
  readonly mixId: string;
  readonly mixName: string;
  readonly recipe: readonly RecipeLine[];
  readonly kind: "clear" | "tinted" | "white";
  /** White ink as a mass fraction, and the part of the cloth it covers as entered; null where there is no white. */
  readonly white: { readonly massFraction: number; readonly clothCoverFraction: number | null } | null;
  readonly densityGramsPerCm3: number;
  readonly uses: readonly InkUse[];
  readonly size: BatchSize;
  /** What is planned to be mixed: what the uses ask for, unless somebody wished for another amount. */
  readonly batchGrams: number;
  /** Null where the shop has entered no pots, or there is nothing to mix. */
  readonly pots: (Pots & { readonly sizeName: string }) | null;
  /** Null where the shop has entered no scale. */
  readonly scale: Scale | null;
  /** For one pot; null without pots or scale. */
  readonly sheet: BatchSheet | null;
  /** 1 for the first recipe mixed under this mix, one more for each that differed. */
  readonly recipeVersion: number;
  /** By the fractions of the sheet where there is one, else as wanted. */
  readonly restrictions: MixRestrictions;
  readonly lots: readonly PartLots[];
  /** Standing pots of this job and mix, as recorded. */
  readonly recorded: readonly RecordedPot[];
  /**
   * The recipe to predict with: of the pots that were poured, by their grams; else of the sheet's rounded grams; else
   * as wanted.
   */
  readonly trueRecipe: {
    readonly source: "poured" | "sheet" | "wanted";
    readonly recipe: readonly ItemFraction[];
  };
  readonly notices: readonly BatchNotice[];
  /** Why there is no sheet or why some lines are left out; paths in the archive. */
  readonly problems: readonly Problem[];
}
