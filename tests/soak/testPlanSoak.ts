// What the test plan saves in many synthetic shops, with bootstrap intervals: the figures of issue "Which mixes, which test prints, and how to recover".
import { type AvoidableCosts, avoidableCosts } from "../core/planning/decisions/savedCost.ts";
import { seededRandom } from "../core/prediction/seededRandom.ts";

/** Shops with what they have printed before, and shops without any record. */
export const SHOP_KINDS = ["library", "no records"] as const;
export type ShopKind = (typeof SHOP_KINDS)[number];
type Rival = Exclude<keyof AvoidableCosts, "plan" | "oracle" | "planTestCount">;

/** Least part of a rule's avoidable cost that the plan must save. Of the plain rule's: it must not cost more. */
const LEAST_SAVED: Record<ShopKind, Record<Rival, number>> = {
  library: { nothing: 0.5, everything: 0.25, largest: 0.2, plainRule: 0 },
  "no records": { nothing: 0.8, everything: 0.3, largest: 0.3, plainRule: 0 },
};
const RIVAL_NAMES: Record<Rival, string> = {
  nothing: "testing nothing",
  everything: "testing everything",
  largest: "testing as many, the largest",
  plainRule: "dyed polyester, new lot, more than 300 pieces",
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
const meanOf = (shops: readonly AvoidableCosts[], name: keyof AvoidableCosts) =>
  shops.reduce((sum, shop) => sum + shop[name], 0) / shops.length;

/** Prints a line per rule of testing; returns how many are saved less of than the issue asks. */
export function soakTestPlan(
  {
    shopCount,
    seed,
    kinds = SHOP_KINDS,
  }: { readonly shopCount: number; readonly seed: number; readonly kinds?: readonly ShopKind[] },
  print: (line: string) => void,
): number {
  let missed = 0;
  for (const kind of kinds) {
    const shops = Array.from({ length: shopCount }, (_, i) => avoidableCosts(seed + i, kind === "library"));
    print(
      `  ${kind}: ${meanOf(shops, "planTestCount").toFixed(1)} tests of 14 garments, avoidable cost ${meanOf(shops, "plan").toFixed(0)} a job (the oracle pays ${meanOf(shops, "oracle").toFixed(0)})`,
    );
    for (const [rival, asked] of Object.entries(LEAST_SAVED[kind]) as [Rival, number][]) {
      const share = savedShare(shops, rival);
      const [low, high] = bootstrapInterval(shops, rival, seed);
      const isMissed = !(share >= asked);
      if (isMissed) missed++;
      const dearer = shops.filter((shop) => shop.plan > shop[rival]).length;
      print(
        `    ${isMissed ? "MISSED: " : ""}saves ${percent(share)} (${percent(low)} to ${percent(high)}) of ${meanOf(shops, rival).toFixed(0)}, asked ${percent(asked)}, against ${RIVAL_NAMES[rival]}; dearer in ${dearer} single shops`,
      );
    }
  }
  return missed;
}
