/** The set-ups that this job is printed with, and the others: mesh, blade, film, and the weighing that replaces the estimate. */
import { depositFigures, meshFigures } from "../../job/meshFigures.ts";
import type { Mesh, SetUp } from "../../job/shelfDocument.ts";
import { weighedDeposit } from "../../job/weighedDeposit.ts";
import { format, PER_CM, PER_INCH } from "../../units/unit.ts";
import { Choice } from "../controls/Choice.tsx";
import { TransferEntry } from "../shelf/TransferEntry.tsx";
import { useShelf } from "../shelf/useShelf.ts";
import { type KnownArea, WeighedEntry } from "../shelf/WeighedEntry.tsx";
import { ProblemList } from "../words/ProblemList.tsx";
import { FLOODS, figure, strokeWords } from "../words/shelfWords.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

export function SetUpsTab({ ink }: { readonly ink: InkRoomInUse }) {
  const used = new Set(ink.room.batches.flatMap(({ uses }) => uses.map(({ setUpId }) => setUpId)));
  const setUps = ink.shelf.setUps.toSorted(
    (one, other) => Number(used.has(other.id)) - Number(used.has(one.id)),
  );
  if (setUps.length === 0) return <p>No set-up is on the shelf yet.</p>;
  return (
    <div className="ink__batches">
      {setUps.map((setUp) => (
        <SetUpCard key={setUp.id} setUp={setUp} isUsed={used.has(setUp.id)} ink={ink} />
      ))}
    </div>
  );
}

/** The inked areas of the job's prints, each once. */
function knownAreas({ room }: InkRoomInUse): KnownArea[] {
  const byName = new Map(
    room.batches.flatMap(({ uses }) => uses.map((use) => [use.placeName, use.printedAreaM2] as const)),
  );
  return [...byName].map(([name, areaM2]) => ({ name, areaM2 }));
}

/** ", fabric 102 µm (1.6 threads, not measured)". */
function thicknessWords(mesh: Mesh): string {
  const figures = meshFigures(mesh);
  if (figures === null) return "";
  const estimate = figures.thicknessEstimated ? " (1.6 threads, not measured)" : "";
  return `, fabric ${figure(figures.thicknessUm, 0)}\u00a0µm${estimate}`;
}

interface CardProps {
  readonly setUp: SetUp;
  readonly isUsed: boolean;
  readonly ink: InkRoomInUse;
}

function SetUpCard({ setUp, isUsed, ink }: CardProps) {
  const { shelf, units, change } = useShelf();
  const mesh = shelf.meshes.find(({ id }) => id === setUp.meshId);
  const squeegee = shelf.squeegees.find(({ id }) => id === setUp.squeegeeId);
  const deposit = depositFigures(setUp, shelf);
  const weighed = setUp.weighed === null ? null : weighedDeposit(setUp.weighed);
  const areas = knownAreas(ink);
  return (
    <section className="ink__batch" aria-labelledby={`set-up-${setUp.id}`}>
      <h3 id={`set-up-${setUp.id}`}>
        {setUp.name}
        {isUsed && <span className="quiet">, used in this job</span>}
      </h3>
      <p>
        {mesh === undefined
          ? "Mesh missing"
          : `Mesh ${format(mesh.threadsPerCm, PER_CM)} (${format(mesh.threadsPerCm, PER_INCH)}), thread ${figure(mesh.threadUm, 1)}\u00a0µm${thicknessWords(mesh)}`}
        {squeegee !== undefined &&
          `; squeegee ${squeegee.shoreA.join("/")} Shore A${squeegee.shoreA.length > 1 ? ", layered" : ""}`}
        ; {strokeWords(setUp.strokeCount)}.
      </p>
      {deposit.ok ? (
        <p>
          <span className="ink__number">{figure(deposit.depositUm, 1)}&nbsp;µm</span>{" "}
          {weighed === null
            ? `estimated from the mesh for the colour; ink is mixed for ${figure(deposit.inkToMixUm, 1)} µm, all that the mesh holds, until it is weighed.`
            : `weighed: ${format(weighed.meanGsm, units.massPerArea)} ± ${format(weighed.sdGsm, units.massPerArea)} from piece to piece, over ${weighed.pieceCount} ${weighed.pieceCount === 1 ? "piece" : "pieces"}. It takes the place of the estimate, and its own scatter that of the guessed one.`}
        </p>
      ) : (
        <ProblemList problems={deposit.problems} />
      )}
      <div className="fields">
        <Choice
          label="Flood stroke"
          value={setUp.flood ?? ""}
          options={FLOODS}
          onChange={(flood) => change("setUps", setUp.id, { flood: flood === "" ? null : flood })}
        />
        <TransferEntry setUp={setUp} onChange={(part) => change("setUps", setUp.id, part)} />
      </div>
      <WeighedEntry
        key={setUp.id}
        weighed={setUp.weighed}
        units={units}
        areas={areas}
        onChange={(next) => change("setUps", setUp.id, { weighed: next })}
      />
    </section>
  );
}
