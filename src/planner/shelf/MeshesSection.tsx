/** Meshes: what the label says, and the opening, open area and ink volume that follow from it. */
import { useState } from "react";
import { meshFigures } from "../../job/meshFigures.ts";
import type { Mesh } from "../../job/shelfDocument.ts";
import type { Unit } from "../../units/unit.ts";
import { formatNumber } from "../../units/unit.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";
import { Notice } from "../controls/Notice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";
import { percentWords } from "../words/garmentWords.ts";
import { figure } from "../words/shelfWords.ts";
import { missingOf, PutOnShelf } from "./PutOnShelf.tsx";
import { ShelfRows } from "./ShelfRows.tsx";
import { type ShelfInUse, useShelf } from "./useShelf.ts";

/** The schema's ranges. */
const THREADS_PER_CM = { min: 5, max: 250 };
const THREAD_UM = { min: 10, max: 400 };
const THICKNESS_UM = { min: 10, max: 800 };
const MOST_SCREENS = 10_000;

function countWords(threadsPerCm: number, threadCount: Unit): string {
  return `${formatNumber(threadsPerCm, threadCount)} ${threadCount.symbol}`;
}

export function MeshesSection() {
  const inUse = useShelf();
  const { shelf, units, add, remove } = inUse;
  return (
    <ShelfRows
      list="meshes"
      rows={shelf.meshes.map((mesh) => ({
        id: mesh.id,
        name: mesh.name,
        summary: `${countWords(mesh.threadsPerCm, units.threadCount)}, thread ${mesh.threadUm} µm, screens at hand: ${mesh.screensAtHand}`,
        editor: <MeshEditor mesh={mesh} inUse={inUse} />,
      }))}
      newItem={(onAdded) => (
        <NewMesh
          threadCount={units.threadCount}
          onAdd={(named) => {
            const id = newId();
            add("meshes", { ...named, id, thicknessUm: null, screensAtHand: 0 });
            onAdded(id);
          }}
        />
      )}
      onDuplicate={(id) => {
        const copy = newId();
        const mesh = shelf.meshes.find((one) => one.id === id);
        if (mesh !== undefined)
          add("meshes", { ...mesh, id: copy, name: `${mesh.name}, copy`.slice(0, 120) });
        return copy;
      }}
      onRemove={(id) => remove("meshes", id)}
    />
  );
}

interface NewProps {
  readonly threadCount: Unit;
  readonly onAdd: (mesh: Pick<Mesh, "name" | "threadsPerCm" | "threadUm">) => void;
}

function NewMesh({ threadCount, onAdd }: NewProps) {
  const [name, setName] = useState("");
  const [threadsPerCm, setThreadsPerCm] = useState<number | null>(null);
  const [threadUm, setThreadUm] = useState<number | null>(null);
  const offered =
    threadsPerCm === null || threadUm === null
      ? ""
      : `${formatNumber(threadsPerCm, threadCount)}-${threadUm}`;
  return (
    <>
      <MeasureEntry
        label="Thread count"
        stored={threadsPerCm}
        unit={threadCount}
        {...THREADS_PER_CM}
        onCommit={setThreadsPerCm}
      />
      <NumberEntry label="Thread" value={threadUm} unit="µm" {...THREAD_UM} onCommit={setThreadUm} />
      <TextEntry label="Name" value={name === "" ? offered : name} maxLength={120} onCommit={setName} />
      <PutOnShelf
        missing={missingOf({ "the thread count": threadsPerCm === null, "the thread": threadUm === null })}
        onAdd={() => {
          if (threadsPerCm === null || threadUm === null) return;
          onAdd({ name: name === "" ? offered : name, threadsPerCm, threadUm });
        }}
      />
    </>
  );
}

function MeshEditor({ mesh, inUse }: { readonly mesh: Mesh; readonly inUse: ShelfInUse }) {
  const { units, change } = inUse;
  const set = (part: Partial<Omit<Mesh, "id">>) => change("meshes", mesh.id, part);
  const figures = meshFigures(mesh);
  const estimate = meshFigures({ ...mesh, thicknessUm: null });
  return (
    <>
      <div className="fields">
        <TextEntry
          label="Name"
          value={mesh.name}
          maxLength={120}
          required="A mesh needs a name."
          onCommit={(name) => set({ name })}
        />
        <MeasureEntry
          label="Thread count"
          stored={mesh.threadsPerCm}
          unit={units.threadCount}
          {...THREADS_PER_CM}
          onCommit={(threadsPerCm) => set({ threadsPerCm })}
        />
        <NumberEntry
          label="Thread"
          value={mesh.threadUm}
          unit="µm"
          {...THREAD_UM}
          onCommit={(threadUm) => set({ threadUm })}
        />
        <NumberEntry
          label="Fabric thickness"
          value={mesh.thicknessUm}
          unit="µm"
          {...THICKNESS_UM}
          placeholder={estimate === null ? "not entered" : figure(estimate.thicknessUm, 1)}
          hint={mesh.thicknessUm === null ? "Not entered: estimated as 1.6 × thread." : "As entered."}
          onCommit={(thicknessUm) => set({ thicknessUm })}
          onClear={() => set({ thicknessUm: null })}
        />
        <NumberEntry
          label="Screens at hand"
          value={mesh.screensAtHand}
          whole
          min={0}
          max={MOST_SCREENS}
          onCommit={(screensAtHand) => set({ screensAtHand })}
        />
      </div>
      {figures === null ? (
        <Notice kind="problem">
          The threads fill the whole width: this mesh has no opening. Check count and thread.
        </Notice>
      ) : (
        <dl className="shelf__figures">
          <div>
            <dt>Opening</dt>
            <dd>{figure(figures.openingUm, 1)} µm</dd>
          </div>
          <div>
            <dt>Open area</dt>
            <dd>{percentWords(Number(figures.openAreaFraction.toFixed(3)))}</dd>
          </div>
          <div>
            <dt>Ink volume</dt>
            <dd>
              {figure(figures.volumeUm, 1)} cm³/m²
              {figures.thicknessEstimated && ", from an estimated thickness"}
            </dd>
          </div>
        </dl>
      )}
    </>
  );
}
