/** Masters: colourants dispersed beforehand in a base, with the day they were made. */
import { useState } from "react";
import type { Master, Shelf } from "../../job/shelfDocument.ts";
import { Choice } from "../controls/Choice.tsx";
import { DayEntry } from "../controls/DayEntry.tsx";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";
import { percentWords } from "../words/garmentWords.ts";
import { missingOf, PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { type ShelfInUse, useShelf } from "./useShelf.ts";

const GRAMS_LEFT = { min: 0, max: 1_000_000 };

const NOTHING_ENTERED = { madeOn: null, expiresOn: null, gramsLeft: null, dilutionId: null, note: "" };

const named = (items: readonly { readonly id: string; readonly name: string }[]) =>
  items.map(({ id, name }) => ({ value: id, label: name }));

function nameOf({ colourantId, baseId, massFraction }: Master, shelf: Shelf): string {
  const colourant = shelf.colourants.find(({ id }) => id === colourantId)?.name ?? "Colourant missing";
  const base = shelf.bases.find(({ id }) => id === baseId)?.name ?? "base missing";
  return `${colourant}, ${percentWords(massFraction)} in ${base}`;
}

function summary({ madeOn, expiresOn }: Master): string {
  const made = madeOn === null ? "no date" : `made ${madeOn}`;
  return expiresOn === null ? made : `${made}, use by ${expiresOn}`;
}

export function MastersSection() {
  const inUse = useShelf();
  const { shelf, add, remove } = inUse;
  const isPossible = shelf.colourants.length > 0 && shelf.bases.length > 0;
  return (
    <ShelfRows
      list="masters"
      rows={shelf.masters.map((master) => ({
        id: master.id,
        name: nameOf(master, shelf),
        summary: summary(master),
        editor: <MasterEditor master={master} inUse={inUse} />,
      }))}
      cannotAdd={isPossible ? null : "A master needs a colourant and a base on the shelf first."}
      newItem={(onAdded) => (
        <NewMaster
          shelf={shelf}
          onAdd={(master) => {
            const id = newId();
            add("masters", { ...master, ...NOTHING_ENTERED, id });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const master = shelf.masters.find((one) => one.id === id);
        if (master !== undefined) add("masters", { ...master, id: copy });
        return copy;
      }}
      onRemove={(id) => remove("masters", id)}
    />
  );
}

interface NewProps {
  readonly shelf: Shelf;
  readonly onAdd: (master: Pick<Master, "colourantId" | "baseId" | "massFraction">) => void;
}

function NewMaster({ shelf, onAdd }: NewProps) {
  const [colourantId, setColourantId] = useState(shelf.colourants[0]?.id ?? "");
  const [baseId, setBaseId] = useState(shelf.bases[0]?.id ?? "");
  const [massFraction, setMassFraction] = useState<number | null>(null);
  return (
    <>
      <Choice
        label="Colourant"
        value={colourantId}
        options={named(shelf.colourants)}
        onChange={setColourantId}
      />
      <PercentEntry label="Part of it" fraction={massFraction} onCommit={setMassFraction} />
      <Choice label="In base" value={baseId} options={named(shelf.bases)} onChange={setBaseId} />
      <PutOnShelf
        missing={missingOf({ "its part": massFraction === null })}
        onAdd={() => massFraction !== null && onAdd({ colourantId, baseId, massFraction })}
      />
    </>
  );
}

function MasterEditor({ master, inUse }: { readonly master: Master; readonly inUse: ShelfInUse }) {
  const { shelf, units, change } = inUse;
  const set = (part: Partial<Omit<Master, "id">>) => change("masters", master.id, part);
  return (
    <div className="fields">
      <Choice
        label="Colourant"
        value={master.colourantId}
        options={named(shelf.colourants)}
        onChange={(colourantId) => set({ colourantId })}
      />
      <PercentEntry
        label="Part of it"
        fraction={master.massFraction}
        onCommit={(massFraction) => set({ massFraction })}
      />
      <Choice
        label="In base"
        value={master.baseId}
        options={named(shelf.bases)}
        onChange={(baseId) => set({ baseId })}
      />
      <DayEntry label="Made on" day={master.madeOn} onCommit={(madeOn) => set({ madeOn })} />
      <DayEntry label="Use by" day={master.expiresOn} onCommit={(expiresOn) => set({ expiresOn })} />
      <MeasureEntry
        label="Left in the pot"
        stored={master.gramsLeft}
        unit={units.mass}
        {...GRAMS_LEFT}
        placeholder="not counted"
        onCommit={(gramsLeft) => set({ gramsLeft })}
        onClear={() => set({ gramsLeft: null })}
      />
      <TextEntry
        label="Note"
        value={master.note}
        maxLength={2000}
        rows={2}
        onCommit={(note) => set({ note })}
      />
    </div>
  );
}
