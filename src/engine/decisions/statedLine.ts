/** One line of a mix search: which prints are worth knowing the chance of, their money, and where all others are expected. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import type { MixOption } from "../../core/planning/decisions/mixSearch.ts";
import type { UnservedOption } from "../../core/planning/decisions/unservedReason.ts";
import { approvedReference } from "../../job/approvedReference.ts";
import { inkCostPerPiece } from "../../job/decisions/inkMoney.ts";
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import { type MixCandidate, mixKey } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import type { Job, Place } from "../../job/jobDocument.ts";
import { chosenCandidate, mixOf, pieceCount } from "../../job/lookup.ts";
import { isSameRecipe, partsOf } from "../../job/recipeParts.ts";
import type { SetUp } from "../../job/shelfDocument.ts";
import { expectedOf, outlookOf, type PreparedColumn, type PreparedLine, preparedColumn } from "./outlook.ts";
import { type ReadyLine, readyPrint } from "./placePrints.ts";

export interface LookedAt extends UnservedOption {
  readonly mixId: string;
  readonly setUpId: string;
}

/** One mix through one set-up, with its money on a piece. */
interface Column {
  readonly mix: MixCandidate;
  readonly setUp: SetUp;
  readonly inkCost: number;
  readonly tinted: boolean;
  readonly prepared: PreparedColumn;
}

/**
 * A print is in band half the time at most where its median lies outside, and the median lies within this of what is
 * expected (0.46 at most on the demo's and a large job's cells, a test holds it): such a print is not looked at further.
 * The search takes none with a smaller chance than one half.
 */
export const MEDIAN_WITHIN = 0.6;

export function columnsOf(
  documents: Documents,
  place: Place,
  mixes: readonly MixCandidate[],
  setUps: readonly SetUp[],
): Column[] {
  const { shelf } = documents.library;
  return mixes.flatMap((mix) => {
    const tinted = partsOf(mix.recipe, shelf).some(({ kind }) => kind === "colourant");
    return setUps.map((setUp) => ({
      mix,
      setUp,
      tinted,
      inkCost: inkCostPerPiece(mix.recipe, setUp, place, shelf),
      prepared: preparedColumn(readyPrint(documents, place, mix, setUp).column),
    }));
  });
}

/** The chosen mix and set-up of a line as options name them; null where nothing is chosen. */
export function chosenPrintKey(
  job: Job,
  lineId: string,
  placeId: string,
): { readonly mixId: string; readonly setUpId: string } | null {
  const candidate = chosenCandidate(job, lineId, placeId);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  return candidate === null || mix === null ? null : { mixId: mixKey(mix), setUpId: candidate.setUpId };
}

/** Whether what is chosen is what was approved on the line's own lot: no search has a say in that. */
function isApproved({ job, library }: Documents, { line, lot }: ReadyLine, placeId: string): boolean {
  const approved = approvedReference(library, lot.id);
  const candidate = chosenCandidate(job, line.id, placeId);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  if (approved === null || candidate === null || mix === null) return false;
  const { recipe, setUpId } = approved.testPrint;
  return setUpId === candidate.setUpId && isSameRecipe(recipe, mix.recipe);
}

/**
 * The columns of a line whose chance is worth knowing: those that may be in band, what is chosen, and what comes nearest;
 * what was approved and is chosen alone.
 */
function worthKnowing(
  documents: Documents,
  place: Place,
  ready: ReadyLine,
  columns: readonly Column[],
  expected: readonly number[],
): ReadonlySet<number> {
  const { line, band } = ready;
  const chosen = chosenPrintKey(documents.job, line.id, place.id);
  const at = columns.findIndex(({ mix, setUp }) => mix.key === chosen?.mixId && setUp.id === chosen.setUpId);
  if (at >= 0 && isApproved(documents, ready, place.id)) return new Set([at]);
  const off = expected.map((deltaL) => Math.abs(deltaL - band.deltaL));
  const worth = new Set([...off.keys()].filter((c) => off[c]! <= band.tolerance + MEDIAN_WITHIN));
  worth.add(off.indexOf(Math.min(...off)));
  return at < 0 ? worth : worth.add(at);
}

/** What was looked at for one line, and its options among that. */
export function statedLine(
  documents: Documents,
  place: Place,
  line: PreparedLine,
  columns: readonly Column[],
  posterior: Posterior | null,
): { readonly options: readonly MixOption[]; readonly looked: readonly LookedAt[] } {
  const { ready } = line;
  const { viewing } = documents.job;
  const pieces = pieceCount(ready.line);
  const expected = columns.map(({ prepared }) => expectedOf(line, prepared, viewing, posterior));
  const worth = worthKnowing(documents, place, ready, columns, expected);
  const options: MixOption[] = [];
  const looked = columns.map(({ mix, setUp, inkCost, tinted, prepared }, c): LookedAt => {
    const at = { mixId: mix.key, setUpId: setUp.id, tinted };
    if (!worth.has(c)) return { ...at, chanceInBand: 0, deltaL50: expected[c]! };
    const { chanceInBand, deltaL50 } = outlookOf(line, prepared, viewing, posterior);
    options.push({
      garmentId: ready.line.id,
      mixId: mix.key,
      setUpId: setUp.id,
      inkCost: inkCost * pieces,
      expectedLoss: lineLoss(documents, ready.line, chanceInBand).expectedLoss,
      chanceInBand,
    });
    return { ...at, chanceInBand, deltaL50 };
  });
  return { options, looked };
}
