/** What can be done to the record book: add to it. A correction is a new record that names the one it corrects. */
import type { Documents } from "../documents.ts";
import type { LedgerName, Library } from "../libraryDocument.ts";
import {
  type Approval,
  approvalSchema,
  type GoodsInCheck,
  goodsInCheckSchema,
  type SlipAnswer,
  slipAnswerSchema,
  type TestPrint,
  testPrintSchema,
} from "../recordDocument.ts";
import { requireId, requireItem, requireValid, withItem } from "./listEdit.ts";

interface Superseding {
  readonly id: string;
  readonly supersedesId: string | null;
}

/**
 * Asks that a correction names a record of its list that nothing has corrected yet: two corrections of one record
 * would both stand. @throws RangeError otherwise.
 */
export function requireCorrectable(list: readonly Superseding[], entry: Superseding, what: string): void {
  const { supersedesId } = entry;
  if (supersedesId === null) return;
  requireItem(list, supersedesId, `superseded ${what}`);
  if (list.some((one) => one.supersedesId === supersedesId)) {
    throw new RangeError(`${what} ${supersedesId} must not be corrected already; correct its correction`);
  }
}

/** The documents with a ledger of the library replaced. */
export function withLedger<Name extends LedgerName>(
  documents: Documents,
  name: Name,
  list: Library[Name],
): Documents {
  return { ...documents, library: { ...documents.library, [name]: list } };
}

function requireRecipeItems({ shelf }: Library, parts: readonly { readonly itemId: string }[]): void {
  const items = [...shelf.bases, ...shelf.colourants];
  for (const { itemId } of parts) requireId(items, itemId, "recipe item");
}

/** @throws RangeError where the lot, set-up, inks or the corrected record are not in the library. */
export function appendTestPrint(documents: Documents, print: TestPrint): Documents {
  const { library } = documents;
  requireValid(testPrintSchema, print, "testPrint");
  requireId(library.garmentLots, print.garmentLotId, "lot");
  requireId(library.shelf.setUps, print.setUpId, "set-up");
  requireRecipeItems(library, [...print.recipe, ...(print.actualGrams ?? [])]);
  requireCorrectable(library.testPrints, print, "test print");
  return withLedger(documents, "testPrints", withItem(library.testPrints, print, "test print"));
}

/** @throws RangeError where the lot, the print or the corrected approval are not in the library. */
export function appendApproval(documents: Documents, approval: Approval): Documents {
  const { library } = documents;
  requireValid(approvalSchema, approval, "approval");
  requireId(library.garmentLots, approval.garmentLotId, "lot");
  requireId(library.testPrints, approval.testPrintId, "test print");
  requireCorrectable(library.approvals, approval, "approval");
  return withLedger(documents, "approvals", withItem(library.approvals, approval, "approval"));
}

/** @throws RangeError where a lot, the base or the corrected check are not in the library, or the lots are one. */
export function appendGoodsInCheck(documents: Documents, check: GoodsInCheck): Documents {
  const { library } = documents;
  requireValid(goodsInCheckSchema, check, "goodsInCheck");
  requireId(library.garmentLots, check.approvedLotId, "approved lot");
  requireId(library.garmentLots, check.arrivingLotId, "arriving lot");
  if (check.approvedLotId === check.arrivingLotId) {
    throw new RangeError(
      `arrivingLotId must be another lot than the approved one; got ${check.arrivingLotId}`,
    );
  }
  requireId(library.shelf.bases, check.baseId, "base");
  requireCorrectable(library.goodsInChecks, check, "goods-in check");
  return withLedger(documents, "goodsInChecks", withItem(library.goodsInChecks, check, "goods-in check"));
}

/** @throws RangeError where the test print is not in the library. */
export function appendSlipAnswer(documents: Documents, answer: SlipAnswer): Documents {
  const { library } = documents;
  requireValid(slipAnswerSchema, answer, "slipAnswer");
  requireId(library.testPrints, answer.testPrintId, "test print");
  return withLedger(documents, "slipAnswers", withItem(library.slipAnswers, answer, "slip answer"));
}
