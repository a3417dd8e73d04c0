/** The pots at hand: a batch goes into the smallest that takes it with room to stir, or into several of the largest. */
import type { StoredPotSize } from "../../job/shopDefaultsDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";

interface Props {
  readonly sizes: readonly StoredPotSize[];
  readonly onChange: (sizes: StoredPotSize[]) => void;
}

const CM3_PER_LITRE = 1000;
/** The schema's range, in litres. */
const LITRES = { min: 0.01, max: 1000 };

export function PotSizes({ sizes, onChange }: Props) {
  const change = (id: string, part: Partial<StoredPotSize>) =>
    onChange(sizes.map((size) => (size.id === id ? { ...size, ...part } : size)));
  return (
    <fieldset className="fields-block">
      <legend>Pots</legend>
      {sizes.map((size) => (
        <fieldset className="fields" key={size.id} aria-label={size.name}>
          <TextEntry
            label="Pot"
            value={size.name}
            maxLength={120}
            required="A pot needs a name."
            onCommit={(name) => change(size.id, { name })}
          />
          <NumberEntry
            label="It holds"
            value={Number((size.volumeCm3 / CM3_PER_LITRE).toFixed(6))}
            unit="l"
            {...LITRES}
            onCommit={(litres) => change(size.id, { volumeCm3: litres * CM3_PER_LITRE })}
          />
          <div className="fields__act">
            <ActionButton
              weight="plain"
              aria-label={`Remove ${size.name}`}
              onClick={() => onChange(sizes.filter(({ id }) => id !== size.id))}
            >
              Remove
            </ActionButton>
          </div>
        </fieldset>
      ))}
      <div className="acts">
        <ActionButton
          onClick={() => onChange([...sizes, { id: newId(), name: "New pot", volumeCm3: CM3_PER_LITRE }])}
        >
          Add a pot
        </ActionButton>
      </div>
    </fieldset>
  );
}
