/** The whole demo: job VM-217 and the library of Ostrelle Print Room, from stated parameters and a seed. */
import type { Documents } from "../../src/job/documents.ts";
import { demoDilutionEntries, demoDilutions } from "./dilutions.ts";
import { GARMENTS, garmentLot } from "./garments.ts";
import { demoJob } from "./order.ts";
import { recordPlans } from "./recordPlans.ts";
import { approval, testPrint } from "./records.ts";
import { demoShelf } from "./shelf.ts";

export function demoDocuments(): Documents {
  const job = demoJob();
  const shelf = demoShelf();
  const { plans, lots } = recordPlans();
  const testPrints = plans.map((plan) => testPrint(plan, job, shelf));
  const garmentLots = [...GARMENTS.map((garment) => garmentLot(garment)), ...lots];
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
