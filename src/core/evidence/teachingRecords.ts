/** Which records teach: of each print the latest reading before any wash; the others chart drift and durability. */
import type { EvidenceRecord } from "./record.ts";

export const isLater = (one: EvidenceRecord, other: EvidenceRecord): boolean =>
  one.at > other.at || (one.at === other.at && one.id > other.id);

/** The latest unwashed record of each print, in the order given. */
export function teachingRecords(records: readonly EvidenceRecord[]): EvidenceRecord[] {
  const latest = new Map<string, EvidenceRecord>();
  for (const record of records) {
    if (record.washCount > 0) continue;
    const known = latest.get(record.printKey);
    if (known === undefined || isLater(record, known)) latest.set(record.printKey, record);
  }
  return records.filter((record) => latest.get(record.printKey) === record);
}
