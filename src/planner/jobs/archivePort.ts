/** What the planner needs of the archive format; main.tsx hands in the one of src/exchange. */
import type { ArchiveReading } from "../../exchange/jobArchive.ts";
import type { LibraryMerge } from "../../exchange/mergeLibrary.ts";
import type { Documents } from "../../job/documents.ts";
import type { Library } from "../../job/libraryDocument.ts";

export interface ArchivePort {
  read(text: string): ArchiveReading;
  write(documents: Documents): string;
  merge(existing: Library, incoming: Library): LibraryMerge;
}
