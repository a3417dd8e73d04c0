// A shop that obeys the model exactly: unknowns drawn from their priors, prints by the prediction itself, noise as the
// fit believes it. For laws, conditioning and speed; how honest intervals are is measured on tests/generator instead.
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { cellOf, epsilonAt } from "../../../src/core/evidence/cell.ts";
import { DEFAULT_PRIOR_SCALES, type PriorScales } from "../../../src/core/evidence/priorScales.ts";
import { PAIR_SD_SOLID_L, PIECE_TO_PIECE_SD } from "../../../src/core/evidence/readingNoise.ts";
import type { EvidenceGarment, EvidencePrint, EvidenceRecord } from "../../../src/core/evidence/record.ts";
import type { Garment, InkMix } from "../../../src/core/prediction/inputs.ts";
import { printedReflectance } from "../../../src/core/prediction/printedReflectance.ts";
import * as unknowns from "../../../src/core/prediction/unknowns.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import {
  ALL_COTTON,
  cloth,
  FILAMENT_POLYESTER,
  HALF_AND_HALF,
  SPUN_POLYESTER,
  TRI_BLEND,
  VIEWING,
} from "../prediction/cloths.ts";
import { base, black, mixOf, navy, red, STROKE, tinted } from "../prediction/inks.ts";
import { type SeededRandom, seededRandom } from "../prediction/seededRandom.ts";

const COLOURS: readonly (readonly [number, number, number])[] = [
  [21.5, 1.5, -14],
  [30.5, -15, 6.5],
  [48, -3, -20],
  [38, 42, 24],
  [60, 5, 20],
  [72, 0.3, -1],
  [45, 0.4, -1.8],
  [30, 12, -45],
];
const BLENDS = [HALF_AND_HALF, TRI_BLEND, SPUN_POLYESTER, FILAMENT_POLYESTER, ALL_COTTON];
const CLOTHS: readonly Garment[] = COLOURS.flatMap((lab) => BLENDS.map((blend) => cloth(lab, blend)));

export interface NamedMix {
  readonly mix: InkMix;
  readonly itemKeys: readonly string[];
}

/** Clears and tints of the shelf, with the keys of their parts. */
export const MIXES: readonly NamedMix[] = [
  { mix: mixOf(base("gloss")), itemKeys: ["gloss"] },
  { mix: mixOf(base("stretch")), itemKeys: ["stretch"] },
  { mix: mixOf(base("curable")), itemKeys: ["curable"] },
  { mix: mixOf(base("matt")), itemKeys: ["matt"] },
  { mix: tinted("gloss", black, 0.005), itemKeys: ["gloss", "black"] },
  { mix: tinted("curable", black, 0.0025), itemKeys: ["curable", "black"] },
  { mix: tinted("stretch", navy, 0.01), itemKeys: ["stretch", "navy"] },
  { mix: tinted("gloss", red, 0.01), itemKeys: ["gloss", "red"] },
];

/** What a record was made from. */
export interface Truth {
  /** Value of every unknown by key, drawn when first asked for. */
  readonly drawnValue: (key: string, sd: number) => number;
  /** True change of L* of a print, without what happens on one print only. */
  readonly deltaL: (print: EvidencePrint) => number;
  /** Change of L* of one print, with what happens on it and what the model misses, before anyone reads it. */
  readonly onePrint: (print: EvidencePrint) => number;
}

export interface ModelShop {
  readonly lots: readonly EvidenceGarment[];
  readonly records: readonly EvidenceRecord[];
  readonly truth: Truth;
  readonly printOf: (lot: EvidenceGarment, mix: NamedMix, setUp?: number) => EvidencePrint;
  readonly recordOf: (print: EvidencePrint) => EvidenceRecord;
}

const WEIGHTS = weightsFor(VIEWING);

/** A shop of `lotCount` lots, three to a style, and `recordCount` prints on random ones. */
export function modelShop(
  seed: number,
  lotCount: number,
  recordCount: number,
  scales: PriorScales = DEFAULT_PRIOR_SCALES,
): ModelShop {
  const random = seededRandom(seed);
  const { normal } = random;
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random.uniform() * from.length)]!;
  const drawn = new Map<string, number>();
  const drawnValue = (key: string, sd: number): number => {
    let value = drawn.get(key);
    if (value === undefined) {
      value = key.startsWith("style") ? scales.styleScale * random.student5() : sd * normal();
      drawn.set(key, value);
    }
    return value;
  };
  const lots = Array.from({ length: lotCount }, (_, i): EvidenceGarment => {
    const style = Math.floor(i / 3);
    return {
      lotKey: `lot ${i}`,
      styleKey: `style ${style}`,
      millKey: `mill ${i % 2}`,
      colourwayKey: `colour ${Math.floor(random.uniform() * 2)}`,
      garment: pick(CLOTHS),
    };
  });
  const printOf = (garment: EvidenceGarment, { mix, itemKeys }: NamedMix, setUp = 0): EvidencePrint => ({
    garment,
    mix,
    itemKeys,
    application: STROKE,
    setUpKey: `set-up ${setUp}`,
    depositOfThisPrintWeighed: false,
  });
  const surpriseOf = (print: EvidencePrint) => {
    const wettable = wettableGarment(print.garment.garment, VIEWING);
    const cell = cellOf(print, wettable, scales);
    const values = Float64Array.from(cell.unknowns, ({ key, sd, lowest }) =>
      Math.max(lowest, drawnValue(key, sd)),
    );
    const at = (position: number): number => (position < 0 ? 0 : values[position]!);
    return {
      lnWetOut: epsilonAt(cell, values),
      lnFibreGain: Array.from(cell.gainOf, at),
      lnPartStrength: Array.from(cell.strengthOf, at),
      lnPartScattering: Array.from(cell.scatteringOf, at),
      closedFractionShift: Array.from(cell.closedOf, at),
      lnDeposit: at(cell.depositAt),
    };
  };
  const changeOf = (print: EvidencePrint, more: { wet: number; tint: number; deposit: number }) => {
    const at = surpriseOf(print);
    const { garment } = print.garment;
    const reflectance = printedReflectance(wettableGarment(garment, VIEWING), print.mix, print.application, {
      ...at,
      lnWetOut: at.lnWetOut + more.wet,
      lnPartStrength: at.lnPartStrength.map((s, i) =>
        print.mix.parts[i]!.kind === "base" ? s : s + more.tint,
      ),
      lnDeposit: at.lnDeposit + more.deposit,
    });
    return {
      bare: labFromReflectance(garment.bare, WEIGHTS),
      printed: labFromReflectance(reflectance, WEIGHTS),
    };
  };
  let recordCountSoFar = 0;
  const recordOf = (print: EvidencePrint): EvidenceRecord => {
    const id = String(++recordCountSoFar).padStart(5, "0");
    const pairCount = 4;
    const pieceCount = 2;
    const { bare, printed } = changeOf(print, {
      wet: Math.hypot(unknowns.DISCREPANCY_LN_WET_OUT, PIECE_TO_PIECE_SD / Math.sqrt(pieceCount)) * normal(),
      tint: unknowns.DISCREPANCY_LN_TINT * normal(),
      deposit: unknowns.DEPOSIT_SD_PRINT_TO_PRINT * normal(),
    });
    const readingSd = PAIR_SD_SOLID_L / Math.sqrt(pairCount);
    return {
      id,
      printKey: `print ${id}`,
      print,
      viewing: VIEWING,
      reading: {
        kind: "pair",
        bare,
        printed: noisy(random, printed, readingSd),
        pairCount,
        pieceCount,
        sdPairDeltaL: null,
      },
      at: `2026-01-01T00:00:00Z`,
      washCount: 0,
    };
  };
  const records = Array.from({ length: recordCount }, () =>
    recordOf(printOf(pick(lots), pick(MIXES), Math.floor(random.uniform() * 3))),
  );
  const deltaL = (print: EvidencePrint): number => {
    const { bare, printed } = changeOf(print, { wet: 0, tint: 0, deposit: 0 });
    return printed.L - bare.L;
  };
  const onePrint = (print: EvidencePrint): number => {
    const { bare, printed } = changeOf(print, {
      wet: unknowns.DISCREPANCY_LN_WET_OUT * normal(),
      tint: unknowns.DISCREPANCY_LN_TINT * normal(),
      deposit: unknowns.DEPOSIT_SD_PRINT_TO_PRINT * normal(),
    });
    return printed.L - bare.L + unknowns.DISCREPANCY_DELTA_L * normal();
  };
  return { lots, records, truth: { drawnValue, deltaL, onePrint }, printOf, recordOf };
}

function noisy({ normal }: SeededRandom, lab: { L: number; a: number; b: number }, readingSd: number) {
  return {
    L: lab.L + Math.hypot(unknowns.DISCREPANCY_DELTA_L, readingSd) * normal(),
    a: lab.a + Math.hypot(unknowns.DISCREPANCY_AB, 0.6 * readingSd) * normal(),
    b: lab.b + Math.hypot(unknowns.DISCREPANCY_AB, 0.6 * readingSd) * normal(),
  };
}
