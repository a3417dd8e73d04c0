/** The exported job as text: written with every library item the job uses, read whole or not at all. */
import { ARCHIVE_KIND, ARCHIVE_VERSION, type Archive, archiveSchema } from "../job/archiveDocument.ts";
import type { Documents } from "../job/documents.ts";
import { migrated, type RawArchive } from "../job/migrations.ts";
import type { Problem } from "../job/problem.ts";
import { validateDocuments } from "../job/validateDocuments.ts";
import { removedShelfItems } from "./removedShelfItems.ts";
import { problemsFromIssues } from "./schemaProblems.ts";
import { usedLibrary } from "./usedLibrary.ts";

export type ArchiveReading =
  | { readonly ok: true; readonly documents: Documents }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The text of an archive that holds these documents as they are, the whole library included. */
export function archiveText({ job, library }: Documents): string {
  const archive: Archive = { kind: ARCHIVE_KIND, version: ARCHIVE_VERSION, job, library };
  return `${JSON.stringify(archive, null, 2)}\n`;
}

/** The text of a job's archive: the job and the part of the library that it uses. */
export function writeJobArchive(documents: Documents): string {
  return archiveText({ job: documents.job, library: usedLibrary(documents) });
}

function refuse(code: string, where: string, detail?: string): ArchiveReading {
  return { ok: false, problems: [detail === undefined ? { code, where } : { code, where, detail }] };
}

/**
 * Reads an archive's text. Never throws and never returns a part of it: either the documents, with every reference
 * leading somewhere (but to shelf items that were removed: removedShelfItems), or the problems, each with the path of
 * its field.
 */
export function readJobArchive(text: string): ArchiveReading {
  let raw: unknown;
  try {
    // A byte order mark, which some editors put first, is not part of the text.
    raw = JSON.parse(text.startsWith("\uFEFF") ? text.slice(1) : text);
  } catch {
    return refuse("not-json", "");
  }
  if (typeof raw !== "object" || raw === null || !("kind" in raw) || raw.kind !== ARCHIVE_KIND) {
    return refuse("not-an-archive", "kind");
  }
  const version = "version" in raw ? raw.version : undefined;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return refuse("no-version", "version");
  }
  if (version > ARCHIVE_VERSION) return refuse("newer-version", "version", String(version));
  const current = migrated(raw as RawArchive, version);
  const parsed = archiveSchema.safeParse(current);
  if (!parsed.success) return { ok: false, problems: problemsFromIssues(parsed.error.issues, current, "") };
  const { job, library } = parsed.data;
  const documents: Documents = { job, library };
  const problems = brokenReferences(documents);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, documents };
}

/** What does not hold together, but for items that left the shelf while the job was closed. */
function brokenReferences(documents: Documents): Problem[] {
  const removed = new Set(removedShelfItems(documents).map((problem) => problem.where));
  return validateDocuments(documents).filter(
    (problem) => problem.code !== "missing-reference" || !removed.has(problem.where),
  );
}
