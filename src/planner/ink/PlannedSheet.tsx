/** The weigh sheet of one pot as it would be written now: big figures, and what a step of the scale makes of the print. */
import { useMemo } from "react";
import type { WeighingError } from "../../core/planning/ink/tintError.ts";
import type { BatchSheet, InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { type GarmentWeighingError, weighingErrorsOf } from "../../job/inkRoom/weighingErrors.ts";
import { Notice } from "../controls/Notice.tsx";
import { percentWords } from "../words/garmentWords.ts";
import { scaleWords, truePercentWords } from "../words/inkFigures.ts";
import { sheetNoticeSentence, sheetProblemSentence } from "../words/inkSentences.ts";
import { lineStepWords, roundingSentence, stepSentence } from "../words/weighingSentences.ts";
import { BatchNotes } from "./BatchNotes.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
}

/** The garment that a weighing error shows on most; null where none can be predicted. */
export function useMostSensitive(batch: InkBatch, ink: InkRoomInUse): GarmentWeighingError | null {
  const { documents } = ink;
  return useMemo(() => weighingErrorsOf(documents, batch)[0] ?? null, [documents, batch]);
}

export function PlannedSheet({ batch, ink }: Props) {
  const { sheet, pots, scale } = batch;
  const worst = useMostSensitive(batch, ink);
  if (sheet === null || pots === null || scale === null) return null;
  const words = { units: ink.units, scaleStepGrams: scale.stepGrams, nameOf: ink.nameOf };
  return (
    <section className="ink__sheet" aria-label="Weigh sheet of one pot">
      <div className="ink__head">
        <div>
          <h3>{batch.mixName}, one pot</h3>
          <p className="quiet">
            {pots.potCount === 1 ? "The only pot" : `One of ${pots.potCount} pots, all alike`}:{" "}
            {pots.sizeName}, recipe version {batch.recipeVersion}, on {scale.name}.
          </p>
        </div>
      </div>
      {sheet.ok ? (
        <>
          <SheetLines sheet={sheet} error={worst?.error ?? null} ink={ink} />
          {worst !== null && (
            <p>
              <strong>{stepSentence(worst.error, scale.stepGrams, worst.name, ink.units)}</strong>{" "}
              {roundingSentence(worst.error)}
            </p>
          )}
          <TruePercentages sheet={sheet} ink={ink} />
        </>
      ) : (
        <Notice kind="problem">
          <p>This pot cannot be weighed as it is.</p>
          {sheet.problems.map((problem) => (
            <p key={`${problem.code} ${problem.itemId}`}>{sheetProblemSentence(problem, words)}</p>
          ))}
        </Notice>
      )}
      {sheet.notices.length > 0 && (
        <ul className="ink__sentences">
          {sheet.notices.map((notice) => (
            <li key={`${notice.code} ${notice.itemId}`}>{sheetNoticeSentence(notice, words)}</li>
          ))}
        </ul>
      )}
      <BatchNotes batch={batch} ink={ink} atTheSheet />
    </section>
  );
}

type Written = Extract<BatchSheet, { ok: true }>;

interface LinesProps {
  readonly sheet: Written;
  readonly error: WeighingError | null;
  readonly ink: InkRoomInUse;
}

function SheetLines({ sheet, error, ink }: LinesProps) {
  const weigh = (grams: number) => scaleWords(grams, sheet.scaleStepGrams, ink.units);
  return (
    <table className="ink__table sheet__lines">
      <caption className="unseen">What to weigh, in this order</caption>
      <thead>
        <tr>
          <th scope="col">Weigh in</th>
          <th scope="col" className="ink__count">
            Amount
          </th>
          <th scope="col" className="ink__count">
            A step is
          </th>
          <th scope="col" className="ink__count">
            A step makes
          </th>
        </tr>
      </thead>
      <tbody>
        {sheet.lines.map((line) => {
          const step = error?.steps.find(({ lineId }) => lineId === line.id);
          return (
            <tr key={line.id}>
              <th scope="row">{line.name}</th>
              <td className="ink__count sheet__grams">{weigh(line.grams)}</td>
              <td className="ink__count" data-label="A step is">
                {percentWords(Number(line.scaleErrorFraction.toPrecision(2)))} of it
              </td>
              <td className="ink__count" data-label="A step makes">
                {step === undefined ? "–" : lineStepWords(step.deltaL)}
              </td>
            </tr>
          );
        })}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">In all</th>
          <td className="ink__count sheet__grams">{weigh(sheet.totalGrams)}</td>
          <td />
          <td />
        </tr>
      </tfoot>
    </table>
  );
}

/** What the rounded grams come to: the recipe that is predicted with. */
function TruePercentages({ sheet, ink }: { readonly sheet: Written; readonly ink: InkRoomInUse }) {
  return (
    <p className="quiet">
      By these grams the pot holds{" "}
      {sheet.trueRecipe
        .map(({ itemId, massFraction }) => `${truePercentWords(massFraction)} ${ink.nameOf(itemId)}`)
        .join(", ")}
      .
    </p>
  );
}
