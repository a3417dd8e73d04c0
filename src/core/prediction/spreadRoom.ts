/** Room that a spread is computed in, kept from cell to cell: arrays this size cost more to make than to fill. */
import { type ColourSums, colourSums, luminancePlane, type SumPlane } from "./colourPlanes.ts";
import { mixtureRoom, type NormalMixture } from "./normalMixture.ts";
import { TINT_NODE_COUNT, WET_NODE_COUNT } from "./responseSurface.ts";
import { MAJOR_COUNT, THREE_POINTS } from "./spreadGrid.ts";
import { type SurfacePoints, surfacePoints } from "./surfacePoints.ts";

const MOST_PARTS = 2 * MAJOR_COUNT;

export interface SpreadRoom {
  /** Colours at the nodes, and what the fibres' gains are multiplied by at each wetting. */
  readonly colours: ColourSums;
  readonly strengths: Float64Array;
  readonly centreStrength: Float64Array;
  /** Where a surface is fitted. */
  readonly surface: Float64Array;
  /** Where on a surface a cell is asked, and what is found there: minor point m, major node k at [m * MAJOR_COUNT + k]. */
  readonly points: SurfacePoints;
  readonly values: Float64Array;
  /** Luminances on their way to L*. */
  readonly luminances: SumPlane;
  /** Along the major unknown: mean, variance and third central moment of L*, and how surely the hue holds. */
  readonly means: Float64Array;
  readonly variances: Float64Array;
  readonly thirds: Float64Array;
  readonly hueHolds: Float64Array;
  /** Slope of the mean per width of a part. */
  readonly slopes: Float64Array;
  /** Which major node each part of `all` is of. */
  readonly partOf: Int32Array;
  /** All prints, and those whose hue holds. */
  readonly all: NormalMixture;
  readonly inHue: NormalMixture;
}

export function spreadRoom(): SpreadRoom {
  const along = (): Float64Array => new Float64Array(MAJOR_COUNT);
  return {
    colours: colourSums(),
    strengths: new Float64Array(WET_NODE_COUNT),
    centreStrength: new Float64Array(1),
    surface: new Float64Array(WET_NODE_COUNT * TINT_NODE_COUNT),
    points: surfacePoints(),
    values: new Float64Array(MAJOR_COUNT * THREE_POINTS.points.length),
    luminances: luminancePlane(),
    means: along(),
    variances: along(),
    thirds: along(),
    hueHolds: along(),
    slopes: along(),
    partOf: new Int32Array(MOST_PARTS),
    all: mixtureRoom(MOST_PARTS),
    inHue: mixtureRoom(MOST_PARTS),
  };
}
