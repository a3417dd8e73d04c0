/** The deposit of a set-up: estimated from its mesh, or from weighing garments; a weighing counts only when it is whole. */
import { useId, useState } from "react";
import type { SetUp } from "../../job/shelfDocument.ts";
import { weighedDeposit } from "../../job/weighedDeposit.ts";
import type { Unit } from "../../units/unit.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";

type Weighed = Omit<Extract<SetUp["weighed"], { kind: "mean" }>, "kind">;
type Draft = { readonly [Field in keyof Weighed]: number | null };

interface Props {
  readonly weighed: SetUp["weighed"];
  readonly massPerArea: Unit;
  readonly onChange: (weighed: SetUp["weighed"]) => void;
}

const EMPTY: Draft = { meanGsm: null, sdGsm: null, pieceCount: null, densityGramsPerCm3: null };

/** The schema's ranges; a mean has to be above nothing. */
const MEAN_GSM = { min: 0.01, max: 500 };
const SD_GSM = { min: 0, max: 200 };
const MOST_PIECES = 10_000;

const FIELD_NAMES: { readonly [Field in keyof Weighed]: string } = {
  meanGsm: "the mean",
  sdGsm: "the spread",
  pieceCount: "the pieces",
  densityGramsPerCm3: "the density",
};
const FIELDS = Object.keys(FIELD_NAMES) as (keyof Weighed)[];

function whole({ meanGsm, sdGsm, pieceCount, densityGramsPerCm3 }: Draft): Weighed | null {
  if (meanGsm === null || sdGsm === null || pieceCount === null || densityGramsPerCm3 === null) return null;
  return { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 };
}

function meanOf(weighed: NonNullable<SetUp["weighed"]>): Weighed {
  const { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 } = weighedDeposit(weighed);
  return { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 };
}

export function WeighedEntry({ weighed, massPerArea, onChange }: Props) {
  const name = useId();
  const [draft, setDraft] = useState<Draft | null>(null);
  const shown: Draft | null = draft ?? (weighed === null ? null : meanOf(weighed));
  function set(part: Partial<Draft>): void {
    const next = { ...(shown ?? EMPTY), ...part };
    const complete = whole(next);
    setDraft(complete === null ? next : null);
    if (complete !== null) onChange({ kind: "mean", ...complete });
  }
  const missing = draft === null ? [] : FIELDS.filter((field) => draft[field] === null);
  return (
    <fieldset className="shelf__block">
      <legend>Deposit</legend>
      <div className="ways" role="radiogroup" aria-label="How the deposit is known">
        <label className="tick">
          <input
            type="radio"
            name={name}
            checked={shown === null}
            onChange={() => {
              setDraft(null);
              if (weighed !== null) onChange(null);
            }}
          />
          Estimated from the mesh
        </label>
        <label className="tick">
          <input type="radio" name={name} checked={shown !== null} onChange={() => setDraft(EMPTY)} />
          Weighed
        </label>
      </div>
      {shown !== null && (
        <>
          <p className="entry__hint">
            Garments weighed before and after printing, before the cure, divided by the printed area.
          </p>
          <div className="shelf__fields">
            <MeasureEntry
              label="Mean ink on the print"
              stored={shown.meanGsm}
              unit={massPerArea}
              {...MEAN_GSM}
              onCommit={(meanGsm) => set({ meanGsm })}
            />
            <MeasureEntry
              label="Spread from print to print, standard deviation"
              stored={shown.sdGsm}
              unit={massPerArea}
              {...SD_GSM}
              onCommit={(sdGsm) => set({ sdGsm })}
            />
            <NumberEntry
              label="Pieces weighed"
              value={shown.pieceCount}
              whole
              min={1}
              max={MOST_PIECES}
              onCommit={(pieceCount) => set({ pieceCount })}
            />
            <NumberEntry
              label="Density of the ink that was weighed"
              value={shown.densityGramsPerCm3}
              unit="g/cm³"
              min={0.5}
              max={5}
              onCommit={(densityGramsPerCm3) => set({ densityGramsPerCm3 })}
            />
          </div>
          {missing.length > 0 && (
            <NotSavedYet sentence={`missing: ${missing.map((field) => FIELD_NAMES[field]).join(", ")}.`} />
          )}
        </>
      )}
    </fieldset>
  );
}
