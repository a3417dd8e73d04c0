/** The scales of the ink room: how finely each shows, and how much it carries. */
import type { Scale } from "../../job/shopDefaultsDocument.ts";
import type { Unit } from "../../units/unit.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";

interface Props {
  readonly scales: readonly Scale[];
  readonly mass: Unit;
  readonly onChange: (scales: Scale[]) => void;
}

/** The schema's ranges. */
const STEP_GRAMS = { min: 0.001, max: 1000 };
const MOST_GRAMS = { min: 1, max: 1_000_000 };
/** What a new one starts with. Invented. */
const FIRST_STEP_GRAMS = 0.1;

export function Scales({ scales, mass, onChange }: Props) {
  const change = (id: string, part: Partial<Scale>) =>
    onChange(scales.map((scale) => (scale.id === id ? { ...scale, ...part } : scale)));
  return (
    <fieldset className="fields-block">
      <legend>Scales</legend>
      <p className="entry__hint">Weigh sheets are rounded to the step of the scale that carries the pot.</p>
      {scales.map((scale) => (
        <fieldset className="fields" key={scale.id} aria-label={scale.name}>
          <TextEntry
            label="Scale"
            value={scale.name}
            maxLength={120}
            required="A scale needs a name."
            onCommit={(name) => change(scale.id, { name })}
          />
          <MeasureEntry
            label="Its step"
            stored={scale.stepGrams}
            unit={mass}
            {...STEP_GRAMS}
            onCommit={(stepGrams) => change(scale.id, { stepGrams })}
          />
          <MeasureEntry
            label="It carries"
            stored={scale.maxGrams}
            unit={mass}
            {...MOST_GRAMS}
            placeholder="not entered"
            onCommit={(maxGrams) => change(scale.id, { maxGrams })}
            onClear={() => change(scale.id, { maxGrams: null })}
          />
          <div className="fields__act">
            <ActionButton
              weight="plain"
              aria-label={`Remove ${scale.name}`}
              onClick={() => onChange(scales.filter(({ id }) => id !== scale.id))}
            >
              Remove
            </ActionButton>
          </div>
        </fieldset>
      ))}
      <div className="acts">
        <ActionButton
          onClick={() =>
            onChange([
              ...scales,
              { id: newId(), name: "New scale", stepGrams: FIRST_STEP_GRAMS, maxGrams: null },
            ])
          }
        >
          Add a scale
        </ActionButton>
      </div>
    </fieldset>
  );
}
