/** What is said of the test prints worth making: how many, what they settle, what skipping them costs, what stays. */
import type { LineRisk, TestsFinding, WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import type { ShopDefaults } from "../../job/shelfDocument.ts";
import { listed } from "./listed.ts";
import { moneyWords } from "./moneyWords.ts";
import { groupedCount, pieces } from "./pieceWords.ts";
import { chanceWords, rangeWords } from "./predictionSentences.ts";

/** So many are named in the headline: what somebody with one free hour wants to know. */
export const NAMED_FIRST = 3;

/** More than these say nothing to a reader. */
const NAMED_OTHERS = 12;

const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);
const testsWords = (count: number) => (count === 1 ? "test print" : "test prints");

/** An expected amount: cents in it would say more than is known. */
export function expectedMoney(amount: number, currency: string): string {
  return moneyWords(Math.abs(amount) < 10 ? amount : Math.round(amount), currency);
}

/** What skipping the tests from that place of the list on costs in expectation, those before it made. */
export function skippedFrom(tests: readonly WorthwhileTest[], from: number): number {
  return sum(tests.slice(from).map(({ riskRemoved }) => riskRemoved));
}

/** Names for the headline; a garment that stands in it twice is told apart by its mix. */
export function headlineNames(tests: readonly { readonly name: string; readonly mix: string }[]): string[] {
  return tests.map(({ name, mix }) => {
    const isAlone = tests.filter((other) => other.name === name).length === 1;
    return isAlone ? name : `${name} with ${mix.charAt(0).toLowerCase()}${mix.slice(1)}`;
  });
}

/** "Print these 3 first: Forest (Mill B), Royal (Mill D) and Denim (Mill C)." */
export function firstSentence(names: readonly string[]): string {
  if (names.length === 1) return `Print this one: ${names[0]}.`;
  return `Print these ${names.length} first: ${listed(names)}.`;
}

/** "Of 30 possible test prints these 3 settle 50 % of the avoidable risk; all 16 that are worth their price settle 91 %." */
export function settledSentence({ tests, candidateCount }: TestsFinding): string {
  const named = Math.min(NAMED_FIRST, tests.length);
  const share = (count: number) => chanceWords(tests[count - 1]?.shareSettled ?? 0);
  const possible = `${groupedCount(candidateCount)} possible ${testsWords(candidateCount)}`;
  if (tests.length === 1) return `Of ${possible} it settles ${share(1)} of the avoidable risk.`;
  const first = `Of ${possible} these ${named} settle ${share(named)} of the avoidable risk`;
  if (tests.length <= NAMED_FIRST) return `${first}; no other is worth its price.`;
  return `${first}; all ${tests.length} that are worth their price settle ${share(tests.length)}.`;
}

/** Whether nothing can be lost by what is entered: not that all is sure, but that no test can be weighed. */
export function isUnpriced({ lines, lossNow }: Pick<TestsFinding, "lines" | "lossNow">): boolean {
  return lossNow === 0 && lines.some(({ best }) => best.chanceInBand < 1);
}

export const UNPRICED_HEADLINE = "No test print can be weighed in money yet.";
export const UNPRICED_SENTENCE =
  "By what is entered below, a print out of band costs nothing. That does not make it safe: an untested garment may print two to three times stronger (common practice, no source). Enter what a garment and a print cost; until then, what has to be tested stands before the run.";

export interface WorthFigure {
  readonly key: string;
  readonly amount: string;
  readonly words: string;
}

/** The plan in money: what skipping costs, what the tests cost and save, what stays. */
export function worthFigures(finding: TestsFinding, currency: string): WorthFigure[] {
  const { tests, lossNow, avoidable } = finding;
  const money = (amount: number) => expectedMoney(amount, currency);
  const rest = tests.length - NAMED_FIRST;
  const cost = sum(tests.map((test) => test.cost));
  const count = tests.length === 1 ? "The test costs" : `The ${tests.length} tests cost`;
  return [
    ...(tests.length === 0
      ? []
      : [
          {
            key: "skip-all",
            amount: money(skippedFrom(tests, 0)),
            words:
              tests.length === 1
                ? "expected to be lost if it is skipped"
                : "expected to be lost if all are skipped",
          },
        ]),
    ...(rest <= 0
      ? []
      : [
          {
            key: "skip-rest",
            amount: money(skippedFrom(tests, NAMED_FIRST)),
            words: `expected to be lost if only the first ${NAMED_FIRST} are made and the other ${rest} skipped`,
          },
        ]),
    ...(tests.length === 0
      ? []
      : [
          {
            key: "net",
            amount: money(skippedFrom(tests, 0) - cost),
            words: `saved in expectation. ${count} ${moneyWords(cost, currency)}, already taken off`,
          },
        ]),
    {
      key: "stays",
      amount: money(lossNow - avoidable),
      words: "expected to be lost whatever is tested, see below",
    },
  ];
}

/** Why the list ends where it does. */
export function endSentence(finding: TestsFinding, nextName: string | null, currency: string): string {
  const { tests, next, atMostTests } = finding;
  if (next !== null && nextName !== null) {
    const removes = moneyWords(next.riskRemoved, currency);
    const price = moneyWords(next.cost, currency);
    const lead = tests.length === 0 ? "The best would be" : "Next would be";
    return `${lead} ${nextName}, but a test there removes ${removes} of risk and costs ${price}: not worth its price.`;
  }
  if (atMostTests !== null && tests.length >= atMostTests)
    return `The time before the run allows no more: ${atMostTests} at most.`;
  return "No further test can be made on the spare pieces, or would tell anything.";
}

/** "2 pieces, 6 pairs". */
export function takesWords({
  pieceCount,
  pairCount,
}: Pick<WorthwhileTest, "pieceCount" | "pairCount">): string {
  return `${pieces(pieceCount)}, ${groupedCount(pairCount)} ${pairCount === 1 ? "pair" : "pairs"}`;
}

/** The nine-in-ten range a print is expected in today: "1.4 to 7.8 darker". */
export function expectedRangeWords({
  deltaL5,
  deltaL95,
}: Pick<WorthwhileTest, "deltaL5" | "deltaL95">): string {
  const middle = (deltaL5 + deltaL95) / 2;
  const range = rangeWords({ deltaL: middle, deltaL5, deltaL95 });
  return range.startsWith("within") ? `no change, ${range}` : `${range} ${middle < 0 ? "darker" : "lighter"}`;
}

/** "1 test 26 %, 3 tests 50 %, all 16 tests 91 %": the curve read aloud. */
export function curveWords(tests: readonly WorthwhileTest[]): string {
  const said = [1, NAMED_FIRST, Math.ceil(tests.length / 2), tests.length].filter(
    (count, index, all) => count <= tests.length && count > (all[index - 1] ?? 0),
  );
  return said
    .map(
      (count) =>
        `${count} ${count === 1 ? "test" : "tests"} ${chanceWords(tests[count - 1]?.shareSettled ?? 0)}`,
    )
    .join(", ");
}

/** What a line keeps whatever is tested, and what would help it. `chanceIfKnown`: in band, were all known that tests can tell. */
export function staysSentence(risk: LineRisk, isServed: boolean, chanceIfKnown: number): string {
  const best = `at best ${chanceWords(Math.max(risk.best.chanceInBand, chanceIfKnown))} in band`;
  return isServed
    ? `${best}. Tests hardly change it; a mix that lands nearer to the target would.`
    : `${best}. No mix in the matrix serves it: find mixes first.`;
}

/** What the day of the run and the shop's pace allow. */
export function timeSentence(
  atMostTests: number | null,
  { perDay, restDays }: ShopDefaults["testing"],
  runDayWords: string | null,
): string {
  if (runDayWords === null) return "No day is set for the run, so time limits nothing.";
  if (atMostTests === null)
    return `Time limits nothing before ${runDayWords}: no number of tests in a day is set.`;
  const rest = restDays === 0 ? "no rest" : restDays === 1 ? "1 day of rest" : `${restDays} days of rest`;
  return `Before ${runDayWords} there is time for ${groupedCount(atMostTests)} ${testsWords(atMostTests)}: ${perDay ?? 0} a day, ${rest}.`;
}

/** Beside a verdict that asks for a test. */
export function noTimeSentence(day: string): string {
  return `No test can be printed, rested and read before the run on ${day}: the run would have to wait for it.`;
}

/** Garments with what stays on them, few enough to be read. */
export function othersSentence(others: readonly string[]): string {
  const few = others.slice(0, NAMED_OTHERS);
  const more = others.length - few.length;
  return `The rest: ${few.join("; ")}${more > 0 ? `; and ${groupedCount(more)} more garments` : ""}.`;
}

/** The day is over or too near: the list is that of a run that can wait. */
export function runDayNotice(runDay: "past" | "no-time", dayWords: string): string {
  return runDay === "past"
    ? `The day the run was to start, ${dayWords}, is over, so it limits nothing here. Set a new one below.`
    : `No test can be printed, rested and read before the run on ${dayWords}. The list is for a run that can wait: set against it what skipping all of it costs.`;
}

/** While a plan is being made. */
export function planningSentence(firstName: string | null, isRenewed: boolean): string {
  const first = firstName === null ? "" : ` First comes ${firstName}.`;
  return `Planning…${first}${isRenewed ? " Until then this is the last plan." : ""}`;
}

/** Lines that the plan leaves out because they cannot be predicted. */
export function unpredictedSentence(names: readonly string[]): string {
  const few = names.slice(0, 6);
  const more = names.length - few.length;
  const named = more > 0 ? `${few.join(", ")} and ${groupedCount(more)} more` : listed(few);
  return `Not weighed, because they cannot be predicted yet: ${named}. Their cells in the matrix say why.`;
}

export function unweighedSentence(placeNames: readonly string[]): string {
  return `Not weighed, because the matrix has no mix there: ${listed(placeNames)}.`;
}

/** Stands in the list below the tests that the headline names. */
export function restSentence(tests: readonly WorthwhileTest[], currency: string): string {
  const rest = tests.length - NAMED_FIRST;
  const cost = expectedMoney(skippedFrom(tests, NAMED_FIRST), currency);
  return rest === 1
    ? `One more is worth its price: skipping it costs ${cost} in expectation.`
    : `${rest} more are worth their price: skipping them all costs ${cost} in expectation.`;
}

export function staysSummary({ lossNow, avoidable }: TestsFinding, currency: string): string {
  const stays = expectedMoney(lossNow - avoidable, currency);
  return `Of ${expectedMoney(lossNow, currency)} expected to be lost today, each garment printed with its best mix of the matrix, ${stays} stays however much is tested.`;
}

/** Garments whose loss is counted too low. */
export function unpricedSentence(count: number, lineCount: number): string {
  return `${count} of ${lineCount} garments have no price of a piece: a spoiled piece counts as its print alone there.`;
}
