/** Readings from a file: read off the main thread, what it does not say is asked, its pairs are confirmed before they count. */
import { useId, useState } from "react";
import { changeDefaults } from "../../job/edits/shelf.ts";
import type { MeasuredReadings } from "../../job/readingMeans.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { Tick } from "../controls/Tick.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { readingsSentence } from "../words/readingsSentences.ts";
import { readingsWords } from "../words/testsWords.ts";
import { FileAsks } from "./FileAsks.tsx";
import { FileColumns } from "./FileColumns.tsx";
import { FilePairs } from "./FilePairs.tsx";
import { type ReadingsFile, useReadingsFile } from "./useReadingsFile.ts";

interface Props {
  readonly taken: MeasuredReadings | null;
  readonly pieceCount: number;
  readonly onTake: (readings: MeasuredReadings | null) => void;
}

export function FileEntry({ taken, pieceCount, onTake }: Props) {
  const id = useId();
  const remembered = usePlanner((state) => state.documents?.library.shelf.defaults.columnMatchings ?? []);
  const file = useReadingsFile(remembered, pieceCount);
  const { wish, answer, failed } = file;
  return (
    <div className="tests__file">
      <div className="entry">
        <label className="entry__label" htmlFor={id}>
          Colour-measurement file: CGATS text, CSV or CxF3
        </label>
        <input
          id={id}
          className="entry__field"
          type="file"
          accept=".txt,.cgats,.it8,.csv,.tsv,.cxf,.xml,text/*"
          onChange={(event) => {
            const chosen = event.target.files?.[0];
            if (chosen !== undefined) void file.open(chosen);
          }}
        />
      </div>
      {taken !== null && (
        <p role="status">
          <strong>Taken: {readingsWords(taken)}.</strong>{" "}
          <ActionButton weight="plain" onClick={() => onTake(null)}>
            Leave them out
          </ActionButton>
        </p>
      )}
      {failed && <Notice kind="problem">The file could not be read. Reload the page and try again.</Notice>}
      {wish !== null && answer === null && !failed && <p role="status">Reading {wish.name}…</p>}
      {answer !== null && <OpenedFile file={file} onTake={onTake} />}
    </div>
  );
}

function OpenedFile({ file, onTake }: { readonly file: ReadingsFile; readonly onTake: Props["onTake"] }) {
  const edit = usePlanner((state) => state.edit);
  const [isKept, setIsKept] = useState(true);
  const { wish, answer } = file;
  if (wish === null || answer === null) return null;
  const { result, outcome, matching, toRemember, rememberedName } = answer;
  // What is still to be answered is asked above; only what else keeps the pairs from being taken is said here.
  const refusals =
    outcome === null || outcome.ok
      ? []
      : outcome.problems.filter(({ code }) => code !== "readings-not-answered");
  const remember = () => {
    if (!isKept || wish.matching === null || toRemember === null) return;
    edit((documents) => {
      const { columnMatchings } = documents.library.shelf.defaults;
      const others = columnMatchings.filter(({ name }) => name !== toRemember.name);
      return changeDefaults(documents, { columnMatchings: [toRemember, ...others] });
    });
  };
  return (
    <>
      {!result.ok && (
        <Notice kind="problem" announce>
          <p>Nothing was taken from {wish.name}.</p>
          <ul>
            {result.problems.map((problem) => (
              <li key={`${problem.code} ${problem.where}`}>{readingsSentence(problem)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {matching !== null && (
        <FileColumns
          matching={matching}
          rememberedName={rememberedName}
          isOpen={!result.ok}
          scale={wish.scale}
          onMatch={(next) => file.change({ matching: next, pairs: null })}
          onScale={(scale) => file.change({ scale })}
        />
      )}
      {result.ok && (
        <>
          {result.warnings.length > 0 && (
            <Notice kind="note">
              <ul>
                {result.warnings.map((warning) => (
                  <li key={`${warning.code} ${warning.where}`}>{readingsSentence(warning)}</li>
                ))}
              </ul>
            </Notice>
          )}
          <FileAsks
            asked={result.toAsk}
            answers={wish.answers}
            onAnswer={(answers) => file.change({ answers })}
          />
          <FilePairs
            samples={result.samples}
            pairs={wish.pairs ?? answer.proposal?.pairs ?? []}
            isProposal={wish.pairs === null}
            from={answer.proposal?.pairs[0]?.from ?? "order"}
            onChange={(pairs) => file.change({ pairs })}
          />
          {refusals.length > 0 && (
            <Notice kind="caution">
              {refusals.slice(0, 3).map((problem) => (
                <p key={`${problem.code} ${problem.where}`}>{readingsSentence(problem)}</p>
              ))}
            </Notice>
          )}
          {wish.matching !== null && toRemember !== null && (
            <Tick label="Remember these columns for the next file" checked={isKept} onChange={setIsKept} />
          )}
          <div className="acts">
            <ActionButton
              weight="strong"
              disabled={outcome === null || !outcome.ok}
              onClick={() => {
                if (outcome === null || !outcome.ok) return;
                remember();
                onTake(outcome.readings);
                file.close();
              }}
            >
              Use these readings
            </ActionButton>
            <ActionButton onClick={file.close}>Leave the file</ActionButton>
          </div>
        </>
      )}
    </>
  );
}
