/** What a line's verdict says: one line with money and chance for the table, a sentence for each reason. */
import type { LineVerdict, VerdictReason } from "../../core/planning/decisions/lineVerdict.ts";
import { LEAST_CHANCE } from "../../job/decisions/verdictOfLine.ts";
import { moneyWords } from "./moneyWords.ts";
import { chanceWords } from "./predictionSentences.ts";
import { expectedMoney } from "./worthSentences.ts";

type Coded<Code extends VerdictReason["code"]> = Extract<VerdictReason, { code: Code }>;

function reasonOf<Code extends VerdictReason["code"]>(
  { reasons }: LineVerdict,
  code: Code,
): Coded<Code> | undefined {
  return reasons.find((reason): reason is Coded<Code> => reason.code === code);
}

/** A verdict as it is shown. */
export interface ShownVerdict extends LineVerdict {
  /** The print that the planned test is of, where that is another than the one chosen: "Matt clear, 90-48, one stroke". */
  readonly testOf: string | null;
}

/** Whether a print may miss and that costs nothing: no price was entered, so no test can be weighed. */
export function isUnpriced(found: LineVerdict): boolean {
  const chance = reasonOf(found, "chance");
  return chance !== undefined && chance.expectedLoss === 0 && chance.chanceInBand < 1;
}

/** Two to five words. A print that was never made and read on this lot runs without a test, not on evidence. */
export function verdictWord(found: LineVerdict): string {
  switch (found.verdict) {
    case "print-a-test":
      return "Print a test";
    case "goods-in-check":
      return "Check the goods";
    case "run-on-evidence":
      return reasonOf(found, "printed-on-this-lot") === undefined
        ? "Run, no test asked for"
        : "Run on evidence";
    case "choose-a-mix": {
      const none = reasonOf(found, "no-mix-chosen");
      if (none === undefined) return "Choose another mix";
      return none.bestChance !== null && none.bestChance < LEAST_CHANCE ? "Find a mix" : "Choose a mix";
    }
  }
}

/** What stands behind the word in the table, with money or chance. */
export function verdictDetail(found: ShownVerdict, currency: string): string {
  const chance = reasonOf(found, "chance");
  const lost = isUnpriced(found)
    ? "what a miss costs is not entered"
    : `expected loss ${expectedMoney(chance?.expectedLoss ?? 0, currency)}`;
  const outlook = chance === undefined ? "" : `${chanceWords(chance.chanceInBand)} in band, ${lost}`;
  switch (found.verdict) {
    case "print-a-test": {
      const pays = reasonOf(found, "test-pays");
      const print = found.testOf === null ? "" : `of ${found.testOf}; `;
      if (pays !== undefined)
        return `${print}skipping it costs ${expectedMoney(pays.riskRemoved, currency)} in expectation, the test ${moneyWords(pays.cost, currency)}`;
      if (reasonOf(found, "test-does-not-pay") === undefined) return "a rule asks for it";
      return chance !== undefined && reasonOf(found, "likelier-out-than-in") !== undefined
        ? `a rule asks for it, but it has ${chanceWords(chance.chanceInBand)} in band: choose another mix first`
        : isUnpriced(found)
          ? "a rule asks for it; what a miss costs is not entered"
          : "a rule asks for it; by the money alone it is not worth its price";
    }
    case "goods-in-check":
      return "the lot differs from the approved one";
    case "run-on-evidence": {
      const better = reasonOf(found, "better-in-matrix");
      return better === undefined
        ? outlook
        : `${outlook}; another mix of the matrix has ${chanceWords(better.bestChance)}`;
    }
    case "choose-a-mix": {
      if (reasonOf(found, "mix-refused") !== undefined) return "this one cannot be printed as it stands";
      const best = reasonOf(found, "no-mix-chosen")?.bestChance ?? null;
      if (outlook !== "") return outlook;
      const pays = reasonOf(found, "test-pays");
      const test =
        pays === undefined ? "" : `; skipping its test costs ${expectedMoney(pays.riskRemoved, currency)}`;
      return best === null ? "" : `the best in the matrix has ${chanceWords(best)} in band${test}`;
    }
  }
}

/** The same in the width of a paper column: the bare figures behind the word. */
export function verdictShort(found: LineVerdict, currency: string): string {
  const chance = reasonOf(found, "chance");
  const pays = reasonOf(found, "test-pays");
  if (found.verdict === "print-a-test") {
    if (pays === undefined) return "by rule";
    return `${expectedMoney(pays.riskRemoved, currency)} if skipped`;
  }
  if (found.verdict === "goods-in-check" || chance === undefined) return "";
  const loss = isUnpriced(found) ? "" : `, loss ${expectedMoney(chance.expectedLoss, currency)}`;
  return `${chanceWords(chance.chanceInBand)}${loss}`;
}

const UNPRICED_SENTENCE =
  "By what is entered, a print out of band costs nothing, so no test can be weighed: enter the prices below.";

/** In the pane, where the test that the plan wants is not of the chosen print. */
export function otherTestSentence(print: string): string {
  return `That test is of ${print}, not of the print chosen here.`;
}

/** A reason in full, for the pane. */
export function verdictReasonSentence(reason: VerdictReason, currency: string, unpriced = false): string {
  const expected = (amount: number) => expectedMoney(amount, currency);
  switch (reason.code) {
    case "no-mix-chosen":
      if (reason.bestChance === null) return "No mix is chosen for this garment here.";
      return reason.bestChance < LEAST_CHANCE
        ? `No mix of the matrix serves this garment: the best has ${chanceWords(reason.bestChance)} in band.`
        : `No mix is chosen; the best of the matrix has ${chanceWords(reason.bestChance)} in band.`;
    case "mix-refused":
      return "The chosen mix cannot be printed as it stands.";
    case "test-pays":
      return `Skipping the test costs ${expected(reason.riskRemoved)} in expectation; the test costs ${moneyWords(reason.cost, currency)}.`;
    case "rule-asks-for-test":
      return "A rule of the checklist asks for a test, whatever the money says: the reasons stand at its item below.";
    case "test-does-not-pay":
      if (unpriced) return UNPRICED_SENTENCE;
      return reason.atMost === null
        ? "By the money alone no test of this garment is worth its price."
        : `By the money alone no test of this garment is worth its price: it removes no more than ${moneyWords(reason.atMost.riskRemoved, currency)} of risk and costs ${moneyWords(reason.atMost.cost, currency)}.`;
    case "test-not-possible":
      return reason.barredBy === "time"
        ? "The days before the run are taken up by other tests: what one of this garment would be worth is not said."
        : "This garment has too few spare pieces for a test: what it would be worth is not said.";
    case "test-only-advised":
      return "The checklist only advises a test here.";
    case "test-not-recorded":
      return "A test print is signed for but not in the record book: the figures do not know of it. Record it.";
    case "lot-not-approved":
      return "The lot differs from the approved one: draw the same ink on both and compare before anything is printed.";
    case "printed-on-this-lot":
      return "This lot was printed with this mix through this set-up, and the print is on record.";
    case "better-in-matrix":
      return `Another mix of the matrix lands in band clearly more often: ${chanceWords(reason.bestChance)}.`;
    case "likelier-out-than-in":
      return reason.bestChance === null
        ? "The chosen print is likelier out of the band than in it."
        : `The chosen print is likelier out of the band than in it; the best of the matrix has ${chanceWords(reason.bestChance)} in band.`;
    case "chance":
      return `As chosen it has ${chanceWords(reason.chanceInBand)} in band${unpriced ? "" : `, expected loss ${expected(reason.expectedLoss)}`}.`;
  }
}

/** How many lines there are of each verdict, in the order of what has to be done first. */
export function verdictSummary(verdicts: readonly LineVerdict[], currency: string): string | null {
  const count = (name: LineVerdict["verdict"]) => verdicts.filter(({ verdict }) => verdict === name).length;
  const skipped = verdicts
    .filter(({ verdict }) => verdict === "print-a-test")
    .reduce((sum, found) => sum + (reasonOf(found, "test-pays")?.riskRemoved ?? 0), 0);
  const tests = count("print-a-test");
  const known = verdicts.filter(
    (found) => found.verdict === "run-on-evidence" && reasonOf(found, "printed-on-this-lot") !== undefined,
  ).length;
  const cost = skipped > 0 ? `, ${expectedMoney(skipped, currency)} expected to be lost if skipped` : "";
  const parts = [
    tests === 0 ? "" : `${tests} to test-print${cost}`,
    count("goods-in-check") === 0 ? "" : `${count("goods-in-check")} to compare with the approved lot`,
    count("choose-a-mix") === 0 ? "" : `${count("choose-a-mix")} to choose a mix for`,
    known === 0 ? "" : `${known} to run on evidence`,
    count("run-on-evidence") === known ? "" : `${count("run-on-evidence") - known} to run, no test asked for`,
  ].filter((part) => part !== "");
  return parts.length === 0 ? null : `By evidence and money: ${parts.join("; ")}.`;
}
