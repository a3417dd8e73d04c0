/** A column matching as the shop's defaults keep it (heading to words), and back. */
import type { ColumnMatching as StoredMatching } from "../../job/shopDefaultsDocument.ts";
import type { ColumnRole } from "./columnNames.ts";
import { type ColumnMatching, plainHeading } from "./csvColumns.ts";

const ROLE = /^(?:[Lab]|[XYZ]|nm:[3-9]\d\d|name|light|observer|geometry|left-out)$/;
const SCALES: readonly string[] = ["fraction", "percent"];
/** A heading that stands several times keeps its roles in order, parted by this. */
const PARTING = ",";
/** Before every heading, so that none meets another key of ours or of the language (a schema drops "__proto__"). */
const MARK = "=";
const SCALE_KEY = "scale";

/** What the document keeps under `name`; null where a matched column has no heading to be found by. */
export function storedMatching(name: string, matching: ColumnMatching): StoredMatching | null {
  const columns = new Map<string, string>();
  if (matching.scale !== null) columns.set(SCALE_KEY, matching.scale);
  const repeated = new Set<string>();
  const seen = new Set<string>();
  for (const { heading } of matching.columns) {
    const key = plainHeading(heading);
    if (seen.has(key)) repeated.add(key);
    seen.add(key);
  }
  for (const { heading, role } of matching.columns) {
    const key = plainHeading(heading);
    if (role === "left-out" && !repeated.has(key)) continue;
    if (key === "") {
      if (role === "left-out") continue;
      return null;
    }
    const known = columns.get(MARK + key);
    columns.set(MARK + key, known === undefined ? role : `${known}${PARTING}${role}`);
  }
  return { name, columns: Object.fromEntries(columns) };
}

/** The matching that was kept; null where its words are none of ours, as from a newer Tonebench. */
export function matchingFrom({ columns }: StoredMatching): ColumnMatching | null {
  const found: { heading: string; role: ColumnRole }[] = [];
  let scale: ColumnMatching["scale"] = null;
  for (const [key, words] of Object.entries(columns)) {
    if (key === SCALE_KEY) {
      if (!SCALES.includes(words)) return null;
      scale = words as ColumnMatching["scale"];
      continue;
    }
    if (!key.startsWith(MARK)) return null;
    const heading = key.slice(MARK.length);
    for (const role of words.split(PARTING)) {
      if (!ROLE.test(role)) return null;
      found.push({ heading, role: role as ColumnRole });
    }
  }
  return found.length === 0 ? null : { columns: found, scale };
}
