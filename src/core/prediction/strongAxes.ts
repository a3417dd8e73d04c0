/**
 * Wet-out and tint, which move L* most and are tied by the deposit, as two independent standard normals turned so that
 * the first, the major one, runs along the steepest way of L* and the second, the minor one, hardly moves it.
 */
import type { CellDoubt, TiedUnknown } from "./cellDoubt.ts";
import { type CellResponse, lightnessAt } from "./cellResponse.ts";

export interface StrongAxes {
  /** ln(wet-out) per standard normal of the major and of the minor axis. */
  readonly wetOutOnMajor: number;
  readonly wetOutOnMinor: number;
  /** The tint as a standard normal, likewise; both 0 for a clear. */
  readonly tintOnMajor: number;
  readonly tintOnMinor: number;
  /** Between wet-out and tint: a thicker film wets out further and holds more tint. */
  readonly correlation: number;
  /** Standard deviation along the major axis in L*, at the centre. */
  readonly majorSdL: number;
}

/** Axes at the centre of `response`. */
export function strongAxes(response: CellResponse): StrongAxes {
  const { wetOutSd, tintSd, correlation } = response.doubt;
  const perWetOut = (lightnessAt(response, wetOutSd, 0) - lightnessAt(response, -wetOutSd, 0)) / 2;
  if (tintSd === 0) {
    const majorSdL = Math.abs(perWetOut);
    return {
      wetOutOnMajor: perWetOut < 0 ? -wetOutSd : wetOutSd,
      wetOutOnMinor: 0,
      tintOnMajor: 0,
      tintOnMinor: 0,
      correlation: 0,
      majorSdL,
    };
  }
  const perTint = (lightnessAt(response, 0, tintSd) - lightnessAt(response, 0, -tintSd)) / 2;
  const rest = Math.sqrt(1 - correlation * correlation);
  // The tint is correlation times wet-out plus rest times a normal of its own; turned by the two slopes of L*.
  const alongWetOut = perWetOut + correlation * perTint;
  const alongOwn = rest * perTint;
  const majorSdL = Math.sqrt(alongWetOut * alongWetOut + alongOwn * alongOwn);
  const cosine = majorSdL === 0 ? 1 : alongWetOut / majorSdL;
  const sine = majorSdL === 0 ? 0 : alongOwn / majorSdL;
  return {
    wetOutOnMajor: wetOutSd * cosine,
    wetOutOnMinor: -wetOutSd * sine,
    tintOnMajor: correlation * cosine + rest * sine,
    tintOnMinor: rest * cosine - correlation * sine,
    correlation,
    majorSdL,
  };
}

/** A weak unknown per standard normal of the turned axes, and what is left of its variance. */
export interface TurnedUnknown {
  readonly onMajor: number;
  readonly onMinor: number;
  readonly varianceLeft: number;
}

/** `unknown`, which goes with wet-out and tint, as it goes with the turned axes. */
export function turned(
  { wetOutSd, tintSd, correlation }: CellDoubt,
  axes: StrongAxes,
  unknown: TiedUnknown,
): TurnedUnknown {
  const { variance, onWetOut, onTint } = unknown;
  const cosine = axes.wetOutOnMajor / wetOutSd;
  const sine = -axes.wetOutOnMinor / wetOutSd;
  // With the tint's own normal, and through it and wet-out's with the turned ones.
  const own = tintSd === 0 ? 0 : (onTint - correlation * onWetOut) / Math.sqrt(1 - correlation * correlation);
  const onMajor = cosine * onWetOut + sine * own;
  const onMinor = tintSd === 0 ? 0 : cosine * own - sine * onWetOut;
  return { onMajor, onMinor, varianceLeft: Math.max(0, variance - onMajor * onMajor - onMinor * onMinor) };
}
