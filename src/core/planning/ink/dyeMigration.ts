/** Which cloths stain a white or soft-white print: dyed polyester gives up red, maroon and navy dye under heat. */
import type { Lab } from "../../colorimetry/viewing.ts";

/** Colours at risk: the first four by a printer's published list, the others from memory. */
export type RiskyColour = "red" | "maroon" | "navy" | "forest" | "royal" | "orange" | "black";

/**
 * How the colours are told apart by CIELAB, D65/10 degrees: hue angle from (at times below 0) to, least chroma, and
 * lightness from to. Invented defaults: no limits of these colour names were found.
 */
const COLOUR_REGIONS: readonly {
  readonly colour: RiskyColour;
  readonly fromDegrees: number;
  readonly toDegrees: number;
  readonly leastChroma: number;
  readonly fromL: number;
  readonly toL: number;
}[] = [
  { colour: "maroon", fromDegrees: -25, toDegrees: 45, leastChroma: 8, fromL: 0, toL: 33 },
  { colour: "red", fromDegrees: -15, toDegrees: 48, leastChroma: 30, fromL: 33, toL: 60 },
  { colour: "orange", fromDegrees: 48, toDegrees: 70, leastChroma: 40, fromL: 45, toL: 75 },
  { colour: "forest", fromDegrees: 130, toDegrees: 185, leastChroma: 8, fromL: 0, toL: 40 },
  { colour: "navy", fromDegrees: 240, toDegrees: 310, leastChroma: 5, fromL: 0, toL: 27 },
  { colour: "royal", fromDegrees: 260, toDegrees: 310, leastChroma: 30, fromL: 27, toL: 50 },
  { colour: "black", fromDegrees: -180, toDegrees: 180, leastChroma: 0, fromL: 0, toL: 18 },
];

/** Dyed polyester below this part of the cloth does not stain enough to be remarked on. Invented default. */
export const LEAST_POLYESTER_FRACTION = 0.1;

export interface DyeMigrationRisk {
  /** `high`: a colour of the published list, or cloth known to bleed; `some`: any other dyed polyester. */
  readonly level: "high" | "some";
  /** The risky colour it is, null for others. */
  readonly colour: RiskyColour | null;
  readonly figures: {
    readonly dyedPolyesterFraction: number;
    readonly whiteFraction: number;
    readonly L: number;
    readonly chroma: number;
    readonly hueDegrees: number;
  };
}

export interface DyeMigrationFacts {
  readonly bare: Lab;
  /** Dyed polyester as a mass fraction of the cloth. */
  readonly dyedPolyesterFraction: number;
  /** White ink as a mass fraction of the mix. */
  readonly whiteFraction: number;
  /** Known to give up dye under heat. */
  readonly bleeds: boolean;
}

/** Colours of the published list ("red, maroon, navy, forest high": a printer's blog, read as quoted). */
const PUBLISHED_HIGH: readonly RiskyColour[] = ["red", "maroon", "navy", "forest"];

/** The colour at risk that a cloth has; null for others. The first region that fits counts. */
export function riskyColourOf({ L, a, b }: Lab): RiskyColour | null {
  const chroma = Math.hypot(a, b);
  const hueDegrees = (Math.atan2(b, a) * 180) / Math.PI;
  const region = COLOUR_REGIONS.find(({ fromDegrees, toDegrees, leastChroma, fromL, toL }) => {
    const fromStart = (((hueDegrees - fromDegrees) % 360) + 360) % 360;
    return fromStart <= toDegrees - fromDegrees && chroma >= leastChroma && L >= fromL && L < toL;
  });
  return region?.colour ?? null;
}

/** The risk that a print with white in it takes up dye from the cloth; null where there is none to speak of. */
export function dyeMigrationRisk(facts: DyeMigrationFacts): DyeMigrationRisk | null {
  const { bare, dyedPolyesterFraction, whiteFraction, bleeds } = facts;
  if (whiteFraction <= 0 || dyedPolyesterFraction < LEAST_POLYESTER_FRACTION) return null;
  const colour = riskyColourOf(bare);
  const high = bleeds || (colour !== null && PUBLISHED_HIGH.includes(colour));
  const chroma = Math.hypot(bare.a, bare.b);
  const hueDegrees = ((Math.atan2(bare.b, bare.a) * 180) / Math.PI + 360) % 360;
  return {
    level: high ? "high" : "some",
    colour,
    figures: { dyedPolyesterFraction, whiteFraction, L: bare.L, chroma, hueDegrees },
  };
}
