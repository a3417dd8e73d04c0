// How well slips are found: one spoiled record per shop and kind, and good records that are falsely named.

import { learnWatchfully } from "../../src/core/evidence/learnWatchfully.ts";
import { type Figure, rateOver, rateText } from "../generator/clusteredFigures.ts";
import { drawsFor } from "../generator/draws.ts";
import { injectSlip, SLIP_KINDS, type SlipKind } from "../generator/slips.ts";
import type { SyntheticShop } from "../generator/syntheticShop.ts";
import type { TargetGarment } from "../generator/targetGarments.ts";
import type { Score } from "./forecastScores.ts";
import { forecastFrom } from "./learnedShop.ts";

/** What became of one slip. */
export interface SlipOutcome {
  readonly kind: SlipKind;
  readonly named: boolean;
  /** Called suspicious, by whatever name or none. */
  readonly suspected: boolean;
  /** Largest change of another garment's median against the fit that never had the record; null where not named or not asked. */
  readonly movedDeltaL: number | null;
}

const NAME_OF: Readonly<Record<SlipKind, string>> = {
  "tint-times-ten": "tint-times-ten",
  "swapped-pair": "swapped-pair",
  "other-light-on-both": "other-light",
  "other-light-on-print": "other-light",
};
const LEAST_NAMED: Readonly<Record<SlipKind, number>> = {
  "tint-times-ten": 0.95,
  "swapped-pair": 0.98,
  "other-light-on-both": 0.85,
  "other-light-on-print": 0.9,
};
const MOVES_OTHERS: readonly SlipKind[] = ["tint-times-ten", "swapped-pair"];
const MOST_MOVED_DELTA_L = 0.3;
const MOST_MOVED_RATE = 0.03;
const MOST_FALSE_RATE = 0.01;

/** The wrong record's own base, clear and with the most black: what a wrong tint or wet-out would move most. */
function mostMoved(target: TargetGarment, wrongBaseKey: string): TargetGarment {
  const most = Math.max(...target.cells.map(({ blackFraction }) => blackFraction));
  return {
    ...target,
    cells: target.cells.filter(
      ({ baseKey, blackFraction }) =>
        baseKey === wrongBaseKey && (blackFraction === 0 || blackFraction === most),
    ),
  };
}

/** One slip of each kind put into `shop`, one at a time. */
export function slipOutcomes(shop: SyntheticShop, targets: readonly TargetGarment[]): SlipOutcome[] {
  return SLIP_KINDS.flatMap((kind) => {
    const spoiled = injectSlip(shop, kind, drawsFor(shop.seed, `slip ${kind}`));
    if (spoiled === null) return [];
    const { recordId, rightRecord } = spoiled;
    const records = spoiled.shop.records.map(({ record }) => record);
    const learned = learnWatchfully(records);
    const suspicion = learned.suspicions.find((one) => one.recordId === recordId);
    const named = suspicion?.slip === NAME_OF[kind];
    let movedDeltaL: number | null = null;
    if (named && MOVES_OTHERS.includes(kind)) {
      const without = forecastFrom(learnWatchfully(records.filter(({ id }) => id !== recordId)).posterior);
      const withSetAside = forecastFrom(learned.posterior);
      const others = targets
        .filter(({ lot }) => lot.lotKey !== rightRecord.print.garment.lotKey)
        .map((target) => mostMoved(target, rightRecord.print.itemKeys[0]!));
      movedDeltaL = 0;
      for (const target of others) {
        const one = withSetAside(target);
        const other = without(target);
        one.forEach(({ deltaL50 }, i) => {
          movedDeltaL = Math.max(movedDeltaL!, Math.abs(deltaL50 - other[i]!.deltaL50));
        });
      }
    }
    return [{ kind, named, suspected: suspicion !== undefined, movedDeltaL }];
  });
}

/** Rates over shops, each with what issue 3 asks of it. */
export function slipScores(shops: readonly (readonly SlipOutcome[])[]): Score[] {
  const rate = (kind: SlipKind, hit: (one: SlipOutcome) => boolean): Figure =>
    rateOver(shops.map((outcomes) => outcomes.filter((one) => one.kind === kind).map(hit)));
  const found = SLIP_KINDS.map((kind): Score => {
    const figure = rate(kind, ({ named }) => named);
    const low = LEAST_NAMED[kind];
    const suspected = (100 * rate(kind, (one) => one.suspected).value).toFixed(1);
    const text = `slip named, ${kind}: ${rateText(figure)} (asked at least ${100 * low}; suspected at all ${suspected} %)`;
    return { name: `slip ${kind}`, figure, low, high: 1, text };
  });
  const moved = MOVES_OTHERS.map((kind): Score => {
    const figure = rateOver(
      shops.map((outcomes) =>
        outcomes
          .filter((one) => one.kind === kind && one.movedDeltaL !== null)
          .map((one) => one.movedDeltaL! > MOST_MOVED_DELTA_L),
      ),
    );
    const text = `shops where a ${kind} set aside still moves another garment by more than ${MOST_MOVED_DELTA_L}: ${rateText(figure)} (asked at most ${100 * MOST_MOVED_RATE})`;
    return { name: `moved by ${kind}`, figure, low: 0, high: MOST_MOVED_RATE, text };
  });
  return [...found, ...moved];
}

/** Share of good records that are given a slip. @param byShop whether, a list of records per shop. */
export function falseSlipScore(byShop: readonly (readonly boolean[])[]): Score {
  const figure = rateOver(byShop);
  return {
    name: "false slips",
    figure,
    low: 0,
    high: MOST_FALSE_RATE,
    text: `good records given a slip: ${rateText(figure)} (asked at most ${100 * MOST_FALSE_RATE})`,
  };
}
