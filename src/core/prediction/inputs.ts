/** What a prediction is made from: plain values, all spectra on the grid of core/spectrum. */

import type { Viewing } from "../colorimetry/viewing.ts";
import type { Geometry } from "../optics/geometry.ts";
import type { FibreName } from "../optics/wetOut.ts";
import type { Spectrum } from "../spectrum/spectrum.ts";

export interface FibrePart {
  readonly fibre: FibreName;
  /** Mass fraction in the cloth; the parts sum to 1. */
  readonly massFraction: number;
  /** Whether this fibre carries colour. */
  readonly dyed: boolean;
}

/** A bare garment as the model sees it. */
export interface Garment {
  /** Reflectance factor of the bare cloth, 0..1.5. */
  readonly bare: Spectrum;
  /** Where `bare` comes from; anything but a measurement is only indicative under another light. */
  readonly bareSource: "measured" | "reconstructed" | "approximate";
  /** The light and observer a reconstructed `bare` was read under; null for a measured spectrum. */
  readonly readUnder: Viewing | null;
  readonly fibres: readonly FibrePart[];
  /** A silicone or repellent finish widens what nobody can know of the cloth. */
  readonly resistantFinish: boolean;
  readonly geometry: Geometry;
}

/** A base, additive or reducer in a mix. */
export interface BasePart {
  readonly kind: "base";
  readonly massFraction: number;
  /** Wet-out strength against the reference clear (1). */
  readonly strength: number;
  /** The reference clear's strength is 1 by definition and carries no spread. */
  readonly reference: boolean;
  readonly hazePerUm: number;
  readonly closedFraction: number;
}

/** A colourant in a mix: K and S of its ready state at mass fraction 1. */
export interface ColourantPart {
  readonly kind: "colourant";
  readonly massFraction: number;
  readonly absorptionPerUm: Spectrum;
  readonly scatteringPerUm: Spectrum;
  /** A ready-made ink is its own base (strength 1 unless known); null for concentrates and dry pigment. */
  readonly ownBaseStrength: number | null;
  readonly family: "black" | "white" | "tint";
}

export type MixPart = BasePart | ColourantPart;

export interface InkMix {
  /** Mass fractions sum to 1. */
  readonly parts: readonly MixPart[];
  /** Part of the cloth a scattering film covers, 0..1; null: the default for its white content. */
  readonly clothCoverFraction: number | null;
}

/** How the mix gets onto the cloth. */
export interface Application {
  /** Thickness of the ink film on the garment, um. */
  readonly depositUm: number;
  /** Whether the deposit was weighed (sd 0.10 in ln) or estimated (0.30). */
  readonly depositWeighed: boolean;
  /** Halftone area, 0..1; 1 is a solid. */
  readonly halftoneFraction: number;
  /** Pressed or printed with a smoothing screen. */
  readonly smoothed: boolean;
}

/** What counts as a hit. */
export interface TargetBand {
  /** Wanted change of L* against the bare cloth; negative is darker. */
  readonly deltaL: number;
  readonly tolerance: number;
  /** Largest |delta-H*ab| beyond that of the clear alone. */
  readonly hueLimit: number;
}
