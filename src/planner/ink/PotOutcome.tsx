/** What is in a pot by what was poured: true percentages, what the print makes of it, and the correction or its refusal. */
import { useMemo, useState } from "react";
import type { Correction } from "../../core/planning/ink/weighCorrection.ts";
import type { InkBatch, RecordedPot } from "../../job/inkRoom/inkBatch.ts";
import { sheetOf } from "../../job/inkRoom/poured.ts";
import { weighingErrorsOf } from "../../job/inkRoom/weighingErrors.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { Notice } from "../controls/Notice.tsx";
import { percentWords } from "../words/garmentWords.ts";
import { scaleUnit, scaleWords, truePercentWords } from "../words/inkFigures.ts";
import { pouredSentence, tooBigSentences } from "../words/weighingSentences.ts";
import { GRAMS, useRecordEntries } from "./PourLines.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly recorded: RecordedPot;
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
}

/** The garment on which the pot as poured is furthest from the pot as wanted, with both changes. */
function useWorstPoured({ pot, poured }: RecordedPot, batch: InkBatch, ink: InkRoomInUse) {
  const { documents } = ink;
  return useMemo(() => {
    if (poured.state === null) return null;
    const written = sheetOf(pot);
    const lines = written.lines.map((line, index) => ({
      ...line,
      name: pot.lines[index]?.name ?? "",
      grams: poured.lines[index]?.grams ?? 0,
    }));
    const trueRecipe = poured.state.recipe;
    const errors = weighingErrorsOf(documents, { ...batch, sheet: { ...written, lines, trueRecipe } });
    const off = ({ error }: (typeof errors)[number]) => Math.abs(error.weighedDeltaL - error.wantedDeltaL);
    return errors.toSorted((one, other) => off(other) - off(one))[0] ?? null;
  }, [documents, batch, pot, poured]);
}

export function PotOutcome({ recorded, batch, ink }: Props) {
  const { pot, poured } = recorded;
  const worst = useWorstPoured(recorded, batch, ink);
  const { state, correction } = poured;
  if (state === null) return null;
  const wanted = (itemId: string) => pot.recipe.find((part) => part.itemId === itemId)?.massFraction ?? 0;
  return (
    <section className="ink__outcome" tabIndex={-1} aria-label="What is in the pot">
      <table className="ink__table">
        <caption className="unseen">True percentages</caption>
        <thead>
          <tr>
            <th scope="col">In the pot</th>
            <th scope="col" className="ink__count">
              True part
            </th>
            <th scope="col" className="ink__count">
              Wanted
            </th>
          </tr>
        </thead>
        <tbody>
          {state.recipe.map(({ itemId, massFraction }) => (
            <tr key={itemId}>
              <th scope="row">{ink.nameOf(itemId)}</th>
              <td className="ink__count">
                <strong>{truePercentWords(massFraction)}</strong>
              </td>
              <td className="ink__count" data-label="Wanted">
                {percentWords(wanted(itemId))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {scaleWords(state.totalGrams, pot.scaleStepGrams, ink.units)} in the pot.{" "}
        {worst !== null && pouredSentence(worst.error, worst.name)}
      </p>
      {correction !== null && <CorrectionWords recorded={recorded} correction={correction} ink={ink} />}
    </section>
  );
}

interface CorrectionProps {
  readonly recorded: RecordedPot;
  readonly correction: Correction;
  readonly ink: InkRoomInUse;
}

function CorrectionWords({ recorded, correction, ink }: CorrectionProps) {
  const { pot } = recorded;
  const recordEntries = useRecordEntries(pot.id, pot.by);
  if (!correction.ok) {
    return (
      <Notice kind="problem">
        {tooBigSentences(correction.figures, pot.scaleStepGrams, ink.units).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <Amount
          key={correction.figures.takeOutGrams}
          label="Taken out of the mixed ink"
          grams={Math.ceil(correction.figures.takeOutGrams / pot.scaleStepGrams) * pot.scaleStepGrams}
          action="Record what was taken out"
          stepGrams={pot.scaleStepGrams}
          ink={ink}
          onRecord={(grams) =>
            recordEntries([{ kind: "taken-out", lineId: null, grams, supersedesId: null }])
          }
        />
      </Notice>
    );
  }
  if (correction.additions.length === 0) {
    return (
      <p>
        <strong>Right:</strong> every line is within a step of the scale of its share.
      </p>
    );
  }
  return (
    <Notice kind="caution">
      <p>
        To bring it back to the recipe, add{" "}
        {correction.additions
          .map(
            ({ id, grams }) =>
              `${scaleWords(grams, pot.scaleStepGrams, ink.units)} of ${nameOfLine(recorded, id)}`,
          )
          .join(" and ")}
        . The pot is then {scaleWords(correction.after.totalGrams, pot.scaleStepGrams, ink.units)}:{" "}
        {correction.after.recipe
          .map(({ itemId, massFraction }) => `${truePercentWords(massFraction)} ${ink.nameOf(itemId)}`)
          .join(", ")}
        .
      </p>
      {correction.additions.map(({ id, grams }) => (
        <Amount
          key={`${id} ${grams}`}
          label={`Added, of ${nameOfLine(recorded, id)}`}
          grams={grams}
          action="Record what was added"
          stepGrams={pot.scaleStepGrams}
          ink={ink}
          onRecord={(added) =>
            recordEntries([{ kind: "added", lineId: id, grams: added, supersedesId: null }])
          }
        />
      ))}
    </Notice>
  );
}

function nameOfLine({ pot }: RecordedPot, lineId: string): string {
  return pot.lines.find(({ id }) => id === lineId)?.name ?? "";
}

interface AmountProps {
  readonly label: string;
  /** Proposed; what the scale really showed may be typed over it. */
  readonly grams: number;
  readonly action: string;
  readonly stepGrams: number;
  readonly ink: InkRoomInUse;
  readonly onRecord: (grams: number) => void;
}

function Amount({ label, grams, action, stepGrams, ink, onRecord }: AmountProps) {
  const [typed, setTyped] = useState(grams);
  return (
    <div className="ink__bar">
      <MeasureEntry
        label={label}
        stored={typed}
        unit={scaleUnit(stepGrams, ink.units)}
        {...GRAMS}
        onCommit={setTyped}
      />
      <ActionButton aria-label={`${action}: ${label}`} onClick={() => onRecord(typed)}>
        {action}
      </ActionButton>
    </div>
  );
}
