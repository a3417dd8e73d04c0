/** A weighing piece by piece: before and after printing, on what scale, over what area. */
import { useState } from "react";
import type { Weighed } from "../../job/shelfDocument.ts";
import { weighedDeposit } from "../../job/weighedDeposit.ts";
import type { ShopUnits } from "../../units/shopUnits.ts";
import { format } from "../../units/unit.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { nowIso } from "../state/identity.ts";
import type { KnownArea } from "./WeighedEntry.tsx";

type Pieces = Extract<Weighed, { kind: "pieces" }>;

interface DraftPiece {
  readonly beforeGrams: number | null;
  readonly afterGrams: number | null;
}

interface Draft {
  readonly pieces: readonly DraftPiece[];
  readonly printedAreaM2: number | null;
  readonly scaleStepGrams: number | null;
  readonly densityGramsPerCm3: number | null;
}

interface Props {
  readonly weighed: Pieces | null;
  readonly units: ShopUnits;
  readonly areas: readonly KnownArea[];
  readonly onChange: (weighed: Pieces) => void;
}

/** The schema's ranges. */
const GRAMS = { min: 0, max: 100_000 };
const AREA_M2 = { min: 0.0001, max: 4 };
const STEP_GRAMS = { min: 0.001, max: 1000 };
/** Pieces that are usually weighed (common practice, no source). */
const USUAL_COUNT = 10;

const EMPTY_PIECE: DraftPiece = { beforeGrams: null, afterGrams: null };
const EMPTY: Draft = {
  pieces: [EMPTY_PIECE],
  printedAreaM2: null,
  scaleStepGrams: null,
  densityGramsPerCm3: null,
};

/** What is missing or cannot be, in words; empty where the weighing is whole. */
function missingWords({ pieces, printedAreaM2, scaleStepGrams, densityGramsPerCm3 }: Draft): string[] {
  const open = pieces.findIndex(({ beforeGrams, afterGrams }) => beforeGrams === null || afterGrams === null);
  const light = pieces.findIndex(
    ({ beforeGrams, afterGrams }) => beforeGrams !== null && afterGrams !== null && afterGrams <= beforeGrams,
  );
  return [
    ...(pieces.length === 0 ? ["a piece"] : []),
    ...(open >= 0 ? [`both weights of piece ${open + 1}`] : []),
    ...(light >= 0 ? [`piece ${light + 1} has to be heavier after printing`] : []),
    ...(printedAreaM2 === null ? ["the area"] : []),
    ...(scaleStepGrams === null ? ["the scale's step"] : []),
    ...(densityGramsPerCm3 === null ? ["the density"] : []),
  ];
}

function whole(draft: Draft, weighedAt: string): Pieces | null {
  const { printedAreaM2, scaleStepGrams, densityGramsPerCm3 } = draft;
  if (missingWords(draft).length > 0) return null;
  if (printedAreaM2 === null || scaleStepGrams === null || densityGramsPerCm3 === null) return null;
  const pieces = draft.pieces.map(({ beforeGrams, afterGrams }) => ({
    beforeGrams: beforeGrams ?? 0,
    afterGrams: afterGrams ?? 0,
  }));
  return { kind: "pieces", pieces, printedAreaM2, scaleStepGrams, densityGramsPerCm3, weighedAt };
}

export function WeighedPieces({ weighed, units, areas, onChange }: Props) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const shown: Draft = draft ?? weighed ?? EMPTY;
  function set(part: Partial<Draft>): void {
    const next = { ...shown, ...part };
    const complete = whole(next, weighed?.weighedAt ?? nowIso());
    setDraft(complete === null ? next : null);
    if (complete !== null) onChange(complete);
  }
  const setPiece = (index: number, part: Partial<DraftPiece>) =>
    set({ pieces: shown.pieces.map((piece, i) => (i === index ? { ...piece, ...part } : piece)) });
  const missing = missingWords(shown);
  return (
    <>
      <div className="fields">
        <MeasureEntry
          label="Area that carries ink"
          stored={shown.printedAreaM2}
          unit={units.area}
          {...AREA_M2}
          onCommit={(printedAreaM2) => set({ printedAreaM2 })}
        />
        <MeasureEntry
          label="Step of the scale"
          stored={shown.scaleStepGrams}
          unit={units.mass}
          {...STEP_GRAMS}
          onCommit={(scaleStepGrams) => set({ scaleStepGrams })}
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
      {areas.length > 0 && (
        <div className="acts">
          {areas.map(({ name, areaM2 }) => (
            <ActionButton key={name} onClick={() => set({ printedAreaM2: areaM2 })}>
              Take the area of {name}, {format(areaM2, units.area)}
            </ActionButton>
          ))}
        </div>
      )}
      <table className="pieces">
        <caption className="unseen">Pieces weighed</caption>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Before printing</th>
            <th scope="col">After printing</th>
            <th scope="col">
              <span className="unseen">Actions</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.pieces.map((piece, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pieces have no other identity; an entry drops its draft when its value moves
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              {(["beforeGrams", "afterGrams"] as const).map((when) => (
                <td key={when}>
                  <MeasureEntry
                    label={`Piece ${index + 1}, ${when === "beforeGrams" ? "before" : "after"} printing`}
                    labelUnseen
                    stored={piece[when]}
                    unit={units.mass}
                    {...GRAMS}
                    onCommit={(grams) => setPiece(index, { [when]: grams })}
                  />
                </td>
              ))}
              <td>
                <ActionButton
                  weight="plain"
                  aria-label={`Remove piece ${index + 1}`}
                  onClick={() => set({ pieces: shown.pieces.filter((_, i) => i !== index) })}
                >
                  Remove
                </ActionButton>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="acts">
        <ActionButton onClick={() => setDraft({ ...shown, pieces: [...shown.pieces, EMPTY_PIECE] })}>
          Add a piece
        </ActionButton>
        {weighed !== null && draft === null && <Scatter weighed={weighed} units={units} />}
      </div>
      {missing.length > 0 && <NotSavedYet sentence={`missing: ${missing.join(", ")}.`} />}
    </>
  );
}

function Scatter({ weighed, units }: { readonly weighed: Pieces; readonly units: ShopUnits }) {
  const { meanGsm, sdGsm, pieceCount } = weighedDeposit(weighed);
  return (
    <p>
      Mean <strong>{format(meanGsm, units.massPerArea)}</strong>, standard deviation{" "}
      {format(sdGsm, units.massPerArea)}, {pieceCount} {pieceCount === 1 ? "piece" : "pieces"}
      {pieceCount < USUAL_COUNT &&
        `; under ${USUAL_COUNT} their own scatter is not believed, and the usual one counts if it is larger`}
      .
    </p>
  );
}
