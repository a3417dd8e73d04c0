/** A spectrum pasted as text: read when asked to, stored only when the whole of it can be used. */
import { useId, useState } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import { type PastedSpectrum, readPastedSpectrum } from "../../job/pastedSpectrum.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { GEOMETRIES } from "../words/garmentWords.ts";
import { assumptionSentence, spectrumProblemSentence } from "../words/spectrumSentences.ts";
import type { BareDraft } from "./drafts.tsx";

type SpectrumDraft = Extract<BareDraft, { kind: "spectrum" }>;
type Spectrum = Extract<ColourDocument, { kind: "spectrum" }>;

interface Props {
  readonly draft: SpectrumDraft | null;
  readonly stored: Spectrum | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onDraft: (draft: SpectrumDraft | null) => void;
  readonly onCommit: (bare: ColourDocument) => void;
}

export function SpectrumEntry({ draft, stored, instrument, onDraft, onCommit }: Props) {
  if (draft === null && stored !== null) {
    return (
      <>
        <p>A spectrum of {stored.reflectance.length} values is stored, 380 to 730 nm.</p>
        <Assumptions assumptions={stored.assumptions} />
        <Choice
          label="Geometry"
          value={stored.geometry}
          options={GEOMETRIES}
          onChange={(geometry) => onCommit({ ...stored, geometry })}
        />
        <div className="editor__foot">
          <ActionButton
            onClick={() =>
              onDraft({ kind: "spectrum", geometry: stored.geometry, text: "", firstNm: null, lastNm: null })
            }
          >
            Paste another
          </ActionButton>
        </div>
      </>
    );
  }
  const empty: SpectrumDraft = {
    kind: "spectrum",
    geometry: instrument.geometry,
    text: "",
    firstNm: null,
    lastNm: null,
  };
  return (
    <PasteForm
      draft={draft ?? empty}
      onDraft={onDraft}
      onCommit={onCommit}
      onCancel={stored === null ? null : () => onDraft(null)}
    />
  );
}

interface PasteProps {
  readonly draft: SpectrumDraft;
  readonly onDraft: (draft: SpectrumDraft) => void;
  readonly onCommit: (bare: ColourDocument) => void;
  readonly onCancel: (() => void) | null;
}

function PasteForm({ draft, onDraft, onCommit, onCancel }: PasteProps) {
  const id = useId();
  const [refusal, setRefusal] = useState<Extract<PastedSpectrum, { ok: false }> | null>(null);
  const change = (part: Partial<Omit<SpectrumDraft, "kind">>) => {
    setRefusal(null);
    onDraft({ ...draft, ...part });
  };

  function use(): void {
    const { firstNm, lastNm, geometry } = draft;
    const read = readPastedSpectrum(
      draft.text,
      firstNm === null || lastNm === null ? null : { firstNm, lastNm },
    );
    if (!read.ok) {
      setRefusal(read);
      return;
    }
    onCommit({ kind: "spectrum", geometry, reflectance: read.reflectance, assumptions: read.assumptions });
  }

  return (
    <>
      <div className="entry">
        <label className="entry__label" htmlFor={id}>
          Reflectance values, or wavelength and value in two columns
        </label>
        <textarea
          id={id}
          className="entry__field"
          rows={5}
          spellCheck={false}
          value={draft.text}
          aria-invalid={refusal === null ? undefined : true}
          aria-describedby={`${id}-state`}
          onChange={(event) => change({ text: event.target.value })}
        />
      </div>
      <div className="editor__row editor__row--three">
        <NumberEntry
          label="First wavelength"
          value={draft.firstNm}
          min={300}
          max={400}
          whole
          unit="nm"
          onCommit={(firstNm) => change({ firstNm })}
          onClear={() => change({ firstNm: null })}
        />
        <NumberEntry
          label="Last wavelength"
          value={draft.lastNm}
          min={700}
          max={900}
          whole
          unit="nm"
          onCommit={(lastNm) => change({ lastNm })}
          onClear={() => change({ lastNm: null })}
        />
        <Choice
          label="Geometry"
          value={draft.geometry}
          options={GEOMETRIES}
          onChange={(geometry) => change({ geometry })}
        />
      </div>
      <p className="entry__hint">
        The wavelengths may stay empty where the text or the number of values tells them.
      </p>
      <div className="editor__foot">
        <ActionButton onClick={use}>Use this spectrum</ActionButton>
        {onCancel !== null && (
          <ActionButton weight="plain" onClick={onCancel}>
            Keep the stored one
          </ActionButton>
        )}
      </div>
      <div id={`${id}-state`}>
        {refusal === null ? (
          <NotSavedYet
            sentence={draft.text.trim() === "" ? "no values are pasted." : "the values are not used yet."}
          />
        ) : (
          refusal.problems.map((problem) => (
            <p className="entry__problem" role="alert" key={problem.code}>
              {spectrumProblemSentence(problem)}
            </p>
          ))
        )}
      </div>
    </>
  );
}

function Assumptions({ assumptions }: { readonly assumptions: readonly string[] }) {
  if (assumptions.length === 0) return null;
  return (
    <ul className="entry__hint" aria-label="What was assumed">
      {assumptions.map((assumption) => (
        <li key={assumption}>{assumptionSentence(assumption)}</li>
      ))}
    </ul>
  );
}
