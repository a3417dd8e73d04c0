/** From the shape of an older archive to today's, one version at a time. */
import { ARCHIVE_VERSION } from "./archiveDocument.ts";
import { from1To2 } from "./migrationFrom1.ts";
import { from2To3 } from "./migrationFrom2.ts";

/** Any archive before its schema has seen it. */
export type RawArchive = Readonly<Record<string, unknown>>;

export interface Migration {
  /** The version it reads; it writes the next one, `version` included. */
  readonly from: number;
  readonly up: (archive: RawArchive) => RawArchive;
}

/** Every step from version 1 to ARCHIVE_VERSION, in order; a test holds it complete and each step tried. */
export const MIGRATIONS: readonly Migration[] = [
  { from: 1, up: from1To2 },
  { from: 2, up: from2To3 },
];

/**
 * The archive brought to today's version, still to be checked against its schema.
 * @param version what the archive says it is, 1..ARCHIVE_VERSION; newer ones are refused before.
 * @throws RangeError where no step leads on.
 */
export function migrated(
  archive: RawArchive,
  version: number,
  migrations: readonly Migration[] = MIGRATIONS,
  target: number = ARCHIVE_VERSION,
): RawArchive {
  let current = archive;
  for (let at = version; at < target; at++) {
    const step = migrations.find((migration) => migration.from === at);
    if (step === undefined) throw new RangeError(`migrations must lead on from version ${at}; got none`);
    current = { ...step.up(current), version: at + 1 };
  }
  return current;
}
