/** One garment line: its cloth, its name, what it is made of, how its colour is known, how many. */
import { memo } from "react";
import type { ViewingDocument } from "../../job/colourDocument.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { pieceCount } from "../../job/lookup.ts";
import { bareLab } from "../../job/screenColour.ts";
import { BlendBar } from "../look/BlendBar.tsx";
import { ClothSwatch } from "../look/ClothSwatch.tsx";
import { bareSourceWords, blendWords, labFigure } from "../words/garmentWords.ts";
import { groupedCount } from "../words/pieceWords.ts";

interface Props {
  /** For the figures of a spectrum. */
  readonly viewing: ViewingDocument;
  readonly line: Line;
  readonly lot: GarmentLot | null;
  /** The lot that this one stands in for. */
  readonly approved: GarmentLot | null;
  /** What of it is typed but not saved, in words. */
  readonly unsaved: string;
  readonly isOpen: boolean;
  readonly isReachable: boolean;
  readonly onOpen: (lineId: string) => void;
}

/** Remembered: with hundreds of lines, opening or changing one must not draw the others anew. */
export const GarmentRow = memo(function GarmentRow(props: Props) {
  const { viewing, line, lot, approved, unsaved, isOpen, isReachable, onOpen } = props;
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
  const { bare } = lot;
  const known = bareLab(bare, viewing);
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
              onClick={() => onOpen(line.id)}
            >
              {lot.colourway === "" ? lot.style : `${lot.style}, ${lot.colourway}`}
            </button>
            {origin !== "" && <p className="garments__origin">{origin}</p>}
            {approved !== null && <p className="garments__origin">stands in for {lineName(approved)}</p>}
            {unsaved !== "" && (
              <p className="garments__unsaved">
                <strong>not saved yet:</strong> {unsaved}
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
        <p className={known === null ? undefined : "garments__origin"}>{bareSourceWords(bare, viewing)}</p>
      </td>
      <td className="garments__count number" data-label="Pieces">
        {groupedCount(pieceCount(line))}
      </td>
      <td data-label="Supplied by">{line.suppliedBy === "shop" ? "shop" : "customer"}</td>
    </tr>
  );
});
