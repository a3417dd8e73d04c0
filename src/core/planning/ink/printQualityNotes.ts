/** Notes on how a print will feel and whether it will lie evenly, as codes with figures. */

/** Mesh from which a print is called soft, and below which heavy, threads/cm. Common practice, no source: soft hand is
 * printed through 90 to 120, tonal prints start at 61. */
export const SOFT_FROM_PER_CM = 90;
export const HEAVY_BELOW_PER_CM = 61;

/** Deposit below which wet-out turns patchy, um; on cloth that drinks ink, the second. Invented defaults. */
export const MOTTLE_BELOW_UM = 8;
export const THIRSTY_MOTTLE_BELOW_UM = 12;

export type PrintQualityNote =
  /** Softer with finer mesh and thinner film. */
  | {
      readonly code: "hand";
      readonly hand: "soft" | "medium" | "heavy";
      readonly figures: { readonly threadsPerCm: number; readonly depositUm: number };
    }
  | {
      readonly code: "mottle";
      readonly thirsty: boolean;
      readonly figures: { readonly depositUm: number; readonly mottleBelowUm: number };
    };

export interface PrintQualityFacts {
  readonly threadsPerCm: number;
  readonly depositUm: number;
  /** An open or wicking knit, which draws thin ink in unevenly. */
  readonly thirsty: boolean;
}

/** Notes on a print: always its hand, and mottle where the film is thin. @throws RangeError for figures not above 0. */
export function printQualityNotes({
  threadsPerCm,
  depositUm,
  thirsty,
}: PrintQualityFacts): PrintQualityNote[] {
  for (const [name, value] of Object.entries({ threadsPerCm, depositUm })) {
    if (!(value > 0 && value < Infinity))
      throw new RangeError(`${name} must be above 0 and finite; got ${value}`);
  }
  const hand =
    threadsPerCm >= SOFT_FROM_PER_CM ? "soft" : threadsPerCm < HEAVY_BELOW_PER_CM ? "heavy" : "medium";
  const notes: PrintQualityNote[] = [{ code: "hand", hand, figures: { threadsPerCm, depositUm } }];
  const mottleBelowUm = thirsty ? THIRSTY_MOTTLE_BELOW_UM : MOTTLE_BELOW_UM;
  if (depositUm < mottleBelowUm)
    notes.push({ code: "mottle", thirsty, figures: { depositUm, mottleBelowUm } });
  return notes;
}
