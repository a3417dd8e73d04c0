/** The second person's signature on a first-off, taken over into the list before the run: one press instead of a second form. */
import { currentEntries } from "../../job/checklistSubject.ts";
import { appendChecklistEntry } from "../../job/edits/checklist.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useDocuments, usePlanner } from "../state/usePlanner.ts";

const ITEM = "first-off";

export function SignFirstOff({ run, signer }: { readonly run: PressRun; readonly signer: string }) {
  const { job } = useDocuments();
  const record = usePlanner((state) => state.record);
  const { line, place, subject } = run;
  const signed = currentEntries(job, line.id, place.id, subject).signed.get(ITEM);
  if (signed !== undefined) {
    return <p role="status">The first-off is signed before the run by {signed.signer}.</p>;
  }
  return (
    <ActionButton
      onClick={() =>
        record((now) =>
          appendChecklistEntry(now, {
            id: newId(),
            lineId: line.id,
            placeId: place.id,
            action: "sign",
            itemCode: ITEM,
            subject,
            signer,
            at: nowIso(),
            note: "",
            // What is signed here is a reading and no prediction.
            said: null,
          }),
        )
      }
    >
      Sign the list before the run as {signer}
    </ActionButton>
  );
}
