/** The shop-wide library: one set of lists that every job refers to by id. */
import { z } from "zod";
import { garmentLotSchema } from "./garmentLotDocument.ts";
import { dilutionSchema, potEntrySchema, potSchema } from "./potDocument.ts";
import { approvalSchema, goodsInCheckSchema, slipAnswerSchema, testPrintSchema } from "./recordDocument.ts";
import { shelfSchema } from "./shelfDocument.ts";

export const librarySchema = z.strictObject({
  shelf: shelfSchema,
  garmentLots: z.array(garmentLotSchema),
  testPrints: z.array(testPrintSchema),
  approvals: z.array(approvalSchema),
  goodsInChecks: z.array(goodsInCheckSchema),
  slipAnswers: z.array(slipAnswerSchema),
  pots: z.array(potSchema),
  dilutions: z.array(dilutionSchema),
  potEntries: z.array(potEntrySchema),
});

export type Library = z.infer<typeof librarySchema>;

/** The lists that are only ever added to: never edited, never undone, united when libraries meet. */
export const LEDGER_NAMES = [
  "testPrints",
  "approvals",
  "goodsInChecks",
  "slipAnswers",
  "pots",
  "dilutions",
  "potEntries",
] as const satisfies readonly (keyof Library)[];

export type LedgerName = (typeof LEDGER_NAMES)[number];
export type LibraryLedgers = Pick<Library, LedgerName>;

/** One value for each of the library's ledgers. */
export function eachLedger<Made extends { readonly [Name in LedgerName]: unknown }>(
  make: <Name extends LedgerName>(name: Name) => Made[Name],
): Made {
  return Object.fromEntries(LEDGER_NAMES.map((name) => [name, make(name)])) as Made;
}

/** The ledgers of a library, without the rest. */
export function ledgersOf(library: LibraryLedgers): LibraryLedgers {
  return eachLedger<LibraryLedgers>((name) => library[name]);
}
