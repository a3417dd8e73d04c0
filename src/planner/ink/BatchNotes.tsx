/** What has to be said about a batch: what stands in the way, how the print will feel, what white does on polyester. */
import type { BatchNotice, InkBatch } from "../../job/inkRoom/inkBatch.ts";
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

interface Props {
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
  /** What concerns the weighing alone is said at the sheet. */
  readonly atTheSheet?: boolean;
}

const OF_THE_SHEET: readonly BatchNotice["code"][] = ["master-expired"];

export function BatchNotes({ batch, ink, atTheSheet = false }: Props) {
  const { units, nameOf } = ink;
  const notices = batch.notices.filter(({ code }) => atTheSheet || !OF_THE_SHEET.includes(code));
  const warnings = [
    ...notices.map((notice) => batchNoticeSentence(notice, units)),
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
      use.notes.map((note) => `${use.placeName}, ${use.setUpName}. ${printNoteSentence(note, units)}`),
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
