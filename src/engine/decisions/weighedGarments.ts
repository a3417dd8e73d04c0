/** Each line at each place with the ways of printing it that are worth weighing: chances, losses and other costs. */
import type { Posterior } from "../../core/evidence/posterior.ts";
import { inkCostPerPiece, mixOpeningCost } from "../../job/decisions/inkMoney.ts";
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import { candidateOf } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { chosenCandidate, mixOf, pieceCount, setUpOf } from "../../job/lookup.ts";
import { applicationProblems } from "../../job/predictionInputs.ts";
import {
  type Outlook,
  outlookOf,
  type PreparedColumn,
  type PreparedLine,
  preparedColumn,
  preparedLine,
} from "./outlook.ts";
import { type ReadyPrint, readyLines, readyPrint } from "./placePrints.ts";

/** Ways of printing a garment that are weighed, the cheapest in expectation first. Invented default. */
const WEIGHED = 6;

interface PlaceColumn {
  readonly candidateId: string;
  readonly print: ReadyPrint;
  readonly prepared: PreparedColumn;
  /** Ink on one piece, money. */
  readonly inkCost: number;
  /** Opening what nothing chosen uses yet, money. */
  readonly openingCost: number;
}

export interface WeighedChoice {
  readonly column: PlaceColumn;
  readonly outlook: Outlook;
  readonly otherCost: number;
  readonly expectedLoss: number;
}

export interface WeighedGarment {
  readonly id: string;
  readonly place: Place;
  readonly line: PreparedLine;
  readonly lossIfOutOfBand: number;
  readonly choices: readonly WeighedChoice[];
  readonly chosen: WeighedChoice | null;
}

const garmentId = (lineId: string, placeId: string): string => `${lineId} ${placeId}`;

/** The matrix's columns of a place, as far as they can be predicted. */
function placeColumns(documents: Documents, place: Place): PlaceColumn[] {
  const { job, library } = documents;
  const { shelf } = library;
  const chosen = new Set(job.choices.map(({ candidateId }) => candidateId));
  const inUse = job.places.flatMap(({ candidates }) => candidates.filter(({ id }) => chosen.has(id)));
  return place.candidates.flatMap(({ id, mixId, setUpId }) => {
    const own = mixOf(job, mixId);
    const setUp = setUpOf(shelf, setUpId);
    if (own === null || setUp === null || applicationProblems(setUp, shelf).length > 0) return [];
    const mix = candidateOf(own.recipe, shelf, { mixId, clothCoverFraction: own.clothCoverFraction });
    if (mix === null) return [];
    const print = readyPrint(documents, place, mix, setUp);
    const openMix = inUse.some((one) => one.mixId === mixId) ? 0 : mixOpeningCost(own.recipe, shelf);
    const openScreen = inUse.some((one) => one.setUpId === setUpId) ? 0 : shelf.defaults.prices.screen;
    return [
      {
        candidateId: id,
        print,
        prepared: preparedColumn(print.column),
        inkCost: inkCostPerPiece(own.recipe, setUp, place, shelf),
        openingCost: openMix + openScreen,
      },
    ];
  });
}

function weighedGarment(
  documents: Documents,
  place: Place,
  line: PreparedLine,
  columns: readonly PlaceColumn[],
  posterior: Posterior | null,
): WeighedGarment {
  const { job } = documents;
  const own = line.ready.line;
  const chosenId = chosenCandidate(job, own.id, place.id)?.id ?? null;
  const { lossIfOutOfBand } = lineLoss(documents, own, 0);
  const weighed = columns.map((column): WeighedChoice => {
    const outlook = outlookOf(line, column.prepared, job.viewing, posterior);
    return {
      column,
      outlook,
      otherCost: column.inkCost * pieceCount(own) + column.openingCost,
      expectedLoss: lossIfOutOfBand * (1 - outlook.chanceInBand),
    };
  });
  const costOf = ({ otherCost, expectedLoss }: WeighedChoice) => otherCost + expectedLoss;
  const cheapest = weighed.toSorted((one, other) => costOf(one) - costOf(other)).slice(0, WEIGHED);
  const chosen = weighed.find(({ column }) => column.candidateId === chosenId) ?? null;
  return {
    id: garmentId(own.id, place.id),
    place,
    line,
    lossIfOutOfBand,
    choices: chosen === null || cheapest.includes(chosen) ? cheapest : [...cheapest, chosen],
    chosen,
  };
}

/** Every line at every place with its choices weighed, and the lines that cannot be predicted. */
export function weighedGarments(
  documents: Documents,
  posterior: Posterior | null,
): {
  readonly garments: readonly WeighedGarment[];
  readonly left: readonly { readonly lineId: string; readonly placeId: string }[];
} {
  const left: { lineId: string; placeId: string }[] = [];
  const garments = documents.job.places.flatMap((place) => {
    const ready = readyLines(documents, place);
    left.push(...ready.left.map((lineId) => ({ lineId, placeId: place.id })));
    const columns = placeColumns(documents, place);
    if (columns.length === 0) return [];
    return ready.lines.map((one) =>
      weighedGarment(documents, place, preparedLine(one, documents.job.viewing), columns, posterior),
    );
  });
  return { garments, left };
}
