/** The bare colour, in one of three ways: readings, a pasted spectrum, or picked on the screen, which is approximate. */
import { useId } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import { bareScreenColour } from "../../job/screenColour.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { Notice } from "../controls/Notice.tsx";
import { viewingWords } from "../words/garmentWords.ts";
import { type BareDraft, useDrafts } from "./drafts.tsx";
import { HexEntry } from "./HexEntry.tsx";
import { emptyReading, ReadingsEntry } from "./ReadingsEntry.tsx";
import { SpectrumEntry } from "./SpectrumEntry.tsx";

const WAYS = [
  { kind: "readings", label: "Readings" },
  { kind: "spectrum", label: "Spectrum" },
  { kind: "hex", label: "Picked" },
] as const;

interface Props {
  readonly lotId: string;
  readonly stored: ColourDocument | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onCommit: (bare: ColourDocument, gesture?: string) => void;
}

function emptyDraft(kind: BareDraft["kind"], { viewing, geometry }: ShopDefaults["instrument"]): BareDraft {
  if (kind === "readings") return { kind, viewing, geometry, readings: [emptyReading] };
  if (kind === "spectrum") return { kind, geometry, text: "", firstNm: null, lastNm: null };
  return { kind };
}

export function BareColourEditor({ lotId, stored, instrument, onCommit }: Props) {
  const name = useId();
  const { bares, setBare } = useDrafts();
  const draft = bares[lotId] ?? null;
  const kind = draft?.kind ?? stored?.kind ?? "readings";
  const setDraft = (next: BareDraft | null) => setBare(lotId, next);
  const commit = (bare: ColourDocument, gesture?: string) => {
    setDraft(null);
    onCommit(bare, gesture);
  };

  return (
    <fieldset className="editor__block">
      <legend>Bare colour</legend>
      <div className="ways" role="radiogroup" aria-label="How the bare colour is entered">
        {WAYS.map((way) => (
          <label className="tick" key={way.kind}>
            <input
              type="radio"
              name={name}
              checked={kind === way.kind}
              onChange={() => setDraft(stored?.kind === way.kind ? null : emptyDraft(way.kind, instrument))}
            />
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
        <HexEntry lotId={lotId} stored={stored?.kind === "hex" ? stored.hex : null} onCommit={commit} />
      )}
      {draft === null && stored !== null && <ColourCaution bare={stored} />}
    </fieldset>
  );
}

function ColourCaution({ bare }: { readonly bare: ColourDocument }) {
  const shown = bareScreenColour(bare);
  if (shown.hex === null && bare.kind === "readings") {
    return (
      <Notice kind="caution">
        No cloth can have this colour under {viewingWords(bare.viewing)}. Check the figures, their signs, the
        light and the observer.
      </Notice>
    );
  }
  if (shown.moved) return <p className="entry__hint">The screen shows it a little greyer than it is.</p>;
  return null;
}
