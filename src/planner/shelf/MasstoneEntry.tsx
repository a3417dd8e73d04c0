/** The colour of a colourant in an opaque layer: readings, a pasted spectrum, or a screen colour, which is approximate. */
import { useState } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { ColourWays } from "../garments/ColourWays.tsx";
import type { BareDraft } from "../garments/drafts.tsx";

interface Props {
  readonly stored: ColourDocument | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onCommit: (masstone: ColourDocument) => void;
}

const HEX_SENTENCE = "Six digits after #, as #30503a.";

export function MasstoneEntry({ stored, instrument, onCommit }: Props) {
  const [draft, setDraft] = useState<BareDraft | null>(null);
  const commit = (masstone: ColourDocument) => {
    setDraft(null);
    onCommit(masstone);
  };
  return (
    <fieldset className="fields-block">
      <legend>Colour in an opaque layer</legend>
      <ColourWays
        label="How the colour is entered"
        hexLabel="Screen colour"
        draft={draft}
        stored={stored}
        instrument={instrument}
        onDraft={setDraft}
        onCommit={commit}
      >
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
      </ColourWays>
    </fieldset>
  );
}
