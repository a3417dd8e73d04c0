/** How uncertain the unknowns of one cell are and how they hang together, from the prior or from a belief. */
import { type BeliefAxis, beliefCovariance, type CellBelief } from "./cellBelief.ts";
import { cutAtZero } from "./normalDistribution.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import type { WetOutSpread } from "./wetOutSpread.ts";
import { wetOutSpread } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** A weak unknown, and how it goes with the two strong ones: its covariance with each of them as a standard normal. */
export interface TiedUnknown {
  readonly variance: number;
  readonly onWetOut: number;
  readonly onTint: number;
}

/** All in natural logarithms but the closed fraction. */
export interface CellDoubt {
  /** Of wet-out, and of the tint (0 for a clear), the deposit's part in them included; and their correlation through it. */
  readonly wetOutSd: number;
  readonly tintSd: number;
  readonly correlation: number;
  /** Mean shift of wet-out through the curvature of the deposit's reach. */
  readonly wetOutShift: number;
  /** The haze a print holds, the deposit's part included, and the black's own scattering without the tint's. */
  readonly haze: TiedUnknown;
  readonly black: TiedUnknown;
  /** What the closed fraction, cut at 0, adds to the expected one: its mean, and how it spreads. */
  readonly closedMean: number;
  readonly closed: TiedUnknown;
  /** What makes up the wet-out's, before any test print; null from a belief. */
  readonly prior: WetOutSpread | null;
}

const untied = (sd: number): TiedUnknown => ({ variance: sd * sd, onWetOut: 0, onTint: 0 });

/** Doubt of `ink` on `cloth` before any test print (unknowns.ts). */
export function priorDoubt(room: Workspace, cloth: WettableGarment, ink: PrintableInk): CellDoubt {
  const prior = wetOutSpread(room, cloth, ink);
  const { tintSd, reachSlope, prior: sds } = ink;
  const variance = sds.lnDeposit * sds.lnDeposit;
  return {
    wetOutSd: prior.sd,
    tintSd,
    correlation: tintSd === 0 ? 0 : (reachSlope * variance) / (prior.sd * tintSd),
    wetOutShift: ink.reachCurvature * variance,
    haze: {
      variance: sds.lnHaze * sds.lnHaze + variance,
      onWetOut: (reachSlope * variance) / prior.sd,
      onTint: tintSd === 0 ? 0 : variance / tintSd,
    },
    black: untied(sds.lnBlackScattering),
    closedMean: sds.closedShift.mean,
    closed: untied(sds.closedShift.sd),
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
  /** Covariance of an axis with the whole of wet-out, and of the tint: the deposit is part of both. */
  const withWetOut = (axis: BeliefAxis): number => of("lnWetOut", axis) + reachSlope * of("lnDeposit", axis);
  const withTint = (axis: BeliefAxis): number => of("lnTint", axis) + of("lnDeposit", axis);
  const wetOutSd = Math.sqrt(withWetOut("lnWetOut") + reachSlope * withWetOut("lnDeposit"));
  const tied = (variance: number, wetOut: number, tint: number): TiedUnknown => ({
    variance,
    onWetOut: wetOut / wetOutSd,
    onTint: tintSd === 0 ? 0 : tint / tintSd,
  });
  const correlation =
    tintSd === 0 ? 0 : (withWetOut("lnTint") + withWetOut("lnDeposit")) / (wetOutSd * tintSd);
  const closed = cutAtZero(ink.film.closedFraction, Math.sqrt(of("closedFraction", "closedFraction")));
  return {
    wetOutSd,
    tintSd,
    correlation: Math.min(CLOSEST, Math.max(-CLOSEST, correlation)),
    wetOutShift: ink.reachCurvature * deposit,
    haze: tied(
      of("lnHaze", "lnHaze") + 2 * of("lnHaze", "lnDeposit") + deposit,
      withWetOut("lnHaze") + withWetOut("lnDeposit"),
      withTint("lnHaze") + withTint("lnDeposit"),
    ),
    black: tied(
      of("lnBlackScattering", "lnBlackScattering"),
      withWetOut("lnBlackScattering"),
      withTint("lnBlackScattering"),
    ),
    closedMean: closed.mean,
    closed: tied(closed.sd * closed.sd, withWetOut("closedFraction"), withTint("closedFraction")),
    prior: null,
  };
}

/** Wet-out and tint never count as one and the same unknown. */
const CLOSEST = 0.999;
