/** Everything that was ever signed, withdrawn, overridden, released or held: the latest first, nothing left out for good. */
import { useState } from "react";
import { checklistSubject } from "../../job/checklistSubject.ts";
import type { Documents } from "../../job/documents.ts";
import type { ChecklistEntry } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { lotOfLine } from "../../job/lookup.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { actionWords, saidThenWords, timeWords } from "../words/checklistSentences.ts";

/** More would push the page away from the work. Invented default. */
const SHOWN_COUNT = 12;

/** Garment and place of an entry, as far as the job still has them. */
function subjectWords(documents: Documents, { lineId, placeId, subject }: ChecklistEntry): string {
  const line = documents.job.lines.find(({ id }) => id === lineId);
  const place = documents.job.places.find(({ id }) => id === placeId);
  if (line === undefined || place === undefined) return "a garment or place that was removed";
  const lot = lotOfLine(documents, line);
  const isEarlier = checklistSubject(documents, lineId, placeId) !== subject;
  return `${lot === null ? "garment missing" : lineName(lot)}, ${place.name}${isEarlier ? " (an earlier choice)" : ""}`;
}

export function Ledger({ documents }: { readonly documents: Documents }) {
  const [isWhole, setIsWhole] = useState(false);
  const entries = documents.job.checklist.toReversed();
  const shown = isWhole ? entries : entries.slice(0, SHOWN_COUNT);
  return (
    <section className="run__ledger" aria-labelledby="run-ledger" data-print="hide">
      <h3 id="run-ledger">Ledger</h3>
      <p className="quiet">Entries are added and never changed: a withdrawal is an entry too.</p>
      {entries.length === 0 ? (
        <p>Nothing is signed yet.</p>
      ) : (
        <ol>
          {shown.map((entry) => (
            <li key={entry.id}>
              <time dateTime={entry.at}>{timeWords(entry.at)}</time>
              <span>
                <strong>{entry.signer}</strong> {actionWords(entry)}
                {entry.note !== "" && <span className="quiet"> “{entry.note}”</span>}
                {entry.said !== null && (
                  <>
                    {" "}
                    <span className="run__said quiet">{saidThenWords(entry.said)}</span>
                  </>
                )}
              </span>
              <span>{subjectWords(documents, entry)}</span>
            </li>
          ))}
        </ol>
      )}
      {entries.length > shown.length && (
        <ActionButton onClick={() => setIsWhole(true)}>Show all {entries.length} entries</ActionButton>
      )}
    </section>
  );
}
