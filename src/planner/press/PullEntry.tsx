/** A later pull as it is read: L* of bare cloth and print, the mean change, or by eye; what was changed; who. */
import type { PullForm } from "../../job/press/pullForm.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { LongText } from "../controls/LongText.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { RadioRow } from "../controls/RadioRow.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { PieceCountEntry } from "../tests/BenchReadings.tsx";
import { CHANGES } from "../words/pressSentences.ts";
import { DIRECTIONS, GRADES } from "../words/testsWords.ts";

interface Props {
  readonly form: PullForm;
  readonly people: readonly string[];
  /** Light and observer that an instrument has to be set to. */
  readonly light: string;
  readonly onChange: (part: Partial<PullForm>) => void;
}

const WAYS = [
  { value: "pairs", label: "L* of bare cloth and print" },
  { value: "mean", label: "Mean change of L*" },
  { value: "by-eye", label: "By eye" },
] as const;

const PULL_CHANGES = CHANGES.filter(({ value }) => value !== "recovery");

export function PullEntry({ form, people, light, onChange }: Props) {
  const { way, mean, byEye } = form;
  return (
    <>
      <RadioRow
        label="How it is read"
        value={way}
        options={WAYS}
        onChange={(next) => onChange({ way: next })}
      />
      {way === "pairs" && <PullPairs form={form} onChange={onChange} />}
      {way === "mean" && (
        <div className="fields">
          <NumberEntry
            label="Change of L*, print less bare"
            hint="Negative is darker."
            value={mean.deltaL}
            min={-120}
            max={120}
            onCommit={(deltaL) => onChange({ mean: { ...mean, deltaL } })}
            onClear={() => onChange({ mean: { ...mean, deltaL: null } })}
          />
          <NumberEntry
            label="Pairs it is the mean of"
            value={mean.pairCount}
            min={1}
            max={200}
            whole
            onCommit={(pairCount) => onChange({ mean: { ...mean, pairCount } })}
          />
        </div>
      )}
      {way === "by-eye" && (
        <>
          <RadioRow
            label="Grade on the grey scale; 5 is no change"
            value={byEye.grade === null ? null : String(byEye.grade)}
            options={GRADES.map(({ grade, words }) => ({ value: String(grade), label: words }))}
            onChange={(value) => onChange({ byEye: { ...byEye, grade: Number(value) } })}
          />
          <RadioRow
            label="The print is"
            value={byEye.direction}
            options={DIRECTIONS}
            onChange={(direction) => onChange({ byEye: { ...byEye, direction } })}
          />
        </>
      )}
      <RadioRow
        label="Changed just before it"
        value={form.change}
        options={form.change === "recovery" ? CHANGES : PULL_CHANGES}
        onChange={(change) => onChange({ change })}
      />
      <div className="fields">
        {way !== "by-eye" && <PieceCountEntry pieceCount={form.pieceCount} most={200} onChange={onChange} />}
        <TextEntry
          label="Read by"
          value={form.by}
          maxLength={120}
          suggestions={people}
          onCommit={(by) => onChange({ by })}
        />
      </div>
      <details className="press__more">
        <summary>Under {light}; note</summary>
        <div className="press__more-fields">
          <p className="quiet">
            Readings are compared under {light} only, the light of the job: set the instrument to it.
          </p>
          <LongText
            label="Note"
            value={form.note}
            maxLength={2000}
            rows={2}
            onChange={(note) => onChange({ note })}
          />
        </div>
      </details>
    </>
  );
}

function PullPairs({ form, onChange }: Pick<Props, "form" | "onChange">) {
  const { pairs } = form;
  const put = (index: number, part: Partial<PullForm["pairs"][number]>) =>
    onChange({ pairs: pairs.map((pair, at) => (at === index ? { ...pair, ...part } : pair)) });
  return (
    <div className="press__pairs">
      {pairs.map((pair, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pairs have no other identity; an entry drops its draft when its value moves
        <fieldset key={index} className="press__pair">
          <legend className="unseen">Pair {index + 1}</legend>
          <span aria-hidden="true">{index + 1}</span>
          {(["bare", "print"] as const).map((side) => (
            <NumberEntry
              key={side}
              label={`L* ${side} of pair ${index + 1}`}
              labelUnseen
              placeholder={`L* ${side}`}
              value={pair[side]}
              min={0}
              max={120}
              onCommit={(value) => put(index, { [side]: value })}
              onClear={() => put(index, { [side]: null })}
            />
          ))}
          {pairs.length > 1 && (
            <ActionButton
              weight="plain"
              aria-label={`Remove pair ${index + 1}`}
              onClick={() => onChange({ pairs: pairs.filter((_, at) => at !== index) })}
            >
              Remove
            </ActionButton>
          )}
        </fieldset>
      ))}
      <div>
        <ActionButton onClick={() => onChange({ pairs: [...pairs, { bare: null, print: null }] })}>
          Add a pair
        </ActionButton>
      </div>
    </div>
  );
}
