/** Typed words: taken over when the field is left or Enter is pressed, Escape brings the old ones back. */
import { useId } from "react";
import { useDraftText } from "./useDraftText.ts";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly maxLength: number;
  /** What to say when it is left empty; without it, empty is fine. */
  readonly required?: string;
  /** What else the text has to be; the sentence that says so, or null. Not asked of an empty text. */
  readonly check?: (text: string) => string | null;
  /** Lines of height; more than one makes Enter a new line. */
  readonly rows?: number;
  /** What was entered elsewhere, offered while typing. */
  readonly suggestions?: readonly string[];
  readonly labelUnseen?: boolean;
  readonly hint?: string;
  readonly placeholder?: string;
}

export function TextEntry(props: Props) {
  const {
    label,
    value,
    onCommit,
    maxLength,
    required,
    rows = 1,
    suggestions,
    labelUnseen = false,
    hint,
  } = props;
  const id = useId();
  const commit = (text: string) => {
    const trimmed = text.trim();
    if (required !== undefined && trimmed === "") return required;
    if (trimmed.length > maxLength) return `At most ${maxLength} characters; these are ${trimmed.length}.`;
    const refusal = trimmed === "" ? null : (props.check?.(trimmed) ?? null);
    if (refusal !== null) return refusal;
    if (trimmed !== value) onCommit(trimmed);
    return null;
  };
  const draft = useDraftText(value, commit, rows === 1);
  const describedBy = [hint && `${id}-hint`, draft.sentence && `${id}-problem`].filter(Boolean).join(" ");
  const field = {
    id,
    className: "entry__field",
    value: draft.text,
    placeholder: props.placeholder,
    "aria-invalid": draft.sentence === null ? undefined : (true as const),
    "aria-required": required === undefined ? undefined : (true as const),
    "aria-describedby": describedBy === "" ? undefined : describedBy,
    ...draft.handlers,
  };
  return (
    <div className="entry">
      <label className={labelUnseen ? "unseen" : "entry__label"} htmlFor={id}>
        {label}
      </label>
      {rows > 1 ? (
        <textarea {...field} rows={rows} />
      ) : (
        <input
          {...field}
          type="text"
          autoComplete="off"
          list={suggestions === undefined ? undefined : `${id}-list`}
        />
      )}
      {suggestions !== undefined && (
        <datalist id={`${id}-list`}>
          {suggestions.map((suggestion) => (
            <option key={suggestion} value={suggestion} />
          ))}
        </datalist>
      )}
      {hint !== undefined && (
        <p id={`${id}-hint`} className="entry__hint">
          {hint}
        </p>
      )}
      {draft.sentence !== null && (
        <p id={`${id}-problem`} className="entry__problem" role="alert">
          {draft.sentence}
        </p>
      )}
    </div>
  );
}
