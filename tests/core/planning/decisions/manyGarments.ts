// A large invented job for the mix search: garments that react differently, a ladder of mixes, a few screens.
import type { MixSearchProblem } from "../../../../src/core/planning/decisions/mixSearch.ts";
import { normalCumulative } from "../../../../src/core/prediction/normalDistribution.ts";
import { seededRandom } from "../../prediction/seededRandom.ts";

const TARGET = -4;
const TOLERANCE = 1.5;

/** Everything in it is invented; effects in delta-L*, money as in the demo. */
export function manyGarments(
  seed: number,
  counts: { readonly garments: number; readonly mixes: number; readonly setUps: number },
): MixSearchProblem {
  const random = seededRandom(seed);
  const tints = [0, 0.1, 0.25, 0.5, 1, 2];
  const strengths = Array.from({ length: Math.ceil(counts.mixes / tints.length) }, (_, b) => 1 - 0.08 * b);
  const mixes = Array.from({ length: counts.mixes }, (_, m) => ({
    id: `mix ${m}`,
    openingCost: 12 + 10 * random.uniform(),
    inStock: true,
    lowCure: m % 3 === 0,
    strength: strengths[Math.floor(m / tints.length)]!,
    tint: tints[m % tints.length]!,
  }));
  const setUps = Array.from({ length: counts.setUps }, (_, s) => ({
    id: `set-up ${s}`,
    openingCost: 25,
    inStock: true,
    film: 1 - 0.25 * s,
  }));
  const garments = Array.from({ length: counts.garments }, (_, g) => ({
    id: `garment ${g}`,
    unservedCost: 400,
    wetOut: 4.5 * Math.exp(0.7 * random.normal()),
    tinted: 5 + 3 * random.uniform(),
    sd: 0.3 + random.uniform(),
    lossIfOut: 50 + 3000 * random.uniform() ** 3,
    pieceCount: 20 + 500 * random.uniform(),
  }));
  const options = garments.flatMap((garment) =>
    mixes.flatMap((mix) =>
      setUps.map((setUp) => {
        const deltaL = -(garment.wetOut * mix.strength + garment.tinted * mix.tint) * setUp.film;
        const sd = garment.sd * (1 + 0.1 * Math.abs(deltaL));
        const chanceInBand =
          normalCumulative((TARGET + TOLERANCE - deltaL) / sd) -
          normalCumulative((TARGET - TOLERANCE - deltaL) / sd);
        return {
          garmentId: garment.id,
          mixId: mix.id,
          setUpId: setUp.id,
          inkCost: garment.pieceCount * 0.01 * setUp.film * (1 + 0.1 * mix.tint),
          expectedLoss: garment.lossIfOut * (1 - chanceInBand),
          chanceInBand,
        };
      }),
    ),
  );
  return { garments, mixes, setUps, options };
}
