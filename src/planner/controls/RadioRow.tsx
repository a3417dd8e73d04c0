/** One of a few, all in sight: the browser's own radio buttons, each a target for a finger. */
import { useId } from "react";
import type { ChoiceOption } from "./Choice.tsx";

interface Props<Value extends string> {
  readonly label: string;
  /** Null where none is chosen yet. */
  readonly value: Value | null;
  readonly options: readonly ChoiceOption<Value>[];
  readonly onChange: (value: Value) => void;
}

export function RadioRow<Value extends string>({ label, value, options, onChange }: Props<Value>) {
  const name = useId();
  return (
    <fieldset className="radio-row">
      <legend className="entry__label">{label}</legend>
      {options.map((option) => (
        <label key={option.value} className="radio-row__choice">
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            onChange={() => onChange(option.value)}
          />
          {option.label}
        </label>
      ))}
    </fieldset>
  );
}
