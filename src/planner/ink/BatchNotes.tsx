/** What has to be said about a batch: what stands in the way, how the print will feel, what white does on polyester. */
import type { InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { Notice } from "../controls/Notice.tsx";
import {
  batchNoticeSentence,
  dyeMigrationSentence,
  printNoteSentence,
  restrictionSentence,
  whiteSentences,
} from "../words/inkSentences.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

export function BatchNotes({ batch, ink }: { readonly batch: InkBatch; readonly ink: InkRoomInUse }) {
  const { units, nameOf } = ink;
  const warnings = [
    ...batch.notices.map((notice) => batchNoticeSentence(notice, units)),
    ...batch.restrictions.restrictions.map((one) => restrictionSentence(one, { units, nameOf })),
    ...batch.uses.flatMap((use) =>
      use.lines.flatMap(({ dyeMigration, name }) =>
        dyeMigration === null ? [] : [dyeMigrationSentence(dyeMigration, name)],
      ),
    ),
  ];
  const notes = [
    ...(batch.white === null ? [] : whiteSentences(batch.white)),
    ...batch.uses.flatMap((use) =>
      use.notes.map((note) => `${use.placeName}, ${use.setUpName}. ${printNoteSentence(note)}`),
    ),
  ];
  return (
    <>
      {batch.problems.length > 0 && (
        <Notice kind="problem">
          <ProblemList problems={batch.problems} />
        </Notice>
      )}
      {warnings.length > 0 && (
        <Notice kind="caution">
          <ul className="ink__sentences">
            {warnings.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      {notes.length > 0 && (
        <ul className="ink__sentences quiet">
          {notes.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}
