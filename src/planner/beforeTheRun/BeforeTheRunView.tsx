/** Before the run: for every garment at every place what has to be true, who signed, and what keeps it from the press. */
import { useEffect, useMemo, useRef } from "react";
import type { ChecklistReasonCode } from "../../core/planning/checklistItem.ts";
import { inkRoomOf } from "../../job/inkRoom/inkRoomOf.ts";
import { useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { useTestPlan } from "../decisions/useTestPlan.ts";
import { today } from "../state/identity.ts";
import { useDocuments } from "../state/usePlanner.ts";
import { ChildrensLines } from "../words/ChildrensLines.tsx";
import { CAUTIONS, reasonLegend } from "../words/checklistSentences.ts";
import { verdictSummary } from "../words/verdictSentences.ts";
import { Ledger } from "./Ledger.tsx";
import { ReleaseRecord } from "./ReleaseRecord.tsx";
import { RunPane } from "./RunPane.tsx";
import { RunTable } from "./RunTable.tsx";
import { type RunLine, runLines } from "./runLines.ts";
import { signerMarks } from "./signerMarks.ts";
import { summarySentences } from "./standingWords.ts";
import { useChosenStates } from "./useChosenStates.ts";
import { verdictOf } from "./verdicts.ts";
import "./beforeTheRun.css";
import "./verdict.css";

/** From this width the pane stands beside the table, as in shell.css. */
const PANE_BESIDE_PX = 1200;

/** The reasons in use, numbered in the order in which they come. */
function legendOf(lines: readonly RunLine[]): Map<ChecklistReasonCode, number> {
  const numbers = new Map<ChecklistReasonCode, number>();
  for (const { items } of lines) {
    for (const { item } of items) {
      if (item.kind === "choice") continue;
      for (const { code } of item.reasons) if (!numbers.has(code)) numbers.set(code, numbers.size + 1);
    }
  }
  return numbers;
}

export default function BeforeTheRunView() {
  const documents = useDocuments();
  const { address, change } = useJobAddress();
  const states = useChosenStates(documents);
  const view = useRef<HTMLDivElement>(null);
  const focusNext = useRef<string | null>(null);
  const lines = useMemo(() => runLines(documents, states), [documents, states]);
  const plan = useTestPlan(documents);
  const { finding, isCurrent } = plan;
  const verdicts = useMemo(
    () =>
      new Map(
        lines.flatMap((run) => {
          const verdict = verdictOf(documents, run, { finding, isCurrent });
          return verdict === null ? [] : [[run.key, verdict] as const];
        }),
      ),
    [documents, lines, finding, isCurrent],
  );
  const { currency } = documents.library.shelf.defaults;
  const verdictLine = verdictSummary([...verdicts.values()], currency);
  const legend = useMemo(() => legendOf(lines), [lines]);
  const signers = useMemo(() => signerMarks(lines), [lines]);
  const childrensLines = useMemo(
    () => (documents.job.forChildren ? inkRoomOf(documents, { today: today() }).childrensLines : []),
    [documents],
  );
  const ofLine = lines.filter(({ line }) => line.id === address.line);
  const open = ofLine.find(({ place }) => place.id === address.place) ?? ofLine[0] ?? null;
  const openKey = open?.key ?? null;

  // After closing, the keyboard goes on from the row that was open.
  useEffect(() => {
    if (focusNext.current === null) return;
    view.current?.querySelector<HTMLElement>(`[data-run="${focusNext.current}"]`)?.focus();
    focusNext.current = null;
  });

  // Where the pane is a sheet from below, it must not cover the row that it belongs to.
  useEffect(() => {
    if (openKey === null || window.innerWidth >= PANE_BESIDE_PX) return;
    view.current?.querySelector("tr[data-open]")?.scrollIntoView?.({ block: "start" });
  }, [openKey]);

  return (
    <div className="view-with-pane" data-pane={open === null ? "closed" : "open"} ref={view}>
      <div className="view run">
        <div className="view__head">
          <h2>Before the run</h2>
          <div className="view__actions">
            <ActionButton onClick={() => window.print()}>Print this page</ActionButton>
          </div>
        </div>
        {lines.length === 0 ? (
          <p>No garment is printed anywhere yet: add garments, then choose a mix for each in the matrix.</p>
        ) : (
          <>
            <div className="run__summary" role="status">
              {summarySentences(lines).map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
              {verdictLine !== null && <p>{verdictLine}</p>}
            </div>
            <RunTable
              documents={documents}
              lines={lines}
              verdicts={verdicts}
              openKey={openKey}
              legend={legend}
              signers={signers}
              onOpen={({ line, place }) => change({ line: line.id, place: place.id })}
            />
          </>
        )}
        {signers.size > 0 && (
          <p className="run__key">
            Signed by: {[...signers].map(([signer, mark]) => `${mark} ${signer}`).join(", ")}.
          </p>
        )}
        <p className="run__key" data-paper="">
          An empty box is open, a dashed one advised, a ticked one signed. The numbers say why:
        </p>
        <ol className="run__legend" aria-label="Why" data-paper="">
          {[...legend.keys()].map((code) => (
            <li key={code}>{reasonLegend(code)}</li>
          ))}
        </ol>
        <ul className="run__cautions" aria-label="Cautions">
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        {childrensLines.length > 0 && (
          <section className="run__children" aria-labelledby="run-children">
            <h3 id="run-children">This job is for children</h3>
            <ChildrensLines lines={childrensLines} className="run__cautions" />
          </section>
        )}
        {lines.some(({ standing }) => standing === "released") && (
          <section className="run__records" aria-label="Release records">
            <h3>Release records</h3>
            {lines.map((run) => (
              <ReleaseRecord key={run.key} documents={documents} run={run} />
            ))}
          </section>
        )}
        <Ledger documents={documents} />
      </div>
      {open !== null && (
        <RunPane
          key={open.key}
          documents={documents}
          run={open}
          verdict={verdicts.get(open.key) ?? null}
          plan={plan}
          onClose={() => {
            focusNext.current = open.key;
            change({ line: null, place: null });
          }}
        />
      )}
    </div>
  );
}
