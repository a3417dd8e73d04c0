/** How a document lies in the database, and how it is read back: checked, and never thrown away. */
import type { z } from "zod";
import { problemsFromIssues } from "../exchange/schemaProblems.ts";
import { ARCHIVE_VERSION } from "../job/archiveDocument.ts";
import { migrated } from "../job/migrations.ts";
import type { Problem } from "../job/problem.ts";

export interface StoredRecord {
  /** Version of the document's schema when it was written. */
  readonly version: number;
  /** Rises with every write, so that a tab notices that another one wrote. */
  readonly revision: number;
  /** When the document itself last changed, as ISO time; records from before this was kept have none. */
  readonly changedAt?: string;
  readonly document: unknown;
}

export type Reading<Document> =
  | { readonly status: "found"; readonly document: Document }
  | { readonly status: "missing" }
  | { readonly status: "unreadable"; readonly problems: readonly Problem[] };

/** The revision of whatever lies there; 0 for nothing and for what is not one of our records. */
export function revisionOf(raw: unknown): number {
  if (typeof raw !== "object" || raw === null || !("revision" in raw)) return 0;
  return typeof raw.revision === "number" && Number.isSafeInteger(raw.revision) ? raw.revision : 0;
}

/** When what lies there last changed; null where that was not kept. */
export function changedAtOf(raw: unknown): string | null {
  if (typeof raw !== "object" || raw === null || !("changedAt" in raw)) return null;
  return typeof raw.changedAt === "string" ? raw.changedAt : null;
}

/**
 * Reads what the database holds under one key.
 *
 * @param raw what the database gave, undefined for nothing
 * @param where "job" or "library", put before the path of every problem
 */
export function readStoredRecord<Schema extends z.ZodType>(
  raw: unknown,
  schema: Schema,
  where: "job" | "library",
): Reading<z.infer<Schema>> {
  if (raw === undefined) return { status: "missing" };
  if (typeof raw !== "object" || raw === null || !("version" in raw) || !("document" in raw)) {
    return { status: "unreadable", problems: [{ code: "not-a-record", where }] };
  }
  if (typeof raw.version !== "number" || !Number.isInteger(raw.version) || raw.version < 1) {
    return { status: "unreadable", problems: [{ code: "no-version", where }] };
  }
  if (raw.version > ARCHIVE_VERSION) {
    return {
      status: "unreadable",
      problems: [{ code: "newer-version", where, detail: String(raw.version) }],
    };
  }
  // A migration sees an archive with the one half that is stored here; it leaves the other half alone.
  const document = migrated({ [where]: raw.document }, raw.version)[where];
  const parsed = schema.safeParse(document);
  if (parsed.success) return { status: "found", document: parsed.data };
  return { status: "unreadable", problems: problemsFromIssues(parsed.error.issues, document, where) };
}
