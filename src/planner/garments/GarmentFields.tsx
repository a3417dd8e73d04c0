/** Every field of a garment and its line, for a stored one and for a new one alike. */
import type { Documents } from "../../job/documents.ts";
import { lotOfLine } from "../../job/lookup.ts";
import { Choice } from "../controls/Choice.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { FINISHES, YARNS } from "../words/garmentWords.ts";
import { BareColourEditor } from "./BareColourEditor.tsx";
import { BlendEditor } from "./BlendEditor.tsx";
import { type NewGarment, useDrafts } from "./drafts.tsx";
import { QuantitiesEditor } from "./QuantitiesEditor.tsx";
import { SupplyEditor } from "./SupplyEditor.tsx";

interface Props {
  readonly documents: Documents;
  /** Under which the drafts are kept. */
  readonly lotId: string;
  readonly lot: NewGarment["lot"];
  readonly line: NewGarment["line"];
  readonly onLot: (change: Partial<NewGarment["lot"]>, gesture?: string) => void;
  readonly onLine: (change: Partial<NewGarment["line"]>) => void;
}

/** What was entered for other garments, to be offered while typing. */
function offered(documents: Documents, field: "style" | "colourway" | "mill" | "country"): string[] {
  const all = documents.job.lines.map((line) => lotOfLine(documents, line)?.[field] ?? "");
  return [...new Set(all)].filter((text) => text !== "").sort();
}

export function GarmentFields({ documents, lotId, lot, line, onLot, onLine }: Props) {
  const { blends } = useDrafts();
  const hasPolyester = (blends[lotId] ?? lot.blend ?? []).some(({ fibre }) => fibre === "polyester");
  return (
    <div className="editor">
      <fieldset className="editor__block">
        <legend>Garment</legend>
        <TextEntry
          label="Style"
          value={lot.style}
          maxLength={120}
          required="A garment needs a style."
          suggestions={offered(documents, "style")}
          onCommit={(style) => onLot({ style })}
        />
        <div className="editor__row editor__row--two">
          <TextEntry
            label="Colourway"
            value={lot.colourway}
            maxLength={120}
            suggestions={offered(documents, "colourway")}
            onCommit={(colourway) => onLot({ colourway })}
          />
          <TextEntry label="Lot" value={lot.lot} maxLength={120} onCommit={(text) => onLot({ lot: text })} />
          <TextEntry
            label="Mill"
            value={lot.mill}
            maxLength={120}
            suggestions={offered(documents, "mill")}
            onCommit={(mill) => onLot({ mill })}
          />
          <TextEntry
            label="Country"
            value={lot.country}
            maxLength={120}
            suggestions={offered(documents, "country")}
            onCommit={(country) => onLot({ country })}
          />
        </div>
      </fieldset>
      <BareColourEditor
        lotId={lotId}
        stored={lot.bare}
        instrument={documents.library.shelf.defaults.instrument}
        onCommit={(bare, gesture) => onLot({ bare }, gesture)}
      />
      <BlendEditor lotId={lotId} stored={lot.blend} onCommit={(blend) => onLot({ blend })} />
      <fieldset className="editor__block">
        <legend>Cloth</legend>
        <div className="editor__row editor__row--two">
          <Choice
            label="Finish"
            value={lot.finish}
            options={FINISHES}
            onChange={(finish) => onLot({ finish })}
          />
          <Choice
            label="Polyester yarn"
            value={lot.yarn}
            options={YARNS}
            disabled={!hasPolyester}
            onChange={(yarn) => onLot({ yarn })}
          />
        </div>
        <div className="ways">
          <Tick label="Heather" checked={lot.heather} onChange={(heather) => onLot({ heather })} />
          <Tick label="Known to bleed dye" checked={lot.bleeds} onChange={(bleeds) => onLot({ bleeds })} />
        </div>
      </fieldset>
      <QuantitiesEditor quantities={line.quantities} onChange={(quantities) => onLine({ quantities })} />
      <SupplyEditor documents={documents} lotId={lotId} line={line} onChange={onLine} />
      <TextEntry
        label="Note on this lot"
        value={lot.note}
        maxLength={2000}
        rows={2}
        onCommit={(note) => onLot({ note })}
      />
      <TextEntry
        label="Note on this line"
        value={line.note}
        maxLength={2000}
        rows={2}
        onCommit={(note) => onLine({ note })}
      />
    </div>
  );
}
