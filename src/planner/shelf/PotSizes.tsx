/** The pots at hand: a batch goes into the smallest that takes it with room to stir, or into several of the largest. */
import type { StoredPotSize } from "../../job/shopDefaultsDocument.ts";
import type { Unit } from "../../units/unit.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";

interface Props {
  readonly sizes: readonly StoredPotSize[];
  readonly volume: Unit;
  readonly onChange: (sizes: StoredPotSize[]) => void;
}

/** The schema's range; less than this holds no ink worth weighing. */
const VOLUME_CM3 = { min: 10, max: 1_000_000 };
/** What a new one starts with: a litre. Invented. */
const FIRST_CM3 = 1000;

export function PotSizes({ sizes, volume, onChange }: Props) {
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
          <MeasureEntry
            label="It holds"
            stored={size.volumeCm3}
            unit={volume}
            {...VOLUME_CM3}
            onCommit={(volumeCm3) => change(size.id, { volumeCm3 })}
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
          onClick={() => onChange([...sizes, { id: newId(), name: "New pot", volumeCm3: FIRST_CM3 }])}
        >
          Add a pot
        </ActionButton>
      </div>
    </fieldset>
  );
}
