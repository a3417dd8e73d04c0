/** How a test print is read and paid for on a lot, how many may be made before the run, and which pieces there are for it. */
import { PAIR_SD_HEATHER_L, PAIR_SD_SOLID_L } from "../../core/evidence/readingNoise.ts";
import { pairCountFor, Z_95 } from "../../core/evidence/sampleSize.ts";
import type { TestTerms } from "../../core/planning/decisions/evidencePlan.ts";
import { daysBetween } from "../calendarDay.ts";
import type { GarmentLot } from "../garmentLotDocument.ts";
import type { Band, Job } from "../jobDocument.ts";
import type { ShopDefaults } from "../shelfDocument.ts";

/** Wanted error of the mean of the pairs, as a part of the tolerance. Invented default. */
const ERROR_OF_TOLERANCE = 1 / 3;
/** No narrower error is asked for, in L*: a band without width would ask for endless pairs. Invented default. */
const LEAST_ERROR_L = 0.1;

/** Usual standard deviation of one pair difference in L* on a lot: places on a heather differ. */
export function pairSdOf({ heather, blend }: Pick<GarmentLot, "heather" | "blend">): number {
  const isMixed = blend.some(({ dyed }) => dyed) && blend.some(({ dyed }) => !dyed);
  return heather || isMixed ? PAIR_SD_HEATHER_L : PAIR_SD_SOLID_L;
}

/** Pairs to read for the precision the band asks for: n = (1.96 sd / E)^2, E a third of the tolerance, and at least 0.1. */
export function pairCountFor95(
  lot: Pick<GarmentLot, "heather" | "blend">,
  band: Pick<Band, "tolerance">,
): number {
  const wantedError = Math.max(band.tolerance * ERROR_OF_TOLERANCE, LEAST_ERROR_L);
  return pairCountFor(pairSdOf(lot), wantedError, Z_95);
}

/** What a test on the lot takes: the shop's number of pairs, or what the precision asks where that is more. */
export function testTermsOf(
  lot: Pick<GarmentLot, "heather" | "blend">,
  band: Pick<Band, "tolerance">,
  { prices, testing }: Pick<ShopDefaults, "prices" | "testing">,
): TestTerms {
  return {
    cost: prices.testPrint,
    pieceCount: testing.pieceCount,
    pairCount: Math.max(testing.pairCount, pairCountFor95(lot, band)),
    pairSd: pairSdOf(lot),
  };
}

/** Tests that can be printed, rested and read before the run; null where neither the day nor the number is known. */
export function testsBefore(
  { runStartsOn }: Pick<Job, "runStartsOn">,
  { perDay, restDays }: ShopDefaults["testing"],
  today: string,
): number | null {
  if (runStartsOn === null) return null;
  const days = daysBetween(today, runStartsOn) - restDays;
  if (days <= 0) return 0;
  return perDay === null ? null : days * perDay;
}
