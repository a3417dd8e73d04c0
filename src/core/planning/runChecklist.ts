/**
 * The sample-before-run checklist of one garment line at one print place. Every rule is common practice of the trade,
 * no source; every limit says what it is. The rules see no test print that is not on record.
 */
import type { ChecklistFacts, ChecklistFibre } from "./checklistFacts.ts";
import type {
  ChecklistItem,
  ChecklistItemCode,
  ChecklistReason,
  ChecklistReasonCode,
} from "./checklistItem.ts";
import { CHILDRENS_LINES, type ChildrensLineCode } from "./ink/childrensLimits.ts";

/** Pairs of readings on a solid, and on a heather whose places differ (common practice, no source). */
export const USUAL_READ_COUNT = 4;
export const HEATHER_READ_COUNT = 10;

/** When moving dye is read for, hours after the print has cooled (common practice, no source). */
export const HOLD_HOURS = 24;
export const LAST_READ_HOURS = 72;

/** Above this L* cloth is white to a clear: it has no dye to deepen. Invented default, as in the prediction's reasons. */
export const WHITE_L = 92;

/** A predicted change of L* below this is nothing that a customer sees. Invented default. */
export const SEEN_DELTA_L = 1;

/** Below this chance the print is expected out of band. Invented default: as likely out as in. */
export const LEAST_CHANCE = 0.5;

/** A quick draw outside this range of the approved one's is held. From memory, no source. */
export const GOODS_IN_RATIO_RANGE = { lowest: 0.8, highest: 1.25 } as const;

type Rule = (facts: ChecklistFacts) => ChecklistReason[];

function because(
  code: ChecklistReasonCode,
  isSo: boolean,
  figures: Readonly<Record<string, number>> = {},
): ChecklistReason[] {
  return isSo ? [{ code, figures }] : [];
}

function holds(fibres: readonly ChecklistFibre[], names: readonly string[], dyedOnly: boolean): boolean {
  return fibres.some(
    (part) => names.includes(part.fibre) && part.massFraction > 0 && (part.dyed || !dyedOnly),
  );
}

/** Fibres that plastisol wets well enough to deepen: polyester, and nylon at half its gain (model.md §3). */
const WETTED = ["polyester", "nylon"];

/** Whether a dyed fibre wets out, so that clear ink can deepen the cloth. */
export const wetsOut = (fibres: readonly ChecklistFibre[]): boolean => holds(fibres, WETTED, true);

function isHeather({ fibres, heather }: ChecklistFacts): boolean {
  return (
    heather ||
    (fibres.some((part) => part.dyed) && fibres.some((part) => !part.dyed && part.massFraction > 0))
  );
}

/** Half the nine-in-ten width of the predicted delta-L*; null without a prediction. */
function halfWidth({ prediction }: ChecklistFacts): number | null {
  return prediction === null ? null : (prediction.deltaL95 - prediction.deltaL5) / 2;
}

/** Why a clear does nothing here: only one of the three is said, the plainest. */
const nothingToSee: Rule = ({ mix, bareL, fibres, prediction }) => {
  if (mix?.kind !== "clear") return [];
  const figures = prediction === null ? {} : { deltaL: prediction.deltaL };
  if (bareL !== null && bareL >= WHITE_L) return because("clear-on-white", true, { ...figures, bareL });
  if (!wetsOut(fibres)) return because("clear-on-cotton", true, figures);
  return because(
    "clear-hardly-shows",
    prediction !== null && Math.abs(prediction.deltaL) < SEEN_DELTA_L,
    figures,
  );
};

const outOfBand: Rule = ({ prediction, band }) =>
  prediction === null
    ? []
    : because("out-of-band", prediction.chanceInBand < LEAST_CHANCE, {
        chanceInBand: prediction.chanceInBand,
        deltaL: prediction.deltaL,
        targetDeltaL: band.deltaL,
        tolerance: band.tolerance,
      });

/** The draw is said where it was asked for, and wherever it came out otherwise. */
const goodsIn: Rule = ({ approvedLot, goodsInRatio: ratio }) => {
  const { lowest, highest } = GOODS_IN_RATIO_RANGE;
  const isOff = ratio !== null && !(ratio >= lowest && ratio <= highest);
  const isAsked = approvedLot === "other";
  return [
    ...because("goods-in-reacts-otherwise", isOff, { ratio: ratio ?? 1, lowest, highest }),
    ...because("goods-in-drawn", isAsked && ratio !== null && !isOff, { ratio: ratio ?? 1 }),
    ...because("lot-not-approved", isAsked),
  ];
};

/** The limits as figures, so that they are written down once. */
const childrensLimits: Rule = ({ forChildren }) => {
  const limit = (code: ChildrensLineCode) =>
    CHILDRENS_LINES.find((line) => line.code === code)?.limitMassFraction ?? 0;
  return because("childrens-product", forChildren, {
    usPhthalateFraction: limit("us-phthalates"),
    usLeadInCoatingFraction: limit("us-lead-in-coating"),
    usLeadInSubstrateFraction: limit("us-lead-in-substrate"),
    euPhthalateFraction: limit("eu-phthalates-in-plasticised-material"),
  });
};

const substitutedUntested: Rule = ({ substituted, prints }) =>
  because("substituted", substituted && !prints.withThisBase);

/** A print of this recipe on this lot is the test itself: a second one would tell nothing that the first-off does not. */
const spreadTooWide: Rule = (facts) => {
  const half = halfWidth(facts);
  const { tolerance } = facts.band;
  if (half === null || facts.prints.ofThisRecipe) return [];
  return because("spread-wider-than-tolerance", half > tolerance, { halfWidth: half, tolerance });
};

const polyesterUntested: Rule = ({ fibres, prints, pieceCount, testAboveCount }) =>
  because("dyed-polyester-untested", holds(fibres, ["polyester"], true) && !prints.withThisBase, {
    pieceCount,
    testAboveCount,
    printedOtherwise: prints.any ? 1 : 0,
  });

const darkUntested: Rule = ({ prediction, prints, bareL }) =>
  because(
    "dark-limit",
    prediction?.warnings.includes("dark-limit") === true && !prints.ofThisRecipe,
    bareL === null ? {} : { bareL },
  );

/** That two temperatures were entered says more than that one part cures low, so only one of the two is said. */
const cureReasons: Rule = ({ mix, fibres }) => {
  if (mix === null) return [];
  const { enteredCuresCelsius: cures, curesMissingCount, lowCure } = mix;
  const [lowest, highest] = [Math.min(...cures), Math.max(...cures)];
  const differ = highest > lowest;
  return [
    ...because("cure-from-data-sheet", true),
    ...because("cure-not-entered", curesMissingCount > 0, { curesMissingCount }),
    ...because("cures-differ", differ, { lowestCelsius: lowest, highestCelsius: highest }),
    ...because("low-cure-in-part", lowCure === "some" && !differ),
    ...because("polyester-under-heat", holds(fibres, ["polyester"], false)),
  ];
};

const washReasons: Rule = ({ finish, mix }) => [
  ...because("ink-holds", true),
  ...because("resistant-finish", finish === "repellent" || finish === "silicone"),
  ...because("thin-white", mix?.kind === "white"),
];

const bleedReasons: Rule = ({ bleeds, mix, fibres }) => {
  const figures = { holdHours: HOLD_HOURS, lastReadHours: LAST_READ_HOURS };
  return [
    ...because("known-bleeder", bleeds, figures),
    ...because(
      "white-over-dyed-polyester",
      mix?.kind === "white" && holds(fibres, ["polyester"], true),
      figures,
    ),
  ];
};

function item(
  code: ChecklistItemCode,
  reasons: readonly ChecklistReason[],
  blocking = true,
): ChecklistItem[] {
  if (reasons.length === 0) return [];
  return [{ code, kind: code === "choose-mix" ? "choice" : "signature", blocking, reasons }];
}

/** Reasons that demand a test whatever the quantity; the others do so above the shop's limit. */
function testPrint(facts: ChecklistFacts): ChecklistItem[] {
  const always = [...substitutedUntested(facts), ...spreadTooWide(facts)];
  const byQuantity = [...polyesterUntested(facts), ...darkUntested(facts)];
  const isAboveLimit = facts.pieceCount > facts.testAboveCount;
  return item("test-print", [...always, ...byQuantity], always.length > 0 || isAboveLimit);
}

/**
 * What has to be true before this line is run at this place, in the order of the work, each with its reasons. A choice
 * that is missing or refused is the only item, since everything else depends on the mix.
 * @throws RangeError where a mix is chosen and `facts.mix` is null.
 */
export function runChecklist(facts: ChecklistFacts): ChecklistItem[] {
  if (facts.choice === "none") return item("choose-mix", because("no-mix-chosen", true));
  if (facts.choice === "refused") return item("choose-mix", because("mix-refused", true));
  if (facts.mix === null) throw new RangeError("mix must be given where one is chosen; got null");
  const readCounts = { readCount: HEATHER_READ_COUNT, usualReadCount: USUAL_READ_COUNT };
  return [
    ...item("target-agreed", [...nothingToSee(facts), ...outOfBand(facts)]),
    ...testPrint(facts),
    ...item("goods-in", goodsIn(facts)),
    ...item("reads", because("heather", isHeather(facts), readCounts)),
    ...item("cure", cureReasons(facts)),
    ...item("wash-test", washReasons(facts)),
    ...item("bleed-hold", bleedReasons(facts)),
    ...item("childrens-limits", childrensLimits(facts)),
    ...item("first-off", because("second-person", true)),
    ...item("retained-sample", because("kept-for-reorder", true)),
  ];
}
