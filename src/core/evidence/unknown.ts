/** The unknowns of model.md §6 as named quantities with a prior: which of them one print depends on, and how. */
import type { SpreadSource } from "../prediction/prediction.ts";
import { DARK_EXTRA, RESISTANT_FINISH_SD, STYLE_DEGREES_OF_FREEDOM } from "../prediction/unknowns.ts";
import type { PriorScales } from "./priorScales.ts";
import type { EvidenceGarment } from "./record.ts";

export type UnknownKind =
  | "style"
  | "mill"
  | "colourway"
  | "lot"
  | "baseOnStyle"
  | "dark"
  | "finish"
  | "fibreGain"
  | "baseStrength"
  | "haze"
  | "closedFraction"
  | "colourantStrength"
  | "blackScattering"
  | "depositEstimated"
  | "depositWeighed";

/** One unknown: normal with mean 0 and this standard deviation (the style: Student-t with this standard deviation). */
export interface Unknown {
  readonly key: string;
  readonly kind: UnknownKind;
  readonly source: SpreadSource;
  readonly sd: number;
  /** It cannot be below this. */
  readonly lowest: number;
}

/** Standard deviation over scale of the style's Student-t. */
export const STYLE_SD_PER_SCALE = Math.sqrt(STYLE_DEGREES_OF_FREEDOM / (STYLE_DEGREES_OF_FREEDOM - 2));

/** A shared unknown (fibre, base, colourant, set-up). */
export function sharedUnknown(
  kind: UnknownKind,
  source: SpreadSource,
  key: string,
  sd: number,
  lowest = Number.NEGATIVE_INFINITY,
): Unknown {
  return { key: `${kind}\u0001${key}`, kind, source, sd, lowest };
}

/**
 * The parts of epsilon of `garment` under base `baseKey`; their sum, each times its loading (cell.ts), scales wet-out. The
 * style comes first. On cloth with dark bands (under R = 0.05) each of the five has a second part that only such cloth shares,
 * and counts by how much of its wet-out shows in them: what Kubelka-Munk misses there adds to the unknown, so that a light
 * garment of the style teaches a dark one no more than its own part.
 * A resistant finish is what one mill puts on one style.
 */
export function wetOutUnknowns(
  garment: EvidenceGarment,
  hasDarkBands: boolean,
  baseKey: string,
  scales: PriorScales,
): Unknown[] {
  const { styleKey, millKey, colourwayKey, lotKey } = garment;
  const parts: readonly (readonly [UnknownKind, SpreadSource, string, number])[] = [
    ["style", "style", styleKey, scales.styleScale * STYLE_SD_PER_SCALE],
    ["mill", "mill", `${styleKey}\u0001${millKey}`, scales.mill],
    ["colourway", "colourway", `${styleKey}\u0001${colourwayKey}`, scales.colourway],
    ["lot", "lot", lotKey, scales.lot],
    ["baseOnStyle", "base-on-style", `${styleKey}\u0001${baseKey}`, scales.baseOnStyle],
  ];
  const found = parts.map(([kind, source, key, sd]) => sharedUnknown(kind, source, key, sd));
  if (hasDarkBands) {
    for (const [kind, source, key, sd] of parts) {
      found.push(sharedUnknown("dark", source, `${kind}\u0001${key}`, DARK_EXTRA * sd));
    }
  }
  if (garment.garment.resistantFinish) {
    found.push(sharedUnknown("finish", "finish", `${styleKey}\u0001${millKey}`, RESISTANT_FINISH_SD));
  }
  return found;
}
