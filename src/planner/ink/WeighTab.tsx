/** Weighing one mix: how it is wished, its sheet, and its pots. */
import type { InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { PlannedSheet } from "./PlannedSheet.tsx";
import { PotList } from "./PotList.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";
import { WeighWishes } from "./WeighWishes.tsx";

interface Props {
  readonly ink: InkRoomInUse;
  readonly batch: InkBatch | null;
  readonly onMix: (mixId: string) => void;
}

export function WeighTab({ ink, batch, onMix }: Props) {
  const { address } = useJobAddress();
  if (batch === null) return <p>Choose a mix for a garment in the matrix: then it can be weighed here.</p>;
  const shelf = printAddress({ ...address, view: "shelf", tab: "defaults" });
  return (
    <div className="ink__weigh" key={batch.mixId}>
      <div className="ink__bar">
        <Choice
          label="Mix"
          value={batch.mixId}
          options={ink.room.batches.map(({ mixId, mixName }) => ({ value: mixId, label: mixName }))}
          onChange={onMix}
        />
        <WeighWishes batch={batch} ink={ink} />
        <ActionButton disabled={batch.sheet?.ok !== true} onClick={() => window.print()}>
          Print the sheets, one page a pot
        </ActionButton>
      </div>
      {batch.scale === null || batch.pots === null ? (
        <p>
          No sheet can be written: the shop has entered no {batch.scale === null ? "scale" : "pot"} yet.{" "}
          <a href={shelf}>Enter it among the defaults of the shelf.</a>
        </p>
      ) : (
        <>
          <PlannedSheet batch={batch} ink={ink} />
          <PotList batch={batch} ink={ink} />
        </>
      )}
    </div>
  );
}
