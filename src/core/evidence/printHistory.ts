/** What later readings of one print show: how it drifts after printing, and how it lasts through washes. */
import { deltaE00 } from "../colorimetry/ciede2000.ts";
import type { Lab, Viewing } from "../colorimetry/viewing.ts";
import type { EvidenceRecord } from "./record.ts";

/** One reading of a print after its first, as changes against the first. */
export interface LaterReading {
  readonly recordId: string;
  readonly at: string;
  readonly washCount: number;
  /** Change of the pair's delta-L* against the first reading: negative, the print went on darkening. */
  readonly driftDeltaL: number;
  /** CIEDE2000 between the changes of colour then and now, both set on the first reading's bare cloth. */
  readonly driftDeltaE00: number;
}

export interface PrintHistory {
  readonly printKey: string;
  readonly firstId: string;
  /** Unwashed readings in the order of time: drift over 24 and 72 h. */
  readonly drift: readonly LaterReading[];
  /** Washed readings in the order of washes: durability. */
  readonly washed: readonly LaterReading[];
}

const sameViewing = (one: Viewing, other: Viewing): boolean =>
  one.illuminant === other.illuminant && one.observer === other.observer;

const add = (lab: Lab, to: Lab, from: Lab): Lab => ({
  L: lab.L + to.L - from.L,
  a: lab.a + to.a - from.a,
  b: lab.b + to.b - from.b,
});

/**
 * Histories of the prints that were read by instrument more than once, each against its own first unwashed reading; the
 * bare cloth is taken out pair by pair, so that the instrument's drift does not show as the print's. Readings under
 * another light or observer than the first are left out: they do not compare.
 */
export function printHistories(records: readonly EvidenceRecord[]): PrintHistory[] {
  const byPrint = new Map<string, EvidenceRecord[]>();
  for (const record of records) {
    const list = byPrint.get(record.printKey);
    if (list === undefined) byPrint.set(record.printKey, [record]);
    else list.push(record);
  }
  const found: PrintHistory[] = [];
  for (const [printKey, readings] of byPrint) {
    const sorted = readings
      .filter(({ reading }) => reading.kind === "pair")
      .sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : one.id < other.id ? -1 : 1));
    const first = sorted.find(({ washCount }) => washCount === 0);
    if (first === undefined) continue;
    const later = sorted
      .filter((record) => record !== first && sameViewing(record.viewing, first.viewing))
      .flatMap((record) => laterReading(first, record));
    if (later.length === 0) continue;
    found.push({
      printKey,
      firstId: first.id,
      drift: later.filter(({ washCount }) => washCount === 0),
      washed: later.filter(({ washCount }) => washCount > 0).sort((a, b) => a.washCount - b.washCount),
    });
  }
  return found;
}

function laterReading(first: EvidenceRecord, later: EvidenceRecord): LaterReading[] {
  if (first.reading.kind !== "pair" || later.reading.kind !== "pair") return [];
  const then = first.reading;
  const now = later.reading;
  const nowOnFirst = add(then.bare, now.printed, now.bare);
  return [
    {
      recordId: later.id,
      at: later.at,
      washCount: later.washCount,
      driftDeltaL: now.printed.L - now.bare.L - (then.printed.L - then.bare.L),
      driftDeltaE00: deltaE00(then.printed, nowOnFirst),
    },
  ];
}
