/**
 * A typed number with its unit and range. A text field with a number keypad and not `type=number`: that one turns what
 * it does not understand into nothing, follows the scroll wheel, and cannot say why it refuses.
 */
import { useId } from "react";
import { type NumberRange, printNumber, readNumber } from "./typedNumber.ts";
import { useDraftText } from "./useDraftText.ts";

interface Props extends NumberRange {
  readonly label: string;
  /** Null where nothing is entered. */
  readonly value: number | null;
  readonly onCommit: (value: number) => void;
  /** Given where the field may be emptied. */
  readonly onClear?: () => void;
  readonly labelUnseen?: boolean;
  readonly hint?: string;
  readonly placeholder?: string;
  readonly disabled?: boolean;
}

export function NumberEntry(props: Props) {
  const {
    label,
    value,
    onCommit,
    onClear,
    labelUnseen = false,
    hint,
    placeholder,
    disabled = false,
    unit,
  } = props;
  const id = useId();
  const draft = useDraftText(value === null ? "" : printNumber(value), (text) => {
    const typed = readNumber(text, props);
    if (!typed.ok) return typed.sentence;
    if (typed.value !== null) onCommit(typed.value);
    else if (onClear !== undefined) onClear();
    else return "A number is needed here.";
    return null;
  });
  const describedBy = [hint && `${id}-hint`, draft.sentence && `${id}-problem`].filter(Boolean).join(" ");
  return (
    <div className="entry entry--number">
      <label className={labelUnseen ? "unseen" : "entry__label"} htmlFor={id}>
        {label}
        {unit !== undefined && <span className="unseen">, {unit}</span>}
      </label>
      <div className="entry__with-unit">
        <input
          id={id}
          className="entry__field"
          type="text"
          inputMode={(props.min ?? -1) < 0 ? "text" : props.whole ? "numeric" : "decimal"}
          autoComplete="off"
          value={draft.text}
          placeholder={placeholder}
          disabled={disabled}
          aria-invalid={draft.sentence === null ? undefined : true}
          aria-describedby={describedBy === "" ? undefined : describedBy}
          {...draft.handlers}
        />
        {unit !== undefined && (
          <span className="entry__unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </div>
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
