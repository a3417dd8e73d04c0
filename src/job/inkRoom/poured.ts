/** What is in a pot or a master by the entries of its ledger, and what would correct it. */
import { type ItemFraction, recipeOfPot } from "../../core/planning/ink/potRecipe.ts";
import {
  type Correction,
  correctWeighing,
  type PotState,
  pouredPot,
} from "../../core/planning/ink/weighCorrection.ts";
import type { WrittenWeighSheet } from "../../core/planning/ink/weighSheet.ts";
import type { Dilution, Pot, PotEntry } from "../potDocument.ts";
import { standingInPlace } from "../standing.ts";

export interface PouredLine {
  readonly lineId: string;
  readonly name: string;
  /** As written on the sheet. */
  readonly wantedGrams: number;
  /** In the pot now, additions and what was taken out counted; null while the line was not weighed. */
  readonly grams: number | null;
}

export interface Poured {
  readonly lines: readonly PouredLine[];
  /** Entries that stand, in their order; a correction takes the place of what it corrects. */
  readonly entries: readonly PotEntry[];
  /** Weighings of a line that has a later one, as when two tablets are united; the later one counts. */
  readonly doubled: readonly PotEntry[];
  readonly takenOutGrams: number;
  /** Whether every line was weighed. */
  readonly isComplete: boolean;
  /** What is in it once every line was weighed; null before. */
  readonly state: PotState | null;
  /** What to add, or why not; null before every line was weighed, and for masters, which are used as they are. */
  readonly correction: Correction | null;
}

/** The entries of one pot without those that were corrected, each correction where the first entry stood. */
export function standingEntries(entries: readonly PotEntry[], potId: string): PotEntry[] {
  return standingInPlace(entries.filter((entry) => entry.potId === potId));
}

/** The entries without weighings of a line that has a later one, and these. */
function withoutDoubled(entries: readonly PotEntry[]) {
  const last = new Map(
    entries.flatMap((entry) => (entry.kind === "weighed" ? [[entry.lineId, entry.id]] : [])),
  );
  const isDoubled = ({ kind, lineId, id }: PotEntry) => kind === "weighed" && last.get(lineId) !== id;
  return {
    entries: entries.filter((entry) => !isDoubled(entry)),
    doubled: entries.filter(isDoubled),
  };
}

/** The stored sheet in the form that the correction takes. */
export function sheetOf({ lines, scaleStepGrams, batchGrams }: Pot | Dilution): WrittenWeighSheet {
  return {
    ok: true,
    lines: lines.map((line) => {
      const stepCount = Math.round(line.grams / scaleStepGrams);
      return { ...line, stepCount, scaleErrorFraction: 1 / stepCount };
    }),
    batchGrams,
    scaleStepGrams,
    totalGrams: lines.reduce((sum, line) => sum + line.grams, 0),
    trueRecipe: recipeOfPot(lines),
    notices: [],
  };
}

/**
 * What was poured by the ledger: lines weighed and added to in order; what is taken out of the mixed ink takes of every
 * line in proportion. A pot's correction keeps within its limit.
 */
export function pouredOf(sheet: Pot | Dilution, entries: readonly PotEntry[]): Poured {
  const { entries: standing, doubled } = withoutDoubled(standingEntries(entries, sheet.id));
  const grams = new Map<string, number>();
  let takenOutGrams = 0;
  for (const entry of standing) {
    if (entry.lineId !== null) grams.set(entry.lineId, (grams.get(entry.lineId) ?? 0) + entry.grams);
    else {
      const total = [...grams.values()].reduce((sum, value) => sum + value, 0);
      const out = Math.min(entry.grams, total);
      takenOutGrams += out;
      if (out > 0) for (const [id, value] of grams) grams.set(id, (value * (total - out)) / total);
    }
  }
  const weighed = new Set(
    standing.flatMap(({ kind, lineId }) => (kind === "weighed" && lineId !== null ? [lineId] : [])),
  );
  const lines = sheet.lines.map(({ id, name, grams: wantedGrams }) => ({
    lineId: id,
    name,
    wantedGrams,
    grams: weighed.has(id) ? (grams.get(id) ?? 0) : null,
  }));
  const filled = lines.map(({ lineId, grams: value }) => ({ id: lineId, grams: value ?? 0 }));
  const isComplete = lines.every((line) => line.grams !== null) && filled.some((line) => line.grams > 0);
  const written = sheetOf(sheet);
  return {
    lines,
    entries: standing,
    doubled,
    takenOutGrams,
    isComplete,
    state: isComplete ? pouredPot(written, filled) : null,
    correction:
      isComplete && "potLimitGrams" in sheet ? correctWeighing(written, filled, sheet.potLimitGrams) : null,
  };
}

/** The recipe of several pots together, by what is in them; null where none is complete. */
export function recipeOfPots(pots: readonly Poured[]): ItemFraction[] | null {
  const parts = pots.flatMap(({ state }) =>
    state === null ? [] : [{ grams: state.totalGrams, contents: state.recipe }],
  );
  return parts.some(({ grams }) => grams > 0) ? recipeOfPot(parts) : null;
}
