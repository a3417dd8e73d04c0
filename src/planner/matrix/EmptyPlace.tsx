/** A print place with no mix tried on it yet: what to do next, as buttons. */
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { percentWords } from "../words/garmentWords.ts";
import { firstInks, withFirstMixes } from "./firstMixes.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly onWriteMix: () => void;
  readonly onFindMixes: () => void;
}

export function EmptyPlace({ documents, place, onWriteMix, onFindMixes }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { address } = useJobAddress();
  const { shelf } = documents.library;
  const inks = firstInks(shelf);
  if (inks === null) {
    const lacksBase = !shelf.bases.some(({ role }) => role === "base");
    const tab = lacksBase ? "bases" : shelf.meshes.length === 0 ? "meshes" : "set-ups";
    return (
      <section className="matrix__next panel" aria-label="What to do next">
        <p>
          No mix can be tried yet: the shelf has {lacksBase ? "no base" : "no set-up"}.{" "}
          {lacksBase
            ? "Put the base that you print with on it first"
            : "A set-up is a mesh, a squeegee and a number of strokes; put one on it first"}
          , then come back.
        </p>
        <p>
          <a href={printAddress({ ...address, view: "shelf", tab })}>Open the shelf</a>
        </p>
      </section>
    );
  }
  const { base, black, ladder, setUp } = inks;
  const begin = (steps: readonly number[]) => edit((now) => withFirstMixes(now, place.id, steps, newId));
  return (
    <section className="matrix__next panel" aria-label="What to do next">
      <p>
        No mix is tried on {place.name} yet. Begin with one: its prediction for every garment is here at once,
        and everything about it can be changed.
      </p>
      <div className="matrix__next-actions">
        <ActionButton weight="strong" onClick={() => begin([0])}>
          Try {base.name} with no tint
        </ActionButton>
        {black !== null && ladder.length > 1 && (
          <ActionButton onClick={() => begin(ladder)}>
            Try it with {ladder.map((step) => (step === 0 ? "no" : percentWords(step))).join(", ")}{" "}
            {black.name.toLowerCase()}
          </ActionButton>
        )}
        <ActionButton onClick={onFindMixes}>Find the cheapest mixes</ActionButton>
        <ActionButton onClick={onWriteMix}>Write another mix</ActionButton>
      </div>
      <p className="entry__hint">Printed through {setUp.name}; that too can be changed with the mix.</p>
    </section>
  );
}
