/** The same synthetic shops without an instrument: every print judged by eye against the grey scale for change in colour. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { GREY_SCALE_STEPS } from "../../src/core/colorimetry/greyScale.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import { drawsFor } from "./draws.ts";
import { SHOP_VIEWING } from "./shopReadings.ts";
import type { ShopRecord, SyntheticShop } from "./syntheticShop.ts";

/** Error of an eye, ln of the difference it sees (issue 3: 0.25 to start with). */
export const EYE_SD = 0.25;

/** Grade 5 to 1 in half steps, the one whose nominal difference lies nearest to what is seen. */
function gradeOf(seen: number): number {
  let best = 0;
  GREY_SCALE_STEPS.forEach(({ deltaEab }, i) => {
    if (Math.abs(deltaEab - seen) < Math.abs(GREY_SCALE_STEPS[best]!.deltaEab - seen)) best = i;
  });
  return 5 - best / 2;
}

function judged(seed: number, one: ShopRecord): ShopRecord {
  const { record, truth } = one;
  const weights = weightsFor(SHOP_VIEWING);
  const bare = labFromReflectance(truth.reading.bare, weights);
  const print = labFromReflectance(truth.reading.printed, weights);
  const difference = Math.hypot(print.L - bare.L, print.a - bare.a, print.b - bare.b);
  const seen = difference * Math.exp(drawsFor(seed, `eye ${record.id}`).normal(EYE_SD));
  return {
    truth,
    record: {
      ...record,
      reading: {
        kind: "by-eye",
        grade: gradeOf(seen),
        direction: print.L < bare.L ? "darker" : "lighter",
      },
    },
  };
}

/** `shop` with the same prints, judged by eye instead of read. */
export function shopByEye(shop: SyntheticShop): SyntheticShop {
  return { ...shop, records: shop.records.map((one) => judged(shop.seed, one)) };
}
