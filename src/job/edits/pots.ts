/** What can be done to the ink room's records: write a sheet for a pot or a master, and say what was poured. */
import type { Documents } from "../documents.ts";
import type { Library } from "../libraryDocument.ts";
import {
  type Dilution,
  dilutionSchema,
  type Pot,
  type PotEntry,
  potEntrySchema,
  potSchema,
} from "../potDocument.ts";
import { itemIdsOfDilution, itemIdsOfPot } from "../recordReferences.ts";
import { requireId, requireItem, requireValid, withItem } from "./listEdit.ts";
import { requireCorrectable, withLedger } from "./records.ts";

function requireItems({ shelf }: Library, itemIds: readonly string[]): void {
  const items = [...shelf.bases, ...shelf.colourants];
  for (const itemId of itemIds) requireId(items, itemId, "sheet item");
}

/** Pots and dilutions: entries name either by its id. */
const weighedOf = ({ pots, dilutions }: Library): readonly (Pot | Dilution)[] => [...pots, ...dilutions];

/** @throws RangeError where an ink or the corrected pot is not in the library. */
export function appendPot(documents: Documents, pot: Pot): Documents {
  const { library } = documents;
  requireValid(potSchema, pot, "pot");
  requireItems(library, itemIdsOfPot(pot));
  requireCorrectable(library.pots, pot, "pot");
  withItem<{ readonly id: string }>(weighedOf(library), pot, "pot");
  return withLedger(documents, "pots", [...library.pots, pot]);
}

/** @throws RangeError where the colourant, the base or the corrected dilution is not in the library. */
export function appendDilution(documents: Documents, dilution: Dilution): Documents {
  const { library } = documents;
  requireValid(dilutionSchema, dilution, "dilution");
  requireId(library.shelf.colourants, dilution.colourantId, "colourant");
  requireId(library.shelf.bases, dilution.baseId, "base");
  requireItems(library, itemIdsOfDilution(dilution));
  requireCorrectable(library.dilutions, dilution, "dilution");
  withItem<{ readonly id: string }>(weighedOf(library), dilution, "dilution");
  return withLedger(documents, "dilutions", [...library.dilutions, dilution]);
}

/**
 * Adds what was poured or taken out. @throws RangeError where the pot or its line is not in the library; for a line
 * that was weighed already (add to it, or correct it); or for a correction that is of another pot.
 */
export function appendPotEntry(documents: Documents, entry: PotEntry): Documents {
  const { library } = documents;
  const { potEntries } = library;
  requireValid(potEntrySchema, entry, "potEntry");
  const { lines } = requireItem(weighedOf(library), entry.potId, "pot");
  if ((entry.kind === "taken-out") !== (entry.lineId === null)) {
    throw new RangeError(`lineId must be null for what was taken out, and only then; got ${entry.lineId}`);
  }
  if (entry.lineId !== null) requireId(lines, entry.lineId, "line");
  requireCorrectable(potEntries, entry, "pot entry");
  const corrected = potEntries.find(({ id }) => id === entry.supersedesId);
  if (corrected !== undefined && corrected.potId !== entry.potId) {
    throw new RangeError(`a correction must be of the same pot; got ${entry.potId}`);
  }
  const superseded = new Set([entry.supersedesId, ...potEntries.map((one) => one.supersedesId)]);
  const isSecond = potEntries.some(
    (one) =>
      one.kind === "weighed" &&
      entry.kind === "weighed" &&
      one.potId === entry.potId &&
      one.lineId === entry.lineId &&
      !superseded.has(one.id),
  );
  if (isSecond)
    throw new RangeError(`line ${entry.lineId} must not be weighed twice: add to it or correct it`);
  return withLedger(documents, "potEntries", withItem(potEntries, entry, "pot entry"));
}
