/** The garments a synthetic shop is asked about, by how much it knows of them, with the true colour of every print of the ladder. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import type { EvidencePrint } from "../../src/core/evidence/record.ts";
import { drawsFor } from "./draws.ts";
import type { ClothLot } from "./shopCloths.ts";
import { SHOP_VIEWING } from "./shopReadings.ts";
import { type SyntheticShop, TINT_LADDER, typedPrint } from "./syntheticShop.ts";
import { DEPOSIT_SD_PRINT_TO_PRINT } from "./trueEffects.ts";
import { AS_USUAL, truePrint } from "./truePrint.ts";

/** No print of the style; prints of the style, none of the lot; prints of the lot. */
export const TARGET_GROUPS = ["untested", "related", "tested-lot"] as const;
export type TargetGroup = (typeof TARGET_GROUPS)[number];

export const CLOTH_CLASSES = ["dyed polyester", "cellulose", "heathers", "L* < 25"] as const;
export type ClothClass = (typeof CLOTH_CLASSES)[number];

export interface TargetCell {
  readonly baseKey: string;
  readonly blackFraction: number;
  readonly print: EvidencePrint;
  /** Change of L* of one print, with the chance that its deposit brings; what a 90 % interval has to hold. */
  readonly deltaLPrinted: number;
  /** Change of L* at the set-up's own deposit: what a prediction's middle is held against. */
  readonly deltaLUsual: number;
}

export interface TargetGarment {
  readonly group: TargetGroup;
  readonly classes: readonly ClothClass[];
  readonly lot: ClothLot;
  readonly lotRecordCount: number;
  readonly styleRecordCount: number;
  readonly basesOnLot: readonly string[];
  readonly cells: readonly TargetCell[];
}

/** Garments asked about in each group, at most. */
export const TARGETS_PER_GROUP = 8;
/** At least this much of the cloth is dyed polyester. */
const MOSTLY = 0.4;
const DARK_LIGHTNESS = 25;

export function classesOf(lot: ClothLot): ClothClass[] {
  const polyester = lot.fibres.filter(({ fibre }) => fibre.startsWith("polyester"));
  const polyesterMass = polyester.reduce((sum, { massFraction }) => sum + massFraction, 0);
  const classes: ClothClass[] = [];
  if (lot.kind === "solid" && polyesterMass >= MOSTLY) classes.push("dyed polyester");
  if (polyesterMass === 0) classes.push("cellulose");
  if (lot.kind === "heather") classes.push("heathers");
  if (lot.bareLab.L < DARK_LIGHTNESS) classes.push("L* < 25");
  return classes;
}

function cellsOf(shop: SyntheticShop, lot: ClothLot): TargetCell[] {
  const draws = drawsFor(shop.seed, `target ${lot.lotKey}`);
  const setUp = shop.setUps[0]!;
  const weights = weightsFor(SHOP_VIEWING);
  return shop.bases.flatMap((base) =>
    TINT_LADDER.map((fraction): TargetCell => {
      const recipe = { base, colourant: fraction === 0 ? null : shop.colourants[0]!, fraction };
      const changeAt = (lnDeposit: number): number => {
        const printed = truePrint(shop.effects, lot, recipe, setUp, { ...AS_USUAL, lnDeposit });
        return labFromReflectance(printed, weights).L - lot.bareLab.L;
      };
      return {
        baseKey: base.key,
        blackFraction: fraction,
        print: typedPrint(shop.garments.get(lot.lotKey)!, recipe, setUp),
        deltaLPrinted: changeAt(draws.normal(DEPOSIT_SD_PRINT_TO_PRINT)),
        deltaLUsual: changeAt(0),
      };
    }),
  );
}

/** Up to `perGroup` garments of each group, every base and ladder step on the main set-up. */
export function targetGarments(shop: SyntheticShop, perGroup = TARGETS_PER_GROUP): TargetGarment[] {
  const ofLot = (lot: ClothLot) => shop.records.filter(({ truth }) => truth.lot.lotKey === lot.lotKey);
  const ofStyle = (lot: ClothLot) => shop.records.filter(({ truth }) => truth.lot.styleKey === lot.styleKey);
  const described = shop.lots.map((lot) => {
    const onLot = ofLot(lot);
    const styleRecordCount = ofStyle(lot).length;
    const group: TargetGroup =
      onLot.length > 0 ? "tested-lot" : styleRecordCount > 0 ? "related" : "untested";
    const basesOnLot = [...new Set(onLot.map(({ truth }) => truth.recipe.base.key))];
    return { lot, group, lotRecordCount: onLot.length, styleRecordCount, basesOnLot };
  });
  const draws = drawsFor(shop.seed, "targets");
  return TARGET_GROUPS.flatMap((group) =>
    draws
      .shuffled(described.filter((one) => one.group === group))
      .slice(0, perGroup)
      .map((one) => ({ ...one, classes: classesOf(one.lot), cells: cellsOf(shop, one.lot) })),
  );
}
