/** The garments on paper: one plain table, black on white, every figure with its unit. */
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { pieceCount } from "../../job/lookup.ts";
import { bareLab } from "../../job/screenColour.ts";
import { bareSourceWords, blendWords, FINISHES, labFigure } from "../words/garmentWords.ts";
import { groupedCount, pieces } from "../words/pieceWords.ts";
import "./garmentPaper.css";

export function GarmentPaper({ documents }: { readonly documents: Documents }) {
  const { lines } = documents.job;
  const lots = new Map(documents.library.garmentLots.map((lot) => [lot.id, lot]));
  const { currency } = documents.library.shelf.defaults;
  const total = lines.reduce((sum, line) => sum + pieceCount(line), 0);
  return (
    <div className="paper garment-paper">
      {/* The table is wider than high; "landscape" turns the sheet that is in the printer, A4 or letter. */}
      <style>{"@page { size: landscape; margin: 10mm; }"}</style>
      <h2>Garments</h2>
      <table className="paper__table">
        <thead>
          <tr>
            <th scope="col">Garment</th>
            <th scope="col">Mill, country</th>
            <th scope="col">Lot</th>
            <th scope="col">Fibre, finish</th>
            <th scope="col">Bare L*, a*, b*</th>
            <th scope="col">Sizes, pieces of each</th>
            <th scope="col" className="paper__count">
              Pieces
            </th>
            <th scope="col">Supplied by</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <PaperLine
              key={line.id}
              line={line}
              lot={lots.get(line.garmentLotId) ?? null}
              approved={lots.get(line.substitutedForLotId ?? "") ?? null}
              viewing={documents.job.viewing}
              currency={currency}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={6}>
              {lines.length} {lines.length === 1 ? "line" : "lines"}
            </th>
            <td className="paper__count">
              <strong>{groupedCount(total)} pcs</strong>
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
      <p>
        {pieces(total)} in all. Colours are CIELAB; a printer's colours mean nothing and none are printed.
      </p>
    </div>
  );
}

interface LineProps {
  readonly line: Line;
  readonly lot: GarmentLot | null;
  readonly approved: GarmentLot | null;
  readonly viewing: Documents["job"]["viewing"];
  readonly currency: string;
}

function PaperLine({ line, lot, approved, viewing, currency }: LineProps) {
  if (lot === null) {
    return (
      <tr>
        <th scope="row" colSpan={8}>
          ! The garment of this line is not in the library.
        </th>
      </tr>
    );
  }
  const known = bareLab(lot.bare, viewing);
  const sizes = line.quantities.map(({ size, count }) => `${size}\u00a0${groupedCount(count)}`);
  return (
    <tr>
      <th scope="row">
        <strong>{lot.colourway === "" ? lot.style : `${lot.style}, ${lot.colourway}`}</strong>
        {approved !== null && <p>stands in for {lineName(approved)}</p>}
        {line.note !== "" && <p>{line.note}</p>}
      </th>
      <td>{[lot.mill, lot.country].filter((part) => part !== "").join(", ")}</td>
      <td>{lot.lot}</td>
      <td>
        {blendWords(lot.blend)}
        {clothWords(lot) !== "" && <p>{clothWords(lot)}</p>}
      </td>
      <td>
        {known !== null && (
          <p>
            {labFigure(known.lab.L)}, {labFigure(known.lab.a)}, {labFigure(known.lab.b)}
          </p>
        )}
        <p>{bareSourceWords(lot.bare, viewing)}</p>
      </td>
      <td>{sizes.join(", ")}</td>
      <td className="paper__count">
        <strong>{groupedCount(pieceCount(line))} pcs</strong>
      </td>
      <td>
        {line.suppliedBy === "shop" ? "shop" : "customer"}
        {line.piecePrice !== null && (
          <p>
            {line.piecePrice.toFixed(2)} {currency} a piece
          </p>
        )}
      </td>
    </tr>
  );
}

/** What else is known of the cloth: "filament, wicking, heather, known to bleed dye". */
function clothWords({ blend, yarn, finish, heather, bleeds }: GarmentLot): string {
  const words = [
    blend.some(({ fibre }) => fibre === "polyester") ? `${yarn} polyester` : "",
    finish === "none" ? "" : (FINISHES.find(({ value }) => value === finish)?.label ?? ""),
    heather ? "heather" : "",
    bleeds ? "known to bleed dye" : "",
  ];
  return words.filter((word) => word !== "").join(", ");
}
