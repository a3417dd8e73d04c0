/** One record opened: what it found, how its print moved since, what was said when it was approved, what can be done. */
import { useEffect, useRef } from "react";
import type { Documents } from "../../job/documents.ts";
import { type PrintSeries, seriesOf } from "../../job/recordBook/printSeries.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { standing } from "../../job/standing.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { timeWords } from "../words/checklistSentences.ts";
import { driftSentence, durabilityWords } from "../words/driftWords.ts";
import { VERDICTS, washWords } from "../words/testsWords.ts";
import { DriftChart } from "./DriftChart.tsx";
import { FindingWords } from "./FindingWords.tsx";
import { KeepAsReference } from "./KeepAsReference.tsx";
import { RecordFacts } from "./RecordFacts.tsx";
import type { RecordName } from "./recordName.ts";
import { SlipAnswers } from "./SlipAnswers.tsx";
import { useFinding } from "./useFinding.ts";

interface Props {
  readonly documents: Documents;
  readonly print: TestPrint;
  readonly name: RecordName;
  readonly series: readonly PrintSeries[];
  readonly onOpen: (recordId: string | null) => void;
  readonly onCorrect: (print: TestPrint) => void;
  readonly onReadAgain: (print: TestPrint) => void;
}

export function RecordPane(props: Props) {
  const { documents, print, name, series, onOpen, onCorrect, onReadAgain } = props;
  const { library } = documents;
  const heading = useRef<HTMLHeadingElement>(null);
  // Below a long list nobody would see that it opened.
  useEffect(() => heading.current?.focus(), []);
  const stands = standing(library.testPrints).some(({ id }) => id === print.id);
  const own = seriesOf(series, print.id);
  const finding = useFinding(documents, stands ? print : null);
  const correction = library.testPrints.find(({ supersedesId }) => supersedesId === print.id);
  const viewing = library.shelf.defaults.instrument.viewing;
  const others = [...(own?.resting ?? []), ...(own?.washed ?? [])].filter(
    ({ record }) => record.id !== print.id,
  );
  const drift = own === null ? null : driftSentence(own);
  return (
    <section className="tests__pane panel" aria-label="The record opened">
      <div className="pane__head">
        <div>
          <h3 ref={heading} tabIndex={-1}>
            {name.garment}
            {name.lot !== "" && `, lot ${name.lot}`}
          </h3>
          <p>
            {name.mix}, {name.setUp}
          </p>
          <p className="quiet">
            {washWords(print.washCount)}; verdict:{" "}
            {VERDICTS.find(({ value }) => value === print.verdict)?.label}
          </p>
        </div>
        <div className="pane__actions" data-print="hide">
          {stands && (
            <>
              <ActionButton onClick={() => onReadAgain(print)}>Read it again</ActionButton>
              <ActionButton onClick={() => onCorrect(print)}>Correct it</ActionButton>
            </>
          )}
          <ActionButton onClick={() => onOpen(null)}>Close</ActionButton>
        </div>
      </div>
      {correction !== undefined && (
        <Notice kind="note">
          A later record corrects this one; it teaches nothing any more.{" "}
          <ActionButton weight="plain" onClick={() => onOpen(correction.id)}>
            Open the correction
          </ActionButton>
        </Notice>
      )}
      {stands && <FindingWords print={print} finding={finding} viewing={viewing} />}
      {stands && <SlipAnswers documents={documents} print={print} onCorrect={onCorrect} />}
      {own !== null && (others.length > 0 || drift !== null) && (
        <figure className="tests__drift">
          <figcaption>
            <h4>The same print, read {others.length + 1} times</h4>
          </figcaption>
          <DriftChart series={own} />
          {drift !== null && <p className="tests__strong">{drift}</p>}
          <ul>
            {own.washed.map((reading) => (
              <li key={reading.record.id}>{durabilityWords(reading)}</li>
            ))}
          </ul>
          <ul className="tests__others" data-print="hide">
            {others.map(({ record }) => (
              <li key={record.id}>
                <ActionButton weight="plain" onClick={() => onOpen(record.id)}>
                  Open the reading of {timeWords(record.readAt)}
                  {record.washCount > 0 && `, ${washWords(record.washCount)}`}
                </ActionButton>
              </li>
            ))}
          </ul>
        </figure>
      )}
      {stands && print.washCount === 0 && (
        <KeepAsReference documents={documents} print={print} finding={finding} />
      )}
      <RecordFacts print={print} library={library} />
    </section>
  );
}
