/** The whole demo: job VM-217 and the library of Ostrelle Print Room, from stated parameters and a seed. */
import type { Documents } from "../../src/job/documents.ts";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import { demoDilutionEntries, demoDilutions } from "./dilutions.ts";
import { type DemoGarment, GARMENTS, garmentLot } from "./garments.ts";
import { demoJob } from "./order.ts";
import { approval, type RecordPlan, testPrint } from "./records.ts";
import { demoShelf } from "./shelf.ts";
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
function earlierLots(): { readonly denim: GarmentLot; readonly brick: GarmentLot } {
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

/** Oldest first. An earlier lot has the surprise of the lot in this order. */
function recordPlans(denim: GarmentLot, brick: GarmentLot): RecordPlan[] {
  return [
    {
      key: "G07 earlier",
      lot: denim,
      lnSurprise: trueLnSurprise("G07"),
      printedAt: "2026-01-08T13:20:00.000Z",
      readAt: "2026-01-09T09:05:00.000Z",
      verdict: "none",
      note: "Demo readings: the predictor with its stated true surprise, plus seeded noise.",
    },
    {
      key: "G08 earlier",
      lot: brick,
      lnSurprise: trueLnSurprise("G08"),
      printedAt: "2026-01-13T14:40:00.000Z",
      readAt: "2026-01-14T08:50:00.000Z",
      verdict: "none",
      note: "Demo readings: the predictor with its stated true surprise, plus seeded noise.",
    },
    {
      key: "G03",
      lot: garmentLot(demoGarment("G03")),
      lnSurprise: trueLnSurprise("G03"),
      printedAt: "2026-01-21T11:00:00.000Z",
      readAt: "2026-01-22T08:30:00.000Z",
      verdict: "reference",
      note: "The approved print. Demo readings: the predictor with its stated true surprise, plus seeded noise.",
    },
  ];
}

export function demoDocuments(): Documents {
  const job = demoJob();
  const shelf = demoShelf();
  const { denim, brick } = earlierLots();
  const testPrints = recordPlans(denim, brick).map((plan, order) => testPrint(plan, order, job, shelf));
  const garmentLots = [...GARMENTS.map((garment) => garmentLot(garment)), denim, brick];
  const approvals = testPrints.filter((print) => print.verdict === "reference").map(approval);
  return {
    job,
    library: {
      shelf,
      garmentLots,
      testPrints,
      approvals,
      goodsInChecks: [],
      slipAnswers: [],
      pots: [],
      dilutions: demoDilutions(),
      potEntries: demoDilutionEntries(),
    },
  };
}
