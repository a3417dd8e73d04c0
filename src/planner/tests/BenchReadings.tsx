/** The readings of a test print, in whichever way they come, with the light and the instrument they stand for. */
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { RadioRow } from "../controls/RadioRow.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { GEOMETRIES, ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";
import { READING_WAYS } from "../words/testsWords.ts";
import { EyeEntry } from "./EyeEntry.tsx";
import { FileEntry } from "./FileEntry.tsx";
import { PairRow, PairRows } from "./PairRows.tsx";

interface Props {
  readonly form: BenchForm;
  readonly instruments: readonly string[];
  readonly backings: readonly string[];
  readonly onChange: (part: Partial<BenchForm>) => void;
}

const CHOOSE = { value: "", label: "choose" } as const;

export function BenchReadings({ form, instruments, backings, onChange }: Props) {
  return (
    <fieldset className="fields-block">
      <legend>Readings</legend>
      <ReadingEntry form={form} onChange={onChange} />
      <ReadingConditions form={form} instruments={instruments} backings={backings} onChange={onChange} />
    </fieldset>
  );
}

/** The readings themselves, in whichever way they come. */
export function ReadingEntry({ form, onChange }: Pick<Props, "form" | "onChange">) {
  const { way, mean } = form;
  return (
    <>
      <RadioRow
        label="How they come"
        value={way}
        options={READING_WAYS}
        onChange={(next) => onChange({ way: next })}
      />
      {way === "pairs" && <PairRows pairs={form.pairs} onChange={(pairs) => onChange({ pairs })} />}
      {way === "mean" && (
        <>
          <PairRow
            of=", mean"
            legend="Mean pair"
            pair={mean.pair}
            onChange={(pair) => onChange({ mean: { ...mean, pair } })}
          />
          <div className="fields">
            <NumberEntry
              label="Pairs it is the mean of"
              value={mean.pairCount}
              min={1}
              max={10_000}
              whole
              onCommit={(pairCount) => onChange({ mean: { ...mean, pairCount } })}
            />
            <NumberEntry
              label="Scatter of the change, standard deviation in L*"
              hint="From pair to pair; leave it empty where you do not know it."
              value={mean.sdPairDifference}
              min={0}
              max={50}
              onCommit={(sdPairDifference) => onChange({ mean: { ...mean, sdPairDifference } })}
              onClear={() => onChange({ mean: { ...mean, sdPairDifference: null } })}
            />
          </div>
        </>
      )}
      {way === "by-eye" && <EyeEntry byEye={form.byEye} onChange={(byEye) => onChange({ byEye })} />}
      {way === "file" && (
        <FileEntry
          taken={form.fromFile}
          pieceCount={form.pieceCount}
          onTake={(fromFile) => onChange({ fromFile })}
        />
      )}
    </>
  );
}

interface ConditionsProps extends Props {
  /** The garments are asked for elsewhere. */
  readonly withoutPieces?: boolean;
}

/** What the readings were made under and with. */
export function ReadingConditions({
  form,
  instruments,
  backings,
  withoutPieces = false,
  onChange,
}: ConditionsProps) {
  const { way } = form;
  return (
    <div className="fields">
      {(way === "pairs" || way === "mean") && (
        <>
          <Choice
            label="Light"
            value={form.illuminant ?? ""}
            options={form.illuminant === null ? [CHOOSE, ...ILLUMINANTS] : ILLUMINANTS}
            onChange={(value) => onChange({ illuminant: value === "" ? null : value })}
          />
          <Choice
            label="Observer"
            value={form.observer ?? ""}
            options={form.observer === null ? [CHOOSE, ...OBSERVERS] : OBSERVERS}
            onChange={(value) => onChange({ observer: value === "" ? null : value })}
          />
          <Choice
            label="Geometry"
            value={form.geometry ?? ""}
            options={form.geometry === null ? [CHOOSE, ...GEOMETRIES] : GEOMETRIES}
            onChange={(value) => onChange({ geometry: value === "" ? null : value })}
          />
        </>
      )}
      {way !== "by-eye" && (
        <>
          {!withoutPieces && <PieceCountEntry pieceCount={form.pieceCount} onChange={onChange} />}
          <TextEntry
            label="Instrument"
            value={form.instrument}
            maxLength={120}
            suggestions={instruments}
            onCommit={(instrument) => onChange({ instrument })}
          />
        </>
      )}
      <TextEntry
        label="Under it (backing)"
        value={form.backing}
        maxLength={120}
        suggestions={backings}
        onCommit={(backing) => onChange({ backing })}
      />
    </div>
  );
}

/** How many garments the pairs were spread over. */
export function PieceCountEntry({
  pieceCount: value,
  most = 10_000,
  onChange,
}: {
  readonly pieceCount: number;
  readonly most?: number;
  readonly onChange: (change: { readonly pieceCount: number }) => void;
}) {
  return (
    <NumberEntry
      label="Garments they were spread over"
      value={value}
      min={1}
      max={most}
      whole
      onCommit={(pieceCount) => onChange({ pieceCount })}
    />
  );
}
