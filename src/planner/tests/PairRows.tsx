/** Pairs of readings typed as L*, a*, b*: bare cloth, then the print beside it; a next row is there as soon as one is whole. */
import { EMPTY_PAIR, type TypedLab, type TypedPair } from "../../job/recordBook/benchForm.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";

const AXES = [
  { axis: "L", label: "L*", min: 0, max: 120 },
  { axis: "a", label: "a*", min: -200, max: 200 },
  { axis: "b", label: "b*", min: -200, max: 200 },
] as const;

const SIDES = [
  { side: "bare", label: "bare" },
  { side: "print", label: "print" },
] as const;

interface RowProps {
  /** "of pair 2"; empty where there is only one. */
  readonly of: string;
  readonly legend: string;
  readonly pair: TypedPair;
  readonly onChange: (pair: TypedPair) => void;
  readonly onRemove?: (() => void) | undefined;
}

export function PairRow({ of, legend, pair, onChange, onRemove }: RowProps) {
  const changeLab = (side: "bare" | "print", part: Partial<TypedLab>) =>
    onChange({ ...pair, [side]: { ...pair[side], ...part } });
  return (
    <fieldset className="tests__pair">
      <legend>{legend}</legend>
      {SIDES.map(({ side, label }) => (
        <div key={side} className="tests__side">
          <span className="tests__side-name" aria-hidden="true">
            {label}
          </span>
          {AXES.map(({ axis, label: axisLabel, min, max }) => (
            <NumberEntry
              key={axis}
              label={`${axisLabel} ${label}${of}`}
              labelUnseen
              placeholder={axisLabel}
              value={pair[side][axis]}
              min={min}
              max={max}
              onCommit={(value) => changeLab(side, { [axis]: value })}
              onClear={() => changeLab(side, { [axis]: null })}
            />
          ))}
        </div>
      ))}
      {onRemove !== undefined && (
        <ActionButton weight="plain" aria-label={`Remove ${legend.toLowerCase()}`} onClick={onRemove}>
          Remove
        </ActionButton>
      )}
    </fieldset>
  );
}

interface Props {
  readonly pairs: readonly TypedPair[];
  readonly onChange: (pairs: readonly TypedPair[]) => void;
}

export function PairRows({ pairs, onChange }: Props) {
  return (
    <div className="tests__pairs">
      {pairs.map((pair, index) => (
        <PairRow
          // biome-ignore lint/suspicious/noArrayIndexKey: pairs have no other identity; an entry drops its draft when its value moves
          key={index}
          of={` of pair ${index + 1}`}
          legend={`Pair ${index + 1}`}
          pair={pair}
          onChange={(changed) => onChange(pairs.map((one, i) => (i === index ? changed : one)))}
          onRemove={pairs.length > 1 ? () => onChange(pairs.filter((_, i) => i !== index)) : undefined}
        />
      ))}
      <div>
        <ActionButton onClick={() => onChange([...pairs, EMPTY_PAIR])}>Add a pair</ActionButton>
      </div>
    </div>
  );
}
