/** The words of recovering: what an option changes, what it takes, what it warns of. */
import type { RecoverCaution, RecoverOption, RecoverPlan } from "../../core/planning/decisions/recover.ts";
import type { RecoverChange } from "../../core/planning/decisions/recoverChanges.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { percentWords } from "./garmentWords.ts";
import { chanceWords } from "./predictionSentences.ts";
import { strokeWords } from "./shelfWords.ts";

/** As the ranking's: what has this chance suffices. */
const SUFFICIENT_CHANCE = 0.9;

interface Named {
  readonly id: string;
  readonly name: string;
}

const nameOf = (items: readonly Named[], id: string) =>
  items.find((item) => item.id === id)?.name ?? "something no longer on the shelf";

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function tintChange(change: Extract<RecoverChange, { kind: "tint" }>, before: Recipe, shelf: Shelf): string {
  const name = nameOf(shelf.colourants, change.colourantKey).toLowerCase();
  const was = before.find(({ itemId }) => itemId === change.colourantKey)?.massFraction ?? 0;
  if (change.massFraction === 0) return `without ${name}`;
  const now = `${percentWords(change.massFraction)} ${name}`;
  return was > 0 ? `${now} instead of ${percentWords(was)}` : `with ${now}`;
}

/** One change: "matt clear" stays the name that the shop gave it. */
function oneChange(change: RecoverChange, before: Recipe, shelf: Shelf): string {
  switch (change.kind) {
    case "base":
      return nameOf(shelf.bases, change.baseKey);
    case "tint":
      return tintChange(change, before, shelf);
    case "strokes":
      return strokeWords(change.strokeCount);
    case "squeegee":
      return `squeegee ${nameOf(shelf.squeegees, change.squeegeeKey)}`;
    case "screen":
      return `through ${nameOf(shelf.meshes, change.screenKey)}`;
    case "halftone":
      return `as a halftone of ${percentWords(change.halftoneFraction)}`;
  }
}

const ORDER: readonly RecoverChange["kind"][] = ["base", "tint", "screen", "squeegee", "strokes", "halftone"];

/** "Matt clear, through 90-48": the changes in the order in which they would be spoken of. */
export function optionWords(changes: readonly RecoverChange[], before: Recipe, shelf: Shelf): string {
  if (changes.length === 0) return "Print on as it is";
  const inOrder = changes.toSorted((one, other) => ORDER.indexOf(one.kind) - ORDER.indexOf(other.kind));
  const words = inOrder.map((change) => oneChange(change, before, shelf)).join(", ");
  const keepsInk = !changes.some(({ kind }) => kind === "base" || kind === "tint");
  return keepsInk ? `Same mix, ${words}` : capital(words);
}

/** What the ranked list comes to, before it is read. */
export function recoverSummary({ options, bestOnThisScreen, sufficesOnThisScreen }: RecoverPlan): string {
  const best = Math.max(
    0,
    ...options.filter(({ changes }) => changes.length > 0).map(({ prediction }) => prediction.chanceInBand),
  );
  if (!options.some(({ changes }) => changes.length > 0)) return "No change helps more than printing on.";
  if (best < SUFFICIENT_CHANCE)
    return `No change is sure to bring it into the target: the best has ${chanceWords(best)} in band.`;
  if (sufficesOnThisScreen && bestOnThisScreen !== null)
    return "A change without another screen suffices; it comes first.";
  return bestOnThisScreen === null
    ? "Nothing helps without another screen."
    : "No change suffices without another screen; the best of those is marked.";
}

/** "same screen" or "another screen". */
export function screenWords({
  screenChange,
  changes,
}: Pick<RecoverOption, "screenChange" | "changes">): string {
  if (changes.length === 0) return "nothing is changed";
  if (changes.some(({ kind }) => kind === "halftone")) return "a new screen";
  return screenChange ? "another screen" : "no screen change";
}

export const RECOVER_CAUTIONS: Readonly<Record<RecoverCaution, string>> = {
  "milky-haze":
    "White in a clear lifts darks and turns them milky: it does not undo darkening. Look at a print before you run it.",
  "needs-new-screen": "The artwork has to be made as a halftone, on a new film and screen.",
};

/** "0.6 from the approved print" as ΔE00, or as L* where its colour is not known. */
export function distanceWords(option: RecoverOption, isApproved: boolean): string {
  const isColour = option.prediction.deltaE00FromApproved !== undefined;
  const unit = isColour ? "ΔE00" : "L*";
  return `${unit} ${option.distance.toFixed(1)} from ${isApproved ? "the approved print" : "the target"}`;
}

/** What must be set by hand where the shelf has no such set-up. */
export function atThePressWords(option: RecoverOption, shelf: Shelf): string {
  const { screenKey, squeegeeKey, strokeCount } = option.printing;
  return `${nameOf(shelf.meshes, screenKey)}, squeegee ${nameOf(shelf.squeegees, squeegeeKey)}, ${strokeWords(strokeCount)}`;
}
