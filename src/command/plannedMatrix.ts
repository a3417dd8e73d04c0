/** The predicted matrix of a job, by its record book: each line × print place × candidate mix, as plain rows. */
import type { Lab, Viewing } from "../core/colorimetry/viewing.ts";
import { beliefFor } from "../core/evidence/beliefFor.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import type { Application, Garment, InkMix, TargetBand } from "../core/prediction/inputs.ts";
import type { EvidenceLevel, PredictionWarning } from "../core/prediction/prediction.ts";
import { predictPrint } from "../core/prediction/predictPrint.ts";
import { learnedFrom } from "../engine/decisions/posteriorOf.ts";
import { removedShelfItems } from "../exchange/removedShelfItems.ts";
import { lineBand } from "../job/approvedReference.ts";
import type { Documents } from "../job/documents.ts";
import { evidencePrint } from "../job/evidencePrints.ts";
import type { GarmentLot } from "../job/garmentLotDocument.ts";
import type { Line, Place } from "../job/jobDocument.ts";
import { lineName } from "../job/lineName.ts";
import { isPrintedAt, pieceCount } from "../job/lookup.ts";
import { applicationFor, applicationProblems, garmentFor, inkMixFor } from "../job/predictionInputs.ts";
import type { Problem } from "../job/problem.ts";
import type { Recipe } from "../job/recipeParts.ts";

export interface MatrixRow {
  readonly place: string;
  readonly lineId: string;
  readonly garment: string;
  readonly lot: string;
  readonly pieceCount: number;
  readonly candidateId: string;
  readonly mix: string;
  readonly setUp: string;
  readonly depositUm: number;
  readonly depositWeighed: boolean;
  readonly bare: Lab;
  readonly printed: Lab;
  readonly deltaL: number;
  readonly deltaE00: number;
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  readonly printed5: Lab;
  readonly printed50: Lab;
  readonly printed95: Lab;
  /** The band it is held against: the place's, or that of its approved print. */
  readonly bandDeltaL: number;
  readonly bandTolerance: number;
  readonly chanceInBand: number;
  readonly evidence: EvidenceLevel;
  readonly warnings: readonly PredictionWarning[];
}

export type PlannedMatrix =
  | { readonly ok: true; readonly viewing: Viewing; readonly rows: readonly MatrixRow[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface PreparedLine {
  readonly id: string;
  readonly line: Line;
  readonly lot: GarmentLot;
  readonly garment: Garment;
  readonly pieceCount: number;
}

interface PreparedCandidate {
  readonly id: string;
  readonly mixName: string;
  readonly setUpName: string;
  readonly mix: InkMix;
  readonly recipe: Recipe;
  readonly setUpId: string;
  readonly application: Application;
}

function found<Item extends { readonly id: string }>(items: readonly Item[], id: string): Item {
  const item = items.find((candidate) => candidate.id === id);
  if (item === undefined) throw new RangeError(`id must lead to an item of the archive; got ${id}`);
  return item;
}

/** A problem of a part, with the path of that part before it. */
function placed(problems: readonly Problem[], where: string): Problem[] {
  return problems.map((problem) => ({
    ...problem,
    where: problem.where === "" ? where : `${where}.${problem.where}`,
  }));
}

function preparedLines({ job, library }: Documents, problems: Problem[]): PreparedLine[] {
  return job.lines.flatMap((line) => {
    const lot = found(library.garmentLots, line.garmentLotId);
    const garment = garmentFor(lot, library.shelf);
    if (!garment.ok) {
      problems.push(...placed(garment.problems, `library.garmentLots[${library.garmentLots.indexOf(lot)}]`));
      return [];
    }
    return [{ id: line.id, line, lot, garment: garment.garment, pieceCount: pieceCount(line) }];
  });
}

function preparedCandidates(
  place: Place,
  { job, library }: Documents,
  problems: Problem[],
): PreparedCandidate[] {
  return place.candidates.flatMap((candidate) => {
    const mix = found(job.mixes, candidate.mixId);
    const setUp = found(library.shelf.setUps, candidate.setUpId);
    const ink = inkMixFor(mix, library.shelf);
    if (!ink.ok) {
      problems.push(...placed(ink.problems, `job.mixes[${job.mixes.indexOf(mix)}]`));
      return [];
    }
    const unknownDeposit = applicationProblems(setUp, library.shelf);
    if (unknownDeposit.length > 0) {
      const index = library.shelf.setUps.indexOf(setUp);
      problems.push(...placed(unknownDeposit, `library.shelf.setUps[${index}]`));
      return [];
    }
    const application = applicationFor(setUp, place, library.shelf);
    return [
      {
        id: candidate.id,
        mixName: mix.name,
        setUpName: setUp.name,
        mix: ink.mix,
        recipe: mix.recipe,
        setUpId: setUp.id,
        application,
      },
    ];
  });
}

function matrixRow(
  line: PreparedLine,
  place: Place,
  candidate: PreparedCandidate,
  { viewing, band, posterior }: { viewing: Viewing; band: TargetBand; posterior: Posterior | null },
): MatrixRow {
  const { application } = candidate;
  const { garment } = line;
  const belief =
    posterior === null
      ? {}
      : { belief: beliefFor(posterior, evidencePrint(line.lot, { ...candidate, garment }), viewing) };
  const prediction = predictPrint({ garment, mix: candidate.mix, application, viewing, band, ...belief });
  const { p5, p50, p95, chanceInBand } = prediction.spread;
  return {
    place: place.name,
    lineId: line.id,
    garment: lineName(line.lot),
    lot: line.lot.lot,
    pieceCount: line.pieceCount,
    candidateId: candidate.id,
    mix: candidate.mixName,
    setUp: candidate.setUpName,
    depositUm: application.depositUm,
    depositWeighed: application.depositWeighed,
    bare: prediction.bare,
    printed: prediction.printed,
    deltaL: prediction.deltaL,
    deltaE00: prediction.deltaE00,
    deltaL5: p5.deltaL,
    deltaL50: p50.deltaL,
    deltaL95: p95.deltaL,
    printed5: p5.lab,
    printed50: p50.lab,
    printed95: p95.lab,
    bandDeltaL: band.deltaL,
    bandTolerance: band.tolerance,
    chanceInBand,
    evidence: prediction.evidence,
    warnings: prediction.warnings,
  };
}

/**
 * The whole matrix, or every reason why a part of it cannot be predicted; never a part of it.
 *
 * @param documents as an archive was read: every reference but those to removed shelf items leads somewhere
 */
export function plannedMatrix(documents: Documents): PlannedMatrix {
  const { job } = documents;
  const removed = removedShelfItems(documents);
  if (removed.length > 0) return { ok: false, problems: removed };
  const problems: Problem[] = [];
  const lines = preparedLines(documents, problems);
  const places = job.places.map((place) => ({
    place,
    candidates: preparedCandidates(place, documents, problems),
  }));
  if (problems.length > 0) return { ok: false, problems };
  const rows: MatrixRow[] = [];
  const posterior = learnedFrom(documents.library);
  for (const { place, candidates } of places) {
    for (const line of lines.filter(({ id }) => isPrintedAt(place, id))) {
      for (const candidate of candidates) {
        try {
          const { band } = lineBand(documents, line.line, place);
          rows.push(matrixRow(line, place, candidate, { viewing: job.viewing, band, posterior }));
        } catch (error) {
          // The core throws for what the schema allows and no print can have; anything else is a fault of ours.
          if (!(error instanceof RangeError)) throw error;
          const where = `job.lines[${job.lines.findIndex(({ id }) => id === line.id)}]`;
          return { ok: false, problems: [{ code: "not-predictable", where, detail: error.message }] };
        }
      }
    }
  }
  return { ok: true, viewing: job.viewing, rows };
}
