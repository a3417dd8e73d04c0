/**
 * Adds what was typed. It can always be reached: a button that opens only when a field is left would be skipped by the
 * very Tab that leaves the field. What is missing is said when it is pressed.
 */
import { useState } from "react";
import { ActionButton } from "../controls/ActionButton.tsx";

interface Props {
  /** In words: "the name". */
  readonly missing: readonly string[];
  readonly onAdd: () => void;
}

export function PutOnShelf({ missing, onAdd }: Props) {
  const [isAsked, setIsAsked] = useState(false);
  return (
    <div className="shelf__put">
      <ActionButton
        weight="strong"
        onClick={() => {
          if (missing.length === 0) onAdd();
          else setIsAsked(true);
        }}
      >
        Put it on the shelf
      </ActionButton>
      {isAsked && missing.length > 0 && (
        <p className="entry__problem" role="alert">
          Still missing: {missing.join(", ")}.
        </p>
      )}
    </div>
  );
}

/** The names of those that are missing. */
export function missingOf(parts: Readonly<Record<string, boolean>>): string[] {
  return Object.keys(parts).filter((name) => parts[name] === true);
}
