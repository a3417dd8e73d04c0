/** What the test plan saves in many synthetic shops, with bootstrap intervals: for `npm run soak`. */
import { seededRandom } from "../../prediction/seededRandom.ts";
import { type AvoidableCosts, avoidableCosts } from "./savedCost.ts";

type Rival = Exclude<keyof AvoidableCosts, "plan" | "planTestCount">;

/** Issue "Which mixes, which test prints, and how to recover": least part of the avoidable cost that the plan saves. */
const LEAST_SAVED: Record<"library" | "no records", Record<Rival, number>> = {
  library: { nothing: 0.5, everything: 0.25, largest: 0.2, plainRule: 0 },
  "no records": { nothing: 0.8, everything: 0.3, largest: 0.3, plainRule: 0 },
};
const RESAMPLES = 2000;

/** Part of the rival's avoidable cost that the plan saves over all of `shops`. */
function savedShare(shops: readonly AvoidableCosts[], rival: Rival): number {
  const total = (name: Rival | "plan") => shops.reduce((sum, shop) => sum + shop[name], 0);
  return 1 - total("plan") / total(rival);
}

/** The middle 95 % of the share over shops drawn again with replacement (Efron 1979, from memory). */
function bootstrapInterval(shops: readonly AvoidableCosts[], rival: Rival, seed: number): [number, number] {
  const random = seededRandom(seed);
  const shares = Array.from({ length: RESAMPLES }, () =>
    savedShare(
      shops.map(() => shops[Math.floor(random.uniform() * shops.length)]!),
      rival,
    ),
  ).sort((one, other) => one - other);
  return [shares[Math.floor(0.025 * RESAMPLES)]!, shares[Math.floor(0.975 * RESAMPLES)]!];
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

/** Prints a line per rule of testing; returns how many are saved less of than the issue asks. */
export function soakTestPlan(
  { shopCount, seed }: { readonly shopCount: number; readonly seed: number },
  say: (line: string) => void,
): number {
  let missed = 0;
  for (const kind of ["library", "no records"] as const) {
    const shops = Array.from({ length: shopCount }, (_, i) => avoidableCosts(seed + i, kind === "library"));
    const tests = shops.reduce((sum, { planTestCount }) => sum + planTestCount, 0) / shopCount;
    const cost = shops.reduce((sum, { plan }) => sum + plan, 0) / shopCount;
    say(`  ${kind}: ${tests.toFixed(1)} tests of 14 garments, avoidable cost ${cost.toFixed(0)} a job`);
    for (const [rival, asked] of Object.entries(LEAST_SAVED[kind]) as [Rival, number][]) {
      const share = savedShare(shops, rival);
      const [low, high] = bootstrapInterval(shops, rival, seed);
      const isMissed = share < asked;
      if (isMissed) missed++;
      say(
        `    saves ${percent(share)} (${percent(low)} to ${percent(high)}) against ${rival}, asked ${percent(asked)}${isMissed ? ": MISSED" : ""}`,
      );
    }
  }
  return missed;
}
