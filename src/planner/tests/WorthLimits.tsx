/** What limits the test prints and what the money rests on, each open to edit where the plan is read. */
import { useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { setRunStartsOn } from "../../job/edits/job.ts";
import { changeLine } from "../../job/edits/lines.ts";
import { changeDefaults } from "../../job/edits/shelf.ts";
import { lineName } from "../../job/lineName.ts";
import { lotOfLine } from "../../job/lookup.ts";
import { DayEntry } from "../controls/DayEntry.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { HIGHEST_PRICE, LossFigures } from "../decisions/LossFigures.tsx";
import { TestingDefaults } from "../shelf/TestingDefaults.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { timeSentence, unpricedSentence } from "../words/worthSentences.ts";

/** The schema's. */
const MOST_PIECES = 1_000_000;

interface Props {
  readonly documents: Documents;
  /** Undefined where no plan says it, or the day limits nothing. */
  readonly atMostTests: number | null | undefined;
}

export function WorthLimits({ documents, atMostTests }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { job, library } = documents;
  const { testing } = library.shelf.defaults;
  const unpriced = job.lines.filter(({ piecePrice }) => piecePrice === null).length;
  return (
    <section className="worth__limits" aria-labelledby="worth-limits" data-print="hide">
      <h3 id="worth-limits">What the plan rests on</h3>
      {atMostTests !== undefined && <p>{timeSentence(atMostTests, testing, job.runStartsOn)}</p>}
      {unpriced > 0 && <p>! {unpricedSentence(unpriced, job.lines.length)}</p>}
      <div className="worth__entries">
        <div className="fields">
          <DayEntry
            label="The run starts on"
            day={job.runStartsOn}
            hint="Year-month-day. Left empty, time limits nothing."
            onCommit={(day) => edit((now) => setRunStartsOn(now, day))}
          />
        </div>
        <TestingDefaults
          testing={testing}
          onChange={(changed) => edit((now) => changeDefaults(now, { testing: changed }))}
        />
        <GarmentLimits documents={documents} />
        <LossFigures documents={documents} />
      </div>
    </section>
  );
}

/** Spare pieces and price of each garment; many rows, so they are made when they are asked for. */
function GarmentLimits({ documents }: { readonly documents: Documents }) {
  const edit = usePlanner((state) => state.edit);
  const [isOpen, setIsOpen] = useState(false);
  const { currency } = documents.library.shelf.defaults;
  return (
    <details onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>Spare pieces and prices of the garments</summary>
      {isOpen && (
        <ul className="worth__garments">
          {documents.job.lines.map((line) => {
            const lot = lotOfLine(documents, line);
            const name = lot === null ? "Garment missing" : lineName(lot);
            return (
              <li key={line.id}>
                <p>{name}</p>
                <NumberEntry
                  label={`Spare pieces of ${name}`}
                  labelUnseen
                  value={line.sparePieceCount}
                  unit="spare pieces"
                  whole
                  min={0}
                  max={MOST_PIECES}
                  placeholder="not entered"
                  onCommit={(count) => edit((now) => changeLine(now, line.id, { sparePieceCount: count }))}
                  onClear={() => edit((now) => changeLine(now, line.id, { sparePieceCount: null }))}
                />
                <NumberEntry
                  label={`Price of a piece of ${name}`}
                  labelUnseen
                  value={line.piecePrice}
                  unit={currency === "" ? "a piece" : `${currency} a piece`}
                  min={0}
                  max={HIGHEST_PRICE}
                  placeholder="not entered"
                  onCommit={(piecePrice) => edit((now) => changeLine(now, line.id, { piecePrice }))}
                  onClear={() => edit((now) => changeLine(now, line.id, { piecePrice: null }))}
                />
              </li>
            );
          })}
        </ul>
      )}
    </details>
  );
}
