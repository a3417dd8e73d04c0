// The spread of one cell by brute force: the exact model under random draws of every unknown, nothing approximated.
// It shares with the code under test the model itself (printedReflectance) and the sizes of the unknowns, not the grid.
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import { deltaHueAb } from "../../../src/core/colorimetry/difference.ts";
import type { Application, InkMix, TargetBand } from "../../../src/core/prediction/inputs.ts";
import { printedReflectance } from "../../../src/core/prediction/printedReflectance.ts";
import * as unknowns from "../../../src/core/prediction/unknowns.ts";
import type { WettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { type SeededRandom, seededRandom } from "./seededRandom.ts";

/** A quantile or a chance with what its own randomness makes it uncertain by (one standard error). */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

export interface ReferenceSpread {
  readonly chanceInBand: Estimate;
  readonly deltaL5: Estimate;
  readonly deltaL50: Estimate;
  readonly deltaL95: Estimate;
}

/** The mix without its colourants, its bases making up the whole. */
function clearOf(mix: InkMix): InkMix {
  const bases = mix.parts.filter((part) => part.kind === "base");
  const mass = bases.reduce((sum, part) => sum + part.massFraction, 0);
  return {
    ...mix,
    parts: bases.map((part) => ({ ...part, massFraction: part.massFraction / mass })),
  };
}

/** One draw of every unknown of model.md §6. */
function drawSurprise(
  random: SeededRandom,
  cloth: WettableGarment,
  mix: InkMix,
  application: Application,
): Required<unknowns.Surprise> {
  const { normal } = random;
  const widening = unknowns.darkWidening(cloth.darkShare);
  const epsilon =
    unknowns.STYLE_SCALE * random.student5() +
    unknowns.MILL_SD * normal() +
    unknowns.COLOURWAY_SD * normal() +
    unknowns.LOT_SD * normal() +
    unknowns.BASE_ON_STYLE_SD * normal();
  const finish = cloth.garment.resistantFinish ? unknowns.RESISTANT_FINISH_SD * normal() : 0;
  // A fibre's gain is one unknown however often the fibre is on the label.
  const gainByFibre = new Map<string, number>();
  for (const { fibre } of cloth.garment.fibres) {
    if (!gainByFibre.has(fibre)) gainByFibre.set(fibre, unknowns.FIBRE_GAIN_SD * normal());
  }
  const tintMiss = unknowns.DISCREPANCY_LN_TINT * normal();
  return {
    lnWetOut: widening * epsilon + finish + unknowns.DISCREPANCY_LN_WET_OUT * normal(),
    lnFibreGain: cloth.garment.fibres.map(({ fibre }) => gainByFibre.get(fibre)!),
    lnPartStrength: mix.parts.map((part) => {
      if (part.kind === "colourant") return unknowns.COLOURANT_STRENGTH_SD * normal() + tintMiss;
      return part.reference ? 0 : unknowns.BASE_STRENGTH_SD * normal();
    }),
    lnPartScattering: mix.parts.map((part) => {
      if (part.kind === "base") return unknowns.HAZE_SD * normal();
      return part.family === "black" ? unknowns.BLACK_SCATTERING_SD * normal() : 0;
    }),
    closedFractionShift: mix.parts.map((part) =>
      part.kind === "base" ? unknowns.CLOSED_FRACTION_SD * normal() : 0,
    ),
    lnDeposit:
      (application.depositWeighed ? unknowns.DEPOSIT_SD_WEIGHED : unknowns.DEPOSIT_SD_ESTIMATED) * normal() +
      unknowns.DEPOSIT_SD_PRINT_TO_PRINT * normal(),
  };
}

/** The same draw for the mix without its colourants. */
function clearSurprise(mix: InkMix, surprise: Required<unknowns.Surprise>): unknowns.Surprise {
  const ofBases = (values: readonly number[]): number[] =>
    values.filter((_, i) => mix.parts[i]!.kind === "base");
  return {
    ...surprise,
    lnPartStrength: ofBases(surprise.lnPartStrength),
    lnPartScattering: ofBases(surprise.lnPartScattering),
    closedFractionShift: ofBases(surprise.closedFractionShift),
  };
}

/** Half the gap of a heather's two models counts as model spread (model.md §3); 0 for other cloth. */
function heatherMissL(cloth: WettableGarment, mix: InkMix, application: Application): number {
  if (cloth.dyedFibreKs === null) return 0;
  const asSolid: WettableGarment = { ...cloth, dyedFibreKs: null };
  const [solid, blended] = [asSolid, cloth].map(
    (one) => labFromReflectance(printedReflectance(one, mix, application), one.weights).L,
  );
  return (solid! - blended!) / 2;
}

/** Standard error of a quantile, sqrt(p (1 - p) / N) / density, the density from the draws on both sides of it. */
function quantileOfSorted(sorted: Float64Array, probability: number): Estimate {
  const count = sorted.length;
  const at = (p: number): number => sorted[Math.min(count - 1, Math.max(0, Math.round(p * count - 0.5)))]!;
  const reach = Math.min(probability, 1 - probability) / 5;
  const perProbability = (at(probability + reach) - at(probability - reach)) / (2 * reach);
  return {
    value: at(probability),
    standardError: perProbability * Math.sqrt((probability * (1 - probability)) / count),
  };
}

/** `count` prints drawn from the prior of unknowns.ts: their 5, 50 and 95 % points of delta-L* and the part in band. */
export function randomReference(
  cloth: WettableGarment,
  mix: InkMix,
  application: Application,
  band: TargetBand,
  count: number,
  seed: number,
): ReferenceSpread {
  const random = seededRandom(seed);
  const { normal } = random;
  const clear = clearOf(mix);
  const hasTint = clear.parts.length < mix.parts.length;
  const widthL = Math.hypot(unknowns.DISCREPANCY_DELTA_L, heatherMissL(cloth, mix, application));
  const deltas = new Float64Array(count);
  let hits = 0;
  for (let i = 0; i < count; i++) {
    const surprise = drawSurprise(random, cloth, mix, application);
    const exact = labFromReflectance(printedReflectance(cloth, mix, application, surprise), cloth.weights);
    const printed = {
      L: exact.L + widthL * normal(),
      a: exact.a + unknowns.DISCREPANCY_AB * normal(),
      b: exact.b + unknowns.DISCREPANCY_AB * normal(),
    };
    const deltaL = printed.L - cloth.bareLab.L;
    deltas[i] = deltaL;
    if (Math.abs(deltaL - band.deltaL) > band.tolerance) continue;
    if (hasTint) {
      const reflectance = printedReflectance(cloth, clear, application, clearSurprise(mix, surprise));
      const clearHue = Math.abs(deltaHueAb(cloth.bareLab, labFromReflectance(reflectance, cloth.weights)));
      if (Math.abs(deltaHueAb(cloth.bareLab, printed)) - clearHue > band.hueLimit) continue;
    }
    hits++;
  }
  deltas.sort();
  const chance = hits / count;
  return {
    chanceInBand: { value: chance, standardError: Math.sqrt((chance * (1 - chance)) / count) },
    deltaL5: quantileOfSorted(deltas, 0.05),
    deltaL50: quantileOfSorted(deltas, 0.5),
    deltaL95: quantileOfSorted(deltas, 0.95),
  };
}
