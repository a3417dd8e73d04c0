/** How a line is printed now and what the shop could change of it at once, from the documents. */
import {
  type Printing,
  RECOVER_HALFTONES,
  type RecoverStock,
} from "../../core/planning/decisions/recoverChanges.ts";
import { DEFAULT_RECOVER_EFFORT, type RecoverEffort } from "../../core/planning/decisions/recoverEffort.ts";
import type { Place } from "../jobDocument.ts";
import type { MixComponent } from "../mixDocument.ts";
import { mainBaseId, type Recipe } from "../recipeParts.ts";
import type { Colourant, SetUp, Shelf } from "../shelfDocument.ts";
import { carryingBases } from "./mixCandidates.ts";

const MINUTES_PER_HOUR = 60;
/** A second stroke is what a press can add between two prints; a third is another print. Common practice, no source. */
const LARGEST_STROKE_COUNT = 2;
/** Steps of a colourant that carries the print, such as the white of a soft white, as parts of what is in it now. Invented. */
const RELATIVE_STEPS: readonly number[] = [0.5, 0.75, 1.25, 1.5];

/** The printing of `recipe` through `setUp` at `place`. */
export function printingOf(
  recipe: Recipe,
  setUp: SetUp,
  place: Pick<Place, "halftoneFraction">,
  shelf: Shelf,
): Printing {
  const colourants = new Set(shelf.colourants.map(({ id }) => id));
  return {
    baseKey: mainBaseId(recipe, shelf) ?? "",
    tints: recipe
      .filter(({ itemId, massFraction }) => colourants.has(itemId) && massFraction > 0)
      .map(({ itemId, massFraction }) => ({ colourantKey: itemId, massFraction })),
    screenKey: setUp.meshId,
    squeegeeKey: setUp.squeegeeId,
    strokeCount: setUp.strokeCount,
    halftoneFraction: place.halftoneFraction,
  };
}

function ladderOf({ id, optics, largestFraction }: Colourant, printing: Printing, shelf: Shelf): number[] {
  const now = printing.tints.find(({ colourantKey }) => colourantKey === id)?.massFraction ?? 0;
  const steps =
    optics.kind === "white" ? RELATIVE_STEPS.map((part) => part * now) : [0, ...shelf.defaults.tintLadder];
  const weighable = steps.filter((step) => step <= largestFraction && (step > 0 || optics.kind !== "white"));
  return [...new Set(weighable)].sort((one, other) => one - other);
}

/**
 * Bases and colourants in stock, screens at hand, blades of the other hardness, one stroke more or less; halftones where they
 * are allowed. White is only turned up or down where it carries the print: it is no remedy for a print that is too dark.
 */
export function recoverStock(printing: Printing, halftonesAllowed: boolean, shelf: Shelf): RecoverStock {
  const used = new Set(printing.tints.map(({ colourantKey }) => colourantKey));
  const isHard = (id: string) => shelf.squeegees.find((one) => one.id === id)?.hard;
  const meshes = shelf.meshes.filter(({ screensAtHand }) => screensAtHand > 0).map(({ id }) => id);
  const isSetUp = new Set(shelf.setUps.map(({ meshId }) => meshId));
  return {
    bases: carryingBases(shelf)
      .filter(({ inStock }) => inStock)
      // A base alone needs no weighing: its own tin is the pot.
      .map(({ id }) => ({ key: id, potReady: true })),
    colourants: shelf.colourants
      .filter(({ id, inStock, optics }) => inStock && (optics.kind === "black" || used.has(id)))
      .map((colourant) => ({
        key: colourant.id,
        family: colourant.optics.kind === "masstone" ? "tint" : colourant.optics.kind,
        ladder: ladderOf(colourant, printing, shelf),
      })),
    screens: meshes.filter((id) => isSetUp.has(id)).map((key) => ({ key })),
    squeegees: shelf.squeegees
      .filter(({ id, hard }) => id === printing.squeegeeKey || hard !== isHard(printing.squeegeeKey))
      .map(({ id }) => ({ key: id })),
    largestStrokeCount: Math.max(LARGEST_STROKE_COUNT, printing.strokeCount),
    halftoneFractions: halftonesAllowed ? RECOVER_HALFTONES : [],
  };
}

/** `recipe` with the base and tints of `printing`: additives and reducers stay, the base takes what is left; null where nothing is. */
export function recipeOfPrinting(printing: Printing, recipe: Recipe, shelf: Shelf): Recipe | null {
  const main = mainBaseId(recipe, shelf);
  const colourants = new Set(shelf.colourants.map(({ id }) => id));
  const kept = recipe.filter(
    ({ itemId }) => itemId !== main && itemId !== printing.baseKey && !colourants.has(itemId),
  );
  const tints = printing.tints.map(({ colourantKey, massFraction }) => ({
    itemId: colourantKey,
    massFraction,
  }));
  const others: MixComponent[] = [...kept, ...tints];
  const rest = 1 - others.reduce((sum, { massFraction }) => sum + massFraction, 0);
  return rest > 0 ? [{ itemId: printing.baseKey, massFraction: rest }, ...others] : null;
}

/** Minutes and money of changes as this shop has entered them; what it has not entered is the core's default. */
export function recoverEffort({ defaults }: Shelf): RecoverEffort {
  const { prices, changeMinutes } = defaults;
  return {
    ...DEFAULT_RECOVER_EFFORT,
    minutes: changeMinutes,
    perPressMinute: prices.pressHour / MINUTES_PER_HOUR,
    perInkChange: prices.inkChange,
    perNewScreen: prices.screen,
  };
}
