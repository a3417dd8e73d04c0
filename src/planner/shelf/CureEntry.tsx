/** The cure as the ink maker's data sheet has it: entered by the shop or empty, never filled in. */
import type { Base } from "../../job/shelfDocument.ts";
import type { Unit } from "../../units/unit.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { CURE_NOTE } from "../words/shelfWords.ts";

interface Props {
  readonly cure: Base["cure"];
  readonly temperature: Unit;
  readonly onChange: (cure: Base["cure"]) => void;
}

/** The schema's range of a film temperature, and its longest time. */
const FILM_CELSIUS = { min: 20, max: 260 };
const LONGEST_SECONDS = 3600;

export function CureEntry({ cure, temperature, onChange }: Props) {
  return (
    <fieldset className="fields-block">
      <legend>Cure</legend>
      <p className="entry__hint">{CURE_NOTE}</p>
      <div className="fields">
        <MeasureEntry
          label="Film temperature"
          stored={cure.filmCelsius}
          unit={temperature}
          {...FILM_CELSIUS}
          onCommit={(filmCelsius) => onChange({ ...cure, filmCelsius })}
          onClear={() => onChange({ ...cure, filmCelsius: null })}
          placeholder="not entered"
        />
        <NumberEntry
          label="Time at temperature"
          value={cure.seconds}
          unit="s"
          min={0}
          max={LONGEST_SECONDS}
          onCommit={(seconds) => onChange({ ...cure, seconds })}
          onClear={() => onChange({ ...cure, seconds: null })}
          placeholder="not entered"
        />
        <TextEntry
          label="Note on the cure"
          value={cure.note}
          maxLength={2000}
          rows={2}
          onCommit={(note) => onChange({ ...cure, note })}
        />
      </div>
    </fieldset>
  );
}
