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
  /**
   * "Forest (Mill B)"; with its style or its lot where the job has more of that name, and its place where that is not the
   * job's first.
   */
  readonly name: string;
}

const shortName = ({ style, colourway, mill }: GarmentLot): string => {
  const colour = colourway.trim() === "" ? style : colourway;
  return `${colour}${mill.trim() === "" ? "" : ` (${mill})`}`;
};
const styledName = (lot: GarmentLot): string =>
  lot.colourway.trim() === "" ? shortName(lot) : `${lot.style}, ${shortName(lot)}`;
const fullName = (lot: GarmentLot): string =>
  lot.lot.trim() === "" ? styledName(lot) : `${styledName(lot)}, lot ${lot.lot}`;

/** How often each name is borne by a garment of the job: counted once for the documents, a plan speaks of hundreds. */
const bearers = new WeakMap<Documents, ReadonlyMap<string, number>>();

function bearersOf(documents: Documents): ReadonlyMap<string, number> {
  const known = bearers.get(documents);
  if (known !== undefined) return known;
  const ids = new Set(documents.job.lines.map(({ garmentLotId }) => garmentLotId));
  const counts = new Map<string, number>();
  for (const lot of documents.library.garmentLots) {
    if (!ids.has(lot.id)) continue;
    for (const name of new Set([shortName(lot), styledName(lot)]))
      counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  bearers.set(documents, counts);
  return counts;
}

/** The shortest name that no other garment of the job bears. */
function nameOfLot(documents: Documents, lot: GarmentLot): string {
  const counts = bearersOf(documents);
  return [shortName(lot), styledName(lot)].find((name) => counts.get(name) === 1) ?? fullName(lot);
}

/** Null where the job no longer has the line, its garment or the place: a plan may be older than an edit. */
export function namedLine(documents: Documents, { lineId, placeId }: LineAt): NamedLine | null {
  const { places, lines } = documents.job;
  const line = lines.find(({ id }) => id === lineId);
  const place = places.find(({ id }) => id === placeId);
  const lot = line === undefined ? null : lotOfLine(documents, line);
  if (line === undefined || place === undefined || lot === null) return null;
  const at = place === places[0] ? "" : `, ${place.name.toLowerCase()}`;
  return { line, place, lot, name: `${nameOfLot(documents, lot)}${at}` };
}
