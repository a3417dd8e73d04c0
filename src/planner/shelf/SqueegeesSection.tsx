/** Squeegees: the hardness of their layers, and whether they print thinner than usual. */
import { useState } from "react";
import type { Squeegee } from "../../job/shelfDocument.ts";
import { TextEntry } from "../controls/TextEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { newId } from "../state/identity.ts";
import { missingOf, PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { layersSentence, readLayers } from "./typedLists.ts";
import { type ShelfInUse, useShelf } from "./useShelf.ts";

const printLayers = ({ shoreA }: Pick<Squeegee, "shoreA">) => shoreA.join("/");

export function SqueegeesSection() {
  const inUse = useShelf();
  const { shelf, add, remove } = inUse;
  return (
    <ShelfRows
      list="squeegees"
      rows={shelf.squeegees.map((squeegee) => ({
        id: squeegee.id,
        name: squeegee.name,
        summary: `${printLayers(squeegee)} Shore A${squeegee.hard ? ", counts as a harder blade" : ""}`,
        editor: <SqueegeeEditor squeegee={squeegee} inUse={inUse} />,
      }))}
      newItem={(onAdded) => (
        <NewSqueegee
          onAdd={(named) => {
            const id = newId();
            add("squeegees", { ...named, id, hard: false });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const squeegee = shelf.squeegees.find((one) => one.id === id);
        if (squeegee !== undefined) {
          add("squeegees", { ...squeegee, id: copy, name: `${squeegee.name}, copy`.slice(0, 120) });
        }
        return copy;
      }}
      onRemove={(id) => remove("squeegees", id)}
    />
  );
}

function LayersEntry(props: { readonly value: string; readonly onCommit: (shoreA: number[]) => void }) {
  return (
    <TextEntry
      label="Layers, Shore A"
      value={props.value}
      maxLength={40}
      required={layersSentence}
      hint="One to three, as 70/90/70."
      check={(text) => (readLayers(text) === null ? layersSentence : null)}
      onCommit={(text) => {
        const layers = readLayers(text);
        if (layers !== null) props.onCommit(layers);
      }}
    />
  );
}

function NewSqueegee({ onAdd }: { readonly onAdd: (squeegee: Pick<Squeegee, "name" | "shoreA">) => void }) {
  const [shoreA, setShoreA] = useState<number[]>([]);
  const [name, setName] = useState("");
  const offered = printLayers({ shoreA });
  return (
    <>
      <LayersEntry value={offered} onCommit={setShoreA} />
      <TextEntry label="Name" value={name === "" ? offered : name} maxLength={120} onCommit={setName} />
      <PutOnShelf
        missing={missingOf({ "the layers": shoreA.length === 0 })}
        onAdd={() => onAdd({ name: name === "" ? offered : name, shoreA })}
      />
    </>
  );
}

function SqueegeeEditor({ squeegee, inUse }: { readonly squeegee: Squeegee; readonly inUse: ShelfInUse }) {
  const set = (part: Partial<Omit<Squeegee, "id">>) => inUse.change("squeegees", squeegee.id, part);
  return (
    <div className="fields">
      <TextEntry
        label="Name"
        value={squeegee.name}
        maxLength={120}
        required="A squeegee needs a name."
        onCommit={(name) => set({ name })}
      />
      <LayersEntry value={printLayers(squeegee)} onCommit={(shoreA) => set({ shoreA })} />
      <Tick
        label="Counts as a harder blade: prints thinner"
        checked={squeegee.hard}
        onChange={(hard) => set({ hard })}
      />
    </div>
  );
}
