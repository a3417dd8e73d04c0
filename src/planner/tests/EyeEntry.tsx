/** A print judged by eye: its step on the grey scale against the bare cloth, and the light it was judged under. */
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { RadioRow } from "../controls/RadioRow.tsx";
import { ILLUMINANTS } from "../words/garmentWords.ts";
import { DIRECTIONS, GRADES } from "../words/testsWords.ts";

interface Props {
  readonly byEye: BenchForm["byEye"];
  readonly onChange: (byEye: BenchForm["byEye"]) => void;
}

export function EyeEntry({ byEye, onChange }: Props) {
  const { grade, direction, light, observerCount } = byEye;
  return (
    <div className="tests__eye">
      <p className="quiet">
        Hold the grey scale for change of colour against bare cloth and print, on grey ground. 5 is no change,
        1 the strongest.
      </p>
      <RadioRow
        label="Grade"
        value={grade === null ? null : String(grade)}
        options={GRADES.map((one) => ({ value: String(one.grade), label: one.words }))}
        onChange={(value) => onChange({ ...byEye, grade: Number(value) })}
      />
      <RadioRow
        label="The print is"
        value={direction}
        options={DIRECTIONS}
        onChange={(value) => onChange({ ...byEye, direction: value })}
      />
      <div className="fields">
        <Choice
          label="Judged under"
          value={light}
          options={ILLUMINANTS}
          onChange={(value) => onChange({ ...byEye, light: value })}
        />
        <NumberEntry
          label="People who agreed on it"
          value={observerCount}
          min={1}
          max={100}
          whole
          onCommit={(count) => onChange({ ...byEye, observerCount: count })}
        />
      </div>
    </div>
  );
}
