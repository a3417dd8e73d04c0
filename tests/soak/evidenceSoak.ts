// What test prints teach, on synthetic shops whose physics is not the predictor's: coverage, errors and slips of issue 3.
import { learn } from "../../src/core/evidence/learn.ts";
import { learnWatchfully } from "../../src/core/evidence/learnWatchfully.ts";
import { shopByEye } from "../generator/byEyeReadings.ts";
import { type LibrarySize, syntheticShop } from "../generator/syntheticShop.ts";
import { targetGarments } from "../generator/targetGarments.ts";
import { coverageScores, errorScores, type Score, standardErrorsOutside } from "./forecastScores.ts";
import { forecastFrom } from "./learnedShop.ts";
import { type ForecastCell, forecastCells, forecastFromPrior } from "./shopForecast.ts";
import { falseSlipScore, type SlipOutcome, slipOutcomes, slipScores } from "./slipScores.ts";

const BY_EYE_SHOP_COUNT = 60;
/** Prints in a library; the first is the usual size, for comparison on the same shops. */
const LIBRARY_SIZES: readonly LibrarySize[] = [
  [40, 120],
  [120, 250],
  [250, 400],
];
const SIZED_SHOP_COUNT = 60;

export interface EvidenceRun {
  readonly shopCount: number;
  readonly seed: number;
  /** Garments asked about in each group of a shop. */
  readonly perGroup: number;
  /** Whether slips are put in and looked for. */
  readonly withSlips: boolean;
}

/** Scores before any record, and after learning. */
export interface EvidenceScores {
  readonly before: readonly Score[];
  readonly learned: readonly Score[];
}

/** Every figure of issue 3 over shops of seeds `seed`, `seed + 1`, ... */
export function evidenceScores({ shopCount, seed, perGroup, withSlips }: EvidenceRun): EvidenceScores {
  const before: ForecastCell[][] = [];
  const learned: ForecastCell[][] = [];
  const falseSlips: boolean[][] = [];
  const outcomes: SlipOutcome[][] = [];
  for (let i = 0; i < shopCount; i++) {
    const shop = syntheticShop(seed + i);
    const targets = targetGarments(shop, perGroup);
    before.push(forecastCells(targets, forecastFromPrior));
    const { posterior, suspicions } = learnWatchfully(shop.records.map(({ record }) => record));
    learned.push(forecastCells(targets, forecastFrom(posterior)));
    const named = new Set(suspicions.filter(({ slip }) => slip !== null).map(({ recordId }) => recordId));
    falseSlips.push(shop.records.map(({ record }) => named.has(record.id)));
    if (withSlips) outcomes.push(slipOutcomes(shop, targets));
  }
  return {
    before: [...coverageScores(before), ...errorScores(before, seed)],
    learned: [
      ...coverageScores(learned),
      ...errorScores(learned, seed),
      ...(withSlips ? slipScores(outcomes) : []),
      falseSlipScore(falseSlips),
    ],
  };
}

/** The same figures for shops that judge all their prints by eye. */
export function byEyeScores({ shopCount, seed, perGroup }: Omit<EvidenceRun, "withSlips">): Score[] {
  const cells = Array.from({ length: shopCount }, (_, i) => {
    const shop = syntheticShop(seed + i);
    const posterior = learn(shopByEye(shop).records.map(({ record }) => record));
    return forecastCells(targetGarments(shop, perGroup), forecastFrom(posterior));
  });
  return [...coverageScores(cells), ...errorScores(cells, seed)];
}

/** The same figures for shops with libraries of another size. */
export function sizedScores(
  { shopCount, seed, perGroup }: Omit<EvidenceRun, "withSlips">,
  size: LibrarySize,
): Score[] {
  const cells = Array.from({ length: shopCount }, (_, i) => {
    const shop = syntheticShop(seed + i, size);
    const { posterior } = learnWatchfully(shop.records.map(({ record }) => record));
    return forecastCells(targetGarments(shop, perGroup), forecastFrom(posterior));
  });
  return [...coverageScores(cells), ...errorScores(cells, seed)];
}

/** Prints every figure with its standard error, and what the prior alone gave; returns how many miss what is asked. */
export function soakEvidence(run: EvidenceRun, print: (line: string) => void): number {
  const { before, learned } = evidenceScores(run);
  print("  before any test print (nothing is asked of this):");
  for (const { text } of before) print(`    ${text}`);
  print("  after learning from 40 to 120 test prints a shop:");
  let missed = 0;
  for (const score of learned) {
    const outside = standardErrorsOutside(score);
    const isMissed = !(outside === 0);
    if (isMissed) missed++;
    print(`    ${isMissed ? `MISSES by ${outside.toFixed(1)} standard errors: ` : ""}${score.text}`);
  }
  print(`  shops without an instrument, ${BY_EYE_SHOP_COUNT} of them (nothing is asked of this):`);
  for (const { text } of byEyeScores({ ...run, shopCount: BY_EYE_SHOP_COUNT })) print(`    ${text}`);
  for (const size of LIBRARY_SIZES) {
    print(
      `  libraries of ${size[0]} to ${size[1]} prints, ${SIZED_SHOP_COUNT} shops (nothing is asked of this):`,
    );
    for (const { text } of sizedScores({ ...run, shopCount: SIZED_SHOP_COUNT }, size)) print(`    ${text}`);
  }
  print(`  ${learned.length - missed} of ${learned.length} figures as asked.`);
  return missed;
}
