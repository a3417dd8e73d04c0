/** What the press log says of a line at a place: its first-offs and pulls against the band, and what stands now. */
import type { FirstOffVerdict } from "../../core/planning/decisions/firstOff.ts";
import type { MeanReading } from "../../core/planning/decisions/readingUncertainty.ts";
import { judgePulls, type Pull, type PulledPoint } from "../../core/planning/decisions/runRule.ts";
import { type LineBand, lineBand } from "../approvedReference.ts";
import { checklistSubject } from "../checklistSubject.ts";
import type { Documents } from "../documents.ts";
import type { GarmentLot } from "../garmentLotDocument.ts";
import type { Line, Place } from "../jobDocument.ts";
import { lotOfLine } from "../lookup.ts";
import type { PressEntry } from "../pressDocument.ts";
import type { TestPrint } from "../recordDocument.ts";
import { lastCorrection, standingInPlace } from "../standing.ts";
import { judgeReading, referenceSdOf } from "./firstOffReading.ts";

/** An entry that stands, seen under today's band; what was said of it then is in the entry. */
export interface LoggedEntry {
  readonly entry: PressEntry;
  /** Whether it was printed with the lot, mix and set-up that are chosen now. */
  readonly isOfThisChoice: boolean;
  /** Null where the band has no width. */
  readonly reading: MeanReading | null;
  /** Judged as a first-off; what counts of a pull is its point. */
  readonly verdict: FirstOffVerdict | null;
  /** Its place in the run; null for entries of an earlier choice. */
  readonly point: PulledPoint | null;
  /** The first-off's record, the correction of it where there is one; null for a pull. */
  readonly print: TestPrint | null;
  /** Its record was corrected in the record book: the entry still says what was read then. */
  readonly recordCorrected: boolean;
}

export interface PressRun {
  readonly line: Line;
  readonly place: Place;
  readonly lot: GarmentLot | null;
  /** Lot, mix and set-up as chosen now, as entries name them. */
  readonly subject: string;
  readonly lineBand: LineBand;
  /** Standard uncertainty of what the band follows; 0 where it is a figure. */
  readonly referenceSd: number;
  /** All that stands, in the order of the log. */
  readonly entries: readonly LoggedEntry[];
  readonly firstOffs: readonly LoggedEntry[];
  /** First-offs and pulls of the present choice, which one chart can hold. */
  readonly points: readonly LoggedEntry[];
  /** The latest first-off of the present choice. */
  readonly firstOff: LoggedEntry | null;
  /** The latest entry of the present choice, which says what stands. */
  readonly latest: LoggedEntry | null;
}

/** A first-off and a recovery begin a level of their own. */
function changeOf({ kind, change }: PressEntry): Pull["change"] {
  if (change === "recovery" || (kind === "first-off" && change === "none")) return "restart";
  return change;
}

function pointsOf(entries: readonly LoggedEntry[], { band }: LineBand): Map<string, PulledPoint> {
  const pulls = entries.flatMap(({ entry, reading, isOfThisChoice }): Pull[] => {
    if (!isOfThisChoice || reading === null) return [];
    const { mean, standardUncertainty } = reading;
    return [{ id: entry.id, mean, standardUncertainty, change: changeOf(entry) }];
  });
  return new Map(pulls.length === 0 ? [] : judgePulls(pulls, band).map((point) => [point.id, point]));
}

/** @throws RangeError where the job has no such line or place. */
export function pressRun(documents: Documents, line: Line, place: Place): PressRun {
  const { job, library } = documents;
  const subject = checklistSubject(documents, line.id, place.id);
  const found = lineBand(documents, line, place);
  const lot = lotOfLine(documents, line);
  const referenceSd = referenceSdOf(found.follows, library, job.viewing);
  const own = job.pressLog.filter((entry) => entry.lineId === line.id && entry.placeId === place.id);
  const read = standingInPlace(own).map((entry): LoggedEntry => {
    const judged = lot === null ? null : judgeReading(entry.readings, lot, found, referenceSd);
    const print = lastCorrection(library.testPrints, entry.testPrintId);
    return {
      entry,
      isOfThisChoice: entry.subject === subject,
      reading: judged?.ok ? judged.reading : null,
      verdict: judged?.ok ? judged.verdict : null,
      point: null,
      print,
      recordCorrected: print !== null && print.id !== entry.testPrintId,
    };
  });
  const points = pointsOf(read, found);
  const entries = read.map((logged) => ({ ...logged, point: points.get(logged.entry.id) ?? null }));
  const present = entries.filter(({ isOfThisChoice }) => isOfThisChoice);
  const firstOffs = entries.filter(({ entry }) => entry.kind === "first-off");
  return {
    line,
    place,
    lot,
    subject,
    lineBand: found,
    referenceSd,
    entries,
    firstOffs,
    points: present,
    firstOff: firstOffs.findLast(({ isOfThisChoice }) => isOfThisChoice) ?? null,
    latest: present.at(-1) ?? null,
  };
}

/** What an entry says to do. */
export type PressAction = PressEntry["said"]["action"];

/** What `judgePulls` would say of one more pull of that reading, after those of the run; null where the band has no width. */
export function nextPoint(
  { points, lineBand: { band } }: PressRun,
  reading: MeanReading,
  change: PressEntry["change"],
  supersedesId: string | null,
): PulledPoint | null {
  if (!(band.tolerance > 0)) return null;
  const id = "next";
  const pulls: Pull[] = [];
  const drawn = (one: MeanReading, as: Pull["change"], pullId: string): Pull => ({
    id: pullId,
    mean: one.mean,
    standardUncertainty: one.standardUncertainty,
    change: as,
  });
  const next = drawn(reading, change === "recovery" ? "restart" : change, id);
  for (const { entry, reading: read } of points) {
    // A correction stands where the pull stood that it corrects.
    if (entry.id === supersedesId) pulls.push(next);
    else if (read !== null) pulls.push(drawn(read, changeOf(entry), entry.id));
  }
  if (!pulls.includes(next)) pulls.push(next);
  return judgePulls(pulls, band).find((point) => point.id === id) ?? null;
}
