/** Bases, additives and reducers: how strongly they wet, how much of them a mix may hold, how they are cured. */
import { useState } from "react";
import { chooseReferenceBase } from "../../job/edits/shelf.ts";
import type { Base } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { percentWords } from "../words/garmentWords.ts";
import { figure, LARGEST_NOTE, NOT_IN_STOCK, ROLES } from "../words/shelfWords.ts";
import { CureEntry } from "./CureEntry.tsx";
import { DataSheetEntry } from "./DataSheetEntry.tsx";
import { InkLots } from "./InkLots.tsx";
import { PriceEntry } from "./PriceEntry.tsx";
import { missingOf, PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { type ShelfInUse, useShelf } from "./useShelf.ts";

const UM_PER_MM = 1000;
/** The schema's largest strength. */
const LARGEST_STRENGTH = 3;

/** What a base starts with; the model's starting values, invented, and no cure. */
const NEW_BASE: Omit<Base, "id" | "name" | "reference"> = {
  role: "base",
  strength: 1,
  hazePerUm: 0,
  closedFraction: 0.02,
  inStock: true,
  largestFraction: 1,
  lowCure: false,
  densityGramsPerCm3: 1.15,
  cure: { filmCelsius: null, seconds: null, note: "" },
  highestCelsius: null,
  hazards: null,
  lots: [],
  pricePerKg: null,
};

function summary({ role, strength, reference, largestFraction, lowCure, inStock }: Base): string {
  return [
    role,
    reference ? "reference of all strengths" : `strength ${figure(strength, 3)}`,
    largestFraction < 1 ? `up to ${percentWords(largestFraction)} of a mix` : "",
    lowCure ? "low-cure" : "",
    inStock ? "" : NOT_IN_STOCK,
  ]
    .filter((part) => part !== "")
    .join(", ");
}

export function BasesSection() {
  const inUse = useShelf();
  const { shelf, add, remove } = inUse;
  const hasReference = shelf.bases.some((base) => base.reference);
  return (
    <ShelfRows
      list="bases"
      rows={shelf.bases.map((base) => ({
        id: base.id,
        name: base.name,
        summary: summary(base),
        editor: <BaseEditor base={base} inUse={inUse} />,
        keptBecause:
          base.reference && shelf.bases.length > 1
            ? `${base.name} stays: all strengths are measured against it. Make another base the reference first.`
            : null,
      }))}
      newItem={(onAdded) => (
        <NewBase
          onAdd={(name) => {
            const id = newId();
            add("bases", { ...NEW_BASE, id, name, reference: !hasReference });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const base = shelf.bases.find((one) => one.id === id);
        if (base !== undefined)
          add("bases", { ...base, id: copy, name: `${base.name}, copy`.slice(0, 120), reference: false });
        return copy;
      }}
      onRemove={(id) => remove("bases", id)}
    />
  );
}

function NewBase({ onAdd }: { readonly onAdd: (name: string) => void }) {
  const [name, setName] = useState("");
  return (
    <>
      <TextEntry
        label="Name"
        value={name}
        maxLength={120}
        required="A base needs a name."
        onCommit={setName}
      />
      <PutOnShelf missing={missingOf({ "the name": name === "" })} onAdd={() => onAdd(name)} />
    </>
  );
}

function BaseEditor({ base, inUse }: { readonly base: Base; readonly inUse: ShelfInUse }) {
  const { shelf, units, change } = inUse;
  const edit = usePlanner((state) => state.edit);
  const set = (part: Partial<Omit<Base, "id">>) => change("bases", base.id, part);
  const canBeReference =
    base.strength > 0 && shelf.bases.every(({ strength }) => strength / base.strength <= LARGEST_STRENGTH);
  return (
    <>
      <div className="fields">
        <TextEntry
          label="Name"
          value={base.name}
          maxLength={120}
          required="A base needs a name."
          onCommit={(name) => set({ name })}
        />
        <Choice label="Used as" value={base.role} options={ROLES} onChange={(role) => set({ role })} />
        <PercentEntry
          label="Largest part of a mix"
          fraction={base.largestFraction}
          hint={LARGEST_NOTE}
          onCommit={(largestFraction) => set({ largestFraction })}
        />
        <NumberEntry
          label="Wet-out strength"
          value={base.strength}
          min={0}
          max={LARGEST_STRENGTH}
          disabled={base.reference}
          hint={
            base.reference
              ? "The reference clear: 1 by definition."
              : "Against the reference clear, which is 1."
          }
          onCommit={(strength) => set({ strength })}
        />
        <NumberEntry
          label="Haze"
          value={Number((base.hazePerUm * UM_PER_MM).toFixed(9))}
          unit="per mm"
          min={0}
          max={UM_PER_MM}
          hint="How much it scatters; a glass-clear base has 0."
          onCommit={(perMm) => set({ hazePerUm: perMm / UM_PER_MM })}
        />
        <PercentEntry
          label="Surface it closes"
          fraction={base.closedFraction}
          hint="About 2 % for a clear that is not smoothed."
          onCommit={(closedFraction) => set({ closedFraction })}
        />
        <NumberEntry
          label="Density"
          value={base.densityGramsPerCm3}
          unit="g/cm³"
          min={0.5}
          max={5}
          onCommit={(densityGramsPerCm3) => set({ densityGramsPerCm3 })}
        />
        <PriceEntry
          pricePerKg={base.pricePerKg}
          currency={shelf.defaults.currency}
          potMass={units.potMass}
          onChange={(pricePerKg) => set({ pricePerKg })}
        />
        <Tick label="In stock" checked={base.inStock} onChange={(inStock) => set({ inStock })} />
        <Tick label="Low-cure" checked={base.lowCure} onChange={(lowCure) => set({ lowCure })} />
      </div>
      {!base.reference && (
        <div className="acts">
          <ActionButton
            disabled={!canBeReference}
            onClick={() => edit((now) => chooseReferenceBase(now, base.id))}
          >
            Make it the reference clear
          </ActionButton>
          <p className="entry__hint">
            Strengths are ratios to the reference: all are then divided by {figure(base.strength, 3)}, and
            predictions change with them.
          </p>
        </div>
      )}
      <CureEntry cure={base.cure} temperature={units.temperature} onChange={(cure) => set({ cure })} />
      <DataSheetEntry
        highestCelsius={base.highestCelsius}
        hazards={base.hazards}
        temperature={units.temperature}
        onChange={set}
      />
      <InkLots list="bases" itemId={base.id} lots={base.lots} />
    </>
  );
}
