/** A print as the approved reference of its lot: who approved it, what was said then, what is known now, what follows it. */
import { useState } from "react";
import type { Expected } from "../../engine/recordFinding.ts";
import { approvedReference } from "../../job/approvedReference.ts";
import type { Documents } from "../../job/documents.ts";
import { appendApproval } from "../../job/edits/records.ts";
import { MODEL_VERSION } from "../../job/modelVersion.ts";
import { bandOfPrint } from "../../job/recordBook/bandOfPrint.ts";
import type { Approval, TestPrint } from "../../job/recordDocument.ts";
import { standing } from "../../job/standing.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import {
  approvedSentence,
  followsSentence,
  saidNowSentence,
  saidThenSentence,
} from "../words/referenceWords.ts";
import type { FindingState } from "./useFinding.ts";

interface Props {
  readonly documents: Documents;
  readonly print: TestPrint;
  readonly finding: FindingState;
}

/** What the planner says of the print today, without the print itself. */
function saidOf(expected: Expected): NonNullable<Approval["said"]> {
  const { deltaL, deltaL5, deltaL95, evidence, chanceInBand } = expected;
  return { deltaL, p5: deltaL5, p95: deltaL95, evidence, chanceInBand };
}

export function KeepAsReference({ documents, print, finding }: Props) {
  const { library } = documents;
  const record = usePlanner((state) => state.record);
  const [signer, setSigner] = useSigner();
  const [note, setNote] = useState("");
  const reference = approvedReference(library, print.garmentLotId);
  const isReference = reference?.testPrint.id === print.id;
  const approval = isReference ? reference.approval : null;
  const earlier = standing(library.approvals).findLast((one) => one.garmentLotId === print.garmentLotId);
  const keep = () => {
    const said = finding.kind === "found" ? saidOf(finding.finding.expected) : null;
    record((now) =>
      appendApproval(now, {
        id: newId(),
        garmentLotId: print.garmentLotId,
        testPrintId: print.id,
        approvedBy: signer,
        approvedAt: nowIso(),
        note,
        modelVersion: MODEL_VERSION,
        said,
        supersedesId: earlier?.id ?? null,
      }),
    );
    setNote("");
  };
  return (
    <section
      className="tests__reference"
      aria-label="Reference of the lot"
      data-print={reference === null ? "hide" : undefined}
    >
      <h4>Reference of the lot</h4>
      {approval !== null && <p>{approvedSentence(approval)}</p>}
      {isReference && approval === null && <p>The shop keeps this print as its reference for the lot.</p>}
      {isReference && <p>{followsSentence(bandOfPrint(documents, print.garmentLotId, print.recipe))}</p>}
      {approval !== null && (
        <dl className="tests__then">
          <div>
            <dt>Said then</dt>
            <dd>{saidThenSentence(approval)}</dd>
          </div>
          {finding.kind === "found" && finding.finding.afterwards !== null && (
            <div>
              <dt>Known now</dt>
              <dd>{saidNowSentence(finding.finding.afterwards)}</dd>
            </div>
          )}
        </dl>
      )}
      {!isReference && reference !== null && (
        <p>Another print is the reference of this lot. Approving this one takes its place.</p>
      )}
      {approval === null && (
        <div className="tests__approve" data-print="hide">
          <TextEntry
            label="Approved by"
            value={signer}
            maxLength={120}
            onCommit={setSigner}
            required="An approval needs a name."
          />
          <TextEntry label="Note to the approval" value={note} maxLength={2000} onCommit={setNote} />
          <div className="acts">
            <ActionButton disabled={signer === "" || finding.kind === "asking"} onClick={keep}>
              Keep as the approved reference
            </ActionButton>
          </div>
        </div>
      )}
    </section>
  );
}
