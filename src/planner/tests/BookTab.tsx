/** The record book: found by words, never edited; a record opened beside the list says all that is known of its print. */
import { useId, useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { printSeries } from "../../job/recordBook/printSeries.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { recordIndex, searchRecords } from "../../job/recordSearch.ts";
import { Choice } from "../controls/Choice.tsx";
import { Tick } from "../controls/Tick.tsx";
import { useLessons } from "../lessons.tsx";
import { lotOptions } from "./benchOptions.ts";
import { RecordPane } from "./RecordPane.tsx";
import { RecordTable, rowId } from "./RecordTable.tsx";
import { recordName } from "./recordName.ts";

interface Props {
  readonly documents: Documents;
  readonly openId: string | null;
  readonly onOpen: (recordId: string | null) => void;
  readonly onCorrect: (print: TestPrint) => void;
  readonly onReadAgain: (print: TestPrint) => void;
}

export function BookTab({ documents, openId, onOpen, onCorrect, onReadAgain }: Props) {
  const id = useId();
  const { library } = documents;
  const [text, setText] = useState("");
  const [lotId, setLotId] = useState("");
  const [withSuperseded, setWithSuperseded] = useState(false);
  const { lessons } = useLessons();
  const viewing = library.shelf.defaults.instrument.viewing;
  const index = useMemo(() => recordIndex(library), [library]);
  const series = useMemo(() => printSeries(library.testPrints, viewing), [library.testPrints, viewing]);
  const found = searchRecords(index, { text, garmentLotId: lotId === "" ? null : lotId, withSuperseded });
  /** Closing leads back to the line of the list that was opened. */
  const show = (recordId: string | null) => {
    if (recordId === null && openId !== null) document.getElementById(rowId(openId))?.focus();
    onOpen(recordId);
  };
  const open = library.testPrints.find((print) => print.id === openId) ?? null;
  const lots = lotOptions(documents).filter(({ value }) =>
    library.testPrints.some(({ garmentLotId }) => garmentLotId === value),
  );
  return (
    <div className="tests__book">
      <div className="tests__list">
        <div className="tests__search" data-print="hide">
          <div className="entry">
            <label className="entry__label" htmlFor={id}>
              Search by garment, ink, screen, person, day, note
            </label>
            <input
              id={id}
              type="search"
              className="entry__field"
              value={text}
              onChange={(event) => setText(event.target.value)}
            />
          </div>
          <Choice
            label="Garment lot"
            value={lotId}
            options={[{ value: "", label: "all" }, ...lots]}
            onChange={setLotId}
          />
          <Tick label="Corrected records too" checked={withSuperseded} onChange={setWithSuperseded} />
        </div>
        <p role="status">
          {found.length} of {index.length} {index.length === 1 ? "record" : "records"}.
        </p>
        <RecordTable
          library={library}
          found={found}
          suspicions={lessons?.suspicions ?? []}
          openId={openId}
          onOpen={onOpen}
        />
      </div>
      {open !== null && (
        <RecordPane
          key={open.id}
          documents={documents}
          print={open}
          name={recordName(library, open)}
          series={series}
          onOpen={show}
          onCorrect={onCorrect}
          onReadAgain={onReadAgain}
        />
      )}
    </div>
  );
}
