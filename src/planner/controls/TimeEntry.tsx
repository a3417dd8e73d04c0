/** A day and an hour, typed and shown where the planner stands, stored in UTC; "now" takes the clock's. */
import { useId } from "react";
import { isoFromLocal, localFromIso, nowIso } from "../state/identity.ts";
import { ActionButton } from "./ActionButton.tsx";

interface Props {
  readonly label: string;
  /** Null where nothing is typed. */
  readonly iso: string | null;
  readonly onChange: (iso: string | null) => void;
  readonly hint?: string;
}

export function TimeEntry({ label, iso, onChange, hint }: Props) {
  const id = useId();
  return (
    <div className="entry">
      <label className="entry__label" htmlFor={id}>
        {label}
      </label>
      <div className="entry__with-unit">
        <input
          id={id}
          className="entry__field"
          type="datetime-local"
          value={iso === null ? "" : localFromIso(iso)}
          aria-describedby={hint === undefined ? undefined : `${id}-hint`}
          onChange={(event) => onChange(isoFromLocal(event.target.value))}
        />
        <ActionButton aria-label={`${label} now`} onClick={() => onChange(nowIso())}>
          Now
        </ActionButton>
      </div>
      {hint !== undefined && (
        <p id={`${id}-hint`} className="entry__hint">
          {hint}
        </p>
      )}
    </div>
  );
}
