/** One or more readings of L*, a*, b*, with the light, the observer and the geometry they were read under. */
import type { ColourDocument, LabDocument } from "../../job/colourDocument.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { GEOMETRIES, ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";
import type { BareDraft, DraftReading } from "./drafts.tsx";

type Readings = Extract<ColourDocument, { kind: "readings" }>;
type ReadingsDraft = Extract<BareDraft, { kind: "readings" }>;

export const emptyReading: DraftReading = { L: null, a: null, b: null };

const AXES = [
  { axis: "L", label: "L*", min: 0, max: 120 },
  { axis: "a", label: "a*", min: -200, max: 200 },
  { axis: "b", label: "b*", min: -200, max: 200 },
] as const;

interface Props {
  readonly draft: ReadingsDraft | null;
  readonly stored: Readings | null;
  readonly instrument: ShopDefaults["instrument"];
  readonly onDraft: (draft: ReadingsDraft) => void;
  readonly onCommit: (bare: ColourDocument) => void;
}

function complete(readings: readonly DraftReading[]): LabDocument[] | null {
  const whole: LabDocument[] = [];
  for (const { L, a, b } of readings) {
    if (L === null || a === null || b === null) return null;
    whole.push({ L, a, b });
  }
  return whole.length === 0 ? null : whole;
}

function missingSentence(readings: readonly DraftReading[]): string {
  if (readings.length === 0) return "no reading is entered.";
  const missing = readings.flatMap((reading, index) =>
    AXES.filter(({ axis }) => reading[axis] === null).map(({ label }) =>
      readings.length === 1 ? label : `${label} of reading ${index + 1}`,
    ),
  );
  return `${missing.join(", ")} ${missing.length === 1 ? "is" : "are"} missing.`;
}

export function ReadingsEntry({ draft, stored, instrument, onDraft, onCommit }: Props) {
  const current: ReadingsDraft = draft ??
    stored ?? { kind: "readings", ...instrument, readings: [emptyReading] };
  const { viewing, geometry, readings } = current;

  function change(next: Partial<Omit<ReadingsDraft, "kind">>): void {
    const changed = { ...current, ...next };
    const whole = complete(changed.readings);
    if (whole === null) onDraft(changed);
    else
      onCommit({ kind: "readings", viewing: changed.viewing, geometry: changed.geometry, readings: whole });
  }

  const changeReading = (index: number, part: Partial<DraftReading>) =>
    change({ readings: readings.map((old, i) => (i === index ? { ...old, ...part } : old)) });
  const isDraft = draft !== null || stored === null;
  return (
    <>
      {readings.map((reading, index) => {
        const ofReading = readings.length === 1 ? "" : ` of reading ${index + 1}`;
        return (
          <fieldset
            className="editor__row editor__row--reading"
            // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other identity; an entry drops its draft when its value moves
            key={index}
            aria-label={`Reading ${index + 1}`}
          >
            {AXES.map(({ axis, label, min, max }) => (
              <NumberEntry
                key={axis}
                label={`${label}${ofReading}`}
                labelUnseen={index > 0}
                value={reading[axis]}
                min={min}
                max={max}
                onCommit={(value) => changeReading(index, { [axis]: value })}
              />
            ))}
            {readings.length > 1 && (
              <ActionButton
                weight="plain"
                aria-label={`Remove reading ${index + 1}`}
                onClick={() => change({ readings: readings.filter((_, i) => i !== index) })}
              >
                Remove
              </ActionButton>
            )}
          </fieldset>
        );
      })}
      <div className="editor__foot">
        <ActionButton onClick={() => onDraft({ ...current, readings: [...readings, emptyReading] })}>
          Add a reading
        </ActionButton>
      </div>
      <div className="editor__row editor__row--three">
        <Choice
          label="Light"
          value={viewing.illuminant}
          options={ILLUMINANTS}
          onChange={(illuminant) => change({ viewing: { ...viewing, illuminant } })}
        />
        <Choice
          label="Observer"
          value={viewing.observer}
          options={OBSERVERS}
          onChange={(observer) => change({ viewing: { ...viewing, observer } })}
        />
        <Choice
          label="Geometry"
          value={geometry}
          options={GEOMETRIES}
          onChange={(next) => change({ geometry: next })}
        />
      </div>
      {isDraft && <NotSavedYet sentence={missingSentence(readings)} />}
    </>
  );
}
