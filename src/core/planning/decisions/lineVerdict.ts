/** What a line needs before its run: a test print, a look at the goods, another mix, or nothing more than what is known. */
import { LEAST_CHANCE } from "../runChecklist.ts";

/** What a test print takes away in expectation and what it costs, money. */
export interface TestMoney {
  readonly riskRemoved: number;
  readonly cost: number;
}

/** The days before the run are taken up, or the line has too few spare pieces. */
export type TestBar = "time" | "spare-pieces";

export interface VerdictFacts {
  readonly choice: "none" | "refused" | "made";
  /** What the rules before a run say of a test print, and whether it is signed for. */
  readonly testItem: {
    readonly asked: "blocking" | "advised" | "none";
    readonly signed: boolean;
  };
  /** The lot is not the approved one and nobody has signed that both react alike. */
  readonly goodsInOpen: boolean;
  /** Null while the plan is not known. */
  readonly plan: {
    /** The first test of this line that is worth its price; null where none is. */
    readonly planned: (TestMoney & { readonly ofChosenPrint: boolean }) | null;
    /** The best test outside the plan: no test of a line that is not in it removes more. Null where that is not known. */
    readonly bestLeft: TestMoney | null;
    /** What keeps a further test of this line out of the plan whatever it is worth; nothing where left out. */
    readonly barredBy?: TestBar | null;
  } | null;
  /** Of the chosen print; null while it is not predicted. */
  readonly outlook: { readonly chanceInBand: number; readonly expectedLoss: number } | null;
  /** Highest chance in band that a mix of the matrix has on the line; null where that is not known. */
  readonly bestChance: number | null;
  /** Whether this lot was printed with this recipe through this set-up, and the record teaches. */
  readonly printedOnThisLot: boolean;
}

export type VerdictName = "print-a-test" | "goods-in-check" | "run-on-evidence" | "choose-a-mix";

export type VerdictReason =
  | { readonly code: "no-mix-chosen"; readonly bestChance: number | null }
  | { readonly code: "mix-refused" }
  | ({ readonly code: "test-pays" } & TestMoney)
  /** A rule asks for the test whatever the money says. */
  | { readonly code: "rule-asks-for-test" }
  /** By the money alone no test of the line is worth making; null where it is only known that none is planned. */
  | { readonly code: "test-does-not-pay"; readonly atMost: TestMoney | null }
  /** What it would be worth was not weighed. */
  | { readonly code: "test-not-possible"; readonly barredBy: TestBar }
  | { readonly code: "test-only-advised" }
  /** A test was signed for but no record of it teaches: the figures do not know of it. */
  | { readonly code: "test-not-recorded" }
  | { readonly code: "lot-not-approved" }
  | { readonly code: "printed-on-this-lot" }
  | { readonly code: "likelier-out-than-in"; readonly bestChance: number | null }
  /** Another mix of the matrix lands in band clearly more often. */
  | { readonly code: "better-in-matrix"; readonly bestChance: number }
  | { readonly code: "chance"; readonly chanceInBand: number; readonly expectedLoss: number };

export interface LineVerdict {
  readonly verdict: VerdictName;
  /** The weightiest first; never empty. */
  readonly reasons: readonly VerdictReason[];
}

type Plan = NonNullable<VerdictFacts["plan"]>;

/** What the money says of a test on the line; nothing while the plan is not known. */
function moneyReasons(plan: VerdictFacts["plan"]): VerdictReason[] {
  if (plan === null) return [];
  const { planned, bestLeft, barredBy = null } = plan;
  if (planned === null) {
    return [
      barredBy === null
        ? { code: "test-does-not-pay", atMost: bestLeft }
        : { code: "test-not-possible", barredBy },
    ];
  }
  const { riskRemoved, cost } = planned;
  return [{ code: "test-pays", riskRemoved, cost }];
}

/** From this much more chance on another mix is named. Invented default: less is within what a test print moves. */
const CLEARLY_BETTER = 0.1;

function chanceReasons({ outlook, bestChance }: VerdictFacts): VerdictReason[] {
  if (outlook === null) return [];
  const { chanceInBand, expectedLoss } = outlook;
  const chance: VerdictReason = { code: "chance", chanceInBand, expectedLoss };
  if (chanceInBand < LEAST_CHANCE) return [{ code: "likelier-out-than-in", bestChance }, chance];
  const isBettered = bestChance !== null && bestChance >= chanceInBand + CLEARLY_BETTER;
  return isBettered ? [chance, { code: "better-in-matrix", bestChance }] : [chance];
}

/** Whether the plan wants a test that no signature stands for. */
function planWantsTest({ planned }: Plan, signed: boolean): boolean {
  return planned !== null && !(signed && planned.ofChosenPrint);
}

/**
 * The verdict of a line before its run. Rules come on top of the money (model.md §7): a blocking rule asks for a test whatever
 * it is worth, and the reasons say what that is; a test that the plan wants is asked for though no rule does. A print that is
 * likelier out of band than in (`LEAST_CHANCE`) does not run on evidence: it needs another mix, where no test is worth making.
 * Null where the plan or the prediction is still needed to tell.
 */
export function lineVerdict(facts: VerdictFacts): LineVerdict | null {
  const { choice, testItem, goodsInOpen, plan, outlook, bestChance, printedOnThisLot } = facts;
  const goodsIn: VerdictReason[] = goodsInOpen ? [{ code: "lot-not-approved" }] : [];
  if (choice === "refused") return { verdict: "choose-a-mix", reasons: [{ code: "mix-refused" }] };
  if (choice === "none") {
    const pays = plan?.planned == null ? [] : moneyReasons(plan);
    return { verdict: "choose-a-mix", reasons: [{ code: "no-mix-chosen", bestChance }, ...pays, ...goodsIn] };
  }
  const ruleAsks = testItem.asked === "blocking" && !testItem.signed;
  const planAsks = plan !== null && planWantsTest(plan, testItem.signed);
  if (ruleAsks || planAsks) {
    const rule: VerdictReason[] = ruleAsks ? [{ code: "rule-asks-for-test" }] : [];
    const money = moneyReasons(plan);
    return {
      verdict: "print-a-test",
      reasons: [
        ...(planAsks ? [...money, ...rule] : [...rule, ...money]),
        ...goodsIn,
        ...chanceReasons(facts),
      ],
    };
  }
  if (plan === null || outlook === null) return null;
  const known: VerdictReason[] = [
    ...(printedOnThisLot ? [{ code: "printed-on-this-lot" } as const] : []),
    ...(plan.planned !== null && !printedOnThisLot ? [{ code: "test-not-recorded" } as const] : []),
    ...(testItem.asked === "advised" && !testItem.signed
      ? [{ code: "test-only-advised" } as const, ...moneyReasons(plan)]
      : []),
  ];
  if (goodsInOpen) {
    return { verdict: "goods-in-check", reasons: [...goodsIn, ...chanceReasons(facts), ...known] };
  }
  const verdict = outlook.chanceInBand < LEAST_CHANCE ? "choose-a-mix" : "run-on-evidence";
  return { verdict, reasons: [...chanceReasons(facts), ...known] };
}
