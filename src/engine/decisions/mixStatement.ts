/** The mix search of one place stated from the documents: every line on every mix through every set-up, with its money. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import type { MixOption, MixSearchProblem } from "../../core/planning/decisions/mixSearch.ts";
import { mixOpeningCost } from "../../job/decisions/inkMoney.ts";
import { type MixCandidate, mixCandidates } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import type { SetUp } from "../../job/shelfDocument.ts";
import { exactTints } from "./exactTints.ts";
import { preparedLine } from "./outlook.ts";
import { type ReadyLine, readyLines, usableSetUps } from "./placePrints.ts";
import { columnsOf, type LookedAt, statedLine } from "./statedLine.ts";

export interface StatedSearch {
  /** Its options are the prints that may serve a line: see `statedSearch`. */
  readonly problem: MixSearchProblem;
  readonly mixes: readonly MixCandidate[];
  readonly lines: readonly ReadyLine[];
  /** Lines that cannot be predicted. */
  readonly left: readonly string[];
  /** By line, all prints that were looked at with where they are expected: why nothing serves it, where nothing does. */
  readonly looked: ReadonlyMap<string, readonly LookedAt[]>;
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
 * States the search. Options are the prints that may be in band as often as not, those chosen now, and for each line the one
 * expected nearest to its band. Every line has to be served where anything serves it: what it would earn is not on record.
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
  const columns = columnsOf(documents, place, mixes, setUps);
  const options: MixOption[] = [];
  const looked = new Map<string, readonly LookedAt[]>();
  prepared.forEach((line, done) => {
    const stated =
      columns.length === 0
        ? { options: [], looked: [] }
        : statedLine(documents, place, line, columns, posterior);
    options.push(...stated.options);
    looked.set(line.ready.line.id, stated.looked);
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
  return { problem, mixes, lines, left, looked };
}
