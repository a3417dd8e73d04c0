/** What a cell shows, in one reading order: cloth, change, range and grey scale, chance, evidence, warnings. */
import type { MatrixCell } from "../../engine/protocol.ts";
import type { Problem } from "../../job/problem.ts";
import {
  byWeight,
  chanceWords,
  changeWords,
  rangeWords,
  SHORT_WARNINGS,
  WARNING_SENTENCES,
} from "../words/predictionSentences.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import { KnitSwatch, SWATCH_HEIGHT_PX } from "./KnitSwatch.tsx";

interface Props {
  readonly cell: MatrixCell | null;
  readonly problems: readonly Problem[];
  readonly widthPx: number;
  readonly isChosen: boolean;
}

export function CellFace({ cell, problems, widthPx, isChosen }: Props) {
  const chosen = isChosen && <strong className="cell__chosen">chosen</strong>;
  if (problems.length > 0) {
    return (
      <div className="cell">
        <p className="cell__problem" style={{ minHeight: SWATCH_HEIGHT_PX }}>
          ! {sentenceForProblem(problems[0]!)}
        </p>
        {chosen}
      </div>
    );
  }
  if (cell === null) {
    return (
      <div className="cell">
        <p className="cell__waiting" style={{ height: SWATCH_HEIGHT_PX }}>
          predicting…
        </p>
        {chosen}
      </div>
    );
  }
  return (
    <div className="cell">
      <div className="cell__cloth">
        <KnitSwatch
          widthPx={widthPx}
          bareHex={cell.bareHex}
          lightHex={cell.lightHex}
          darkHex={cell.darkHex}
          evidence={cell.evidence}
        />
      </div>
      <p className="cell__line">
        <span className="number">{changeWords(cell.deltaL)}</span>
        {chosen}
      </p>
      <p className="cell__line cell__small">
        <span>
          {rangeWords(cell)}
          <span className="unseen"> in nine of ten,</span>
        </span>
        <span className="quiet">grey scale {cell.greyScaleGrade}</span>
      </p>
      <p className="cell__chance cell__small">
        <ChanceBar chance={cell.chanceInBand} />
        <span>{chanceWords(cell.chanceInBand)} in band</span>
      </p>
      <p className="cell__line cell__small">
        <span className="evidence" data-evidence={cell.evidence}>
          {cell.evidence}
        </span>
        <Warnings cell={cell} />
      </p>
    </div>
  );
}

/** The weightiest in a word; what is only said in passing has no sign. The details have the sentences. */
function Warnings({ cell }: { readonly cell: MatrixCell }) {
  const weighed = byWeight(cell.warnings);
  const [first] = weighed;
  if (first === undefined) return null;
  const moreCount = weighed.filter(({ isLoud }) => isLoud).length - 1;
  return (
    <span className={first.isLoud ? "cell__warning" : "cell__warning quiet"}>
      {first.isLoud && "! "}
      {SHORT_WARNINGS[first.warning]}
      {moreCount > 0 && ` +${moreCount}`}
      <span className="unseen">. {weighed.map(({ warning }) => WARNING_SENTENCES[warning]).join(" ")}</span>
    </span>
  );
}

/** For the eye; the figure stands beside it. */
export function ChanceBar({ chance }: { readonly chance: number }) {
  return (
    <span className="chance" aria-hidden="true">
      <span className="chance__part" style={{ width: `${chance * 100}%` }} />
    </span>
  );
}
