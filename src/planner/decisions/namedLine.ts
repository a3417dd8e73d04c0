/** A line at a place as decisions speak of it: the documents behind the two ids, and a name short enough for a sentence. */
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line, Place } from "../../job/jobDocument.ts";
import { lotOfLine } from "../../job/lookup.ts";

export interface LineAt {
  readonly lineId: string;
  readonly placeId: string;
}

export interface NamedLine {
  readonly line: Line;
  readonly place: Place;
  readonly lot: GarmentLot;
  /** "Forest (Mill B)"; with its place where that is not the job's first. */
  readonly name: string;
}

/** Null where the job no longer has the line, its garment or the place: a plan may be older than an edit. */
export function namedLine(documents: Documents, { lineId, placeId }: LineAt): NamedLine | null {
  const { places, lines } = documents.job;
  const line = lines.find(({ id }) => id === lineId);
  const place = places.find(({ id }) => id === placeId);
  const lot = line === undefined ? null : lotOfLine(documents, line);
  if (line === undefined || place === undefined || lot === null) return null;
  const colour = lot.colourway.trim() === "" ? lot.style : lot.colourway;
  const mill = lot.mill.trim() === "" ? "" : ` (${lot.mill})`;
  const at = place === places[0] ? "" : `, ${place.name.toLowerCase()}`;
  return { line, place, lot, name: `${colour}${mill}${at}` };
}
