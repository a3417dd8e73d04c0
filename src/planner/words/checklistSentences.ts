/** The sentences for the checklist's codes: what has to be true, and why, with figures in the shop's units. */
import type {
  ChecklistItemCode,
  ChecklistReason,
  ChecklistReasonCode,
} from "../../core/planning/checklistItem.ts";
import type { ChecklistEntry } from "../../job/jobDocument.ts";
import { format, type Unit } from "../../units/unit.ts";
import { labFigure, percentWords } from "./garmentWords.ts";
import { groupedCount, pieces } from "./pieceWords.ts";
import { bandWords, chanceWords, changeWords } from "./predictionSentences.ts";

/** In the order of the work; each is a column of the table. */
export const ITEM_CODES: readonly ChecklistItemCode[] = [
  "target-agreed",
  "test-print",
  "goods-in",
  "reads",
  "cure",
  "wash-test",
  "bleed-hold",
  "childrens-limits",
  "first-off",
  "retained-sample",
];

const ITEM_NAMES: Readonly<Record<ChecklistItemCode, string>> = {
  "choose-mix": "Mix",
  "target-agreed": "Target agreed",
  "test-print": "Test print",
  "goods-in": "Goods-in check",
  reads: "More reads",
  cure: "Cure",
  "wash-test": "Wash test",
  "bleed-hold": "Dye hold",
  "childrens-limits": "Children's limits",
  "first-off": "First-off",
  "retained-sample": "Sample kept",
};

const ITEM_CLAIMS: Readonly<Record<ChecklistItemCode, string>> = {
  "choose-mix": "A mix is chosen that can be mixed.",
  "target-agreed": "The customer knows what this print will look like, or the mix or the target was changed.",
  "test-print": "A test print was made on a piece of this lot with this mix, read cold, and is right.",
  "goods-in":
    "The delivered lot was compared with the approved one: the same draw of ink on both, side by side.",
  reads: "Bare cloth and print were read in enough places.",
  cure: "The film reached the cure of the ink maker's data sheet, measured in the dryer.",
  "wash-test": "A cured print was cut in half, one half washed hot and dried, and the halves look alike.",
  "bleed-hold": "A print was cooled, held, and read again before the run.",
  "childrens-limits":
    "A qualified laboratory has said which limits the finished print has to keep, and that it keeps them.",
  "first-off": "The first-off after warm-up was approved by somebody who did not print it.",
  "retained-sample": "A signed print of this lot is kept beside the press and after the job.",
};

export function itemName(code: string): string {
  return ITEM_NAMES[code as ChecklistItemCode] ?? code;
}

export function itemClaim(code: ChecklistItemCode): string {
  return ITEM_CLAIMS[code];
}

type Figures = (name: string) => number;
type ReasonSentence = (figure: Figures, temperature: Unit) => string;

const REASONS: Readonly<Record<ChecklistReasonCode, ReasonSentence>> = {
  "no-mix-chosen": () => "No mix is chosen for this garment here.",
  "mix-refused": () => "The chosen mix cannot be printed as it stands.",
  "clear-on-white": (f) =>
    `White cloth (L* ${labFigure(f("bareL"))}) has no dye that a clear could deepen: there is nothing to see. A tint or another garment would show.`,
  "clear-on-cotton": (f) =>
    `The colour sits in cotton or viscose, which a clear hardly wets${predicted(f)}: there is next to nothing to see. A tint or another garment would show.`,
  "clear-hardly-shows": (f) =>
    `The clear is predicted to make it ${changeWords(f("deltaL"))}: hardly anyone will see it. A tint or another garment would show.`,
  "out-of-band": (f) =>
    `Predicted ${changeWords(f("deltaL"))}; the target is ${bandWords({ deltaL: f("targetDeltaL"), tolerance: f("tolerance") })}. The chance of landing in it is ${chanceWords(f("chanceInBand"))}.`,
  "dyed-polyester-untested": (f) =>
    `Dyed polyester${f("printedOtherwise") === 1 ? " printed in this lot with other bases only" : " never printed in this lot"}, ${pieces(f("pieceCount"))}: the shop's limit without a test is ${groupedCount(f("testAboveCount"))}. An untested garment can print two to three times stronger.`,
  substituted: () =>
    "This garment stands in for an approved one. The same colour does not mean the same reaction.",
  "spread-wider-than-tolerance": (f) =>
    `The prediction is only known to ± ${labFigure(f("halfWidth"))} in nine of ten; the tolerance is ± ${labFigure(f("tolerance"))}.`,
  "dark-limit": (f) =>
    `The cloth is dark${Number.isNaN(f("bareL")) ? "" : ` (L* ${labFigure(f("bareL"))})`}, where the prediction is weak and little is left to darken.`,
  "goods-in-reacts-otherwise": (f) =>
    `The same draw of ink changed this lot ${labFigure(f("ratio"))} times as much as the approved one; outside ${f("lowest")} to ${f("highest")} it is held (from memory, no source): test it.`,
  "goods-in-drawn": (f) =>
    `The same draw of ink changed this lot ${labFigure(f("ratio"))} times as much as the approved one.`,
  "lot-not-approved": () => "The approved print was made on another lot.",
  heather: (f) =>
    `A heather differs from place to place: read ${f("readCount")} pairs instead of ${f("usualReadCount")} (common practice, no source).`,
  "cure-from-data-sheet": () =>
    "Under-cured ink washes out. Only the ink maker's data sheet says what a cure is.",
  "cure-not-entered": (f) =>
    `${f("curesMissingCount") === 1 ? "One part of the mix has" : `${f("curesMissingCount")} parts of the mix have`} no cure on the shelf: look it up on the data sheet.`,
  "cures-differ": (f, temperature) =>
    `The parts of this mix are entered with different film temperatures, ${format(f("lowestCelsius"), temperature)} and ${format(f("highestCelsius"), temperature)}: ask the ink maker which one holds.`,
  "low-cure-in-part": () => "Only part of this mix cures low: the rest still needs its own temperature.",
  "polyester-under-heat": () =>
    "Heat makes polyester bleed dye, shrink, glaze or scorch: no hotter and no longer than needed.",
  "ink-holds": () => "Only washing shows that the ink holds; a stretch of the film does not.",
  "resistant-finish": () =>
    "The finish repels ink: look for patchy edges and try the adhesion too, dry and washed.",
  "thin-white": () => "A thin white lets fibres come through in the wash: judge the white again after it.",
  "known-bleeder": (f) =>
    `This garment is known to give up dye: cool it flat, hold it ${f("holdHours")} h, read it again at ${f("holdHours")} h and ${f("lastReadHours")} h.`,
  "white-over-dyed-polyester": (f) =>
    `Dye of the polyester moves into white ink and tints it: cool, hold ${f("holdHours")} h, read again at ${f("holdHours")} h and ${f("lastReadHours")} h.`,
  "childrens-product": (f) =>
    `A product for children. Cited limits: US, each of eight phthalates ${percentWords(f("usPhthalateFraction"))} of plasticised parts of toys and child care articles (16 CFR 1307.3), lead ${perMillion(f("usLeadInCoatingFraction"))} in a coating and ${perMillion(f("usLeadInSubstrateFraction"))} in what lies under it (CPSIA, from memory); EU, DEHP, DBP, BBP and DIBP together ${percentWords(f("euPhthalateFraction"))} of plasticised material (REACH Annex XVII entry 51), entry 52 for toys. Look at the data sheets of old pots too. This is not legal advice.`,
  "second-person": () =>
    "Platens warm over the first pieces and deepen the print, and nobody sees their own work well.",
  "kept-for-reorder": () => "It is what the run and the next order are held against.",
};

const perMillion = (fraction: number) => `${Math.round(fraction * 1e6)} ppm`;

function predicted(f: Figures): string {
  return Number.isNaN(f("deltaL")) ? "" : ` (predicted ${changeWords(f("deltaL"))})`;
}

export function reasonSentence(reason: ChecklistReason, temperature: Unit): string {
  return REASONS[reason.code]((name) => reason.figures[name] ?? Number.NaN, temperature);
}

/** The same reasons without figures, for the legend that many lines share on paper. */
const LEGEND: Readonly<Record<ChecklistReasonCode, string>> = {
  "no-mix-chosen": "no mix is chosen",
  "mix-refused": "the mix cannot be printed as it stands",
  "clear-on-white": "a clear has no dye to deepen in white",
  "clear-on-cotton": "a clear hardly wets cotton: next to nothing to see",
  "clear-hardly-shows": "the clear will hardly show",
  "out-of-band": "likelier out of the target band than in it",
  "dyed-polyester-untested": "dyed polyester, this lot never printed with this base",
  substituted: "stands in for an approved garment",
  "spread-wider-than-tolerance": "the prediction's spread is wider than the tolerance",
  "dark-limit": "dark cloth, where the prediction is weak",
  "goods-in-reacts-otherwise": "the same draw of ink changes this lot otherwise than the approved one: hold",
  "goods-in-drawn": "the same draw of ink changed both lots alike",
  "lot-not-approved": "another lot was approved: same draw of ink on both, side by side",
  heather: "a heather: 10 pairs of readings instead of 4",
  "cure-from-data-sheet": "to the ink maker's data sheet, measured through the dryer",
  "cure-not-entered": "no cure on the shelf for part of the mix: look it up",
  "cures-differ": "parts of the mix with different film temperatures: ask the ink maker",
  "low-cure-in-part": "only part of the mix cures low",
  "polyester-under-heat": "polyester bleeds, shrinks, glazes or scorches under heat",
  "ink-holds": "half a print washed hot, compared with the other half",
  "resistant-finish": "the finish repels ink: try the adhesion too",
  "thin-white": "thin white: judge it again after the wash",
  "known-bleeder": "known to give up dye: cool, hold 24 h, read again at 24 h and 72 h",
  "white-over-dyed-polyester": "white over dyed polyester: hold 24 h, read again at 24 h and 72 h",
  "childrens-product": "for children: limits on phthalates and lead; ask a qualified laboratory",
  "second-person": "after warm-up, approved by somebody who did not print it",
  "kept-for-reorder": "a signed print kept for the run and the reorder",
};

export function reasonLegend(code: ChecklistReasonCode): string {
  return LEGEND[code];
}

const TIME = new Intl.DateTimeFormat("en-GB", {
  day: "numeric",
  month: "short",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
});
const DAY = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short" });

/** A stored time as it is read here: day, month, year, hour and minute of this device's zone. */
export function timeWords(iso: string): string {
  const at = Date.parse(iso);
  return Number.isNaN(at) ? iso : TIME.format(at);
}

export function dayWords(iso: string): string {
  const at = Date.parse(iso);
  return Number.isNaN(at) ? iso : DAY.format(at);
}

const DATE = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });

/** The day with its year, for what may be long ago. */
export function dateWords(iso: string): string {
  const at = Date.parse(iso);
  return Number.isNaN(at) ? iso : DATE.format(at);
}

const ACTIONS: Readonly<Record<ChecklistEntry["action"], string>> = {
  sign: "signed",
  withdraw: "withdrew",
  override: "overrode the list",
  release: "released",
  hold: "held",
};

/** "signed wash test", "released". */
export function actionWords({ action, itemCode }: ChecklistEntry): string {
  return itemCode === null ? ACTIONS[action] : `${ACTIONS[action]}: ${itemName(itemCode).toLowerCase()}`;
}

/** "said then: 4.0 darker, 81 % in band, model only": what the planner predicted when an entry was written. */
export function saidThenWords({
  deltaL,
  chanceInBand,
  evidence,
}: NonNullable<ChecklistEntry["said"]>): string {
  return `said then: ${changeWords(deltaL)}, ${chanceWords(chanceInBand)} in band, ${evidence}`;
}

/** Shown where the work happens, on the screen and on paper. */
export const CAUTIONS: readonly string[] = [
  "Cure temperature and time are the ink maker's: this tool invents none. Reducers and additives have limits on the same sheet.",
  "Dryers, flashes and heat presses burn. Ventilate, extract the dryer's exhaust, and follow the safety data sheets.",
  "This is no legal or safety advice: local codes and licensed practice decide.",
];
