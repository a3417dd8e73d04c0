/** Which column of a plain table holds what: guessed from the headings, put right by hand, remembered, used again. */
import type { ColumnRole } from "./columnNames.ts";
import { guessRoles } from "./guessRoles.ts";
import type { ReflectanceScale } from "./readSample.ts";

/**
 * A plain value that can be stored as it is. A heading that stands twice in a file is matched in order, so a repeated
 * one keeps its own role.
 */
export interface ColumnMatching {
  readonly columns: readonly { readonly heading: string; readonly role: ColumnRole }[];
  /** How the shop's file writes reflectances, once somebody said so. */
  readonly scale: ReflectanceScale | null;
}

/** The matching that the headings suggest, every column with a role ("left-out" included); null where none has readings. */
export function guessColumns(headings: readonly string[]): ColumnMatching | null {
  const { roles, hasReadings } = guessRoles(headings);
  if (!hasReadings) return null;
  const columns = headings.map((heading, i) => ({ heading, role: roles[i] ?? "left-out" }) as const);
  return { columns, scale: null };
}

/** Beyond this the headings of a file are compared no further. */
const COMPARED_CHARACTERS = 100;

/** Headings count as the same whatever their case and blanks. */
export function plainHeading(heading: string): string {
  return heading.trim().replace(/\s+/g, " ").toLowerCase().slice(0, COMPARED_CHARACTERS);
}

export interface AppliedMatching {
  readonly roles: readonly ColumnRole[];
  /** Headings that the matching wants and the file does not have. */
  readonly missing: readonly string[];
}

/** The roles that a remembered matching gives to a file's headings, in whatever order they stand. */
export function applyMatching(matching: ColumnMatching, headings: readonly string[]): AppliedMatching {
  const places = new Map<string, number[]>();
  for (const [column, heading] of headings.entries()) {
    const key = plainHeading(heading);
    const known = places.get(key);
    if (known === undefined) places.set(key, [column]);
    else known.push(column);
  }
  const roles: ColumnRole[] = headings.map(() => "left-out");
  const missing: string[] = [];
  for (const { heading, role } of matching.columns) {
    const column = places.get(plainHeading(heading))?.shift();
    if (column !== undefined) roles[column] = role;
    else if (role !== "left-out") missing.push(heading);
  }
  return { roles, missing };
}
