/** The deposit of a set-up: estimated from its mesh, or from weighing garments; a weighing counts only when it is whole. */
import { useId, useState } from "react";
import type { SetUp, Weighed } from "../../job/shelfDocument.ts";
import type { ShopUnits } from "../../units/shopUnits.ts";
import { WeighedMean } from "./WeighedMean.tsx";
import { WeighedPieces } from "./WeighedPieces.tsx";

/** A print whose inked area is known, to be taken over. */
export interface KnownArea {
  readonly name: string;
  readonly areaM2: number;
}

interface Props {
  readonly weighed: SetUp["weighed"];
  readonly units: ShopUnits;
  readonly areas?: readonly KnownArea[];
  readonly onChange: (weighed: SetUp["weighed"]) => void;
}

type Way = "estimated" | Weighed["kind"];

const WAYS: readonly { readonly way: Way; readonly label: string }[] = [
  { way: "estimated", label: "Estimated from the mesh" },
  { way: "pieces", label: "Weighed, piece by piece" },
  { way: "mean", label: "Weighed, the mean is known" },
];

export function WeighedEntry({ weighed, units, areas = [], onChange }: Props) {
  const name = useId();
  /** A way that is chosen and not stored yet, since nothing whole is typed. */
  const [begun, setBegun] = useState<Way | null>(null);
  const way = begun ?? weighed?.kind ?? "estimated";
  const store = (next: Weighed) => {
    setBegun(null);
    onChange(next);
  };
  function choose(next: Way): void {
    setBegun(next === (weighed?.kind ?? "estimated") ? null : next);
    if (next === "estimated" && weighed !== null) {
      setBegun(null);
      onChange(null);
    }
  }
  return (
    <fieldset className="fields-block">
      <legend>Deposit</legend>
      <div className="ways" role="radiogroup" aria-label="How the deposit is known">
        {WAYS.map(({ way: one, label }) => (
          <label className="tick" key={one}>
            <input type="radio" name={name} checked={way === one} onChange={() => choose(one)} />
            {label}
          </label>
        ))}
      </div>
      {way !== "estimated" && (
        <p className="entry__hint">
          Garments weighed before and after printing, before the cure, which drives off moisture; divided by
          the area that carries ink.
        </p>
      )}
      {way === "mean" && (
        <WeighedMean weighed={weighed?.kind === "mean" ? weighed : null} units={units} onChange={store} />
      )}
      {way === "pieces" && (
        <WeighedPieces
          weighed={weighed?.kind === "pieces" ? weighed : null}
          units={units}
          areas={areas}
          onChange={store}
        />
      )}
    </fieldset>
  );
}
