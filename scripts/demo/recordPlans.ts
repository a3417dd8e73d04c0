/** Which prints the demo's record book holds, and what each of them is there to show. */
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import { type DemoGarment, GARMENTS, garmentLot } from "./garments.ts";
import type { RecordPlan } from "./records.ts";
import { TRUE_LN_SURPRISE } from "./trueSurprises.ts";

export function demoGarment(key: string): DemoGarment {
  const garment = GARMENTS.find((candidate) => candidate.key === key);
  if (garment === undefined) throw new RangeError(`the demo has no garment ${key}`);
  return garment;
}

export function trueLnSurprise(key: string): number {
  const surprise = TRUE_LN_SURPRISE[key];
  if (surprise === undefined) throw new RangeError(`garment ${key} has no stated true surprise`);
  return surprise;
}

/** Earlier lots that the shop printed before; their bare colours are invented, near the lots of this order. */
function earlierLots(): { readonly [Name in "denim" | "brick"]: GarmentLot } {
  return {
    denim: garmentLot(demoGarment("G07"), {
      key: "G07 earlier",
      lot: "TB-0490",
      bare: [42.6, -2.1, -17.4],
      note: "An earlier lot of G07.",
    }),
    brick: garmentLot(demoGarment("G08"), {
      key: "G08 earlier",
      lot: "PT-3189",
      bare: [38.4, 41.5, 23.6],
      note: "An earlier lot of G08.",
    }),
  };
}

/**
 * How the brick polyester went on darkening as its dye moved into the ink: change of L* beyond that of the first reading.
 * From the table "The demo job" of the product: -0.9 in 72 h; the value at 24 h is invented.
 */
const DRIFT_24_H = -0.5;
const DRIFT_72_H = -0.9;

const MADE = "Demo readings: the predictor with its stated true surprise, plus seeded noise.";

/** In the order in which they were read. `order` starts a record's noise, so that a new one changes no other. */
export function recordPlans(): {
  readonly plans: readonly RecordPlan[];
  readonly lots: readonly GarmentLot[];
} {
  const { denim, brick } = earlierLots();
  const brickPrint = {
    lot: brick,
    lnSurprise: trueLnSurprise("G08"),
    printedAt: "2026-01-13T14:40:00.000Z",
    verdict: "none",
  } as const;
  const plans: RecordPlan[] = [
    {
      key: "G07 earlier",
      order: 0,
      lot: denim,
      lnSurprise: trueLnSurprise("G07"),
      printedAt: "2026-01-08T13:20:00.000Z",
      readAt: "2026-01-09T09:05:00.000Z",
      verdict: "none",
      note: MADE,
    },
    { ...brickPrint, key: "G08 earlier", order: 1, readAt: "2026-01-13T15:45:00.000Z", note: MADE },
    {
      ...brickPrint,
      key: "G08 earlier, 24 h",
      order: 3,
      readAt: "2026-01-14T14:50:00.000Z",
      driftDeltaL: DRIFT_24_H,
      note: `Read again after a day. ${MADE}`,
    },
    {
      ...brickPrint,
      key: "G08 earlier, 72 h",
      order: 4,
      readAt: "2026-01-16T14:40:00.000Z",
      driftDeltaL: DRIFT_72_H,
      note: `Read again after three days: the dye still moves into the ink. ${MADE}`,
    },
    {
      key: "G03",
      order: 2,
      lot: garmentLot(demoGarment("G03")),
      lnSurprise: trueLnSurprise("G03"),
      printedAt: "2026-01-21T11:00:00.000Z",
      readAt: "2026-01-22T08:30:00.000Z",
      verdict: "reference",
      note: `The approved print. ${MADE}`,
    },
  ];
  return { plans, lots: [denim, brick] };
}
