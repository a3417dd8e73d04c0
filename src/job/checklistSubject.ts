/** What a checklist signature was given for, and which signatures still count. */
import type { Documents } from "./documents.ts";
import type { ChecklistEntry, Job } from "./jobDocument.ts";
import { chosenCandidate, mixOf, setUpOf } from "./lookup.ts";
import { recipeKey } from "./recipeKey.ts";

/**
 * The lot, the chosen recipe and the set-up of a line at a place as one canonical string: equal for equal choices,
 * different as soon as one of them changes. The order of a recipe and a component of nothing do not count; what the
 * set-up is made of (mesh, squeegee, strokes), halftone and smoothing do. A choice not made is written as "none".
 * @throws RangeError where the job has no such line or place.
 */
export function checklistSubject(documents: Documents, lineId: string, placeId: string): string {
  const { job, library } = documents;
  const line = job.lines.find((one) => one.id === lineId);
  const place = job.places.find((one) => one.id === placeId);
  if (line === undefined) throw new RangeError(`line must exist; got id ${lineId}`);
  if (place === undefined) throw new RangeError(`place must exist; got id ${placeId}`);
  const lot = `lot:${line.garmentLotId}`;
  const candidate = chosenCandidate(job, lineId, placeId);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  if (candidate === null || mix === null) return `${lot};mix:none`;
  const setUp = setUpOf(library.shelf, candidate.setUpId);
  const printed = [
    candidate.setUpId,
    setUp?.meshId ?? "none",
    setUp?.squeegeeId ?? "none",
    setUp?.strokeCount ?? 0,
    place.halftoneFraction,
    place.smoothed ? "smoothed" : "plain",
  ].join(",");
  return `${lot};mix:${recipeKey(mix.recipe)};cover:${mix.clothCoverFraction ?? "default"};set-up:${printed}`;
}

/** The garment lot that a subject was written for; null where the text is not one of `checklistSubject`. */
export function lotOfSubject(subject: string): string | null {
  return /^lot:([^;]+);/.exec(subject)?.[1] ?? null;
}

/** The present state of one line's checklist at one place, read from the ledger. */
export interface CurrentEntries {
  /** By item code: the signature that counts. */
  readonly signed: ReadonlyMap<string, ChecklistEntry>;
  /** By item code: the withdrawal that stands, where the item was signed for this subject and taken back. */
  readonly withdrawn: ReadonlyMap<string, ChecklistEntry>;
  /** Given for another lot, recipe or set-up and not taken back; one per item, the latest, and only where nothing newer was said for this subject. */
  readonly stale: readonly ChecklistEntry[];
  /** The latest of release and hold for this subject; null while the line is open. */
  readonly standing: ChecklistEntry | null;
  readonly isReleased: boolean;
  readonly isHeld: boolean;
  /** The override in force: the latest for this subject since the last hold. */
  readonly override: ChecklistEntry | null;
  /** Every override ever given here, whatever for: they stay visible. */
  readonly overrides: readonly ChecklistEntry[];
  /** A release given for another subject, with nothing newer said for this one. */
  readonly staleRelease: ChecklistEntry | null;
}

/** Reads the ledger in the order it was written; times are for people, clocks differ. */
export function currentEntries(job: Job, lineId: string, placeId: string, subject: string): CurrentEntries {
  const signed = new Map<string, ChecklistEntry>();
  const withdrawn = new Map<string, ChecklistEntry>();
  const elsewhere = new Map<string, ChecklistEntry>();
  let standing: ChecklistEntry | null = null;
  let override: ChecklistEntry | null = null;
  let staleRelease: ChecklistEntry | null = null;
  const overrides: ChecklistEntry[] = [];
  for (const entry of job.checklist) {
    if (entry.lineId !== lineId || entry.placeId !== placeId) continue;
    const counts = entry.subject === subject;
    if (entry.action === "override") {
      overrides.push(entry);
      if (counts) override = entry;
    } else if (entry.itemCode !== null) {
      const { itemCode, action } = entry;
      if (!counts) {
        if (action === "sign") elsewhere.set(itemCode, entry);
        else if (elsewhere.get(itemCode)?.subject === entry.subject) elsewhere.delete(itemCode);
        continue;
      }
      elsewhere.delete(itemCode);
      (action === "sign" ? signed : withdrawn).set(itemCode, entry);
      (action === "sign" ? withdrawn : signed).delete(itemCode);
    } else if (counts) {
      standing = entry;
      staleRelease = null;
      if (entry.action === "hold") override = null;
    } else {
      staleRelease = entry.action === "release" ? entry : null;
    }
  }
  return {
    signed,
    withdrawn,
    stale: [...elsewhere.values()].filter(({ itemCode }) => itemCode === null || !signed.has(itemCode)),
    standing,
    isReleased: standing?.action === "release",
    isHeld: standing?.action === "hold",
    override,
    overrides,
    staleRelease: standing === null ? staleRelease : null,
  };
}
