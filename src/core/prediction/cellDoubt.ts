/** How uncertain the unknowns of one cell are and how they hang together, from the prior or from a belief. */
import { beliefCovariance, type CellBelief } from "./cellBelief.ts";
import { cutAtZero } from "./normalDistribution.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import type { WetOutSpread } from "./wetOutSpread.ts";
import { wetOutSpread } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** All standard deviations in natural logarithms but the closed fraction's. */
export interface CellDoubt {
  /** Of wet-out, and of the tint (0 for a clear), the deposit's part in them included; and their correlation through it. */
  readonly wetOutSd: number;
  readonly tintSd: number;
  readonly correlation: number;
  readonly depositSd: number;
  /** Covariance of the deposit with wet-out, and with the tint, as standard normals. */
  readonly depositOnWetOut: number;
  readonly depositOnTint: number;
  /** Mean shift of wet-out through the curvature of the deposit's reach. */
  readonly wetOutShift: number;
  readonly hazeSd: number;
  readonly blackScatteringSd: number;
  /** What the closed fraction, cut at 0, adds to the expected one: its mean and standard deviation. */
  readonly closedMean: number;
  readonly closedSd: number;
  /** What makes up the wet-out's, before any test print; null from a belief. */
  readonly prior: WetOutSpread | null;
}

/** Doubt of `ink` on `cloth` before any test print (unknowns.ts). */
export function priorDoubt(room: Workspace, cloth: WettableGarment, ink: PrintableInk): CellDoubt {
  const prior = wetOutSpread(room, cloth, ink);
  const { tintSd, reachSlope, prior: sds } = ink;
  const variance = sds.lnDeposit * sds.lnDeposit;
  return {
    wetOutSd: prior.sd,
    tintSd,
    correlation: tintSd === 0 ? 0 : (reachSlope * variance) / (prior.sd * tintSd),
    depositSd: sds.lnDeposit,
    depositOnWetOut: (reachSlope * variance) / prior.sd,
    depositOnTint: tintSd === 0 ? 0 : variance / tintSd,
    wetOutShift: ink.reachCurvature * variance,
    hazeSd: sds.lnHaze,
    blackScatteringSd: sds.lnBlackScattering,
    closedMean: sds.closedShift.mean,
    closedSd: sds.closedShift.sd,
    prior,
  };
}

/** Standard deviation of ln(tint), the deposit's part included, under `belief`. */
export function believedTintSd(belief: CellBelief): number {
  const of = (one: "lnTint" | "lnDeposit", other: "lnTint" | "lnDeposit") =>
    beliefCovariance(belief, one, other);
  return Math.sqrt(of("lnTint", "lnTint") + 2 * of("lnTint", "lnDeposit") + of("lnDeposit", "lnDeposit"));
}

/** Doubt that `belief` leaves of `ink`, which was made ready with it. */
export function believedDoubt(ink: PrintableInk, belief: CellBelief): CellDoubt {
  const of = beliefCovariance.bind(null, belief);
  const { tintSd, reachSlope } = ink;
  const deposit = of("lnDeposit", "lnDeposit");
  const wetDeposit = of("lnWetOut", "lnDeposit") + reachSlope * deposit;
  const tintDeposit = of("lnTint", "lnDeposit") + deposit;
  const wetOut =
    of("lnWetOut", "lnWetOut") +
    2 * reachSlope * of("lnWetOut", "lnDeposit") +
    reachSlope * reachSlope * deposit;
  const wetTint = of("lnWetOut", "lnTint") + of("lnWetOut", "lnDeposit") + reachSlope * tintDeposit;
  const wetOutSd = Math.sqrt(wetOut);
  const closed = cutAtZero(ink.film.closedFraction, Math.sqrt(of("closedFraction", "closedFraction")));
  const correlation = tintSd === 0 ? 0 : wetTint / (wetOutSd * tintSd);
  return {
    wetOutSd,
    tintSd,
    correlation: Math.min(CLOSEST, Math.max(-CLOSEST, correlation)),
    depositSd: Math.sqrt(deposit),
    depositOnWetOut: wetDeposit / wetOutSd,
    depositOnTint: tintSd === 0 ? 0 : tintDeposit / tintSd,
    wetOutShift: ink.reachCurvature * deposit,
    hazeSd: Math.sqrt(of("lnHaze", "lnHaze")),
    blackScatteringSd: Math.sqrt(of("lnBlackScattering", "lnBlackScattering")),
    closedMean: closed.mean,
    closedSd: closed.sd,
    prior: null,
  };
}

/** Wet-out and tint never count as one and the same unknown. */
const CLOSEST = 0.999;
