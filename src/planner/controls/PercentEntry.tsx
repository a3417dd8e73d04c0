/** A fraction typed and shown as percent. */
import { NumberEntry } from "./NumberEntry.tsx";

interface Props {
  readonly label: string;
  readonly fraction: number | null;
  readonly onCommit: (fraction: number) => void;
  /** Given where the field may be emptied. */
  readonly onClear?: () => void;
  readonly placeholder?: string;
  /** The least that is taken, in percent; 0 where it is left out. */
  readonly min?: number;
  readonly hint?: string;
}

/** Rounding takes off what a factor of 100 adds: 0.07 x 100 is 7.000000000000001. */
const percentFromFraction = (fraction: number) => Number((fraction * 100).toFixed(7));
const fractionFromPercent = (percent: number) => Number((percent / 100).toFixed(9));

export function PercentEntry({ fraction, min = 0, onCommit, ...rest }: Props) {
  return (
    <NumberEntry
      {...rest}
      value={fraction === null ? null : percentFromFraction(fraction)}
      unit="%"
      min={min}
      max={100}
      onCommit={(percent) => onCommit(fractionFromPercent(percent))}
    />
  );
}
