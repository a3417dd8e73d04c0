/** One garment line: its cloth, its name, what it is made of, how its colour is known, how many. */
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { pieceCount } from "../../job/lookup.ts";
import { bareLab } from "../../job/screenColour.ts";
import { bareSourceWords, blendWords, labFigure } from "../words/garmentWords.ts";
import { groupedCount } from "../words/pieceWords.ts";
import { BlendBar } from "./BlendBar.tsx";
import { ClothSwatch } from "./ClothSwatch.tsx";
import { unsavedParts, useDrafts } from "./drafts.tsx";

interface Props {
  readonly documents: Documents;
  readonly line: Line;
  readonly lot: GarmentLot | null;
  readonly isOpen: boolean;
  readonly isReachable: boolean;
  readonly onOpen: () => void;
}

export function GarmentRow({ documents, line, lot, isOpen, isReachable, onOpen }: Props) {
  const unsaved = unsavedParts(useDrafts(), line.garmentLotId);
  if (lot === null) {
    return (
      <tr>
        <th scope="row" colSpan={6}>
          ! The garment of this line is not in the library.
        </th>
      </tr>
    );
  }
  const origin = [lot.mill, lot.country].filter((part) => part !== "").join(", ");
  const approved = documents.library.garmentLots.find(({ id }) => id === line.substitutedForLotId);
  const { bare } = lot;
  const known = bareLab(bare, documents.job.viewing);
  return (
    <tr data-open={isOpen ? "" : undefined}>
      <th scope="row">
        <div className="garments__name">
          <ClothSwatch bare={bare} />
          <div>
            <button
              type="button"
              className="garments__open"
              data-row-button=""
              data-line={line.id}
              aria-expanded={isOpen}
              tabIndex={isReachable ? 0 : -1}
              onClick={onOpen}
            >
              {lot.colourway === "" ? lot.style : `${lot.style}, ${lot.colourway}`}
            </button>
            {origin !== "" && <p className="garments__origin">{origin}</p>}
            {approved !== undefined && <p className="garments__origin">stands in for {lineName(approved)}</p>}
            {unsaved.length > 0 && (
              <p className="garments__unsaved">
                <strong>not saved yet:</strong> {unsaved.join(", ")}
              </p>
            )}
          </div>
        </div>
      </th>
      <td>
        {blendWords(lot.blend)}
        <BlendBar blend={lot.blend} />
      </td>
      <td data-label="Lot" className="garments__whole">
        {lot.lot}
      </td>
      <td>
        {known !== null && (
          <p className="garments__whole">
            {labFigure(known.lab.L)}, {labFigure(known.lab.a)}, {labFigure(known.lab.b)}
          </p>
        )}
        <p className={known === null ? undefined : "garments__origin"}>
          {bareSourceWords(bare, documents.job.viewing)}
        </p>
      </td>
      <td className="garments__count number" data-label="Pieces">
        {groupedCount(pieceCount(line))}
      </td>
      <td data-label="Supplied by">{line.suppliedBy === "shop" ? "shop" : "customer"}</td>
    </tr>
  );
}
