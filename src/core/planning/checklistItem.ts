/** What has to be true before a run, as codes with figures; the planner owns the sentences. */

export type ChecklistItemCode =
  /** A mix has to be chosen, or the chosen one mended: nobody can sign that away. */
  | "choose-mix"
  /** The customer knows what is to be expected, or target or mix were changed. */
  | "target-agreed"
  | "test-print"
  | "goods-in"
  /** More readings than usual. */
  | "reads"
  | "cure"
  | "wash-test"
  /** Cool, hold, and read again: dye moves for days. */
  | "bleed-hold"
  /** Limits that are cited for children's products. */
  | "childrens-limits"
  | "first-off"
  | "retained-sample";

export type ChecklistReasonCode =
  | "no-mix-chosen"
  | "mix-refused"
  | "clear-on-white"
  | "clear-on-cotton"
  | "clear-hardly-shows"
  | "out-of-band"
  | "dyed-polyester-untested"
  | "substituted"
  | "spread-wider-than-tolerance"
  | "dark-limit"
  | "goods-in-reacts-otherwise"
  | "goods-in-drawn"
  | "lot-not-approved"
  | "heather"
  | "cure-from-data-sheet"
  | "cure-not-entered"
  | "cures-differ"
  | "low-cure-in-part"
  | "polyester-under-heat"
  | "ink-holds"
  | "resistant-finish"
  | "thin-white"
  | "known-bleeder"
  | "white-over-dyed-polyester"
  | "childrens-product"
  | "second-person"
  | "kept-for-reorder";

export interface ChecklistReason {
  readonly code: ChecklistReasonCode;
  /** Counts, hours, delta-L* units, fractions and degrees Celsius, by name. */
  readonly figures: Readonly<Record<string, number>>;
}

export interface ChecklistItem {
  readonly code: ChecklistItemCode;
  /** Settled by a signature, or only by choosing another mix. */
  readonly kind: "signature" | "choice";
  /** Whether the run waits for it; otherwise it is advised. */
  readonly blocking: boolean;
  /** Why, the weightiest first; never empty. */
  readonly reasons: readonly ChecklistReason[];
}
