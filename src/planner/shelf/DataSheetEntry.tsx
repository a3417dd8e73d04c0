/** What an ink's data sheets say besides its cure: the heat it stands and its hazards; entered by the shop or empty. */
import type { Base } from "../../job/shelfDocument.ts";
import type { Unit } from "../../units/unit.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { Tick } from "../controls/Tick.tsx";

type DataSheet = Pick<Base, "highestCelsius" | "hazards">;

interface Props extends DataSheet {
  readonly temperature: Unit;
  readonly onChange: (change: Partial<DataSheet>) => void;
}

/** The schema's ranges. */
const HIGHEST_CELSIUS = { min: 20, max: 300 };
const MOST_HAZARDS = 40;
const LONGEST_HAZARD = 300;

const linesOf = (text: string) =>
  text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

function hazardProblem(text: string): string | null {
  const lines = linesOf(text);
  if (lines.length > MOST_HAZARDS) return `At most ${MOST_HAZARDS} statements.`;
  return lines.some((line) => line.length > LONGEST_HAZARD)
    ? `A statement has at most ${LONGEST_HAZARD} characters.`
    : null;
}

export function DataSheetEntry({ highestCelsius, hazards, temperature, onChange }: Props) {
  const statesNone = hazards !== null && hazards.length === 0;
  return (
    <fieldset className="fields-block">
      <legend>Safety</legend>
      <p className="entry__hint">
        From its data sheets. A mix inherits the strictest of its parts, and says whose entry is missing.
      </p>
      <div className="fields">
        <MeasureEntry
          label="Highest film temperature"
          stored={highestCelsius}
          unit={temperature}
          {...HIGHEST_CELSIUS}
          onCommit={(celsius) => onChange({ highestCelsius: celsius })}
          onClear={() => onChange({ highestCelsius: null })}
          placeholder="not entered"
        />
        <TextEntry
          label="Hazard statements, one a line"
          value={hazards?.join("\n") ?? ""}
          maxLength={MOST_HAZARDS * LONGEST_HAZARD}
          rows={3}
          placeholder={statesNone ? "" : "not entered"}
          check={hazardProblem}
          onCommit={(text) => onChange({ hazards: linesOf(text).length === 0 ? null : linesOf(text) })}
        />
        <Tick
          label="Its data sheet states no hazard"
          checked={statesNone}
          onChange={(none) => onChange({ hazards: none ? [] : null })}
        />
      </div>
    </fieldset>
  );
}
