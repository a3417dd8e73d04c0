/** What a mix costs: ink on one piece, and making the mix at all. Parts without a price count as nothing. */
import { gramsPerPrint, mixDensityGramsPerCm3, printedAreaM2 } from "../../core/planning/ink/inkQuantity.ts";
import type { Place } from "../jobDocument.ts";
import { depositFigures } from "../meshFigures.ts";
import { partsOf, type Recipe } from "../recipeParts.ts";
import type { SetUp, Shelf } from "../shelfDocument.ts";

const GRAMS_PER_KG = 1000;

/** Price of a gram of the mix, money. */
function pricePerGram(recipe: Recipe, shelf: Shelf): number {
  return partsOf(recipe, shelf).reduce(
    (sum, { item, massFraction }) => sum + (massFraction * (item.pricePerKg ?? 0)) / GRAMS_PER_KG,
    0,
  );
}

/** Names of the recipe's parts that the shelf has no price of. */
export function partsWithoutPrice(recipe: Recipe, shelf: Shelf): string[] {
  return partsOf(recipe, shelf).flatMap(({ item }) => (item.pricePerKg === null ? [item.name] : []));
}

/** Ink on one piece, money; 0 where the set-up's deposit is not known. */
export function inkCostPerPiece(
  recipe: Recipe,
  setUp: SetUp,
  place: Pick<Place, "widthMm" | "heightMm" | "coverFraction" | "halftoneFraction">,
  shelf: Shelf,
): number {
  const figures = depositFigures(setUp, shelf);
  const parts = partsOf(recipe, shelf).map(({ item, massFraction }) => ({
    massFraction,
    densityGramsPerCm3: item.densityGramsPerCm3,
  }));
  if (!figures.ok || parts.length === 0) return 0;
  const grams = gramsPerPrint(printedAreaM2(place), figures.depositUm, mixDensityGramsPerCm3(parts));
  return grams * pricePerGram(recipe, shelf);
}

/** Making the mix at all, money: the ink change, and the ink that keeps a screen wet and is left over. */
export function mixOpeningCost(recipe: Recipe, shelf: Shelf): number {
  const { prices, screenWetGrams } = shelf.defaults;
  return prices.inkChange + screenWetGrams * pricePerGram(recipe, shelf);
}
