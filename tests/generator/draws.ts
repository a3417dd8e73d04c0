/** Seeded draws for the synthetic shops: one stream of random numbers per named part, so that one part's draws never move another's. */
import { type SeededRandom, seededRandom } from "../core/prediction/seededRandom.ts";

/** Heavier than the model believes (5): issue 3 asks for tails that the predictor does not expect. */
const HEAVY_TAIL_DEGREES_OF_FREEDOM = 3;

/** Draws from one stream. */
export interface Draws {
  /** Even over `low`..`high`. */
  readonly between: (low: number, high: number) => number;
  /** A whole number, `low` and `high` included. */
  readonly integer: (low: number, high: number) => number;
  readonly chance: (probability: number) => boolean;
  readonly normal: (sd: number) => number;
  /** Student's t with 3 degrees of freedom, scaled to the standard deviation `sd`. */
  readonly heavyTailed: (sd: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly pickWeighted: <T>(from: readonly (readonly [value: T, weight: number])[]) => T;
  readonly shuffled: <T>(from: readonly T[]) => T[];
  /** Standard deviation of a sample of `count` normal values whose true standard deviation is `sd`; 0 for one value. */
  readonly sampleSd: (sd: number, count: number) => number;
}

/** A 31-bit number from a seed and a word: multiply and fold, so that neighbouring seeds share nothing (FNV's idea, from memory). */
function folded(seed: number, word: string): number {
  let hash = 0x811c9dc5;
  for (const character of `${seed}/${word}`) {
    hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193);
    hash ^= hash >>> 15;
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x45d9f3b);
  return (hash ^ (hash >>> 13)) >>> 1;
}

/** The stream of `part` for `seed`: the same pair gives the same draws for ever. */
export function drawsFor(seed: number, part: string): Draws {
  const random: SeededRandom = seededRandom(folded(seed, part));
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const integer = (low: number, high: number): number => Math.floor(between(low, high + 1));
  const normal = (sd: number): number => sd * random.normal();
  const chiSquare = (degrees: number): number => {
    let sum = 0;
    for (let i = 0; i < degrees; i++) sum += random.normal() ** 2;
    return sum;
  };
  const pick = <T>(from: readonly T[]): T => {
    if (from.length === 0) throw new RangeError("there must be something to pick from; got an empty list");
    return from[integer(0, from.length - 1)]!;
  };
  return {
    between,
    integer,
    chance: (probability) => random.uniform() < probability,
    normal,
    heavyTailed: (sd) => {
      const nu = HEAVY_TAIL_DEGREES_OF_FREEDOM;
      return (sd * Math.sqrt((nu - 2) / nu) * random.normal()) / Math.sqrt(chiSquare(nu) / nu);
    },
    pick,
    pickWeighted: (from) => {
      let left = between(
        0,
        from.reduce((sum, [, weight]) => sum + weight, 0),
      );
      for (const [value, weight] of from) {
        left -= weight;
        if (left < 0) return value;
      }
      return from[from.length - 1]![0];
    },
    shuffled: (from) => {
      const list = [...from];
      for (let i = list.length - 1; i > 0; i--) {
        const j = integer(0, i);
        [list[i], list[j]] = [list[j]!, list[i]!];
      }
      return list;
    },
    sampleSd: (sd, count) => (count < 2 ? 0 : sd * Math.sqrt(chiSquare(count - 1) / (count - 1))),
  };
}
