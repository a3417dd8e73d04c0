/** Synthetic shops with hidden truths: what a shop would have typed and read, and beside it what is true, for scoring. */
import type { EvidenceGarment, EvidencePrint, EvidenceRecord } from "../../src/core/evidence/record.ts";
import type { InkMix, MixPart } from "../../src/core/prediction/inputs.ts";
import { type Draws, drawsFor } from "./draws.ts";
import { type ClothLot, styleLots } from "./shopCloths.ts";
import { garmentAsRead, pairReading, readPrint, SHOP_VIEWING, type TrueReading } from "./shopReadings.ts";
import {
  type ShopBase,
  type ShopColourant,
  type ShopSetUp,
  shopBases,
  shopColourants,
  shopSetUps,
} from "./shopShelf.ts";
import * as effects from "./trueEffects.ts";
import type { Recipe, ShopEffects } from "./truePrint.ts";

/** A test print as recorded, and what stands behind it. */
export interface ShopRecord {
  readonly record: EvidenceRecord;
  readonly truth: {
    readonly lot: ClothLot;
    readonly recipe: Recipe;
    readonly setUp: ShopSetUp;
    readonly reading: TrueReading;
  };
}

export interface SyntheticShop {
  readonly seed: number;
  /** The first is the reference clear. */
  readonly bases: readonly ShopBase[];
  /** The first is the black. */
  readonly colourants: readonly ShopColourant[];
  /** The first is the main set-up. */
  readonly setUps: readonly ShopSetUp[];
  readonly lots: readonly ClothLot[];
  readonly garments: ReadonlyMap<string, EvidenceGarment>;
  readonly effects: ShopEffects;
  readonly records: readonly ShopRecord[];
}

/** Fewest and most test prints in a shop's library; a shop's own number is drawn evenly between. */
export type LibrarySize = readonly [fewest: number, most: number];
export const USUAL_LIBRARY: LibrarySize = [40, 120];

/** Black in the mix by mass, the shop's ladder. */
export const TINT_LADDER = [0, 0.001, 0.0025, 0.005, 0.01] as const;
const COLOUR_TINT_FRACTIONS = [0.01, 0.02, 0.03] as const;

/** The mix as typed in: nominal strengths, whatever is true. */
export function typedMix({ base, colourant, fraction }: Recipe): {
  readonly mix: InkMix;
  readonly itemKeys: readonly string[];
} {
  const parts: MixPart[] = [{ ...base.typed, massFraction: 1 - fraction }];
  if (colourant !== null) parts.push({ ...colourant.typed, massFraction: fraction });
  return {
    mix: { parts, clothCoverFraction: null },
    itemKeys: colourant === null ? [base.key] : [base.key, colourant.key],
  };
}

/** The print as the planner sees it. */
export function typedPrint(garment: EvidenceGarment, recipe: Recipe, setUp: ShopSetUp): EvidencePrint {
  return {
    garment,
    ...typedMix(recipe),
    application: setUp.typed,
    setUpKey: setUp.key,
    depositOfThisPrintWeighed: false,
  };
}

function shopEffects(seed: number): ShopEffects {
  const draws = drawsFor(seed, "fibres");
  const gains = Object.entries(effects.EXPECTED_GAIN) as [effects.FibreName, number][];
  return {
    fibreGain: Object.fromEntries(
      gains.map(([fibre, gain]) => [fibre, gain * Math.exp(draws.normal(effects.FIBRE_GAIN_SD))]),
    ) as Record<effects.FibreName, number>,
    baseOnStyle: (styleKey, baseKey) =>
      drawsFor(seed, `${baseKey} on ${styleKey}`).normal(effects.BASE_ON_STYLE_SD),
  };
}

function testedRecipe(
  draws: Draws,
  bases: readonly ShopBase[],
  colourants: readonly ShopColourant[],
): Recipe {
  const base = draws.chance(0.35) ? bases[0]! : draws.pick(bases);
  const kind = draws.pickWeighted([
    ["clear", 0.35] as const,
    ["black", 0.55] as const,
    ["colour", 0.1] as const,
  ]);
  if (kind === "clear") return { base, colourant: null, fraction: 0 };
  if (kind === "black")
    return { base, colourant: colourants[0]!, fraction: draws.pick(TINT_LADDER.slice(1)) };
  return { base, colourant: draws.pick(colourants.slice(1)), fraction: draws.pick(COLOUR_TINT_FRACTIONS) };
}

/** Lots by style, every style in the order it was made. */
export function lotsByStyle(lots: readonly ClothLot[]): ClothLot[][] {
  const styles = new Map<string, ClothLot[]>();
  for (const lot of lots) {
    const list = styles.get(lot.styleKey);
    if (list === undefined) styles.set(lot.styleKey, [lot]);
    else list.push(lot);
  }
  return [...styles.values()];
}

/**
 * Which lot each test print is made on: three styles of five are tested at all, a style of several lots keeps some
 * untested; first one to six prints a style (three the likeliest), then more on some of them up to the library's size.
 */
function testedLots(draws: Draws, lots: readonly ClothLot[], [fewest, most]: LibrarySize): ClothLot[] {
  const wantedCount = draws.integer(fewest, most);
  const styles = draws.shuffled(lotsByStyle(lots));
  const tested = styles.slice(0, Math.max(3, Math.round(0.6 * styles.length)));
  const open = tested.map((all) => {
    const order = draws.shuffled(all);
    const mostTested = all.length === 1 ? 1 : all.length - 1;
    return order.slice(0, Math.max(1, Math.round(mostTested * draws.between(0.4, 1))));
  });
  const onto: ClothLot[] = [];
  for (const lotsOfStyle of open) {
    const count = draws.pick([1, 2, 3, 3, 4, 6]);
    for (let i = 0; i < count; i++) onto.push(lotsOfStyle[i % lotsOfStyle.length]!);
  }
  const busy = open.slice(0, Math.ceil(open.length / 2)).flat();
  while (onto.length < wantedCount) onto.push(draws.pick(busy));
  return draws.shuffled(onto).slice(0, most);
}

/** A day apart each, from an arbitrary first one; used for order only. */
function dayOf(index: number): string {
  return new Date(Date.UTC(2025, 0, 1 + index)).toISOString();
}

/** The shop of `seed` with a library of that many test prints: the same seed and size, the same shop. */
export function syntheticShop(seed: number, librarySize: LibrarySize = USUAL_LIBRARY): SyntheticShop {
  const shelf = drawsFor(seed, "shelf");
  const bases = shopBases(shelf);
  const colourants = shopColourants(shelf, SHOP_VIEWING);
  const setUps = shopSetUps(drawsFor(seed, "set-ups"));
  const hidden = shopEffects(seed);
  const styleCount = drawsFor(seed, "styles").integer(10, 40);
  const lots = Array.from({ length: styleCount }, (_, i) =>
    styleLots(drawsFor(seed, `style ${i + 1}`), `style ${i + 1}`, SHOP_VIEWING),
  ).flat();
  const garments = new Map(
    lots.map((lot) => [lot.lotKey, garmentAsRead(drawsFor(seed, `bare ${lot.lotKey}`), lot)]),
  );
  const records = testedLots(drawsFor(seed, "library"), lots, librarySize).map((lot, i): ShopRecord => {
    const draws = drawsFor(seed, `print ${i + 1}`);
    const recipe = testedRecipe(draws, bases, colourants);
    const setUp = draws.chance(0.6) ? setUps[0]! : draws.pick(setUps.slice(1));
    const reading = readPrint(draws, hidden, lot, recipe, setUp);
    const record: EvidenceRecord = {
      id: `record ${i + 1}`,
      printKey: `print ${i + 1}`,
      print: typedPrint(garments.get(lot.lotKey)!, recipe, setUp),
      viewing: SHOP_VIEWING,
      reading: pairReading(reading),
      at: dayOf(i),
      washCount: 0,
    };
    return { record, truth: { lot, recipe, setUp, reading } };
  });
  return { seed, bases, colourants, setUps, lots, garments, effects: hidden, records };
}
