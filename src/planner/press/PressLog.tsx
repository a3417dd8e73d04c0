/** Entries of the press log as they were kept: what was read, what was said then, who, and the way to correct one. */
import type { LoggedEntry } from "../../job/press/pressRun.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { timeWords } from "../words/checklistSentences.ts";
import { bandWords, chanceWords, changeWords } from "../words/predictionSentences.ts";
import {
  ACTION_WORDS,
  changeMark,
  plusMinusWords,
  pressReadingsWords,
  signalSentence,
} from "../words/pressSentences.ts";

interface Props {
  readonly caption: string;
  readonly entries: readonly LoggedEntry[];
  readonly onCorrect?: (logged: LoggedEntry) => void;
}

export function PressLog({ caption, entries, onCorrect }: Props) {
  if (entries.length === 0) return null;
  return (
    <table className="press__log">
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">When, who</th>
          <th scope="col">Read</th>
          <th scope="col">Said then</th>
          {onCorrect !== undefined && <th scope="col">Correct</th>}
        </tr>
      </thead>
      <tbody>
        {entries.map((logged) => (
          <Row key={logged.entry.id} logged={logged} onCorrect={onCorrect} />
        ))}
      </tbody>
    </table>
  );
}

/** Who read it, and the second person where that was somebody else: a print that was stopped was passed by nobody. */
function whoWords({ entry, print }: Pick<LoggedEntry, "entry" | "print">): string {
  const reader = print?.operator ?? entry.by;
  if (reader === entry.by) return `read by ${reader}`;
  const second = entry.said.action === "run" ? "passed by" : "second person";
  return `${second} ${entry.by}, read by ${reader}`;
}

interface RowProps {
  readonly logged: LoggedEntry;
  readonly onCorrect: Props["onCorrect"] | undefined;
}

function Row({ logged, onCorrect }: RowProps) {
  const { entry, point, isOfThisChoice, recordCorrected } = logged;
  const { said, band } = entry;
  const mark = changeMark(entry.change);
  const signals = signalSentence(point?.signals ?? []);
  return (
    <tr data-earlier={isOfThisChoice ? undefined : ""}>
      <th scope="row">
        {timeWords(entry.at)}
        <span className="press__small">{whoWords(logged)}</span>
      </th>
      <td>
        <strong>{changeWords(said.mean)}</strong> {plusMinusWords(said.standardUncertainty)}
        <span className="press__small">{pressReadingsWords(entry.readings)}</span>
        {mark !== "" && <span className="press__small">{mark}</span>}
        {entry.supersedesId !== null && <span className="press__small">corrects an entry</span>}
        {!isOfThisChoice && <span className="press__small">an earlier lot, mix or set-up</span>}
        {recordCorrected && (
          <span className="press__small">! its record was corrected in the record book since</span>
        )}
      </td>
      <td>
        <strong>{ACTION_WORDS[said.action]}</strong>
        <span className="press__small">
          {chanceWords(said.conformanceProbability)} in {bandWords(band)}
        </span>
        {signals !== null && <span className="press__small">{signals}</span>}
        {entry.note !== "" && <span className="press__small">“{entry.note}”</span>}
      </td>
      {onCorrect !== undefined && (
        <td>
          {isOfThisChoice && !recordCorrected && (
            <ActionButton
              weight="plain"
              aria-label={`Correct the entry of ${timeWords(entry.at)}`}
              onClick={() => onCorrect(logged)}
            >
              Correct
            </ActionButton>
          )}
        </td>
      )}
    </tr>
  );
}
