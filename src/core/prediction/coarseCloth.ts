/** A cloth by groups of bands: what its wetted colour changes by, at a third of the price. */
import type { WeightSet } from "../colorimetry/weights.ts";
import type { Spectrum } from "../spectrum/spectrum.ts";
import { GROUP_COUNT, groupMeans, groupShares, groupSums } from "./bandGroups.ts";
import { type ResidentBands, residentBands } from "./kernel/residentBands.ts";

export interface CoarseCloth {
  /** K/S of the bare cloth, and of the dyed fibre alone where it is known, by group. */
  readonly ks: Spectrum;
  readonly dyedFibreKs: Spectrum | null;
  /** Weights of light and observer. */
  readonly x: Spectrum;
  readonly y: Spectrum;
  readonly z: Spectrum;
  /** K/S, and the weights, for the band kernel. */
  readonly resident: ResidentBands;
  readonly residentWeights: ResidentBands;
}

/** A cloth as its groups are made from it. */
interface GroupableCloth {
  readonly weights: WeightSet;
  /** Its reflectance, and that of its dyed fibre alone where it is a heather. */
  readonly bare: Spectrum;
  readonly dyedFibre: Spectrum | null;
  /** Band by band, as the reference clear wets it. */
  readonly wetted: Spectrum;
}

/** Sums over the groups of `weights` times `wetted`, over what each group is by itself: weights that give the same sums. */
function tiedWeights(weights: Spectrum, wetted: Spectrum, byGroup: Spectrum): Spectrum {
  return groupSums(weights.map((weight, i) => weight * wetted[i]!)).map((sum, g) => sum / byGroup[g]!);
}

/**
 * The groups of a cloth. Their weights are such that the cloth under the reference clear has the tristimulus values that
 * all its bands give. @param ksOf K/S of a reflectance. @param wetGroups writes what K/S by group gives under it.
 */
export function coarseCloth(
  { weights, bare, dyedFibre, wetted }: GroupableCloth,
  ksOf: (reflectance: number) => number,
  wetGroups: (out: Spectrum, ks: Spectrum, dyedFibreKs: Spectrum | null) => void,
): CoarseCloth {
  const shares = groupShares(weights);
  const ks = groupMeans(bare, shares).map(ksOf);
  const dyedFibreKs = dyedFibre === null ? null : groupMeans(dyedFibre, shares).map(ksOf);
  const byGroup = new Float64Array(GROUP_COUNT);
  wetGroups(byGroup, ks, dyedFibreKs);
  const x = tiedWeights(weights.x, wetted, byGroup);
  const y = tiedWeights(weights.y, wetted, byGroup);
  const z = tiedWeights(weights.z, wetted, byGroup);
  return {
    ks,
    dyedFibreKs,
    x,
    y,
    z,
    resident: residentBands(dyedFibreKs === null ? [ks] : [ks, dyedFibreKs]),
    residentWeights: residentBands([x, y, z], 3),
  };
}
