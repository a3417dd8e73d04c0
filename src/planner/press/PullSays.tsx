/** What to do about a pull while it is read: large, and why. */
import type { MeanReading } from "../../core/planning/decisions/readingUncertainty.ts";
import type { PulledPoint } from "../../core/planning/decisions/runRule.ts";
import type { Band } from "../../job/jobDocument.ts";
import { bandWords, chanceWords, changeWords } from "../words/predictionSentences.ts";
import {
  ACTION_WORDS,
  NO_TOLERANCE,
  PULL_SENTENCES,
  plusMinusWords,
  signalSentence,
} from "../words/pressSentences.ts";

interface Props {
  /** Null where nothing is read yet, or the target has no tolerance. */
  readonly point: PulledPoint | null;
  readonly reading: MeanReading | null;
  readonly band: Band;
}

export function PullSays({ point, reading, band }: Props) {
  if (reading === null) {
    return (
      <>
        <h4>What the pull says</h4>
        <p className="quiet">As soon as a reading is there.</p>
      </>
    );
  }
  const signals = signalSentence(point?.signals ?? []);
  return (
    <div className="press__verdict" data-action={point?.action}>
      <p className="press__word" role="status">
        {point === null ? "No verdict" : ACTION_WORDS[point.action]}
      </p>
      <p>
        <span className="number">{changeWords(reading.mean)}</span>{" "}
        {plusMinusWords(reading.standardUncertainty)} in 95&nbsp;%
      </p>
      <p>{point === null ? NO_TOLERANCE : PULL_SENTENCES[point.action]}</p>
      {signals !== null && <p>{signals}</p>}
      {point !== null && (
        <p className="quiet">
          Target {bandWords(band)}; chance to be in it {chanceWords(point.conformanceProbability)}.
        </p>
      )}
    </div>
  );
}
