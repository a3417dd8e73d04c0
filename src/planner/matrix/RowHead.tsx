/** What heads a row: the garment's name, what it is made of, how many there are. */
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { pieceCount } from "../../job/lookup.ts";
import { BlendBar } from "../look/BlendBar.tsx";
import { blendWords } from "../words/garmentWords.ts";
import { groupedCount } from "../words/pieceWords.ts";

export function garmentTitle(lot: GarmentLot | null): string {
  if (lot === null) return "Unknown garment";
  return [lot.style, lot.colourway].filter((part) => part !== "").join(", ");
}

export function RowHead({ line, lot }: { readonly line: Line; readonly lot: GarmentLot | null }) {
  return (
    <div className="row-head">
      <p className="row-head__name">{garmentTitle(lot)}</p>
      {lot !== null && (
        <>
          {lot.mill !== "" && <p>{lot.mill}</p>}
          <p className="quiet">{blendWords(lot.blend)}</p>
          <BlendBar blend={lot.blend} />
          <p>
            {groupedCount(pieceCount(line))} pcs{lot.lot !== "" && <> · lot {lot.lot}</>}
          </p>
          {line.substitutedForLotId !== null && <p>substituted</p>}
        </>
      )}
    </div>
  );
}
