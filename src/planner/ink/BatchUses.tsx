/** Where a batch is printed: place, set-up, film and grams a print. */
import type { InkBatch, InkUse } from "../../job/inkRoom/inkBatch.ts";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { percentWords } from "../words/garmentWords.ts";
import { areaWords, perPrintWords } from "../words/inkFigures.ts";
import { groupedCount } from "../words/pieceWords.ts";

interface Props {
  readonly batch: InkBatch;
  readonly units: UnitChoice;
}

export function BatchUses({ batch, units }: Props) {
  return (
    <table className="ink__table">
      <caption className="unseen">Where {batch.mixName} is printed</caption>
      <thead>
        <tr>
          <th scope="col">Print</th>
          <th scope="col">Garments</th>
          <th scope="col" className="ink__count">
            Pieces
          </th>
          <th scope="col" className="ink__count">
            Area with ink
          </th>
          <th scope="col">Ink film</th>
          <th scope="col" className="ink__count">
            A print is mixed for
          </th>
          <th scope="col" className="ink__count">
            A print is expected to take
          </th>
        </tr>
      </thead>
      <tbody>
        {batch.uses.map((use) => (
          <tr key={use.id}>
            <th scope="row">
              <strong>{use.placeName}</strong>, {use.setUpName}
            </th>
            <td data-label="Garments">{use.lines.map(({ name }) => name).join("; ")}</td>
            <td data-label="Pieces" className="ink__count">
              {groupedCount(use.pieceCount)} pcs
              <br />
              <span className="quiet">
                + {groupedCount(use.spoiledPieceCount)} spoiled ({percentWords(use.spoilageFraction)})
              </span>
            </td>
            <td data-label="Area with ink" className="ink__count">
              {areaWords(use.printedAreaM2, units)}
            </td>
            <td data-label="Ink film">
              <FilmWords use={use} />
            </td>
            <td data-label="Mixed for" className="ink__count">
              {perPrintWords(use.mixedGramsPerPrint, units)}
            </td>
            <td data-label="Expected" className="ink__count">
              {perPrintWords(use.expectedGramsPerPrint, units)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function FilmWords({ use }: { readonly use: InkUse }) {
  const { colourUm, inkToMixUm, weighed, publishedWetHeightUm } = use.deposit;
  if (weighed !== null) {
    return (
      <>
        {colourUm.toFixed(1)}&nbsp;µm, weighed on {weighed.pieceCount}{" "}
        {weighed.pieceCount === 1 ? "piece" : "pieces"}
      </>
    );
  }
  return (
    <>
      {colourUm.toFixed(1)}&nbsp;µm, estimated from the mesh
      <br />
      <span className="quiet">
        mixed for {inkToMixUm.toFixed(1)}&nbsp;µm until it is weighed
        {publishedWetHeightUm !== null && `; a published rule says ${publishedWetHeightUm.toFixed(1)} µm`}
      </span>
    </>
  );
}
