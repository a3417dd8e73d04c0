/** The state of every line at every place before the run: items with their signatures, and what blocks the release. */
import type { ChecklistItem } from "../../core/planning/checklistItem.ts";
import type { MatrixCell } from "../../engine/protocol.ts";
import { type CurrentEntries, checklistSubject, currentEntries } from "../../job/checklistSubject.ts";
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { ChecklistEntry, Line, Place } from "../../job/jobDocument.ts";
import { approvedLotOf, lineChecklist } from "../../job/lineChecklist.ts";
import { lineName } from "../../job/lineName.ts";
import { chosenCandidate, linesAt, lotOfLine, mixOf, setUpOf } from "../../job/lookup.ts";
import type { Problem } from "../../job/problem.ts";
import { mixName } from "../words/mixWords.ts";

/** What is known of the print that was chosen. */
export type ChosenState =
  | { readonly kind: "none" }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "pending" }
  | { readonly kind: "failed" }
  | { readonly kind: "predicted"; readonly cell: MatrixCell };

export interface ItemState {
  readonly item: ChecklistItem;
  readonly state: "open" | "signed" | "earlier" | "withdrawn";
  /** The signature or withdrawal behind the state; null where the item is open. */
  readonly entry: ChecklistEntry | null;
}

export interface RunLine {
  readonly key: string;
  readonly line: Line;
  readonly place: Place;
  readonly lot: GarmentLot | null;
  readonly name: string;
  readonly mixName: string;
  readonly setUpName: string;
  readonly approved: GarmentLot | null;
  readonly chosen: ChosenState;
  readonly subject: string;
  readonly entries: CurrentEntries;
  readonly items: readonly ItemState[];
  /** Blocking items without a signature that counts. */
  readonly open: readonly ItemState[];
  /** `pending` while the prediction is not there: it can still bring items. */
  readonly standing: "released" | "held" | "ready" | "blocked" | "pending";
}

export function runLineKey(lineId: string, placeId: string): string {
  return `${lineId} ${placeId}`;
}

function itemState(item: ChecklistItem, entries: CurrentEntries): ItemState {
  const signed = entries.signed.get(item.code);
  if (signed !== undefined) return { item, state: "signed", entry: signed };
  const withdrawn = entries.withdrawn.get(item.code);
  if (withdrawn !== undefined) return { item, state: "withdrawn", entry: withdrawn };
  const earlier = entries.stale.find((entry) => entry.itemCode === item.code);
  return earlier === undefined
    ? { item, state: "open", entry: null }
    : { item, state: "earlier", entry: earlier };
}

function standingOf(
  chosen: ChosenState,
  entries: CurrentEntries,
  open: readonly ItemState[],
): RunLine["standing"] {
  if (chosen.kind === "pending") return "pending";
  if (entries.isHeld) return "held";
  // An override speaks for unsigned items, never for a mix that is missing or cannot be mixed.
  const isBlocked =
    chosen.kind === "failed" || open.some(({ item }) => item.kind === "choice" || entries.override === null);
  if (isBlocked) return "blocked";
  return entries.isReleased ? "released" : "ready";
}

function runLine(documents: Documents, line: Line, place: Place, chosen: ChosenState): RunLine {
  const { job, library } = documents;
  const lot = lotOfLine(documents, line);
  const candidate = chosenCandidate(job, line.id, place.id);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  const setUp = candidate === null ? null : setUpOf(library.shelf, candidate.setUpId);
  const subject = checklistSubject(documents, line.id, place.id);
  const entries = currentEntries(job, line.id, place.id, subject);
  const cell = chosen.kind === "predicted" ? chosen.cell : null;
  const items = lineChecklist(documents, line, place, cell).map((item) => itemState(item, entries));
  const open = items.filter(({ item, state }) => item.blocking && state !== "signed");
  return {
    key: runLineKey(line.id, place.id),
    line,
    place,
    lot,
    name: lot === null ? "Garment missing" : lineName(lot),
    mixName: mix === null ? "" : mixName(mix, library.shelf),
    setUpName: setUp?.name ?? "",
    approved: approvedLotOf(documents, line),
    chosen,
    subject,
    entries,
    items,
    open,
    standing: standingOf(chosen, entries, open),
  };
}

/** Every garment line at every place it is printed at: place by place, in the order of the job. */
export function runLines(documents: Documents, chosen: ReadonlyMap<string, ChosenState>): RunLine[] {
  const { job } = documents;
  return job.places.flatMap((place) =>
    linesAt(job, place).map((line) =>
      runLine(documents, line, place, chosen.get(runLineKey(line.id, place.id)) ?? { kind: "none" }),
    ),
  );
}
