/**
 * The matrix as the engine takes it. Documents are never changed in place, so what was made of a lot, a mix or a set-up
 * is kept with that very object: a drag rebuilds one mix, not a hundred spectra.
 */
import type { Application, Garment, InkMix, TargetBand } from "../../core/prediction/inputs.ts";
import type { GarmentKeys, MatrixColumn, MatrixRow } from "../../engine/protocol.ts";
import { lineBand } from "../../job/approvedReference.ts";
import type { Documents } from "../../job/documents.ts";
import { evidenceGarment } from "../../job/evidencePrints.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Candidate, Line, Place } from "../../job/jobDocument.ts";
import { linesAt, lotOfLine, mixOf, setUpOf } from "../../job/lookup.ts";
import type { Mix } from "../../job/mixDocument.ts";
import { applicationFor, applicationProblems, garmentFor, inkMixFor } from "../../job/predictionInputs.ts";
import type { Problem } from "../../job/problem.ts";
import type { SetUp, Shelf } from "../../job/shelfDocument.ts";

type Made<Value> = { readonly value: Value } | { readonly problems: readonly Problem[] };

/** Keeps what was made of a subject as long as the things it depends on stay the same objects. */
function kept<Subject extends object, Value>() {
  const memory = new WeakMap<Subject, { readonly on: readonly unknown[]; readonly made: Value }>();
  return (subject: Subject, on: readonly unknown[], make: () => Value): Value => {
    const before = memory.get(subject);
    if (before?.on.every((thing, index) => thing === on[index])) return before.made;
    const made = make();
    memory.set(subject, { on, made });
    return made;
  };
}

const garments = kept<GarmentLot, Made<Garment>>();
const inkMixes = kept<Mix, Made<InkMix>>();
const applications = kept<SetUp, Map<string, Made<Application>>>();
const rows = kept<Line, MatrixLine>();
const columns = kept<Candidate, MatrixCandidate>();

export function garmentOf(lot: GarmentLot, shelf: Shelf): Made<Garment> {
  return garments(lot, [shelf.defaults.instrument.geometry], () => {
    const found = garmentFor(lot, shelf);
    return found.ok ? { value: found.garment } : { problems: found.problems };
  });
}

export function inkMixOf(mix: Mix, shelf: Shelf): Made<InkMix> {
  return inkMixes(mix, [shelf.bases, shelf.colourants], () => {
    const found = inkMixFor(mix, shelf);
    return found.ok ? { value: found.mix } : { problems: found.problems };
  });
}

function applicationOf(setUp: SetUp, place: Place, shelf: Shelf): Made<Application> {
  const byPrint = applications(setUp, [shelf.meshes, shelf.squeegees], () => new Map());
  const print = `${place.halftoneFraction} ${place.smoothed}`;
  const before = byPrint.get(print);
  if (before !== undefined) return before;
  const problems = applicationProblems(setUp, shelf);
  const made = problems.length > 0 ? { problems } : { value: applicationFor(setUp, place, shelf) };
  byPrint.set(print, made);
  return made;
}

/** A row: the garment of a line, or what keeps it from being predicted. */
export interface MatrixLine {
  readonly line: Line;
  readonly lot: GarmentLot | null;
  readonly garment: Garment | null;
  /** By which test prints are found that teach about it. */
  readonly keys: GarmentKeys | null;
  /** Its band: the place's, or that of its approved print. */
  readonly band: TargetBand;
  readonly problems: readonly Problem[];
}

/** A column: a mix through a set-up, or what keeps it from being predicted. */
export interface MatrixCandidate {
  readonly candidate: Candidate;
  readonly mix: Mix | null;
  readonly setUp: SetUp | null;
  readonly inkMix: InkMix | null;
  readonly application: Application | null;
  /** Base or colourant behind each part of the mix, by position. */
  readonly itemKeys: readonly string[];
  readonly problems: readonly Problem[];
}

function keysOf(lot: GarmentLot, garment: Garment): GarmentKeys {
  const { lotKey, millKey, colourwayKey, styleKey } = evidenceGarment(lot, garment);
  return { lotKey, millKey, colourwayKey, styleKey };
}

export function matrixLines(documents: Documents, place: Place): readonly MatrixLine[] {
  const { shelf } = documents.library;
  return linesAt(documents.job, place).map((line) => {
    const lot = lotOfLine(documents, line);
    const made = lot === null ? null : garmentOf(lot, shelf);
    const { band } = lineBand(documents, line, place);
    return rows(line, [lot, made, band.deltaL, band.tolerance, band.hueLimit], () => {
      if (lot === null || made === null) {
        const problems = [{ code: "missing-reference", where: "garmentLotId" }];
        return { line, lot, garment: null, keys: null, band, problems };
      }
      if (!("value" in made)) return { line, lot, garment: null, keys: null, band, problems: made.problems };
      const garment = made.value;
      return { line, lot, garment, keys: keysOf(lot, garment), band, problems: [] };
    });
  });
}

export function matrixCandidates(documents: Documents, place: Place): readonly MatrixCandidate[] {
  const { job, library } = documents;
  return place.candidates.map((candidate) => {
    const mix = mixOf(job, candidate.mixId);
    const setUp = setUpOf(library.shelf, candidate.setUpId);
    const ink = mix === null ? null : inkMixOf(mix, library.shelf);
    const applied = setUp === null ? null : applicationOf(setUp, place, library.shelf);
    return columns(candidate, [mix, setUp, ink, applied], () => ({
      candidate,
      mix,
      setUp,
      inkMix: ink !== null && "value" in ink ? ink.value : null,
      application: applied !== null && "value" in applied ? applied.value : null,
      itemKeys: mix?.recipe.map(({ itemId }) => itemId) ?? [],
      problems: [
        ...(ink !== null && "problems" in ink ? ink.problems : []),
        ...(mix === null ? [{ code: "missing-reference", where: "mixId" }] : []),
        ...(setUp === null ? [{ code: "set-up-missing", where: "setUpId" }] : []),
        ...(applied !== null && "problems" in applied ? applied.problems : []),
      ],
    }));
  });
}

/** The row as the engine takes it; null where it cannot be predicted. */
export function matrixRow({ line, garment, keys, band }: MatrixLine): MatrixRow | null {
  if (garment === null) return null;
  return { lineId: line.id, garment, band, ...(keys === null ? {} : { keys }) };
}

/** The column as the engine takes it; null where it cannot be predicted. */
export function matrixColumn(column: MatrixCandidate): MatrixColumn | null {
  const { candidate, inkMix, application, itemKeys } = column;
  if (inkMix === null || application === null) return null;
  return { candidateId: candidate.id, mix: inkMix, application, itemKeys, setUpKey: candidate.setUpId };
}
