/** A stored quantity typed and shown in the shop's unit; showing it in another unit never changes what is stored. */
import { formatNumber, type Unit } from "../../units/unit.ts";
import { NumberEntry } from "./NumberEntry.tsx";

interface Props {
  readonly label: string;
  readonly stored: number | null;
  readonly unit: Unit;
  /** Limits of the stored value. */
  readonly min: number;
  readonly max: number;
  readonly onCommit: (stored: number) => void;
  readonly onClear?: () => void;
  readonly hint?: string;
  readonly labelUnseen?: boolean;
  readonly placeholder?: string;
}

/** One digit more than a shop would write, so that what was entered in another unit is not shown as something else. */
const MORE_DECIMALS = 1;

export function MeasureEntry({ stored, unit, min, max, onCommit, ...rest }: Props) {
  const shown = (value: number) => Number(formatNumber(value, unit, unit.decimals + MORE_DECIMALS));
  return (
    <NumberEntry
      {...rest}
      value={stored === null ? null : shown(stored)}
      unit={unit.symbol}
      min={shown(min)}
      max={shown(max)}
      // The limits are shown rounded; what lies between a limit and its rounding is the limit.
      onCommit={(typed) => onCommit(Math.min(Math.max(unit.toStored(typed), min), max))}
    />
  );
}
