/** The run order, the children's limits and the spoilage rules in words. */
import type { ChildrensLine, ChildrensLineCode } from "../../core/planning/ink/childrensLimits.ts";
import type { Change } from "../../core/planning/ink/runOrder.ts";
import type { SpoilageRule } from "../../core/planning/ink/spoilage.ts";
import { minutesWords } from "./inkFigures.ts";

const INK_CHANGES: Readonly<Record<Change["ink"], string>> = {
  none: "same ink",
  wipe: "wipe out, go on",
  "wash-up": "wash up",
};

/** "wash up, another screen, 21 min". */
export function changeOnPressWords({ ink, screen, minutes }: Change): string {
  return [INK_CHANGES[ink], screen ? "another screen" : "same screen", minutesWords(minutes)].join(", ");
}

export function provenSentence(proven: boolean, runCount: number): string {
  if (runCount < 2) return "One run needs no order.";
  return proven
    ? "Proven: no other order takes fewer wash-ups, or as many and fewer minutes."
    : `Not proven: with ${runCount} runs this is the best order found, and there may be a better one.`;
}

const CHILDREN: Readonly<Record<ChildrensLineCode, string>> = {
  "us-phthalates": "United States, plasticised parts of toys and child care articles",
  "us-lead-in-coating": "United States, lead in the surface coating",
  "us-lead-in-substrate": "United States, lead in parts that can be reached",
  "eu-phthalates-in-plasticised-material": "European Union, plasticised material, printed designs included",
  "eu-phthalates-in-toys": "European Union, toys and child care articles",
  "old-pots": "Old pots of base and additive may be from before these limits: look at their data sheets.",
  "not-legal-advice":
    "Not legal advice. Which of these apply to a product, a qualified laboratory and a lawyer say; the finished print is what is tested.",
};

const PARTS_PER_MILLION = 1e6;
const TENTH_OF_A_PERCENT = 0.001;

/** "at most 0.1 % of DEHP, DBP each": the limit in the unit that its text has. */
export function childrensLineSentence({
  code,
  limitMassFraction,
  counted,
  substances,
}: ChildrensLine): string {
  if (limitMassFraction === null) return CHILDREN[code];
  const limit =
    limitMassFraction >= TENTH_OF_A_PERCENT
      ? `${limitMassFraction * 100}\u00a0%`
      : `${Math.round(limitMassFraction * PARTS_PER_MILLION)}\u00a0ppm`;
  const how = substances.length === 1 ? "" : counted === "each" ? " each" : " together";
  return `${CHILDREN[code]}: at most ${limit} of ${substances.join(", ")}${how}.`;
}

/** How a line of the limits is known. */
export const CHILDRENS_STATUS: Readonly<Record<ChildrensLine["status"], string>> = {
  read: "text of the provision seen",
  "from memory": "from memory, not checked",
  "common practice": "common practice, no source",
};

export const SPOILAGE_RULES: readonly { readonly value: SpoilageRule["code"]; readonly label: string }[] = [
  { value: "shop", label: "the shop's own part" },
  { value: "three-percent", label: "3 % of any quantity" },
  { value: "one-and-a-half-percent", label: "1.5 %, at least one piece" },
  { value: "by-quantity", label: "1 % over 1,000, 2 % over 144, else 5 %" },
];
