/** How many pieces of each size, with their total. */
import type { Line } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { pieces } from "../words/pieceWords.ts";

interface Props {
  readonly quantities: Line["quantities"];
  readonly onChange: (quantities: Line["quantities"]) => void;
}

/** The order in which sizes are offered (common practice, no source). */
const USUAL_SIZES = ["S", "M", "L", "XL", "2XL", "3XL", "XS"];
const LARGEST_COUNT = 1_000_000;

export function QuantitiesEditor({ quantities, onChange }: Props) {
  const change = (index: number, part: Partial<Line["quantities"][number]>) =>
    onChange(quantities.map((old, i) => (i === index ? { ...old, ...part } : old)));
  const listed = quantities.map(({ size }) => size.trim().toLowerCase());
  const twice = quantities.find(
    ({ size }, i) => size !== "" && listed.indexOf(size.trim().toLowerCase()) < i,
  );
  const next = USUAL_SIZES.find((size) => !listed.includes(size.toLowerCase())) ?? "";
  const total = quantities.reduce((sum, { count }) => sum + count, 0);
  return (
    <fieldset className="editor__block">
      <legend>Pieces by size</legend>
      {quantities.map(({ size, count }, index) => {
        const called = size === "" ? `row ${index + 1}` : size;
        return (
          <fieldset
            className="editor__row editor__row--size"
            // biome-ignore lint/suspicious/noArrayIndexKey: a size can be renamed and has no other identity; an entry drops its draft when its value moves
            key={index}
            aria-label={`Size ${called}`}
          >
            <TextEntry
              label={`Size, row ${index + 1}`}
              labelUnseen
              value={size}
              maxLength={40}
              suggestions={USUAL_SIZES}
              onCommit={(text) => change(index, { size: text })}
            />
            <NumberEntry
              label={`Pieces, ${called}`}
              labelUnseen
              value={count}
              min={0}
              max={LARGEST_COUNT}
              whole
              unit="pieces"
              onCommit={(value) => change(index, { count: value })}
            />
            <ActionButton
              weight="plain"
              aria-label={`Remove size ${called}`}
              onClick={() => onChange(quantities.filter((_, i) => i !== index))}
            >
              Remove
            </ActionButton>
          </fieldset>
        );
      })}
      <div className="editor__foot">
        <ActionButton onClick={() => onChange([...quantities, { size: next, count: 0 }])}>
          Add a size
        </ActionButton>
        <p className="editor__total">
          <span className="number">{pieces(total)}</span> in all
        </p>
      </div>
      {twice !== undefined && <p className="entry__problem">Size {twice.size} is listed twice.</p>}
    </fieldset>
  );
}
