/** The colour of a colourant in an opaque layer: readings, a pasted spectrum, or a screen colour, which is approximate. */
import { useId, useState } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { TextEntry } from "../controls/TextEntry.tsx";
import type { BareDraft } from "../garments/drafts.tsx";
import { NotSavedYet } from "../garments/NotSavedYet.tsx";
import { emptyReading, ReadingsEntry } from "../garments/ReadingsEntry.tsx";
import { SpectrumEntry } from "../garments/SpectrumEntry.tsx";

interface Props {
  readonly stored: ColourDocument | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onCommit: (masstone: ColourDocument) => void;
}

const WAYS = [
  { kind: "readings", label: "Readings" },
  { kind: "spectrum", label: "Spectrum" },
  { kind: "hex", label: "Screen colour" },
] as const;

const HEX_SENTENCE = "Six digits after #, as #30503a.";

export function MasstoneEntry({ stored, instrument, onCommit }: Props) {
  const name = useId();
  const [draft, setDraft] = useState<BareDraft | null>(null);
  const kind = draft?.kind ?? stored?.kind ?? "readings";
  const commit = (masstone: ColourDocument) => {
    setDraft(null);
    onCommit(masstone);
  };
  function begin(next: BareDraft["kind"]): void {
    if (stored?.kind === next) setDraft(null);
    else if (next === "readings") setDraft({ kind: next, ...instrument, readings: [emptyReading] });
    else if (next === "spectrum") {
      setDraft({ kind: next, geometry: instrument.geometry, text: "", firstNm: null, lastNm: null });
    } else setDraft({ kind: next });
  }
  return (
    <fieldset className="shelf__block">
      <legend>Colour in an opaque layer</legend>
      <div className="ways" role="radiogroup" aria-label="How the colour is entered">
        {WAYS.map((way) => (
          <label className="tick" key={way.kind}>
            <input type="radio" name={name} checked={kind === way.kind} onChange={() => begin(way.kind)} />
            {way.label}
          </label>
        ))}
      </div>
      {kind === "readings" && (
        <ReadingsEntry
          draft={draft?.kind === "readings" ? draft : null}
          stored={stored?.kind === "readings" ? stored : null}
          instrument={instrument}
          onDraft={setDraft}
          onCommit={commit}
        />
      )}
      {kind === "spectrum" && (
        <SpectrumEntry
          draft={draft?.kind === "spectrum" ? draft : null}
          stored={stored?.kind === "spectrum" ? stored : null}
          instrument={instrument}
          onDraft={setDraft}
          onCommit={commit}
        />
      )}
      {kind === "hex" && (
        <>
          <TextEntry
            label="Screen colour, as #rrggbb"
            value={stored?.kind === "hex" ? stored.hex : ""}
            maxLength={7}
            required={HEX_SENTENCE}
            check={(text) => (/^#[0-9a-f]{6}$/i.test(text) ? null : HEX_SENTENCE)}
            hint="Approximate: a screen colour is no measurement."
            onCommit={(hex) => commit({ kind: "hex", hex: hex.toLowerCase() })}
          />
          {stored?.kind !== "hex" && <NotSavedYet sentence="no colour is entered." />}
        </>
      )}
    </fieldset>
  );
}
