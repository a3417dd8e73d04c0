/** Which garment lots and which inks the append-only records name. */
import type { LibraryLedgers } from "./libraryDocument.ts";
import type { Dilution, Pot } from "./potDocument.ts";
import type { TestPrint } from "./recordDocument.ts";

const idsOfParts = (parts: readonly { readonly itemId: string }[]) => parts.map(({ itemId }) => itemId);

export function itemIdsOfTestPrint({ recipe, actualGrams }: TestPrint): string[] {
  return [...idsOfParts(recipe), ...idsOfParts(actualGrams ?? [])];
}

function itemIdsOfSheet({ lines, baseLots }: Pick<Pot, "lines" | "baseLots">): string[] {
  return [...lines.flatMap((line) => idsOfParts(line.contents)), ...idsOfParts(baseLots)];
}

export function itemIdsOfPot(pot: Pot): string[] {
  return [...idsOfParts(pot.recipe), ...itemIdsOfSheet(pot)];
}

export function itemIdsOfDilution(dilution: Dilution): string[] {
  return [dilution.colourantId, dilution.baseId, ...itemIdsOfSheet(dilution)];
}

/** Ids of bases and colourants. */
export function itemIdsOfLedgers({
  testPrints,
  goodsInChecks,
  pots,
  dilutions,
}: Pick<LibraryLedgers, "testPrints" | "goodsInChecks" | "pots" | "dilutions">): Set<string> {
  return new Set([
    ...testPrints.flatMap(itemIdsOfTestPrint),
    ...goodsInChecks.map((check) => check.baseId),
    ...pots.flatMap(itemIdsOfPot),
    ...dilutions.flatMap(itemIdsOfDilution),
  ]);
}

export function lotIdsOfLedgers({
  testPrints,
  approvals,
  goodsInChecks,
}: Pick<LibraryLedgers, "testPrints" | "approvals" | "goodsInChecks">): Set<string> {
  return new Set([
    ...[...testPrints, ...approvals].map((record) => record.garmentLotId),
    ...goodsInChecks.flatMap((check) => [check.approvedLotId, check.arrivingLotId]),
  ]);
}
