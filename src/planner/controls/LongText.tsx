/**
 * Words that an action beside the field takes along: a note, a reason. It follows every key, so that pressing the
 * button needs no leaving of the field first, which could move the button away under the finger.
 */
import { useEffect, useId, useRef } from "react";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly maxLength: number;
  readonly onChange: (text: string) => void;
  /** Why the action was refused, said at the field. */
  readonly problem?: string | null;
  /** The field was asked for a moment ago: it takes the focus. */
  readonly focusFirst?: boolean;
  readonly rows?: number;
}

/** What is wrong with the length of a text; null where nothing is. */
export function tooLong(text: string, maxLength: number): string | null {
  return text.trim().length > maxLength
    ? `At most ${maxLength} characters; these are ${text.trim().length}.`
    : null;
}

export function LongText(props: Props) {
  const { label, value, maxLength, onChange, problem = null, focusFirst = false, rows = 3 } = props;
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (focusFirst) field.current?.focus();
  }, [focusFirst]);
  const sentence = tooLong(value, maxLength) ?? problem;
  return (
    <div className="entry">
      <label className="entry__label" htmlFor={id}>
        {label}
      </label>
      <textarea
        id={id}
        ref={field}
        className="entry__field"
        rows={rows}
        value={value}
        aria-invalid={sentence === null ? undefined : true}
        aria-describedby={sentence === null ? undefined : `${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      />
      {sentence !== null && (
        <p id={`${id}-problem`} className="entry__problem" role="alert">
          {sentence}
        </p>
      )}
    </div>
  );
}
