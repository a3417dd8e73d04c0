/** One of a few: the browser's own select, which every keyboard, finger and screen reader knows. */
import { useId } from "react";

export interface ChoiceOption<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

interface Props<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly ChoiceOption<Value>[];
  readonly onChange: (value: Value) => void;
  /** The label is for a screen reader only; the eye has it from the place. */
  readonly labelUnseen?: boolean;
  readonly disabled?: boolean;
  readonly hint?: string;
}

export function Choice<Value extends string>(props: Props<Value>) {
  const { label, value, options, onChange, labelUnseen = false, disabled = false, hint } = props;
  const id = useId();
  return (
    <div className="entry">
      <label className={labelUnseen ? "unseen" : "entry__label"} htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="entry__field entry__field--choice"
        value={value}
        disabled={disabled}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen !== undefined) onChange(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {hint !== undefined && (
        <p id={`${id}-hint`} className="entry__hint">
          {hint}
        </p>
      )}
    </div>
  );
}
