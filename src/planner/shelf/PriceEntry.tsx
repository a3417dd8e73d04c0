/** A price per kilogram or per pound of ink, as the shop weighs; empty where the shop does not say. */
import type { Unit } from "../../units/unit.ts";
import { NumberEntry } from "../controls/NumberEntry.tsx";

interface Props {
  readonly pricePerKg: number | null;
  readonly currency: string;
  /** Kilograms or pounds. */
  readonly potMass: Unit;
  readonly onChange: (pricePerKg: number | null) => void;
}

/** Above any ink; keeps a slip of the finger out. Invented default. */
const HIGHEST_PRICE = 100_000;
const DECIMALS = 4;

export function PriceEntry({ pricePerKg, currency, potMass, onChange }: Props) {
  const kgPerUnit = potMass.toStored(1);
  const shown = pricePerKg === null ? null : Number((pricePerKg * kgPerUnit).toFixed(DECIMALS));
  return (
    <NumberEntry
      label="Price"
      value={shown}
      unit={`${currency}/${potMass.symbol}`}
      min={0}
      max={HIGHEST_PRICE}
      placeholder="not entered"
      onCommit={(price) => onChange(price / kgPerUnit)}
      onClear={() => onChange(null)}
    />
  );
}
