/** Edits of a job's garment lines and of the lots they print on. */
import type { Documents } from "../documents.ts";
import { type GarmentLot, garmentLotSchema } from "../garmentLotDocument.ts";
import { type Line, lineSchema } from "../jobDocument.ts";
import { requireId, requireItem, requireValid, withChanged, withItem, withoutItem } from "./listEdit.ts";

/** A lot before it has an id. */
export type GarmentLotDraft = Omit<GarmentLot, "id">;

export interface NewLineIds {
  readonly lineId: string;
  readonly lotId: string;
}

function withLine(documents: Documents, line: Line, lot: GarmentLot, index: number): Documents {
  const { job, library } = documents;
  return {
    job: { ...job, lines: withItem(job.lines, requireValid(lineSchema, line, "line"), "line", index) },
    library: {
      ...library,
      garmentLots: withItem(library.garmentLots, requireValid(garmentLotSchema, lot, "lot"), "lot"),
    },
  };
}

/** Of a line that nobody has said anything of. */
export const BARE_LINE: Omit<Line, "id" | "garmentLotId"> = {
  quantities: [],
  suppliedBy: "shop",
  piecePrice: null,
  substitutedForLotId: null,
  sparePieceCount: null,
  note: "",
};

/** Adds a line at the end, on a new lot; no pieces yet, supplied by the shop. */
export function addLine(
  documents: Documents,
  { lineId, lotId, lot }: NewLineIds & { readonly lot: GarmentLotDraft },
): Documents {
  const line: Line = { id: lineId, garmentLotId: lotId, ...BARE_LINE };
  return withLine(documents, line, { ...lot, id: lotId }, documents.job.lines.length);
}

/**
 * Adds a copy of a line right below it, on a copy of its lot: what is changed or printed on one never touches the
 * other. The copy is printed at the same places; no mix is chosen for it, because nobody chose one.
 */
export function duplicateLine(
  documents: Documents,
  lineId: string,
  { lineId: copyId, lotId }: NewLineIds,
): Documents {
  const { job, library } = documents;
  const line = requireItem(job.lines, lineId, "line");
  const lot = requireItem(library.garmentLots, line.garmentLotId, "lot");
  const copied = withLine(
    documents,
    { ...line, id: copyId, garmentLotId: lotId },
    { ...lot, id: lotId },
    job.lines.indexOf(line) + 1,
  );
  const places = job.places.map((place) =>
    place.lineIds?.includes(lineId) ? { ...place, lineIds: [...place.lineIds, copyId] } : place,
  );
  return { ...copied, job: { ...copied.job, places } };
}

/** Removes a line with its choices. Its lot stays in the library: other jobs may print on it. So do its sign-offs. */
export function removeLine(documents: Documents, lineId: string): Documents {
  const { job } = documents;
  return {
    ...documents,
    job: {
      ...job,
      lines: withoutItem(job.lines, lineId, "line"),
      places: job.places.map((place) =>
        place.lineIds?.includes(lineId)
          ? { ...place, lineIds: place.lineIds.filter((id) => id !== lineId) }
          : place,
      ),
      choices: job.choices.filter((choice) => choice.lineId !== lineId),
    },
  };
}

export function changeLine(
  documents: Documents,
  lineId: string,
  change: Partial<Omit<Line, "id">>,
): Documents {
  const { job, library } = documents;
  const lines = withChanged(job.lines, lineId, "line", (line) => {
    const changed = requireValid(lineSchema, { ...line, ...change }, "line");
    requireId(library.garmentLots, changed.garmentLotId, "lot");
    if (changed.substitutedForLotId !== null) {
      requireId(library.garmentLots, changed.substitutedForLotId, "substituted lot");
    }
    return changed;
  });
  return { ...documents, job: { ...job, lines } };
}

/** Changes a lot of the library. A blend that does not sum to 1 is refused: it is kept as a draft until it does. */
export function changeGarmentLot(
  documents: Documents,
  lotId: string,
  change: Partial<GarmentLotDraft>,
): Documents {
  const { library } = documents;
  const garmentLots = withChanged(library.garmentLots, lotId, "lot", (lot) =>
    requireValid(garmentLotSchema, { ...lot, ...change }, "lot"),
  );
  return { ...documents, library: { ...library, garmentLots } };
}
