/** When it was printed and read, who read it, after how many washes, and what becomes of it. */
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { LongText } from "../controls/LongText.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { RadioRow } from "../controls/RadioRow.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { TimeEntry } from "../controls/TimeEntry.tsx";
import { restWords, VERDICTS } from "../words/testsWords.ts";
import { PhotoEntry } from "./PhotoEntry.tsx";

interface Props {
  readonly form: BenchForm;
  readonly people: readonly string[];
  readonly onChange: (part: Partial<BenchForm>) => void;
}

const MS_PER_HOUR = 3_600_000;

function restSentence({ printedAt, readAt }: BenchForm): string {
  if (printedAt === null || readAt === null) return "";
  const hours = (Date.parse(readAt) - Date.parse(printedAt)) / MS_PER_HOUR;
  return hours < 0
    ? "Read before it was printed: check the two times."
    : `It rested for ${restWords(hours)}.`;
}

export function BenchWhen({ form, people, onChange }: Props) {
  return (
    <fieldset className="fields-block">
      <legend>When, who, what for</legend>
      <div className="tests__times">
        {form.readsAgainId === null && (
          <TimeEntry label="Printed" iso={form.printedAt} onChange={(printedAt) => onChange({ printedAt })} />
        )}
        <TimeEntry label="Read" iso={form.readAt} onChange={(readAt) => onChange({ readAt })} />
        <p className="tests__rest" role="status">
          {restSentence(form)}
        </p>
      </div>
      <div className="fields">
        <TextEntry
          label="Read by"
          value={form.operator}
          maxLength={120}
          suggestions={people}
          onCommit={(operator) => onChange({ operator })}
        />
        <NumberEntry
          label="Washes before reading"
          value={form.washCount}
          min={0}
          max={1000}
          whole
          onCommit={(washCount) => onChange({ washCount })}
        />
      </div>
      <RadioRow
        label="Verdict"
        value={form.verdict}
        options={VERDICTS}
        onChange={(verdict) => onChange({ verdict })}
      />
      <LongText
        label="Note"
        value={form.note}
        maxLength={2000}
        rows={2}
        onChange={(note) => onChange({ note })}
      />
      <PhotoEntry photo={form.photo} onChange={(photo) => onChange({ photo })} />
    </fieldset>
  );
}
