/** Where a line's lot is not the one that was approved or released: what was, by whom and when. */
import { lotOfSubject } from "../../job/checklistSubject.ts";
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import { standing } from "../../job/standing.ts";
import type { RunLine } from "./runLines.ts";

/** Who said yes to which lot; `by` and `at` are null where only the order says that it stands in for that lot. */
export interface EarlierLot {
  readonly lot: GarmentLot | null;
  readonly by: string | null;
  readonly at: string | null;
}

export interface LotChange {
  readonly approved: EarlierLot | null;
  readonly released: EarlierLot | null;
}

export function lotChangeOf({ library }: Documents, { line, approved, entries }: RunLine): LotChange | null {
  const { staleRelease } = entries;
  const releasedLotId = staleRelease === null ? null : lotOfSubject(staleRelease.subject);
  const isOtherApproved = approved !== null && approved.id !== line.garmentLotId;
  const isOtherReleased = releasedLotId !== null && releasedLotId !== line.garmentLotId;
  if (!isOtherApproved && !isOtherReleased) return null;
  const approval = standing(library.approvals).findLast(({ garmentLotId }) => garmentLotId === approved?.id);
  return {
    approved: isOtherApproved
      ? { lot: approved, by: approval?.approvedBy ?? null, at: approval?.approvedAt ?? null }
      : null,
    released: isOtherReleased
      ? {
          lot: library.garmentLots.find(({ id }) => id === releasedLotId) ?? null,
          by: staleRelease?.signer ?? null,
          at: staleRelease?.at ?? null,
        }
      : null,
  };
}
