/** What a prediction returns for one garment, mix, application and light. */
import type { GreyScaleGrade } from "../colorimetry/greyScale.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import type { Spectrum } from "../spectrum/spectrum.ts";

export type EvidenceLevel = "this lot" | "related prints" | "model only";

export type PredictionWarning =
  /** A band of the bare cloth is under R = 0.05, where Kubelka-Munk on textiles is weak; the spread is widened. */
  | "dark-limit"
  /** A band of the bare cloth is over R = 0.99; its excess is kept as it is. */
  | "brightener"
  /** The deposit is outside 3-80 um, the range the model was made for. */
  | "deposit-outside-range"
  /** A heather that cannot be unmixed into fibres; predicted with dye shares instead. */
  | "heather-as-solid"
  /** The bare spectrum is a reconstruction and the light is not the one it was read under. */
  | "light-indicative"
  /** The bare colour is a screen colour. */
  | "bare-approximate"
  /** The screen cannot show one of the colours; the nearest it can is shown. */
  | "screen-colour-moved"
  /** A little white in a clear lifts darks and turns them milky. */
  | "milky-haze";

/** Why a garment answers the way it does, as codes; the planner owns the sentences. */
export type PredictionReason =
  | "polyester-deepens"
  | "cotton-hardly-wets"
  | "no-colour-to-deepen"
  | "undyed-fibre-carries-the-wetting"
  | "little-room-to-darken"
  | "tint-does-the-work"
  | "white-ink-lightens";

/** Where the spread of delta-L* comes from. */
export type SpreadSource =
  | "style"
  | "mill"
  | "colourway"
  | "lot"
  | "base-on-style"
  | "finish"
  | "fibre-gain"
  | "base-strength"
  | "haze"
  | "closed-surface"
  | "colourant-strength"
  | "black-scattering"
  | "deposit"
  | "model";

export interface SpreadPoint {
  readonly deltaL: number;
  /** The colour of the print at that delta-L*. */
  readonly lab: Lab;
  /** The spectrum behind it, for the screen. */
  readonly reflectance: Spectrum;
}

export interface Spread {
  /** The dark end: 5 % of prints are darker (delta-L* lower) than this. */
  readonly p5: SpreadPoint;
  readonly p50: SpreadPoint;
  readonly p95: SpreadPoint;
  /** Chance of landing in the target band, 0..1. */
  readonly chanceInBand: number;
  /** Standard deviation of delta-L* by source at the centre, largest first. */
  readonly sources: readonly { readonly source: SpreadSource; readonly sdDeltaL: number }[];
}

export interface Prediction {
  readonly bare: Lab;
  readonly printed: Lab;
  readonly bareReflectance: Spectrum;
  readonly printedReflectance: Spectrum;
  readonly deltaL: number;
  readonly deltaE00: number;
  /** CIELAB delta-E, the measure of the grey scale. */
  readonly deltaEab: number;
  readonly deltaChroma: number;
  readonly deltaHue: number;
  readonly greyScaleGrade: GreyScaleGrade;
  readonly spread: Spread;
  readonly evidence: EvidenceLevel;
  readonly warnings: readonly PredictionWarning[];
  readonly reasons: readonly PredictionReason[];
}
