/** What test prints teach: which are worth making, recording them, the book of them, what is known of each garment, what was learned. */
import { useState } from "react";
import type { WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { chosenCandidate, lotOfLine, mixOf } from "../../job/lookup.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { type JobAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { Tabs } from "../controls/Tabs.tsx";
import { useLessons } from "../lessons.tsx";
import { useDocuments } from "../state/usePlanner.ts";
import { BenchTab } from "./BenchTab.tsx";
import { BookTab } from "./BookTab.tsx";
import { GarmentsTab } from "./GarmentsTab.tsx";
import { GoodsInTab } from "./GoodsInTab.tsx";
import { LearnedTab } from "./LearnedTab.tsx";
import { SuspiciousTab } from "./SuspiciousTab.tsx";
import { useBenchForm } from "./useBenchForm.ts";
import { WorthTab } from "./WorthTab.tsx";
import "./tests.css";
import "./bench.css";

const TABS = [
  { tab: "worth-making", name: "Worth making" },
  { tab: "record", name: "Record a print" },
  { tab: "book", name: "Record book" },
  { tab: "garments", name: "Garments" },
  { tab: "learned", name: "What was learned" },
  { tab: "suspicious", name: "Suspicious" },
  { tab: "goods-in", name: "Goods-in checks" },
] as const;

/** What a new form begins with: the garment, mix and set-up that were looked at in the matrix. */
function benchBegin(
  { job, library }: Documents,
  { line: lineId, mix, place }: JobAddress,
): Partial<BenchForm> {
  const line = job.lines.find(({ id }) => id === lineId);
  const candidates = job.places.flatMap((one) => one.candidates);
  const placeId = place ?? job.places[0]?.id ?? "";
  const candidate =
    candidates.find(({ id }) => id === mix) ??
    (line === undefined ? null : chosenCandidate(job, line.id, placeId));
  const lot = line === undefined ? null : lotOfLine({ job, library }, line);
  return {
    ...(lot === null ? {} : { garmentLotId: lot.id }),
    ...(candidate === null
      ? {}
      : { recipe: mixOf(job, candidate.mixId)?.recipe ?? null, setUpId: candidate.setUpId }),
  };
}

export default function TestsView() {
  const documents = useDocuments();
  const { address, change } = useJobAddress();
  const { lessons, failed } = useLessons();
  const bench = useBenchForm();
  const [openId, setOpenId] = useState<string | null>(null);
  const count = documents.library.testPrints.length;
  const waiting = lessons?.suspicions.filter(({ setAside }) => setAside).length ?? 0;
  const openRecord = (recordId: string | null) => {
    setOpenId(recordId);
    change({ tab: "book" });
  };
  const onCorrect = (print: TestPrint) => {
    bench.correct(print);
    change({ tab: "record" });
  };
  const onReadAgain = (print: TestPrint) => {
    bench.readAgain(print);
    change({ tab: "record" });
  };
  /** The bench form for a test of the plan; a record that is being typed comes first. */
  const onRecord = (test: WorthwhileTest) => {
    const at = { line: test.lineId, place: test.placeId, mix: test.candidateId };
    if (bench.form === null) {
      const begin = benchBegin(documents, { ...address, ...at });
      bench.start({ ...begin, recipe: test.recipe, setUpId: test.setUpId });
    }
    change({ tab: "record", ...at });
  };
  return (
    <div className="view tests panel">
      <div className="view__head">
        <h2>Tests</h2>
        <p>
          {count === 0 ? "No test print is recorded yet" : `${count} readings of test prints in the book`}
          {lessons !== null && lessons.teachingCount > 0 && `; ${lessons.teachingCount} prints teach`}.
        </p>
      </div>
      {failed && (
        <Notice kind="problem">The engine could not learn from the record book. Reload the page.</Notice>
      )}
      {waiting > 0 && (
        <Notice kind="caution">
          {waiting === 1 ? "One record looks wrong and is" : `${waiting} records look wrong and are`} set
          aside until somebody answers.{" "}
          <ActionButton weight="plain" onClick={() => change({ tab: "suspicious" })}>
            See what looks wrong
          </ActionButton>
        </Notice>
      )}
      <Tabs label="Parts of the tests" tabs={TABS} open={address.tab} onOpen={(tab) => change({ tab })}>
        {(tab) => {
          if (tab === "book") {
            return (
              <BookTab
                documents={documents}
                openId={openId}
                onOpen={setOpenId}
                onCorrect={onCorrect}
                onReadAgain={onReadAgain}
              />
            );
          }
          if (tab === "garments") return <GarmentsTab documents={documents} onOpen={openRecord} />;
          if (tab === "learned") return <LearnedTab documents={documents} />;
          if (tab === "suspicious") {
            return <SuspiciousTab documents={documents} onOpen={openRecord} onCorrect={onCorrect} />;
          }
          if (tab === "goods-in") return <GoodsInTab documents={documents} />;
          if (tab === "record") {
            return (
              <BenchTab
                documents={documents}
                bench={bench}
                begin={benchBegin(documents, address)}
                onOpen={openRecord}
                onWorth={() => change({ tab: "worth-making" })}
              />
            );
          }
          return <WorthTab documents={documents} onRecord={onRecord} isTyping={bench.form !== null} />;
        }}
      </Tabs>
    </div>
  );
}
