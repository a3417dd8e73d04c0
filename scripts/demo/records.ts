/** The demo's records: prints that the predictor made with the cloth's true surprise, read with seeded noise. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import type { Lab } from "../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import { printedReflectance } from "../../src/core/prediction/printedReflectance.ts";
import { wettableGarment } from "../../src/core/prediction/wettableGarment.ts";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import type { Job } from "../../src/job/jobDocument.ts";
import { applicationFor, garmentFor, inkMixFor } from "../../src/job/predictionInputs.ts";
import type { Approval, TestPrint } from "../../src/job/recordDocument.ts";
import type { Shelf } from "../../src/job/shelfDocument.ts";
import { demoId } from "./seededIds.ts";
import { type NoiseStream, noiseStream } from "./seededNoise.ts";

export const NOISE_SEED = 217;

/** Standard deviation of one reading: instrument and cloth texture together; invented. */
export const NOISE_SD = { L: 0.12, a: 0.08, b: 0.08 };

const PAIR_COUNT = 5;
const VIEWING = { illuminant: "D65", observer: "10deg" } as const;

/** The print of the demo's first candidate, curable clear through 61-64, on a lot whose surprise is known. */
export function truePrint(lot: GarmentLot, lnSurprise: number, job: Job, shelf: Shelf) {
  const garment = garmentFor(lot, shelf);
  const mix = job.mixes.find((item) => item.id === demoId("mix Curable clear"));
  const place = job.places.find((item) => item.id === demoId("place front"));
  const setUp = shelf.setUps.find((item) => item.id === demoId("set-up 61-64"));
  if (mix === undefined || place === undefined || setUp === undefined) {
    throw new RangeError("the demo job has no curable clear, no front or no 61-64 set-up");
  }
  const ink = inkMixFor(mix, shelf);
  if (!garment.ok || !ink.ok)
    throw new RangeError(`the demo's lot ${lot.lot} or its mix cannot be predicted`);
  const cloth = wettableGarment(garment.garment, VIEWING);
  const application = applicationFor(setUp, place, shelf);
  const printed = printedReflectance(cloth, ink.mix, application, { lnWetOut: lnSurprise });
  const print = labFromReflectance(printed, weightsFor(VIEWING));
  return { bare: cloth.bareLab, print, recipe: mix.recipe, setUpId: setUp.id };
}

/** A reading of a colour, to the two digits an instrument shows. */
function read({ L, a, b }: Lab, noise: NoiseStream): Lab {
  const shown = (value: number, sd: number) => Number((value + sd * noise()).toFixed(2));
  return { L: shown(L, NOISE_SD.L), a: shown(a, NOISE_SD.a), b: shown(b, NOISE_SD.b) };
}

export interface RecordPlan {
  readonly lot: GarmentLot;
  /** Names the record. */
  readonly key: string;
  /** Starts its noise. */
  readonly order: number;
  readonly lnSurprise: number;
  /** How far the print moved in L* between printing and reading; none where it is left out. */
  readonly driftDeltaL?: number;
  readonly printedAt: string;
  readonly readAt: string;
  readonly verdict: TestPrint["verdict"];
  readonly note: string;
}

export function testPrint(plan: RecordPlan, job: Job, shelf: Shelf): TestPrint {
  const { bare, print: fresh, recipe, setUpId } = truePrint(plan.lot, plan.lnSurprise, job, shelf);
  const print = { ...fresh, L: fresh.L + (plan.driftDeltaL ?? 0) };
  const noise = noiseStream(NOISE_SEED + plan.order);
  return {
    id: demoId(`test print ${plan.key}`),
    garmentLotId: plan.lot.id,
    recipe,
    actualGrams: null,
    setUpId,
    depositGsm: null,
    halftoneFraction: 1,
    smoothed: false,
    cure: { filmCelsius: 160, seconds: 60 },
    printedAt: plan.printedAt,
    readAt: plan.readAt,
    operator: "Demo",
    readings: {
      kind: "lab",
      viewing: VIEWING,
      geometry: "45:0",
      pairs: Array.from({ length: PAIR_COUNT }, () => ({
        bare: read(bare, noise),
        print: read(print, noise),
      })),
      pairCount: PAIR_COUNT,
      pieceCount: 1,
      sdPairDifference: null,
    },
    instrument: "Bench spectrophotometer, 45:0",
    backing: "Four layers of the same garment",
    washCount: 0,
    verdict: plan.verdict,
    note: plan.note,
    photo: null,
    supersedesId: null,
  };
}

/**
 * What model version 1 said of this print before any test, on the day of the approval. Not computed anew: what an
 * approval once said stays as it was said, whatever the model says today.
 */
const SAID_THEN: Approval["said"] = {
  deltaL: -3.37,
  p5: -12.06,
  p95: -1.05,
  evidence: "model only",
  chanceInBand: 0.41,
};

export function approval(print: TestPrint): Approval {
  return {
    id: demoId(`approval of ${print.id}`),
    garmentLotId: print.garmentLotId,
    testPrintId: print.id,
    approvedBy: "Buyer, Verrowmoor Outfitters",
    approvedAt: "2026-01-28T10:15:00.000Z",
    note: "Approved on the printed shirt, not on a screen.",
    modelVersion: "1",
    said: SAID_THEN,
    supersedesId: null,
  };
}
