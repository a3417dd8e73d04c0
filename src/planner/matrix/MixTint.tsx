/** The tint of a mix by slider and by typing; what the data sheet does not allow is refused with its sentence. */
import { useState } from "react";
import type { Mix } from "../../job/mixDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { TintSlider } from "../controls/TintSlider.tsx";
import { usePlanner, usePlannerStore } from "../state/usePlanner.ts";
import { mixName } from "../words/mixWords.ts";
import { largestTintFraction, tintEdit, tintFraction, tintOf } from "./tintEdit.ts";

/** Ends of the slider: the tint ladder's own, then coarser ones for what is no mere tint. */
const COARSE_ENDS = [0.05, 0.2, 1];
/** Steps of the slider from end to end. */
const STEP_COUNT = 100;

function sliderEnd(massFraction: number, shelf: Shelf): number {
  const ladderEnd = shelf.defaults.tintLadder.at(-1) ?? 0.01;
  if (massFraction <= ladderEnd) return ladderEnd;
  return COARSE_ENDS.find((end) => massFraction <= end / 2) ?? 1;
}

export function MixTint({ mix, shelf }: { readonly mix: Mix; readonly shelf: Shelf }) {
  const store = usePlannerStore();
  const edit = usePlanner((state) => state.edit);
  const endGesture = usePlanner((state) => state.endGesture);
  const [refusal, setRefusal] = useState<string | null>(null);
  const colourant = tintOf(mix, shelf);
  const massFraction = colourant === null ? 0 : tintFraction(mix, colourant.id);
  // The scale never shrinks under the finger: it grows with the tint and stays.
  const [end, setEnd] = useState(() => sliderEnd(massFraction, shelf));
  if (massFraction > end) setEnd(sliderEnd(massFraction, shelf));
  if (colourant === null) return null;
  const change = (next: number, gesture: string) => {
    const documents = store.getState().documents;
    if (documents === null) return;
    const wanted = tintEdit(documents, mix.id, colourant.id, next);
    setRefusal(wanted.ok ? null : wanted.sentence);
    if (wanted.ok) edit(wanted.change, gesture);
  };
  return (
    <div className="mix-tint">
      <TintSlider
        label={`${colourant.name} in ${mixName(mix, shelf)}`}
        massFraction={massFraction}
        sliderEndFraction={end}
        largestFraction={largestTintFraction(mix, shelf, colourant)}
        stepFraction={end / STEP_COUNT}
        onChange={change}
        onChangeEnd={endGesture}
      />
      {refusal !== null && (
        <p className="mix-tint__refusal" role="alert">
          ! {refusal}
        </p>
      )}
    </div>
  );
}
