/** Text that is being typed and not yet the document's: kept while wrong, dropped when the document's value moves. */
import { type ChangeEvent, type FocusEvent, type KeyboardEvent, useState } from "react";

export interface DraftText {
  readonly text: string;
  readonly sentence: string | null;
  readonly handlers: {
    onChange(event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>): void;
    onBlur(event: FocusEvent): void;
    onKeyDown(event: KeyboardEvent): void;
  };
}

/**
 * @param stored the document's value as text
 * @param commit takes the typed text; returns the sentence that says why it cannot be taken, or null
 * @param commitOnEnter false where Enter makes a new line
 */
export function useDraftText(
  stored: string,
  commit: (text: string) => string | null,
  commitOnEnter = true,
): DraftText {
  const [draft, setDraft] = useState<string | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  const [seen, setSeen] = useState(stored);
  if (seen !== stored) {
    setSeen(stored);
    setDraft(null);
    setSentence(null);
  }

  function finish(): void {
    // A value that was only looked at is not written back: what is shown may carry fewer digits than what is stored.
    if (draft === null || draft === stored) {
      setDraft(null);
      setSentence(null);
      return;
    }
    const refusal = commit(draft);
    setSentence(refusal);
    if (refusal === null) setDraft(null);
  }

  return {
    text: draft ?? stored,
    sentence,
    handlers: {
      onChange: (event) => {
        setDraft(event.target.value);
        setSentence(null);
      },
      onBlur: finish,
      onKeyDown: (event) => {
        if (event.key === "Enter" && commitOnEnter) {
          event.preventDefault();
          finish();
        } else if (event.key === "Escape" && draft !== null) {
          event.stopPropagation();
          setDraft(null);
          setSentence(null);
        }
      },
    },
  };
}
