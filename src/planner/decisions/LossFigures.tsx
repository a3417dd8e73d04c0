/** What an expected loss is made of, open to edit where it is shown: the shop's shares and prices, and a line's own. */
import type { Documents } from "../../job/documents.ts";
import { changeLine } from "../../job/edits/lines.ts";
import { changeDefaults } from "../../job/edits/shelf.ts";
import type { Line } from "../../job/jobDocument.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { usePlanner } from "../state/usePlanner.ts";

interface Props {
  readonly documents: Documents;
  /** The line whose own price is shown as well. */
  readonly line?: Line;
}

/** Beyond any price that is meant. */
export const HIGHEST_PRICE = 1_000_000;

const PRICES: readonly { readonly key: keyof ShopDefaults["prices"]; readonly label: string }[] = [
  { key: "print", label: "Price of a print" },
  { key: "testPrint", label: "Price of a test print" },
  { key: "inkChange", label: "Price of an ink change" },
  { key: "screen", label: "Price of a screen and film" },
];

export function LossFigures({ documents, line }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { defaults } = documents.library.shelf;
  const { prices, currency } = defaults;
  const unit = currency === "" ? {} : { unit: currency };
  const change = (part: Partial<ShopDefaults>) => edit((now) => changeDefaults(now, part));
  return (
    <details className="loss">
      <summary>What the money rests on</summary>
      <p className="quiet">
        Expected loss: pieces × price of a spoiled piece × chance out of band × part of them that would be
        refused. A spoiled piece costs its print, and the garment where the shop owes it.
      </p>
      <div className="fields">
        {line !== undefined && (
          <NumberEntry
            label="Price of a piece of this garment"
            value={line.piecePrice}
            min={0}
            max={HIGHEST_PRICE}
            {...unit}
            onCommit={(piecePrice) => edit((now) => changeLine(now, line.id, { piecePrice }))}
            onClear={() => edit((now) => changeLine(now, line.id, { piecePrice: null }))}
          />
        )}
        <PercentEntry
          label="Refused where out of band"
          fraction={defaults.refusedFraction}
          onCommit={(refusedFraction) => change({ refusedFraction })}
        />
        <PercentEntry
          label="Owed for a customer's own piece"
          fraction={defaults.liableFraction}
          onCommit={(liableFraction) => change({ liableFraction })}
        />
        {PRICES.map(({ key, label }) => (
          <NumberEntry
            key={key}
            label={label}
            value={prices[key]}
            min={0}
            max={HIGHEST_PRICE}
            {...unit}
            onCommit={(price) => change({ prices: { ...prices, [key]: price } })}
          />
        ))}
      </div>
    </details>
  );
}
