/** One garment at one place: its items to be signed, and its release. */
import { useEffect, useRef, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { appendChecklistEntry } from "../../job/edits/checklist.ts";
import { pouredRecipe } from "../../job/inkRoom/pouredRecipe.ts";
import type { ChecklistEntry } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { chosenCandidate, mixOf } from "../../job/lookup.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import type { TestPlanState } from "../decisions/useTestPlan.ts";
import { ClothSwatch } from "../look/ClothSwatch.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { lotChangeSentences } from "../words/lotChangeWords.ts";
import { chanceWords, changeWords, rangeWords } from "../words/predictionSentences.ts";
import type { ShownVerdict } from "../words/verdictSentences.ts";
import { CureWords } from "./CureWords.tsx";
import { lotChangeOf } from "./lotChange.ts";
import { ReleaseForm } from "./ReleaseForm.tsx";
import { RunItem } from "./RunItem.tsx";
import { ChooseMix } from "./RunTable.tsx";
import { RunVerdict } from "./RunVerdict.tsx";
import type { RunLine } from "./runLines.ts";
import { saidNow } from "./saidNow.ts";

interface Props {
  readonly documents: Documents;
  readonly run: RunLine;
  /** Null while it cannot be told. */
  readonly verdict: ShownVerdict | null;
  readonly plan: TestPlanState;
  readonly onClose: () => void;
}

export function RunPane({ documents, run, verdict, plan, onClose }: Props) {
  const record = usePlanner((state) => state.record);
  const heading = useRef<HTMLHeadingElement>(null);
  const signerField = useRef<HTMLDivElement>(null);
  const [signer, setSigner] = useSigner();
  const [isNameAsked, setIsNameAsked] = useState(false);
  useEffect(() => {
    if (run.key !== "") heading.current?.focus();
  }, [run.key]);

  /** Whether it was taken down: not without a name. */
  function append(change: Pick<ChecklistEntry, "action" | "itemCode" | "note">): boolean {
    // A click takes the focus from the field first, which commits the name; Enter in a button cannot come before it.
    if (signer === "") {
      setIsNameAsked(true);
      signerField.current?.querySelector("input")?.focus();
      return false;
    }
    const entry: ChecklistEntry = {
      ...change,
      id: newId(),
      lineId: run.line.id,
      placeId: run.place.id,
      subject: run.subject,
      signer,
      at: nowIso(),
      said: saidNow(documents, run, change.action),
    };
    record((now) => appendChecklistEntry(now, entry));
    return true;
  }

  const { shelf } = documents.library;
  const { temperature } = shopUnits(shelf.defaults.units);
  const candidate = chosenCandidate(documents.job, run.line.id, run.place.id);
  const mix = candidate === null ? null : mixOf(documents.job, candidate.mixId);
  const isPoured = mix !== null && pouredRecipe(documents, mix) !== null;
  const lotChange = lotChangeOf(documents, run);
  const isChoice = run.items.some(({ item }) => item.kind === "choice");
  return (
    <section className="pane panel" aria-label="Checklist of the garment">
      <div className="pane__head">
        <h2 ref={heading} tabIndex={-1}>
          {run.name}
        </h2>
        <ActionButton onClick={onClose}>Close</ActionButton>
      </div>
      <div className="run__print surround">
        {run.lot !== null && <ClothSwatch bare={run.lot.bare} />}
        <div>
          <p>{[run.place.name, run.mixName, run.setUpName].filter((part) => part !== "").join(" · ")}</p>
          {run.chosen.kind === "predicted" && <Predicted cell={run.chosen.cell} />}
          {isPoured && <p className="quiet">Predicted with what was weighed into the pot.</p>}
          {run.chosen.kind === "pending" && <p>Predicting…</p>}
        </div>
      </div>
      {lotChange !== null && (
        <Notice kind="caution">
          <p>
            <strong>Another lot</strong>
          </p>
          {lotChangeSentences(lotChange, run.lot).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
      )}
      <RunVerdict documents={documents} run={run} verdict={verdict} plan={plan} />
      {isChoice ? (
        <Notice kind="note">
          <ChooseMix jobId={documents.job.id} run={run} />
        </Notice>
      ) : (
        <>
          <div ref={signerField} className="run__signer">
            <TextEntry
              label="Your name, for what you sign"
              value={signer}
              maxLength={120}
              onCommit={(name) => {
                setSigner(name);
                setIsNameAsked(false);
              }}
            />
            {isNameAsked && (
              <p className="entry__problem" role="alert">
                Write your name first.
              </p>
            )}
          </div>
          <ul className="run__cards">
            {run.items.map((state) => (
              <RunItem
                key={state.item.code}
                state={state}
                temperature={temperature}
                signer={signer}
                onSign={(note) => append({ action: "sign", itemCode: state.item.code, note })}
                onWithdraw={(note) => append({ action: "withdraw", itemCode: state.item.code, note })}
              >
                {state.item.code === "cure" && mix !== null && <CureWords mix={mix} shelf={shelf} />}
                {state.item.code === "goods-in" && run.approved !== null && (
                  <p>
                    Approved: {lineName(run.approved)}
                    {run.approved.lot !== "" && `, lot ${run.approved.lot}`}.
                  </p>
                )}
              </RunItem>
            ))}
          </ul>
          <ReleaseForm
            run={run}
            signer={signer}
            onAct={(action, note) => append({ action, itemCode: null, note })}
          />
        </>
      )}
    </section>
  );
}

function Predicted({ cell }: { readonly cell: Extract<RunLine["chosen"], { kind: "predicted" }>["cell"] }) {
  return (
    <>
      <p>
        <span className="number">{changeWords(cell.deltaL)}</span>, {rangeWords(cell)} in nine of ten
      </p>
      <p>
        {chanceWords(cell.chanceInBand)} in band ·{" "}
        <span className="run__evidence" data-evidence={cell.evidence}>
          {cell.evidence}
        </span>
      </p>
    </>
  );
}
