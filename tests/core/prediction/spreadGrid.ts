// The grid on which the spread is held against the random reference: every garment x mix x way to know the deposit.
import type { Application, InkMix, TargetBand } from "../../../src/core/prediction/inputs.ts";
import { printableInk } from "../../../src/core/prediction/printableInk.ts";
import { workspaceFor } from "../../../src/core/prediction/printedColour.ts";
import { spreadOf } from "../../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { GARMENTS, VIEWING } from "./cloths.ts";
import { base, black, FINE_DEPOSIT_UM, mixOf, navy, SOFT_WHITE, STROKE, tinted } from "./inks.ts";
import { type Estimate, randomReference } from "./randomReference.ts";

/** Promised by model.md §5 against a reference of 10^5 points. */
export const CHANCE_TOLERANCE = 0.015;
export const DELTA_L_TOLERANCE = 0.15;
/** The reference is itself random: this many of its standard errors come on top, so that noise alone (1 in 700) passes. */
export const REFERENCE_ERRORS = 3;

const DARKER: TargetBand = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const LIGHTER: TargetBand = { deltaL: 20, tolerance: 5, hueLimit: 2 };

interface GridMix {
  readonly mix: InkMix;
  readonly depositUm: number;
  readonly band: TargetBand;
}

export const GRID_MIXES: Readonly<Record<string, GridMix>> = {
  "curable clear": { mix: mixOf(base("curable")), depositUm: 20, band: DARKER },
  "matt clear": { mix: mixOf(base("matt")), depositUm: 20, band: DARKER },
  "gloss clear": { mix: mixOf(base("gloss")), depositUm: 20, band: DARKER },
  "0.5 % black": { mix: tinted("curable", black, 0.005), depositUm: 20, band: DARKER },
  "matt clear with 0.5 % black": { mix: tinted("matt", black, 0.005), depositUm: 20, band: DARKER },
  "1 % navy": { mix: tinted("curable", navy, 0.01), depositUm: 20, band: DARKER },
  "soft white": { mix: SOFT_WHITE, depositUm: FINE_DEPOSIT_UM, band: LIGHTER },
};

export interface GridCell {
  readonly garment: string;
  readonly mix: string;
  readonly depositWeighed: boolean;
}

export const WHOLE_GRID: readonly GridCell[] = Object.keys(GARMENTS).flatMap((garment) =>
  Object.keys(GRID_MIXES).flatMap((mix) =>
    [true, false].map((depositWeighed) => ({ garment, mix, depositWeighed })),
  ),
);

/** One number of a cell: how far it misses, and how far it may. */
export interface Miss {
  readonly name: "chance" | "5 %" | "50 %" | "95 %";
  readonly predicted: number;
  readonly reference: Estimate;
  readonly allowed: number;
  readonly missed: number;
}

export const cellName = ({ garment, mix, depositWeighed }: GridCell): string =>
  `${garment}, ${mix}, deposit ${depositWeighed ? "weighed" : "estimated"}`;

/** The spread of a cell beside its reference of `count` points. */
export function missesOf(cell: GridCell, count: number, seed: number): Miss[] {
  const { mix, depositUm, band } = GRID_MIXES[cell.mix]!;
  const application: Application = { ...STROKE, depositUm, depositWeighed: cell.depositWeighed };
  const cloth = wettableGarment(GARMENTS[cell.garment]!, VIEWING);
  const spread = spreadOf(workspaceFor(cloth), cloth, printableInk(mix, application), band);
  const reference = randomReference(cloth, mix, application, band, count, seed);
  const miss = (name: Miss["name"], predicted: number, estimate: Estimate, tolerance: number): Miss => ({
    name,
    predicted,
    reference: estimate,
    allowed: tolerance + REFERENCE_ERRORS * estimate.standardError,
    missed: Math.abs(predicted - estimate.value),
  });
  return [
    miss("chance", spread.chanceInBand, reference.chanceInBand, CHANCE_TOLERANCE),
    miss("5 %", spread.deltaL5, reference.deltaL5, DELTA_L_TOLERANCE),
    miss("50 %", spread.deltaL50, reference.deltaL50, DELTA_L_TOLERANCE),
    miss("95 %", spread.deltaL95, reference.deltaL95, DELTA_L_TOLERANCE),
  ];
}

/** A miss as one line. */
export function missText(cell: GridCell, { name, predicted, reference, allowed, missed }: Miss): string {
  const digits = (value: number): string => value.toFixed(3);
  const { value, standardError } = reference;
  return `${cellName(cell)}: ${name} ${digits(predicted)}, reference ${digits(value)} ± ${digits(standardError)}, off by ${digits(missed)} of ${digits(allowed)} allowed`;
}
