/** What is on the press: garment, mix and set-up, the target and where it comes from, what was predicted, and its release. */
import type { Documents } from "../../job/documents.ts";
import { lineName } from "../../job/lineName.ts";
import { pieceCount } from "../../job/lookup.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import { jobAddress, printAddress } from "../address.ts";
import type { RunLine } from "../beforeTheRun/runLines.ts";
import { openNames } from "../beforeTheRun/standingWords.ts";
import { Notice } from "../controls/Notice.tsx";
import { ClothSwatch } from "../look/ClothSwatch.tsx";
import { ProblemList } from "../words/ProblemList.tsx";
import { pieces } from "../words/pieceWords.ts";
import { bandWords, chanceWords, changeWords, rangeWords } from "../words/predictionSentences.ts";
import { bandSourceWords } from "../words/pressSentences.ts";

interface Props {
  readonly documents: Documents;
  readonly of: RunLine;
  readonly run: PressRun;
}

/** The garment whose approved print the band follows. */
export function approvedName({ library }: Documents, { lineBand }: PressRun): string {
  const lot = library.garmentLots.find(({ id }) => id === lineBand.follows?.lotId);
  if (lot === undefined) return "";
  return `${lineName(lot)}${lot.lot === "" ? "" : `, lot ${lot.lot}`}`;
}

export function PressHead({ documents, of, run }: Props) {
  const { chosen, lot } = of;
  return (
    <div className="press__head">
      <div className="press__what surround">
        {lot !== null && <ClothSwatch bare={lot.bare} />}
        <div>
          <h3>{of.name}</h3>
          <p>
            {of.place.name} · {of.mixName} · {of.setUpName}
          </p>
          <p className="quiet">
            {lot !== null && lot.lot !== "" && <>lot {lot.lot} · </>}
            {pieces(pieceCount(of.line))}
          </p>
        </div>
        <dl className="press__figures">
          <div>
            <dt>Target</dt>
            <dd>
              <span className="number">{bandWords(run.lineBand.band)}</span>
              <span className="press__small">
                {bandSourceWords(run.lineBand, approvedName(documents, run))}
              </span>
            </dd>
          </div>
          <div>
            <dt>Predicted</dt>
            <dd>
              {chosen.kind === "predicted" ? (
                <>
                  <span className="number">{changeWords(chosen.cell.deltaL)}</span>
                  <span className="press__small">
                    {rangeWords(chosen.cell)} in nine of ten, {chanceWords(chosen.cell.chanceInBand)} in band,{" "}
                    <span className="evidence" data-evidence={chosen.cell.evidence}>
                      {chosen.cell.evidence}
                    </span>
                  </span>
                </>
              ) : chosen.kind === "pending" ? (
                "predicting…"
              ) : (
                "not predicted"
              )}
            </dd>
          </div>
        </dl>
      </div>
      {chosen.kind === "refused" && (
        <Notice kind="problem">
          <p>This mix cannot be printed as it stands:</p>
          <ProblemList problems={chosen.problems} />
        </Notice>
      )}
      <Released documents={documents} of={of} />
    </div>
  );
}

/** Printing before the release is not forbidden: a first-off has to be printed to be signed. */
function Released({ documents, of }: Pick<Props, "documents" | "of">) {
  const { standing, open, entries, line, place } = of;
  if (standing === "released" || standing === "pending") return null;
  const list = printAddress(
    jobAddress(documents.job.id, "before-the-run", { line: line.id, place: place.id }),
  );
  const why =
    standing === "held"
      ? `Held by ${entries.standing?.signer ?? ""}${entries.standing?.note ? `: ${entries.standing.note}` : ""}.`
      : standing === "ready"
        ? entries.override === null
          ? "Ready, and not released yet."
          : "Ready by override, and not released yet."
        : open.length === 0
          ? "Not released yet."
          : `Not released yet; open: ${openNames(open)}.`;
  return (
    <div data-print="hide">
      <Notice kind="caution">
        {why} A first-off may be printed; the run waits. <a href={list}>Before the run</a>
      </Notice>
    </div>
  );
}
