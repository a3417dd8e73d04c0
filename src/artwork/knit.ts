/**
 * The knit: a piece of single jersey as a pattern of light and shade, one tile that repeats. Our own drawing, computed
 * from the shape of a stitch; only numbers, no canvas.
 */

/** Face side of single jersey: columns of V-shaped stitches. Drawn about twice as large as a tee's (invented). */
const WALE_PX = 5;
const COURSE_PX = 4;
/** Stitches in the tile: enough that the eye finds no repeat in a cell. */
const WALE_COUNT = 24;
const COURSE_COUNT = 20;
/** How far a leg of the V climbs from the middle of a wale to its edge, in courses. */
const LEG_CLIMB = 0.85;
/** Samples per pixel along each axis, against the moire of a fine pattern on coarse pixels. */
const SAMPLES = 4;
/** Shade of the gaps between yarns against the top of a yarn, and what single stitches differ by (invented). */
const GAP_DEPTH = 0.52;
const STITCH_VARIATION = 0.045;

/** Light and shade of the cloth: factors on linear light with a mean of exactly 1, row by row; tiles seamlessly. */
export interface KnitTile {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly factors: Float32Array;
  /** The largest factor: how far a highlight rises above the mean. */
  readonly largest: number;
}

/** A number in 0..1 that looks like chance and is always the same for the same stitch. */
function stitchNoise(wale: number, course: number): number {
  let bits = Math.imul(wale + 1, 0x9e3779b1) ^ Math.imul(course + 1, 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 15), 0x2c1b3c6d);
  bits = Math.imul(bits ^ (bits >>> 12), 0x297a2d39);
  return ((bits ^ (bits >>> 15)) >>> 0) / 0xffffffff;
}

/**
 * Height of the yarn at a point, 0 in a gap to 1 on top; `u` counts wales and `v` courses. The legs of a V meet in the
 * middle of a wale; between wales lies the deeper valley, which is why jersey looks ribbed.
 */
function yarnHeight(u: number, v: number): number {
  const across = Math.abs(2 * (u - Math.floor(u)) - 1);
  const along = v + LEG_CLIMB * across;
  const round = Math.sin(Math.PI * (along - Math.floor(along)));
  const valley = 1 - across ** 3;
  const middle = 0.8 + 0.2 * Math.min(1, 4 * across);
  return (0.45 + 0.55 * Math.sqrt(round)) * (0.3 + 0.7 * valley) * middle;
}

function shadeAt(x: number, y: number, pxPerUnit: number): number {
  const u = x / (WALE_PX * pxPerUnit);
  const v = y / (COURSE_PX * pxPerUnit);
  const across = Math.abs(2 * (u - Math.floor(u)) - 1);
  const wale = Math.floor(u) % WALE_COUNT;
  const course = ((Math.floor(v + LEG_CLIMB * across) % COURSE_COUNT) + COURSE_COUNT) % COURSE_COUNT;
  const own = 1 + STITCH_VARIATION * (2 * stitchNoise(wale, course) - 1);
  return own * (1 - GAP_DEPTH * (1 - yarnHeight(u, v)));
}

/**
 * The tile for a screen with `pxPerUnit` device pixels to a CSS pixel, or for paper.
 * @throws RangeError where it is not a whole number from 1 to 4.
 */
export function knitTile(pxPerUnit: number): KnitTile {
  if (!(Number.isInteger(pxPerUnit) && pxPerUnit >= 1 && pxPerUnit <= 4)) {
    throw new RangeError(`pxPerUnit must be 1, 2, 3 or 4; got ${pxPerUnit}`);
  }
  const widthPx = WALE_PX * WALE_COUNT * pxPerUnit;
  const heightPx = COURSE_PX * COURSE_COUNT * pxPerUnit;
  const factors = new Float32Array(widthPx * heightPx);
  let sum = 0;
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      let shade = 0;
      for (let j = 0; j < SAMPLES; j++) {
        for (let i = 0; i < SAMPLES; i++) {
          shade += shadeAt(x + (i + 0.5) / SAMPLES, y + (j + 0.5) / SAMPLES, pxPerUnit);
        }
      }
      factors[y * widthPx + x] = shade;
      sum += shade;
    }
  }
  const mean = sum / factors.length;
  let largest = 0;
  for (let i = 0; i < factors.length; i++) {
    factors[i] = factors[i]! / mean;
    largest = Math.max(largest, factors[i]!);
  }
  return { widthPx, heightPx, factors, largest };
}
