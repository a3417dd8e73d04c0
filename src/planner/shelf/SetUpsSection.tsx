/** Set-ups: mesh, squeegee and strokes together, and the ink film that they leave. */
import { useState } from "react";
import { depositFigures } from "../../job/meshFigures.ts";
import type { SetUp, Shelf } from "../../job/shelfDocument.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { FLOODS, figure, strokeWords } from "../words/shelfWords.ts";
import { PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { TransferEntry } from "./TransferEntry.tsx";
import { type ShelfInUse, useShelf } from "./useShelf.ts";
import { WeighedEntry } from "./WeighedEntry.tsx";

const MOST_STROKES = 6;

const named = (items: readonly { readonly id: string; readonly name: string }[]) =>
  items.map(({ id, name }) => ({ value: id, label: name }));

function summary(setUp: SetUp, shelf: Shelf): string {
  const deposit = depositFigures(setUp, shelf);
  const squeegee = shelf.squeegees.find(({ id }) => id === setUp.squeegeeId)?.name ?? "squeegee missing";
  const mesh = shelf.meshes.find(({ id }) => id === setUp.meshId)?.name ?? "mesh missing";
  const film = deposit.ok
    ? `${figure(deposit.depositUm, 1)} µm, ${deposit.weighed ? "weighed" : "estimated"}`
    : "deposit unknown";
  return `mesh ${mesh}, squeegee ${squeegee}, ${strokeWords(setUp.strokeCount)}: ${film}`;
}

export function SetUpsSection() {
  const inUse = useShelf();
  const { shelf, add, remove } = inUse;
  const isPossible = shelf.meshes.length > 0 && shelf.squeegees.length > 0;
  return (
    <ShelfRows
      list="setUps"
      rows={shelf.setUps.map((setUp) => ({
        id: setUp.id,
        name: setUp.name,
        summary: summary(setUp, shelf),
        editor: <SetUpEditor setUp={setUp} inUse={inUse} />,
      }))}
      cannotAdd={isPossible ? null : "A set-up needs a mesh and a squeegee on the shelf first."}
      newItem={(onAdded) => (
        <NewSetUp
          shelf={shelf}
          onAdd={(setUp) => {
            const id = newId();
            add("setUps", { ...setUp, id, weighed: null });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const setUp = shelf.setUps.find((one) => one.id === id);
        if (setUp !== undefined)
          add("setUps", { ...setUp, id: copy, name: `${setUp.name}, copy`.slice(0, 120) });
        return copy;
      }}
      onRemove={(id) => remove("setUps", id)}
    />
  );
}

interface NewProps {
  readonly shelf: Shelf;
  readonly onAdd: (setUp: Omit<SetUp, "id" | "weighed">) => void;
}

function NewSetUp({ shelf, onAdd }: NewProps) {
  const [meshId, setMeshId] = useState(shelf.meshes[0]?.id ?? "");
  const [squeegeeId, setSqueegeeId] = useState(shelf.squeegees[0]?.id ?? "");
  const [strokeCount, setStrokeCount] = useState(1);
  const [typedName, setTypedName] = useState("");
  const mesh = shelf.meshes.find(({ id }) => id === meshId);
  const name =
    typedName === "" ? `${mesh?.name ?? ""}, ${strokeWords(strokeCount)}`.slice(0, 120) : typedName;
  return (
    <>
      <Choice label="Mesh" value={meshId} options={named(shelf.meshes)} onChange={setMeshId} />
      <Choice label="Squeegee" value={squeegeeId} options={named(shelf.squeegees)} onChange={setSqueegeeId} />
      <NumberEntry
        label="Strokes"
        value={strokeCount}
        whole
        min={1}
        max={MOST_STROKES}
        onCommit={setStrokeCount}
      />
      <TextEntry label="Name" value={name} maxLength={120} onCommit={setTypedName} />
      <PutOnShelf
        missing={[]}
        onAdd={() => onAdd({ name, meshId, squeegeeId, strokeCount, flood: null, transferFraction: null })}
      />
    </>
  );
}

function SetUpEditor({ setUp, inUse }: { readonly setUp: SetUp; readonly inUse: ShelfInUse }) {
  const { shelf, units, change } = inUse;
  const set = (part: Partial<Omit<SetUp, "id">>) => change("setUps", setUp.id, part);
  const deposit = depositFigures(setUp, shelf);
  return (
    <>
      <div className="fields">
        <TextEntry
          label="Name"
          value={setUp.name}
          maxLength={120}
          required="A set-up needs a name."
          onCommit={(name) => set({ name })}
        />
        <Choice
          label="Mesh"
          value={setUp.meshId}
          options={named(shelf.meshes)}
          onChange={(meshId) => set({ meshId })}
        />
        <Choice
          label="Squeegee"
          value={setUp.squeegeeId}
          options={named(shelf.squeegees)}
          onChange={(squeegeeId) => set({ squeegeeId })}
        />
        <NumberEntry
          label="Strokes"
          value={setUp.strokeCount}
          whole
          min={1}
          max={MOST_STROKES}
          onCommit={(strokeCount) => set({ strokeCount })}
        />
        <Choice
          label="Flood stroke"
          value={setUp.flood ?? ""}
          options={FLOODS}
          onChange={(flood) => set({ flood: flood === "" ? null : flood })}
        />
        <TransferEntry setUp={setUp} onChange={set} />
      </div>
      <WeighedEntry weighed={setUp.weighed} units={units} onChange={(weighed) => set({ weighed })} />
      {deposit.ok ? (
        <dl className="shelf__figures">
          <div>
            <dt>Ink film</dt>
            <dd>
              {figure(deposit.depositUm, 1)} µm, {deposit.weighed ? "weighed" : "estimated from the mesh"}
            </dd>
          </div>
          {!deposit.weighed && (
            <div>
              <dt>Ink is mixed for</dt>
              <dd>{figure(deposit.inkToMixUm, 1)} µm, so that no pot runs short</dd>
            </div>
          )}
        </dl>
      ) : (
        <ProblemList problems={deposit.problems} />
      )}
    </>
  );
}
