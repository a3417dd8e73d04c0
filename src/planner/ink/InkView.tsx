/** The ink room: how much of each mix, how it is weighed, in which order it is run, and what its parts ask for. */
import { useState } from "react";
import { flushSync } from "react-dom";
import { printAddress, useJobAddress } from "../address.ts";
import { Notice } from "../controls/Notice.tsx";
import { Tabs } from "../controls/Tabs.tsx";
import { usePrinting } from "../look/usePrinting.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { BatchesTab } from "./BatchesTab.tsx";
import { CureTab } from "./CureTab.tsx";
import { MastersTab } from "./MastersTab.tsx";
import { RunOrderTab } from "./RunOrderTab.tsx";
import { SetUpsTab } from "./SetUpsTab.tsx";
import { type InkRoomInUse, useInkRoom } from "./useInkRoom.ts";
import { WeighPaper } from "./WeighPaper.tsx";
import { WeighTab } from "./WeighTab.tsx";
import "./ink.css";
import "./sheet.css";
import "./inkPaper.css";

const TABS = [
  { tab: "batches", name: "Batches" },
  { tab: "weigh", name: "Weigh sheets" },
  { tab: "masters", name: "Masters" },
  { tab: "order", name: "Run order" },
  { tab: "set-ups", name: "Set-ups" },
  { tab: "cure", name: "Cure and safety" },
];

/** The batch that the address names, by its mix or by a column of the matrix; the first where it names none. */
function batchInAddress({ room, documents }: InkRoomInUse, mix: string | null) {
  const candidate = documents.job.places.flatMap(({ candidates }) => candidates).find(({ id }) => id === mix);
  const mixId = candidate?.mixId ?? mix;
  return room.batches.find((batch) => batch.mixId === mixId) ?? room.batches[0] ?? null;
}

export default function InkView() {
  const ink = useInkRoom();
  const { address, change } = useJobAddress();
  const isPrinting = usePrinting();
  const [isAllPrinted, setAllPrinted] = useState(false);
  const batch = batchInAddress(ink, address.mix);
  if (isPrinting && isAllPrinted) return <WeighPaper ink={ink} batches={ink.room.batches} />;
  if (isPrinting && address.tab === "weigh" && batch !== null) {
    return <WeighPaper ink={ink} batches={[batch]} />;
  }
  const printAll = () => {
    // What is printed has to be there before the browser looks.
    flushSync(() => setAllPrinted(true));
    window.print();
    setAllPrinted(false);
  };
  return (
    <div className="view ink panel">
      <div className="view__head">
        <h2>Ink</h2>
        <Counted ink={ink} matrix={printAddress({ ...address, view: "matrix", tab: null })} />
      </div>
      {ink.room.refused.map(({ mixId, mixName, problems }) => (
        <Notice key={mixId} kind="problem">
          <p>{mixName} cannot be planned.</p>
          <ProblemList problems={problems} />
        </Notice>
      ))}
      <Tabs label="Parts of the ink room" tabs={TABS} open={address.tab} onOpen={(tab) => change({ tab })}>
        {(tab) => {
          const openSheet = (mixId: string) => change({ tab: "weigh", mix: mixId });
          if (tab === "batches") return <BatchesTab ink={ink} onWeigh={openSheet} onPrintAll={printAll} />;
          if (tab === "weigh") return <WeighTab ink={ink} batch={batch} onMix={openSheet} />;
          if (tab === "masters") return <MastersTab ink={ink} />;
          if (tab === "order") return <RunOrderTab ink={ink} />;
          if (tab === "set-ups") return <SetUpsTab ink={ink} />;
          return <CureTab ink={ink} />;
        }}
      </Tabs>
    </div>
  );
}

/** What is counted, and what is not yet. */
function Counted({ ink, matrix }: { readonly ink: InkRoomInUse; readonly matrix: string }) {
  const { batches, unchosen } = ink.room;
  return (
    <p>
      {batches.length === 0 ? "No mix is chosen yet" : `${batches.length} of the mixes chosen`}
      {unchosen.length > 0 && (
        <>
          ; for {unchosen.length} {unchosen.length === 1 ? "garment" : "garments"} at their places none is, so
          no ink is counted: <a href={matrix}>choose in the matrix</a>
        </>
      )}
      .
    </p>
  );
}
