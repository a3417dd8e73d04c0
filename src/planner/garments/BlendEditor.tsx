/** The fibre blend: stored as soon as it sums to 100 %, until then a draft that says what is missing. */
import type { BlendPart, Fibre } from "../../job/garmentLotDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { FIBRES } from "../words/garmentWords.ts";
import { blendSentence, completeBlend, missingFraction } from "./blendDraft.ts";
import { type DraftBlendPart, useDrafts } from "./drafts.tsx";

interface Props {
  readonly lotId: string;
  readonly stored: readonly BlendPart[] | null;
  readonly onCommit: (blend: BlendPart[]) => void;
}

export function BlendEditor({ lotId, stored, onCommit }: Props) {
  const { blends, setBlend } = useDrafts();
  const draft = blends[lotId];
  const parts: readonly DraftBlendPart[] = draft ?? stored ?? [];

  function change(next: readonly DraftBlendPart[]): void {
    const complete = completeBlend(next);
    if (complete === null) {
      setBlend(lotId, next);
      return;
    }
    setBlend(lotId, null);
    onCommit(complete);
  }

  const changePart = (index: number, part: Partial<DraftBlendPart>) =>
    change(parts.map((old, i) => (i === index ? { ...old, ...part } : old)));

  function addPart(): void {
    const unused = FIBRES.find(({ value }) => !parts.some(({ fibre }) => fibre === value));
    const missing = missingFraction(parts);
    const fibre: Fibre = unused?.value ?? "cotton";
    change([...parts, { fibre, massFraction: missing > 0 ? missing : null, dyed: true }]);
  }

  const sentence = draft === undefined && stored !== null ? null : blendSentence(parts);
  return (
    <fieldset className="editor__block">
      <legend>Fibre blend</legend>
      {parts.map((part, index) => {
        const ordinal = `fibre ${index + 1}`;
        return (
          <fieldset
            className="editor__row editor__row--blend"
            // biome-ignore lint/suspicious/noArrayIndexKey: parts have no other identity; an entry drops its draft when its value moves
            key={index}
            aria-label={`Fibre ${index + 1}`}
          >
            <Choice
              label={`Name of ${ordinal}`}
              labelUnseen
              value={part.fibre}
              options={FIBRES}
              onChange={(fibre) => changePart(index, { fibre })}
            />
            <NumberEntry
              label={`Part of ${ordinal}`}
              labelUnseen
              value={part.massFraction === null ? null : Number((part.massFraction * 100).toFixed(7))}
              min={0}
              max={100}
              unit="%"
              onCommit={(percent) => changePart(index, { massFraction: Number((percent / 100).toFixed(9)) })}
            />
            <Tick label="dyed" checked={part.dyed} onChange={(dyed) => changePart(index, { dyed })} />
            <ActionButton
              weight="plain"
              aria-label={`Remove ${part.fibre}, ${ordinal}`}
              onClick={() => change(parts.filter((_, i) => i !== index))}
            >
              Remove
            </ActionButton>
          </fieldset>
        );
      })}
      <div className="editor__foot">
        <ActionButton onClick={addPart}>Add a fibre</ActionButton>
        {draft !== undefined && stored !== null && (
          <ActionButton weight="plain" onClick={() => setBlend(lotId, null)}>
            Go back to the saved blend
          </ActionButton>
        )}
      </div>
      {sentence !== null && <NotSavedYet sentence={sentence} />}
    </fieldset>
  );
}
