/** A measured colour in one of three ways; the caller brings the field for the third, a screen colour. */
import { type ReactNode, useId } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import type { BareDraft } from "./drafts.tsx";
import { emptyReading, ReadingsEntry } from "./ReadingsEntry.tsx";
import { SpectrumEntry } from "./SpectrumEntry.tsx";

interface Props {
  readonly label: string;
  readonly hexLabel: string;
  readonly draft: BareDraft | null;
  readonly stored: ColourDocument | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onDraft: (draft: BareDraft | null) => void;
  readonly onCommit: (colour: ColourDocument) => void;
  readonly children: ReactNode;
}

function emptyDraft(kind: BareDraft["kind"], { viewing, geometry }: ShopDefaults["instrument"]): BareDraft {
  if (kind === "readings") return { kind, viewing, geometry, readings: [emptyReading] };
  if (kind === "spectrum") return { kind, geometry, text: "", firstNm: null, lastNm: null };
  return { kind };
}

export function ColourWays(props: Props) {
  const { label, hexLabel, draft, stored, instrument, onDraft, onCommit, children } = props;
  const name = useId();
  const ways = { readings: "Readings", spectrum: "Spectrum", hex: hexLabel } as const;
  const kind = draft?.kind ?? stored?.kind ?? "readings";
  return (
    <>
      <div className="ways" role="radiogroup" aria-label={label}>
        {(["readings", "spectrum", "hex"] as const).map((way) => (
          <label className="tick" key={way}>
            <input
              type="radio"
              name={name}
              checked={kind === way}
              onChange={() => onDraft(stored?.kind === way ? null : emptyDraft(way, instrument))}
            />
            {ways[way]}
          </label>
        ))}
      </div>
      {kind === "readings" && (
        <ReadingsEntry
          draft={draft?.kind === "readings" ? draft : null}
          stored={stored?.kind === "readings" ? stored : null}
          instrument={instrument}
          onDraft={onDraft}
          onCommit={onCommit}
        />
      )}
      {kind === "spectrum" && (
        <SpectrumEntry
          draft={draft?.kind === "spectrum" ? draft : null}
          stored={stored?.kind === "spectrum" ? stored : null}
          instrument={instrument}
          onDraft={onDraft}
          onCommit={onCommit}
        />
      )}
      {kind === "hex" && children}
    </>
  );
}
