/** A colour picked on the screen: good enough to begin with, and marked as approximate wherever it is used. */
import { useId, useRef } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";

interface Props {
  readonly lotId: string;
  readonly stored: string | null;
  readonly onCommit: (bare: ColourDocument, gesture?: string) => void;
}

/** What the picker opens on where nothing is stored: the surround's grey. */
const PICKER_START = "#9e9e9e";

export function HexEntry({ lotId, stored, onCommit }: Props) {
  const id = useId();
  const openings = useRef(0);
  return (
    <>
      <div className="editor__row editor__row--pick">
        <div className="entry">
          <label className="entry__label" htmlFor={id}>
            Pick
          </label>
          <input
            id={id}
            type="color"
            className="entry__field entry__field--colour"
            value={stored ?? PICKER_START}
            onFocus={() => {
              openings.current += 1;
            }}
            onChange={(event) =>
              onCommit({ kind: "hex", hex: event.target.value }, `pick-${lotId}-${openings.current}`)
            }
          />
        </div>
        <TextEntry
          label="Or type it, as #rrggbb"
          value={stored ?? ""}
          maxLength={7}
          required="Six digits after #, as #30503a."
          check={(text) => (/^#[0-9a-f]{6}$/i.test(text) ? null : "Six digits after #, as #30503a.")}
          onCommit={(hex) => onCommit({ kind: "hex", hex: hex.toLowerCase() })}
        />
      </div>
      {stored === null && <NotSavedYet sentence="no colour is picked." />}
      <p className="entry__hint">
        Approximate: a screen colour is no measurement. Predictions from it are marked so; a reading of the
        lot replaces it.
      </p>
    </>
  );
}
