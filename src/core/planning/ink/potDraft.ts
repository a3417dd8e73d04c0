/** The lines of a pot before they are rounded: every tint in its form, and what masters leave of the bases. */
import {
  chooseForm,
  type FittingMaster,
  type FormChoice,
  fitMaster,
  helpfulMaster,
  type OtherBases,
} from "./colourantForm.ts";
import {
  type AvailableMaster,
  type ComponentRole,
  type ItemFraction,
  masterContents,
  type RecipeComponent,
} from "./potRecipe.ts";
import type { Remark } from "./remark.ts";
import { nearestStepCount } from "./scaleStep.ts";

export interface DraftRequest {
  readonly recipe: readonly RecipeComponent[];
  /** Masters at hand and fit for use. */
  readonly masters: readonly AvailableMaster[];
  /** `refused` for a low-cure mix, where a little of another base undoes what it is for. */
  readonly otherBases: OtherBases;
  readonly batchGrams: number;
  readonly scaleStepGrams: number;
  /** Forms that someone chose, by colourant: a master's id, or `neat`. What is left out follows the 50-step rule. */
  readonly weighAs?: Readonly<Record<string, string>> | undefined;
}

export interface DraftLine {
  /** The shelf item, or the master. */
  readonly id: string;
  readonly role: ComponentRole | "master";
  /** What a gram of it holds; the item that the line is for comes first. */
  readonly contents: readonly ItemFraction[];
  readonly exactGrams: number;
}

export type DraftNoticeCode =
  /** figures: masterFraction, masterGrams, neatGrams, baseGrams (the base it brings). */
  | "weighed-as-master"
  /** The master's base, which is the item, is not in the recipe. figures: baseFraction (of the batch). */
  | "master-in-another-base"
  /** A usual master that is not at hand would be weighed better. figures: masterFraction, masterGrams. */
  | "master-would-help";

export interface PotDraft {
  /** In the order of the recipe. */
  readonly lines: readonly DraftLine[];
  readonly notices: readonly Remark<DraftNoticeCode>[];
  /** Colourants whose chosen form is not at hand or finds no room, with their grams. */
  readonly impossible: readonly { readonly itemId: string; readonly colourantGrams: number }[];
}

/**
 * Lines of a pot of `batchGrams`, unrounded; they sum to the batch but for a base of which masters leave less than half
 * a step, which is left off. Parts of no mass are left out.
 * @throws RangeError for a master that is no dilution or a step not above 0.
 */
export function draftPot(request: DraftRequest): PotDraft {
  const { recipe, batchGrams, scaleStepGrams } = request;
  const sum = recipe.reduce((total, part) => total + part.massFraction, 0);
  const wanted = recipe
    .filter((part) => part.massFraction > 0)
    .map((part) => ({ ...part, grams: (batchGrams * part.massFraction) / sum }));
  const bases = wanted.filter(({ role }) => role === "base");
  const baseGrams = new Map(bases.map(({ itemId, grams }) => [itemId, grams]));
  const replaced = new Set<string>();
  const tintLines = new Map<string, DraftLine>();
  const notices: Remark<DraftNoticeCode>[] = [];
  const impossible: { itemId: string; colourantGrams: number }[] = [];
  for (const { itemId, role, grams } of wanted) {
    if (role !== "colourant") continue;
    const choice: FormChoice = {
      colourantGrams: grams,
      scaleStepGrams,
      masters: request.masters.filter((master) => master.colourantId === itemId),
      baseGrams,
      otherBases: request.otherBases,
    };
    const fit = chosenForm(choice, request.weighAs?.[itemId]);
    if (fit === "impossible") {
      impossible.push({ itemId, colourantGrams: grams });
      continue;
    }
    const helpful = helpfulMaster(choice, fit?.grams ?? grams);
    if (fit !== null) {
      tintLines.set(itemId, masterLine(fit));
      notices.push(...masterNotices(itemId, fit, grams, batchGrams));
      const left = baseGrams.get(fit.replacedBaseId)! - fit.broughtBaseGrams;
      baseGrams.set(fit.replacedBaseId, Math.max(0, left));
      replaced.add(fit.replacedBaseId);
    }
    if (helpful !== null) {
      notices.push({
        code: "master-would-help",
        itemId,
        figures: { masterFraction: helpful.massFraction, masterGrams: helpful.grams },
      });
    }
  }
  const lines: DraftLine[] = [];
  for (const { itemId, role, grams } of wanted) {
    const exactGrams = baseGrams.get(itemId) ?? grams;
    const usedUp = replaced.has(itemId) && nearestStepCount(exactGrams, scaleStepGrams) === 0;
    if (usedUp) continue;
    const neat: DraftLine = { id: itemId, role, contents: [{ itemId, massFraction: 1 }], exactGrams };
    lines.push(tintLines.get(itemId) ?? neat);
  }
  return { lines, notices, impossible };
}

function chosenForm(choice: FormChoice, asked: string | undefined): FittingMaster | null | "impossible" {
  if (asked === undefined) return chooseForm(choice);
  if (asked === "neat") return null;
  const master = choice.masters.find(({ id }) => id === asked);
  return (master === undefined ? null : fitMaster(choice, master)) ?? "impossible";
}

function masterLine({ master, grams }: FittingMaster): DraftLine {
  return { id: master.id, role: "master", contents: masterContents(master), exactGrams: grams };
}

function masterNotices(
  itemId: string,
  fit: FittingMaster,
  neatGrams: number,
  batchGrams: number,
): Remark<DraftNoticeCode>[] {
  const figures = {
    masterFraction: fit.master.massFraction,
    masterGrams: fit.grams,
    neatGrams,
    baseGrams: fit.broughtBaseGrams,
  };
  const asMaster: Remark<DraftNoticeCode> = { code: "weighed-as-master", itemId, figures };
  if (fit.ownBase) return [asMaster];
  const baseFraction = fit.broughtBaseGrams / batchGrams;
  return [asMaster, { code: "master-in-another-base", itemId: fit.master.baseId, figures: { baseFraction } }];
}
