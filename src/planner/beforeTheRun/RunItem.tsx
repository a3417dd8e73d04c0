/** One item of a line's checklist: what has to be true, why, who signed, and the way to sign or to take it back. */
import { type ReactNode, useId, useState } from "react";
import type { Unit } from "../../units/unit.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { LongText, tooLong } from "../controls/LongText.tsx";
import { itemClaim, itemName, reasonSentence } from "../words/checklistSentences.ts";
import type { ItemState } from "./runLines.ts";
import { itemStateWords } from "./standingWords.ts";

interface Props {
  readonly state: ItemState;
  readonly temperature: Unit;
  readonly signer: string;
  /** What belongs to this item alone: cures as entered, the approved lot. */
  readonly children?: ReactNode;
  /** Whether it was taken down; where not, the note stays. */
  readonly onSign: (note: string) => boolean;
  readonly onWithdraw: (note: string) => boolean;
}

const LONGEST_NOTE = 2000;

export function RunItem({ state, temperature, signer, children, onSign, onWithdraw }: Props) {
  const id = useId();
  const { item, entry } = state;
  const [note, setNote] = useState<string | null>(null);
  const isSigned = state.state === "signed";
  const name = itemName(item.code);
  const as = signer === "" ? "" : ` as ${signer}`;
  const finish = (act: (text: string) => boolean) => {
    if (tooLong(note ?? "", LONGEST_NOTE) !== null) return;
    if (act((note ?? "").trim())) setNote(null);
  };
  return (
    <li className="run__card" data-state={state.state} aria-labelledby={id}>
      <div className="run__card-head">
        <span className="run__mark" data-blocking={item.blocking ? "" : undefined} aria-hidden="true" />
        <h3 id={id}>{name}</h3>
        <p className="run__state">{itemStateWords(state)}</p>
      </div>
      <p>{itemClaim(item.code)}</p>
      <ul className="run__reasons">
        {item.reasons.map((reason) => (
          <li key={reason.code}>{reasonSentence(reason, temperature)}</li>
        ))}
      </ul>
      {children}
      {entry !== null && entry.note !== "" && <p className="run__note">Note: {entry.note}</p>}
      {note !== null && (
        <LongText
          label={`Note on ${name.toLowerCase()}`}
          value={note}
          maxLength={LONGEST_NOTE}
          focusFirst
          onChange={setNote}
        />
      )}
      <div className="run__acts">
        {isSigned ? (
          <ActionButton
            weight="plain"
            aria-label={`Withdraw ${name.toLowerCase()}${as}`}
            onClick={() => finish(onWithdraw)}
          >
            Withdraw{as}
          </ActionButton>
        ) : (
          <ActionButton aria-label={`Sign ${name.toLowerCase()}${as}`} onClick={() => finish(onSign)}>
            Sign{as}
          </ActionButton>
        )}
        {note === null && (
          <ActionButton
            weight="plain"
            aria-label={`Add a note on ${name.toLowerCase()}`}
            onClick={() => setNote("")}
          >
            Add a note
          </ActionButton>
        )}
      </div>
    </li>
  );
}
