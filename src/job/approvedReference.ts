/** The approved print of a garment lot, and the target band that follows it on the lot and on lines substituted for it. */
import { isSameViewing, type Viewing } from "../core/colorimetry/viewing.ts";
import type { Documents } from "./documents.ts";
import type { Band, Line, Place } from "./jobDocument.ts";
import type { Library } from "./libraryDocument.ts";
import { type ReadingMeans, readingMeans } from "./readingMeans.ts";
import type { Approval, TestPrint } from "./recordDocument.ts";
import { lastCorrection, standing } from "./standing.ts";

export interface ApprovedReference {
  readonly lotId: string;
  /** The print as it is known now: where its record was corrected, the correction. */
  readonly testPrint: TestPrint;
  /** Null where nobody approved it and the shop keeps it as its reference. */
  readonly approval: Approval | null;
}

/**
 * The print that a lot is held against: that of its latest standing approval, else its latest standing record that was
 * kept as reference and not washed; latest in the order of the ledger, since clocks differ. Null where there is none.
 */
export function approvedReference(
  library: Pick<Library, "testPrints" | "approvals">,
  lotId: string,
): ApprovedReference | null {
  const approval = standing(library.approvals).findLast((one) => one.garmentLotId === lotId) ?? null;
  const approved = approval === null ? null : lastCorrection(library.testPrints, approval.testPrintId);
  if (approved !== null) return { lotId, testPrint: approved, approval };
  const kept = standing(library.testPrints).findLast(
    (print) => print.garmentLotId === lotId && print.verdict === "reference" && print.washCount === 0,
  );
  return kept === undefined ? null : { lotId, testPrint: kept, approval: null };
}

export type ReferenceChange =
  | { readonly ok: true; readonly deltaL: number; readonly means: ReadingMeans }
  /** `by-eye`: a step of the grey scale is no delta-L*. `other-light`: it was read under another light or observer. */
  | { readonly ok: false; readonly reason: "by-eye" | "other-light" };

/** The change of L* that the reference showed under a light and observer; readings are never compared across them. */
export function referenceChange({ testPrint }: ApprovedReference, viewing: Viewing): ReferenceChange {
  const { readings } = testPrint;
  if (readings.kind === "by-eye") return { ok: false, reason: "by-eye" };
  const means = readingMeans(readings, viewing);
  if (!isSameViewing(means.viewing, viewing)) return { ok: false, reason: "other-light" };
  return { ok: true, deltaL: means.print.L - means.bare.L, means };
}

export interface LineBand {
  readonly band: Band;
  /** The reference that the band follows; null where it is the place's own. */
  readonly follows: ApprovedReference | null;
  /** Why a reference that there is was not followed; null where there is none, or it was. */
  readonly notFollowed: "by-eye" | "other-light" | "other-direction" | null;
}

/**
 * The band of a line at a place: the place's, moved to the change of the approved print of the line's own lot, else of
 * the lot it stands in for. Tolerance and hue limit stay the place's. A reference that goes the other way than the
 * place's target (a soft white where a clear is wanted) is of another kind of print and is not followed.
 */
export function lineBand({ job, library }: Documents, line: Line, place: Place): LineBand {
  const own = { band: place.band, follows: null };
  const lotIds = [
    line.garmentLotId,
    ...(line.substitutedForLotId === null ? [] : [line.substitutedForLotId]),
  ];
  let notFollowed: LineBand["notFollowed"] = null;
  for (const lotId of lotIds) {
    const reference = approvedReference(library, lotId);
    if (reference === null) continue;
    const change = referenceChange(reference, job.viewing);
    if (change.ok && Math.sign(change.deltaL) === Math.sign(place.band.deltaL)) {
      return { band: { ...place.band, deltaL: change.deltaL }, follows: reference, notFollowed: null };
    }
    notFollowed ??= change.ok ? "other-direction" : change.reason;
  }
  return { ...own, notFollowed };
}
