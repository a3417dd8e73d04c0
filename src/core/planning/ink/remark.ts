/** What the ink room has to say about an item, for the planner to put into words. */

/** A code, the shelf item it is about, and figures by name: grams, counts and fractions. */
export interface Remark<Code extends string> {
  readonly code: Code;
  readonly itemId: string;
  readonly figures: Readonly<Record<string, number>>;
}
