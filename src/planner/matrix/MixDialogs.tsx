/** What the dialog about a column does to the job. */
import type { Documents } from "../../job/documents.ts";
import {
  addCandidate,
  changeCandidateSetUp,
  changeMix,
  moveCandidate,
  removeCandidate,
} from "../../job/edits/mixes.ts";
import type { Place } from "../../job/jobDocument.ts";
import { mixOf } from "../../job/lookup.ts";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { MixDialog, type WrittenMix } from "./MixDialog.tsx";

/** In place of a candidate's id where a new mix is being written. */
export const NEW_MIX = "new";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  /** The candidate whose mix is changed, or NEW_MIX. */
  readonly openId: string;
  readonly onClose: () => void;
  /** A column was added. */
  readonly onAdded: (candidateId: string) => void;
}

export function MixDialogs({ documents, place, openId, onClose, onAdded }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { shelf } = documents.library;
  const add = ({ name, recipe, setUpId, clothCoverFraction }: WrittenMix) => {
    const candidateId = newId();
    const mix = { id: newId(), name, recipe: [...recipe], clothCoverFraction };
    edit((now) => addCandidate(now, place.id, { candidateId, mix, setUpId }));
    onAdded(candidateId);
    onClose();
  };
  if (openId === NEW_MIX) {
    return (
      <MixDialog shelf={shelf} mix={null} setUpId={null} actions={null} onTake={add} onClose={onClose} />
    );
  }
  const index = place.candidates.findIndex(({ id }) => id === openId);
  const candidate = place.candidates[index];
  const mix = candidate === undefined ? null : mixOf(documents.job, candidate.mixId);
  if (candidate === undefined || mix === null) return null;
  const move = (toIndex: number) =>
    toIndex < 0 || toIndex >= place.candidates.length
      ? null
      : () => edit((now) => moveCandidate(now, place.id, candidate.id, toIndex));
  return (
    <MixDialog
      key={candidate.id}
      shelf={shelf}
      mix={mix}
      setUpId={candidate.setUpId}
      actions={{
        onMoveLeft: move(index - 1),
        onMoveRight: move(index + 1),
        onDuplicate: () => add({ ...mix, setUpId: candidate.setUpId }),
        onRemove: () => {
          edit((now) => removeCandidate(now, place.id, candidate.id));
          onClose();
        },
      }}
      onTake={({ name, recipe, setUpId, clothCoverFraction }) => {
        edit((now) =>
          changeCandidateSetUp(
            changeMix(now, mix.id, { name, recipe: [...recipe], clothCoverFraction }),
            place.id,
            candidate.id,
            setUpId,
          ),
        );
        onClose();
      }}
      onClose={onClose}
    />
  );
}
