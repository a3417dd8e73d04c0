/** A job file whose job is stored already: the one who imports says which is to stay. */
import { ActionButton } from "../controls/ActionButton.tsx";
import { Dialog } from "../controls/Dialog.tsx";

interface Props {
  readonly number: string;
  readonly storedNumber: string;
  readonly onClose: () => void;
  readonly onAccept: (how: "as-it-is" | "as-new") => void;
}

export function ImportConflictDialog({ number, storedNumber, onClose, onAccept }: Props) {
  return (
    <Dialog
      title={`${storedNumber} is stored here already`}
      onClose={onClose}
      actions={
        <>
          <ActionButton onClick={onClose}>Import nothing</ActionButton>
          <ActionButton onClick={() => onAccept("as-new")}>Keep both</ActionButton>
          <ActionButton weight="strong" onClick={() => onAccept("as-it-is")}>
            Replace the stored one
          </ActionButton>
        </>
      }
    >
      <p>
        The file holds the same job{number === storedNumber ? "" : `, as ${number}`}. Replacing drops what was
        changed or signed here since the file was written. The garments and the shelf are joined either way;
        where the file says something else than the shop's own entry, the shop's own stays.
      </p>
    </Dialog>
  );
}
