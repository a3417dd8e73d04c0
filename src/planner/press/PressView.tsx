/** Press: the first-off of a garment against its target, the later pulls of its run, and what to change when it is off. */
import { useEffect, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { pressRun } from "../../job/press/pressRun.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { runLines } from "../beforeTheRun/runLines.ts";
import { useChosenStates } from "../beforeTheRun/useChosenStates.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Tabs } from "../controls/Tabs.tsx";
import { usePrinting } from "../look/usePrinting.ts";
import { useDocuments } from "../state/usePlanner.ts";
import { PRESS_CAUTIONS } from "../words/pressSentences.ts";
import { FirstOffTab } from "./FirstOffTab.tsx";
import { PressHead } from "./PressHead.tsx";
import { PressChoice, type PressLine, PressLines } from "./PressLines.tsx";
import { PressPaper } from "./PressPaper.tsx";
import { PullsTab } from "./PullsTab.tsx";
import { RecoverTab } from "./RecoverTab.tsx";
import "../matrix/cell.css";
import "../tests/tests.css";
import "../tests/bench.css";
import "./press.css";
import "./verdict.css";
import "./pressLog.css";
import "./recover.css";

const TABS = [
  { tab: "first-off", name: "First-off" },
  { tab: "pulls", name: "Later pulls" },
  { tab: "recover", name: "Recover" },
] as const;

/** Where the work of a line goes on: the first-off first, pulls once it was passed. */
function tabOf({ run }: PressLine): string {
  return run.firstOff?.entry.said.action === "run" ? "pulls" : "first-off";
}

export default function PressView() {
  const documents = useDocuments();
  const { address, change } = useJobAddress();
  const states = useChosenStates(documents);
  const isPrinting = usePrinting();
  const [printsAll, setPrintsAll] = useState(false);
  // All sheets were asked for once: the browser's own print goes back to the one on the press.
  const wasPrinting = useRef(false);
  useEffect(() => {
    if (wasPrinting.current && !isPrinting) setPrintsAll(false);
    wasPrinting.current = isPrinting;
  }, [isPrinting]);
  const lines = useMemo(
    () =>
      runLines(documents, states)
        .filter(({ chosen }) => chosen.kind !== "none")
        .map((of): PressLine => ({ of, run: pressRun(documents, of.line, of.place) })),
    [documents, states],
  );
  const ofLine = lines.filter(({ of }) => of.line.id === address.line);
  const open =
    ofLine.find(({ of }) => of.place.id === address.place) ??
    ofLine[0] ??
    (address.line === null ? lines[0] : undefined) ??
    null;
  const print = (all: boolean) => {
    flushSync(() => setPrintsAll(all));
    window.print();
  };
  const onOpen = ({ of }: PressLine) => change({ line: of.line.id, place: of.place.id, tab: null }, "push");
  const matrix = printAddress({ ...address, view: "matrix", tab: null });
  const sheets = printsAll || open === null ? lines : [open];
  return (
    <div className="view press panel">
      {isPrinting && sheets.map((line) => <PressPaper key={line.of.key} documents={documents} line={line} />)}
      <div className="view__head" data-print="hide">
        <h2>Press</h2>
        {lines.length > 0 && <PressChoice lines={lines} openKey={open?.of.key ?? null} onOpen={onOpen} />}
        {open !== null && (
          <div className="view__actions">
            <ActionButton onClick={() => print(false)}>Print this run sheet</ActionButton>
            {lines.length > 1 && (
              <ActionButton onClick={() => print(true)}>Print all {lines.length} run sheets</ActionButton>
            )}
          </div>
        )}
      </div>
      {lines.length === 0 ? (
        <p>
          No mix is chosen for any garment yet: <a href={matrix}>choose in the matrix</a> what goes on the
          press.
        </p>
      ) : (
        <div className="press__room" data-print="hide">
          <PressLines lines={lines} openKey={open?.of.key ?? null} onOpen={onOpen} />
          {open === null ? (
            <p>
              No mix is chosen for this garment yet: <a href={matrix}>choose in the matrix</a>, or take
              another one from the list.
            </p>
          ) : (
            <div className="press__line-room" key={open.of.key}>
              <PressHead documents={documents} of={open.of} run={open.run} />
              <Tabs
                label="Parts of the press"
                tabs={TABS}
                open={address.tab ?? tabOf(open)}
                onOpen={(tab) => change({ tab })}
              >
                {(tab) => {
                  if (tab === "pulls") return <PullsTab documents={documents} run={open.run} />;
                  if (tab === "recover") return <RecoverTab documents={documents} run={open.run} />;
                  return <FirstOffTab documents={documents} run={open.run} />;
                }}
              </Tabs>
              <ul className="press__cautions" aria-label="Cautions">
                {PRESS_CAUTIONS.map((caution) => (
                  <li key={caution}>{caution}</li>
                ))}
              </ul>
            </div>
          )}
        </div>
      )}
    </div>
  );
}
