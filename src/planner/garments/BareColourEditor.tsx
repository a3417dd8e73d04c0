/** The bare colour, in one of three ways: readings, a pasted spectrum, or picked on the screen, which is approximate. */
import type { ColourDocument } from "../../job/colourDocument.ts";
import { bareScreenColour } from "../../job/screenColour.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { Notice } from "../controls/Notice.tsx";
import { useScreenGamut } from "../look/screenGamut.ts";
import { viewingWords } from "../words/garmentWords.ts";
import { ColourWays } from "./ColourWays.tsx";
import { type BareDraft, useDrafts } from "./drafts.tsx";
import { HexEntry } from "./HexEntry.tsx";

interface Props {
  readonly lotId: string;
  readonly stored: ColourDocument | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onCommit: (bare: ColourDocument, gesture?: string) => void;
}

export function BareColourEditor({ lotId, stored, instrument, onCommit }: Props) {
  const { bares, setBare } = useDrafts();
  const draft = bares[lotId] ?? null;
  const setDraft = (next: BareDraft | null) => setBare(lotId, next);
  const commit = (bare: ColourDocument, gesture?: string) => {
    setDraft(null);
    onCommit(bare, gesture);
  };

  return (
    <fieldset className="editor__block">
      <legend>Bare colour</legend>
      <ColourWays
        label="How the bare colour is entered"
        hexLabel="Picked"
        draft={draft}
        stored={stored}
        instrument={instrument}
        onDraft={setDraft}
        onCommit={commit}
      >
        <HexEntry lotId={lotId} stored={stored?.kind === "hex" ? stored.hex : null} onCommit={commit} />
      </ColourWays>
      {draft === null && stored !== null && <ColourCaution bare={stored} />}
    </fieldset>
  );
}

function ColourCaution({ bare }: { readonly bare: ColourDocument }) {
  const shown = bareScreenColour(bare, useScreenGamut());
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
