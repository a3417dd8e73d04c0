/** The mix search of one place stated from the documents: every line on every mix through every set-up, with its money. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import type { MixOption, MixSearchProblem } from "../../core/planning/decisions/mixSearch.ts";
import { inkCostPerPiece, mixOpeningCost } from "../../job/decisions/inkMoney.ts";
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import { type MixCandidate, mixCandidates } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { pieceCount } from "../../job/lookup.ts";
import type { SetUp } from "../../job/shelfDocument.ts";
import { exactTints } from "./exactTints.ts";
import { outlookOf, preparedColumn, preparedLine } from "./outlook.ts";
import { type ReadyLine, readyLines, readyPrint, usableSetUps } from "./placePrints.ts";

export interface StatedSearch {
  readonly problem: MixSearchProblem;
  readonly mixes: readonly MixCandidate[];
  readonly lines: readonly ReadyLine[];
  /** Lines that cannot be predicted. */
  readonly left: readonly string[];
  /** Expected middle of each option of the problem, delta-L*. */
  readonly deltaL50: Float64Array;
}

/** Screens that stand exposed for this place anyway cost nothing more. */
function openSetUpIds(place: Place, documents: Documents): ReadonlySet<string> {
  const chosen = new Set(
    documents.job.choices.filter(({ placeId }) => placeId === place.id).map(({ candidateId }) => candidateId),
  );
  return new Set(place.candidates.filter(({ id }) => chosen.has(id)).map(({ setUpId }) => setUpId));
}

function screensAtHand(setUp: SetUp, { library }: Documents): number {
  return library.shelf.meshes.find(({ id }) => id === setUp.meshId)?.screensAtHand ?? 0;
}

/**
 * States the search. Every line has to be served where anything serves it: what it would earn is not on record.
 * @param onLine told of the part of the lines that is done
 */
export function statedSearch(
  documents: Documents,
  place: Place,
  posterior: Posterior | null,
  onLine: (doneFraction: number) => void = () => {},
): StatedSearch {
  const { job, library } = documents;
  const { shelf } = library;
  const { lines, left } = readyLines(documents, place);
  const setUps = usableSetUps(documents);
  const prepared = lines.map((ready) => preparedLine(ready, job.viewing));
  const mixes = mixCandidates(documents, place);
  const known = new Set(mixes.map(({ key }) => key));
  if (place.mixRules.exactTints) {
    for (const exact of exactTints(documents, place, prepared, setUps, posterior)) {
      if (!known.has(exact.key)) mixes.push(exact);
      known.add(exact.key);
    }
  }
  const columns = mixes.flatMap((mix) =>
    setUps.map((setUp) => {
      const print = readyPrint(documents, place, mix, setUp);
      const inkCost = inkCostPerPiece(mix.recipe, setUp, place, shelf);
      return { mix, setUp, inkCost, prepared: preparedColumn(print.column) };
    }),
  );
  const options: MixOption[] = [];
  const middles: number[] = [];
  prepared.forEach((line, done) => {
    const { ready } = line;
    const pieces = pieceCount(ready.line);
    for (const { mix, setUp, inkCost, prepared: column } of columns) {
      const { chanceInBand, deltaL50 } = outlookOf(line, column, job.viewing, posterior);
      middles.push(deltaL50);
      options.push({
        garmentId: ready.line.id,
        mixId: mix.key,
        setUpId: setUp.id,
        inkCost: inkCost * pieces,
        expectedLoss: lineLoss(documents, ready.line, chanceInBand).expectedLoss,
        chanceInBand,
      });
    }
    onLine((done + 1) / prepared.length);
  });
  const isOpen = openSetUpIds(place, documents);
  const problem: MixSearchProblem = {
    garments: lines.map(({ line }) => ({ id: line.id, unservedCost: null })),
    mixes: mixes.map(({ key, recipe, inStock, lowCure }) => ({
      id: key,
      openingCost: mixOpeningCost(recipe, shelf),
      inStock,
      lowCure,
    })),
    setUps: setUps.map((setUp) => ({
      id: setUp.id,
      openingCost: isOpen.has(setUp.id) ? 0 : shelf.defaults.prices.screen,
      inStock: screensAtHand(setUp, documents) > 0,
    })),
    options,
  };
  return { problem, mixes, lines, left, deltaL50: Float64Array.from(middles) };
}
