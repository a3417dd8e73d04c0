/** In which order the mixes go to press, with what each change takes, and whether that order is proven. */
import { amountWords, minutesWords } from "../words/inkFigures.ts";
import { changeOnPressWords, provenSentence } from "../words/inkRoomWords.ts";
import { groupedCount } from "../words/pieceWords.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

export function RunOrderTab({ ink }: { readonly ink: InkRoomInUse }) {
  const { runs, batches } = ink.room;
  if (runs.inOrder.length === 0) return <p>No mix is chosen yet, so nothing is run.</p>;
  const batchOf = (mixId: string) => batches.find((batch) => batch.mixId === mixId);
  const printedAs = (mixId: string, useId: string) => batchOf(mixId)?.uses.find(({ id }) => id === useId);
  return (
    <div className="ink__order">
      <p>
        <span className="ink__number">
          {runs.washUpCount} {runs.washUpCount === 1 ? "wash-up" : "wash-ups"}
        </span>
        , {runs.screenChangeCount} {runs.screenChangeCount === 1 ? "change" : "changes"} of screen,{" "}
        {minutesWords(runs.minutes)} of changes.
      </p>
      <p>{provenSentence(runs.proven, runs.inOrder.length)}</p>
      <p className="quiet">
        Light to dark, one base family together, low-cure kept apart. The minutes of each change are the
        shop's own, among the defaults of the shelf.
      </p>
      <table className="ink__table">
        <caption className="unseen">Runs in order</caption>
        <thead>
          <tr>
            <th scope="col">Run</th>
            <th scope="col">Mix</th>
            <th scope="col">Print</th>
            <th scope="col">Garments</th>
            <th scope="col" className="ink__count">
              Pieces
            </th>
            <th scope="col" className="ink__count">
              Ink to mix
            </th>
            <th scope="col">Before it</th>
          </tr>
        </thead>
        <tbody>
          {runs.inOrder.map((run, index) => {
            const batch = batchOf(run.mixId);
            return (
              <tr key={`${run.mixId} ${run.useId}`}>
                <td data-label="Run">{index + 1}</td>
                <th scope="row">{run.mixName}</th>
                <td data-label="Print">
                  {run.placeName}, {run.setUpName}
                </td>
                <td data-label="Garments">
                  {printedAs(run.mixId, run.useId)
                    ?.lines.map(({ name }) => name)
                    .join("; ")}
                </td>
                <td className="ink__count" data-label="Pieces">
                  {groupedCount(run.pieceCount)} pcs
                </td>
                <td className="ink__count" data-label="Ink of the mix">
                  {batch === undefined ? "" : amountWords(batch.batchGrams, ink.units)}
                </td>
                <td data-label="Before it">
                  {run.change === null ? "first" : changeOnPressWords(run.change)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
