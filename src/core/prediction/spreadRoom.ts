/** Room that a spread is computed in, kept from cell to cell: arrays this size cost more to make than to fill. */
import { mixtureRoom, type NormalMixture } from "./normalMixture.ts";
import { TINT_NODE_COUNT } from "./responseSurface.ts";
import { MAJOR_COUNT, THREE_POINTS } from "./spreadGrid.ts";
import { type SurfacePoints, surfacePoints } from "./surfacePoints.ts";

const MOST_PARTS = 2 * MAJOR_COUNT;

export interface SpreadRoom {
  /** L*, a*, b* of a clear and of each tint node. */
  readonly labs: Float64Array;
  /** Where on a surface a cell is asked, and what is found there: minor point m, major node k at [m * MAJOR_COUNT + k]. */
  readonly points: SurfacePoints;
  readonly values: Float64Array;
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
    labs: new Float64Array(3 * (TINT_NODE_COUNT + 1)),
    points: surfacePoints(),
    values: new Float64Array(MAJOR_COUNT * THREE_POINTS.points.length),
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
