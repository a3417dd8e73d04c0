/** Masters on the shelf: which may be weighed from today, how a new one is weighed, and what came of it. */

import { diluteMaster, type MasterDilution, masterStateOn } from "../../core/planning/ink/masterDilution.ts";
import type { AvailableMaster } from "../../core/planning/ink/potRecipe.ts";
import type { Remark } from "../../core/planning/ink/remark.ts";
import type { WeighSheetLine } from "../../core/planning/ink/weighSheet.ts";
import { recipeItem } from "../lookup.ts";
import type { Dilution, SheetLine } from "../potDocument.ts";
import type { Master, Shelf } from "../shelfDocument.ts";
import type { ShelfMaster } from "./inkRoom.ts";
import type { Poured } from "./poured.ts";

/** A fraction as percent, with no more digits than it has. */
const percentText = (fraction: number) => `${Number((fraction * 100).toFixed(2))} %`;

/** What a master is called on a sheet: "Black, 10 % in Curable clear". */
export function masterName({ colourantId, baseId, massFraction }: Master, shelf: Shelf): string {
  const nameOf = (id: string) => recipeItem(shelf, id)?.item.name ?? "";
  return `${nameOf(colourantId)}, ${percentText(massFraction)} in ${nameOf(baseId)}`;
}

/** The name of whatever a line of a sheet stands for. */
export function sheetLineName(id: string, shelf: Shelf): string {
  const master = shelf.masters.find((one) => one.id === id);
  return master === undefined ? (recipeItem(shelf, id)?.item.name ?? "") : masterName(master, shelf);
}

/** Every master with its standing on a day. */
export function shelfMasters(shelf: Shelf, today: string): ShelfMaster[] {
  return shelf.masters.map((master) => ({
    master,
    name: masterName(master, shelf),
    state: master.expiresOn === null ? "no-date" : masterStateOn(master.expiresOn, today),
  }));
}

/** Those that can be weighed from: in date, and a dilution (a master of nothing or of all is none). */
export function availableMasters(masters: readonly ShelfMaster[]): AvailableMaster[] {
  return masters
    .filter(({ master, state }) => state !== "expired" && master.massFraction > 0 && master.massFraction < 1)
    .map(({ master: { id, colourantId, baseId, massFraction } }) => ({
      id,
      colourantId,
      baseId,
      massFraction,
    }));
}

export interface DilutionRequest {
  readonly colourantId: string;
  readonly baseId: string;
  readonly massFraction: number;
  readonly batchGrams: number;
  readonly scaleStepGrams: number;
  readonly madeOn: string;
  readonly expiresOn: string | null;
}

/** The weigh sheet of a new master, made from stronger ones of the shelf where that weighs better. */
export function dilutionSheet(shelf: Shelf, request: DilutionRequest): MasterDilution {
  const masters = availableMasters(shelfMasters(shelf, request.madeOn));
  return diluteMaster({ ...request, masters });
}

/** Lines of a sheet as a record keeps them. */
export function sheetLinesToWrite(lines: readonly WeighSheetLine[], shelf: Shelf): SheetLine[] {
  return lines.map(({ id, role, contents, exactGrams, grams }) => ({
    id,
    role,
    name: sheetLineName(id, shelf),
    contents: contents.map((part) => ({ ...part })),
    exactGrams,
    grams,
  }));
}

/** The record of a dilution that is about to be weighed. @throws RangeError where its sheet refuses. */
export function dilutionToWrite(
  shelf: Shelf,
  request: DilutionRequest,
  record: Pick<Dilution, "id" | "by" | "at" | "note" | "baseLots">,
): Dilution {
  const made = dilutionSheet(shelf, request);
  if (!made.ok) throw new RangeError(`the sheet must be weighable; got ${codesOf(made.problems)}`);
  const { colourantId, baseId, massFraction, batchGrams, scaleStepGrams, madeOn, expiresOn } = request;
  return {
    ...record,
    colourantId,
    baseId,
    massFraction,
    madeOn,
    scaleStepGrams,
    batchGrams,
    lines: sheetLinesToWrite(made.sheet.lines, shelf),
    expiresOn,
    supersedesId: null,
  };
}

const codesOf = (remarks: readonly Remark<string>[]) => remarks.map(({ code }) => code).join(", ");

/**
 * The master for the shelf that came of a dilution: its part of colourant by what was poured.
 * @throws RangeError where it was not weighed to the end, or holds none of its colourant or nothing else.
 */
export function masterOfDilution(dilution: Dilution, poured: Poured, id: string): Master {
  const { colourantId, baseId, madeOn, expiresOn } = dilution;
  if (poured.state === null) throw new RangeError(`every line of dilution ${dilution.id} must be weighed`);
  const part = poured.state.recipe.find(({ itemId }) => itemId === colourantId);
  const massFraction = part?.massFraction ?? 0;
  if (!(massFraction > 0 && massFraction < 1)) {
    throw new RangeError(`massFraction of a master must be between 0 and 1; got ${massFraction}`);
  }
  const gramsLeft = poured.state.totalGrams;
  return {
    id,
    colourantId,
    baseId,
    massFraction,
    madeOn,
    expiresOn,
    gramsLeft,
    dilutionId: dilution.id,
    note: "",
  };
}
