/** What to do with what was read: large, with its figures, the reason and the bar. */
import type { FirstOffVerdict } from "../../core/planning/decisions/firstOff.ts";
import type { MeanReading } from "../../core/planning/decisions/readingUncertainty.ts";
import type { Band } from "../../job/jobDocument.ts";
import { bandWords, chanceWords, changeWords } from "../words/predictionSentences.ts";
import {
  guardWords,
  intervalWords,
  plusMinusWords,
  reasonWords,
  verdictWords,
} from "../words/pressSentences.ts";
import { VerdictBar } from "./VerdictBar.tsx";

interface Props {
  readonly verdict: FirstOffVerdict;
  readonly reading: MeanReading;
  readonly band: Band;
  /** Read out when it changes: while it is typed, not where it only stands. */
  readonly announce?: boolean;
}

export function VerdictPanel({ verdict, reading, band, announce = false }: Props) {
  return (
    <div className="press__verdict" data-action={verdict.action}>
      <p className="press__word" role={announce ? "status" : undefined}>
        {verdictWords(verdict)}
      </p>
      <p>
        <span className="number">{changeWords(verdict.mean)}</span>, {intervalWords(verdict)}
      </p>
      <VerdictBar verdict={verdict} band={band} />
      <p>{reasonWords(verdict, band.tolerance)}</p>
      <p className="quiet">
        Target {bandWords(band)}; chance to be in it {chanceWords(verdict.conformanceProbability)}.{" "}
        {guardWords(verdict)}
        {reading.referenceUncertainty > 0 &&
          ` The approved print itself is known to ${plusMinusWords(reading.referenceUncertainty)}.`}
      </p>
    </div>
  );
}
