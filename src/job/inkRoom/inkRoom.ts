/** The ink room of a job: every batch to be mixed, the order they are run in, and what has to be said about them. */
import type { ChildrensLine } from "../../core/planning/ink/childrensLimits.ts";
import type { Change } from "../../core/planning/ink/runOrder.ts";
import type { Problem } from "../problem.ts";
import type { Master } from "../shelfDocument.ts";
import type { InkBatch } from "./inkBatch.ts";

/** What somebody chose for a batch; what is left out follows the rules. */
export interface BatchWishes {
  readonly scaleId?: string | undefined;
  readonly potSizeId?: string | undefined;
  /** Forms of colourants: a master's id, or "neat". */
  readonly weighAs?: Readonly<Record<string, string>> | undefined;
  /** More or less ink than the uses ask for. */
  readonly batchGrams?: number | undefined;
}

export interface InkRoomOptions {
  /** The calendar day, YYYY-MM-DD, that dates are held against. */
  readonly today: string;
  /** By mix id. */
  readonly wishes?: Readonly<Record<string, BatchWishes>>;
}

export interface ShelfMaster {
  readonly master: Master;
  readonly name: string;
  readonly state: "usable" | "expired" | "no-date";
}

/** One run on press: a use of a batch. */
export interface InkRun {
  readonly useId: string;
  readonly mixId: string;
  readonly mixName: string;
  readonly placeName: string;
  readonly setUpName: string;
  readonly pieceCount: number;
  /** What it takes to come here from the run before; null for the first. */
  readonly change: Change | null;
}

export interface InkRoom {
  /** Mixes that are chosen for some garment, in the job's order. */
  readonly batches: readonly InkBatch[];
  /** Chosen mixes that cannot be planned, since the shelf lacks some of their inks. */
  readonly refused: readonly {
    readonly mixId: string;
    readonly mixName: string;
    readonly problems: readonly Problem[];
  }[];
  readonly runs: {
    readonly inOrder: readonly InkRun[];
    readonly minutes: number;
    readonly washUpCount: number;
    readonly screenChangeCount: number;
    /** Whether no other order takes fewer wash-ups, or as many and fewer minutes; false from 13 runs on. */
    readonly proven: boolean;
  };
  readonly masters: readonly ShelfMaster[];
  /** Lines printed at a place without a choice: no ink is counted for them. */
  readonly unchosen: readonly { readonly lineId: string; readonly placeId: string; readonly name: string }[];
  /** Limits cited for a children's product; empty for others. */
  readonly childrensLines: readonly ChildrensLine[];
}
