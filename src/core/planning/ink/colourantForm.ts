/**
 * Whether a tint is weighed neat or as a master: the rule that no weighing is smaller than 50 steps of the scale.
 * The rule and the two usual masters are from memory, no source.
 */
import { type AvailableMaster, requireMaster } from "./potRecipe.ts";

/** A weighing of this many steps is known to 2 %. From memory, no source. */
export const FEWEST_STEP_COUNT = 50;

/** Mass fractions of the masters that a shop usually keeps, strongest first. From memory, no source. */
export const USUAL_MASTER_FRACTIONS: readonly number[] = [0.1, 0.02];

/** Whether a master may bring a base that the recipe does not name. */
export type OtherBases = "allowed" | "refused";

/** Slack for the last digits: 4.999999999 g are 5 g. */
const SLACK = 1 + 1e-9;

/** What there is to choose from for one colourant. */
export interface FormChoice {
  readonly colourantGrams: number;
  readonly scaleStepGrams: number;
  /** Masters of this colourant at hand. */
  readonly masters: readonly AvailableMaster[];
  /** Grams of each base of the recipe that masters may still take the place of, by item id. */
  readonly baseGrams: ReadonlyMap<string, number>;
  readonly otherBases: OtherBases;
}

/** A master that fits: its grams, the grams of base it brings, and the base whose place that takes. */
export interface FittingMaster {
  readonly master: AvailableMaster;
  readonly grams: number;
  readonly broughtBaseGrams: number;
  readonly replacedBaseId: string;
  /** Whether the base it brings is one the recipe names. */
  readonly ownBase: boolean;
}

/** Whether a weighing has at least 50 steps. */
export function hasFiftySteps(grams: number, scaleStepGrams: number): boolean {
  return grams * SLACK >= FEWEST_STEP_COUNT * scaleStepGrams;
}

/** The base with most grams left; null where there is none. */
function largestBase(baseGrams: ReadonlyMap<string, number>): string | null {
  let found: string | null = null;
  let most = 0;
  for (const [itemId, grams] of baseGrams) {
    if (grams > most) {
      most = grams;
      found = itemId;
    }
  }
  return found;
}

/**
 * How `master` would go into the pot: the base it brings takes the place of the same base, or of the largest base
 * where the recipe does not name it. Null where there is not enough base to make room.
 * @throws RangeError for a master whose fraction is not between 0 and 1.
 */
export function fitMaster(choice: FormChoice, master: AvailableMaster): FittingMaster | null {
  requireMaster(master);
  const ownBase = choice.baseGrams.has(master.baseId);
  if (!ownBase && choice.otherBases === "refused") return null;
  const replacedBaseId = ownBase ? master.baseId : largestBase(choice.baseGrams);
  if (replacedBaseId === null) return null;
  const grams = choice.colourantGrams / master.massFraction;
  const broughtBaseGrams = grams - choice.colourantGrams;
  const room = choice.baseGrams.get(replacedBaseId)! * SLACK;
  return broughtBaseGrams <= room ? { master, grams, broughtBaseGrams, replacedBaseId, ownBase } : null;
}

/**
 * The form that the 50-step rule asks for: null for neat where that has 50 steps or no master fits. Otherwise a master
 * with 50 steps, in a base of the recipe before one in another, the strongest first since it disturbs the base least;
 * where none has 50 steps, the weakest, again in a base of the recipe first.
 * @throws RangeError as `fitMaster`.
 */
export function chooseForm(choice: FormChoice): FittingMaster | null {
  if (hasFiftySteps(choice.colourantGrams, choice.scaleStepGrams)) return null;
  const fitting = choice.masters
    .map((master) => fitMaster(choice, master))
    .filter((fit) => fit !== null)
    .sort((one, other) => other.master.massFraction - one.master.massFraction);
  const weighable = fitting.filter((fit) => hasFiftySteps(fit.grams, choice.scaleStepGrams));
  const inOwnBase = (fits: readonly FittingMaster[]) => fits.filter((fit) => fit.ownBase);
  return inOwnBase(weighable)[0] ?? weighable[0] ?? inOwnBase(fitting).at(-1) ?? fitting.at(-1) ?? null;
}

/**
 * The usual master that would be weighed better than `grams` of the form at hand and finds room in the largest base: the
 * strongest with 50 steps, else the weakest; null where `grams` has 50 steps or no usual master weighs more.
 */
export function helpfulMaster(
  choice: FormChoice,
  grams: number,
): { readonly massFraction: number; readonly grams: number } | null {
  if (hasFiftySteps(grams, choice.scaleStepGrams)) return null;
  const room = Math.max(0, ...choice.baseGrams.values());
  const fitting = USUAL_MASTER_FRACTIONS.map((massFraction) => ({
    massFraction,
    grams: choice.colourantGrams / massFraction,
  })).filter((master) => master.grams > grams * SLACK && master.grams - choice.colourantGrams <= room);
  return (
    fitting.find((master) => hasFiftySteps(master.grams, choice.scaleStepGrams)) ?? fitting.at(-1) ?? null
  );
}
