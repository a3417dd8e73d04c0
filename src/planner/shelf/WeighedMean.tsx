/** A weighing of which only its mean and spread are known. */
import { useState } from "react";
import type { Weighed } from "../../job/shelfDocument.ts";
import type { ShopUnits } from "../../units/shopUnits.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";

type Mean = Extract<Weighed, { kind: "mean" }>;
type Figures = Omit<Mean, "kind">;
type Draft = { readonly [Field in keyof Figures]: number | null };

interface Props {
  readonly weighed: Mean | null;
  readonly units: ShopUnits;
  readonly onChange: (weighed: Mean) => void;
}

const EMPTY: Draft = { meanGsm: null, sdGsm: null, pieceCount: null, densityGramsPerCm3: null };

/** The schema's ranges; a mean has to be above nothing. */
const MEAN_GSM = { min: 0.01, max: 500 };
const SD_GSM = { min: 0, max: 200 };
const MOST_PIECES = 10_000;

const FIELD_NAMES: { readonly [Field in keyof Figures]: string } = {
  meanGsm: "the mean",
  sdGsm: "the spread",
  pieceCount: "the pieces",
  densityGramsPerCm3: "the density",
};
const FIELDS = Object.keys(FIELD_NAMES) as (keyof Figures)[];

function whole({ meanGsm, sdGsm, pieceCount, densityGramsPerCm3 }: Draft): Figures | null {
  if (meanGsm === null || sdGsm === null || pieceCount === null || densityGramsPerCm3 === null) return null;
  return { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 };
}

export function WeighedMean({ weighed, units, onChange }: Props) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const shown: Draft = draft ?? weighed ?? EMPTY;
  function set(part: Partial<Draft>): void {
    const { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 } = { ...shown, ...part };
    const next = { meanGsm, sdGsm, pieceCount, densityGramsPerCm3 };
    const complete = whole(next);
    setDraft(complete === null ? next : null);
    if (complete !== null) onChange({ kind: "mean", ...complete });
  }
  const missing = FIELDS.filter((field) => shown[field] === null);
  return (
    <>
      <div className="fields">
        <MeasureEntry
          label="Mean ink on the print"
          stored={shown.meanGsm}
          unit={units.massPerArea}
          {...MEAN_GSM}
          onCommit={(meanGsm) => set({ meanGsm })}
        />
        <MeasureEntry
          label="Spread from print to print, standard deviation"
          stored={shown.sdGsm}
          unit={units.massPerArea}
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
  );
}
