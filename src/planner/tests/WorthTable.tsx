/** The test prints worth making, ranked: what to print, what it takes, what skipping it costs, whom it informs. */
import { Fragment, useState } from "react";
import type { TestsFinding, WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { setUpOf } from "../../job/lookup.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { type NamedLine, namedLine } from "../decisions/namedLine.ts";
import { ClothSwatch } from "../look/ClothSwatch.tsx";
import { recipeName } from "../words/mixWords.ts";
import { moneyWords } from "../words/moneyWords.ts";
import { chanceWords } from "../words/predictionSentences.ts";
import {
  expectedMoney,
  expectedRangeWords,
  NAMED_FIRST,
  restSentence,
  takesWords,
} from "../words/worthSentences.ts";
import { WorthInforms } from "./WorthInforms.tsx";

interface Props {
  readonly documents: Documents;
  readonly finding: TestsFinding;
  readonly isTyping: boolean;
  readonly onRecord: (test: WorthwhileTest) => void;
}

/** More are shown when asked for. Invented default. */
const SHOWN_COUNT = 24;

export function WorthTable({ documents, finding, isTyping, onRecord }: Props) {
  const [isWhole, setIsWhole] = useState(false);
  const { tests } = finding;
  const { currency } = documents.library.shelf.defaults;
  if (tests.length === 0) return null;
  const shown = isWhole ? tests : tests.slice(0, SHOWN_COUNT);
  return (
    <>
      <table className="tests__table worth__table">
        <caption className="unseen">Test prints worth making, the best first</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Rank</span>
            </th>
            <th scope="col">Garment</th>
            <th scope="col">Print it with</th>
            <th scope="col">Skipping it costs</th>
            <th scope="col">Settled so far</th>
            <th scope="col">It informs</th>
            <th scope="col" data-print="hide">
              <span className="unseen">Record</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((test, index) => {
            const named = namedLine(documents, test);
            if (named === null) return null;
            const key = `${test.lineId} ${test.placeId} ${test.candidateId}`;
            return (
              <Fragment key={key}>
                {index === NAMED_FIRST && (
                  <tr className="worth__rest">
                    <td colSpan={6}>{restSentence(tests, currency)}</td>
                    <td data-print="hide" />
                  </tr>
                )}
                <Row
                  documents={documents}
                  test={test}
                  named={named}
                  rank={index + 1}
                  isTyping={isTyping}
                  onRecord={onRecord}
                />
              </Fragment>
            );
          })}
        </tbody>
      </table>
      {shown.length < tests.length && (
        <div className="acts">
          <ActionButton onClick={() => setIsWhole(true)}>Show all {tests.length} test prints</ActionButton>
        </div>
      )}
    </>
  );
}

interface RowProps extends Omit<Props, "finding"> {
  readonly test: WorthwhileTest;
  readonly named: NamedLine;
  readonly rank: number;
}

function Row({ documents, test, named, rank, isTyping, onRecord }: RowProps) {
  const { shelf } = documents.library;
  const { currency } = shelf.defaults;
  const { lot, place, name } = named;
  const mix = recipeName(test.recipe, shelf);
  const setUp = setUpOf(shelf, test.setUpId)?.name ?? "";
  const share = test.shareSettled;
  return (
    <tr>
      <td className="worth__rank">
        <span className="worth__box" aria-hidden="true" />
        <span className="number">{rank}.</span>
      </td>
      <th scope="row">
        <div className="worth__garment">
          <span className="worth__swatch" data-print="hide">
            <ClothSwatch bare={lot.bare} />
          </span>
          <div>
            <strong>{name}</strong>
            <span className="quiet tests__second">
              {lot.style}
              {lot.lot !== "" && `, lot ${lot.lot}`}, {place.name.toLowerCase()}
            </span>
          </div>
        </div>
      </th>
      <td>
        <strong>{mix}</strong>
        {setUp !== "" && <span className="worth__set-up"> {setUp}</span>}
        <span className="tests__second">
          {takesWords(test)}; <span className="quiet">expected now {expectedRangeWords(test)}</span>
        </span>
      </td>
      <td data-label="Skipping it costs">
        <span className="number">{expectedMoney(test.riskRemoved, currency)}</span>
        <span className="quiet tests__second">the test {moneyWords(test.cost, currency)}</span>
      </td>
      <td data-label="Settled so far">
        <span className="worth__share">
          <span className="worth__track" aria-hidden="true">
            <span style={{ width: `${share * 100}%` }} />
          </span>
          {chanceWords(share)}
        </span>
      </td>
      <td data-label="It informs">
        <WorthInforms documents={documents} test={test} />
      </td>
      <td data-print="hide">
        <ActionButton
          weight={rank === 1 ? "strong" : "normal"}
          aria-label={
            isTyping
              ? `Finish the record that is being typed before ${name}`
              : `Record this print: ${name}, ${mix}`
          }
          onClick={() => onRecord(test)}
        >
          {isTyping ? "Finish the record first" : "Record this print"}
        </ActionButton>
      </td>
    </tr>
  );
}
