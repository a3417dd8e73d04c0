/** What really went into the pot, in grams, where it was weighed: the print is then of these parts and not of the recipe. */
import { recipeItem } from "../../job/lookup.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { shopUnits } from "../../units/shopUnits.ts";
import { MeasureEntry } from "../controls/MeasureEntry.tsx";

interface Props {
  readonly recipe: Recipe;
  readonly grams: TestPrint["actualGrams"];
  readonly shelf: Shelf;
  readonly onChange: (grams: TestPrint["actualGrams"]) => void;
}

export function ActualGrams({ recipe, grams, shelf, onChange }: Props) {
  const { mass } = shopUnits(shelf.defaults.units);
  const put = (itemId: string, value: number | null) => {
    const rest = (grams ?? []).filter((part) => part.itemId !== itemId);
    const next = value === null ? rest : [...rest, { itemId, grams: value }];
    onChange(next.length === 0 ? null : next);
  };
  return (
    <div className="fields">
      {recipe.map(({ itemId }) => (
        <MeasureEntry
          key={itemId}
          label={`${recipeItem(shelf, itemId)?.item.name ?? "An ink no longer on the shelf"}, poured`}
          stored={grams?.find((part) => part.itemId === itemId)?.grams ?? null}
          unit={mass}
          min={0}
          max={1_000_000}
          onCommit={(value) => put(itemId, value)}
          onClear={() => put(itemId, null)}
        />
      ))}
    </div>
  );
}
