/** Asks before a job is deleted: it cannot be undone, and its sign-offs and its press log go with it. */
import { ActionButton } from "../controls/ActionButton.tsx";
import { Dialog } from "../controls/Dialog.tsx";
import type { JobSummary } from "../storagePort.ts";

interface Props {
  readonly job: JobSummary;
  readonly onClose: () => void;
  readonly onDelete: () => void;
}

export function DeleteJobDialog({ job, onClose, onDelete }: Props) {
  return (
    <Dialog
      title={`Delete ${job.number}?`}
      onClose={onClose}
      actions={
        <>
          <ActionButton onClick={onClose}>Keep it</ActionButton>
          <ActionButton weight="strong" onClick={onDelete}>
            Delete {job.number}
          </ActionButton>
        </>
      }
    >
      <p>
        Its garment lines, mixes, choices, checklist sign-offs and press log are removed from this device, and
        this cannot be undone. The garments and test prints stay on the shelf. Export it first to keep a file
        of it.
      </p>
    </Dialog>
  );
}
