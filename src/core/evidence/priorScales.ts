/** How far each kind of unknown may be off before any record: standard deviations, the model's own or a shop's. */
import * as unknowns from "../prediction/unknowns.ts";

/** Standard deviations by kind (model.md §6): natural logarithms, but the closed fraction. */
export interface PriorScales {
  /** Scale of the style's Student-t, whose standard deviation is sqrt(5/3) times this. */
  readonly styleScale: number;
  readonly mill: number;
  readonly colourway: number;
  readonly lot: number;
  readonly baseOnStyle: number;
  readonly fibreGain: number;
  readonly baseStrength: number;
  readonly haze: number;
  readonly closedFraction: number;
  readonly colourantStrength: number;
  readonly blackScattering: number;
  readonly depositEstimated: number;
  readonly depositWeighed: number;
}

export const DEFAULT_PRIOR_SCALES: PriorScales = {
  styleScale: unknowns.STYLE_SCALE,
  mill: unknowns.MILL_SD,
  colourway: unknowns.COLOURWAY_SD,
  lot: unknowns.LOT_SD,
  baseOnStyle: unknowns.BASE_ON_STYLE_SD,
  fibreGain: unknowns.FIBRE_GAIN_SD,
  baseStrength: unknowns.BASE_STRENGTH_SD,
  haze: unknowns.HAZE_SD,
  closedFraction: unknowns.CLOSED_FRACTION_SD,
  colourantStrength: unknowns.COLOURANT_STRENGTH_SD,
  blackScattering: unknowns.BLACK_SCATTERING_SD,
  depositEstimated: unknowns.DEPOSIT_SD_ESTIMATED,
  depositWeighed: unknowns.DEPOSIT_SD_WEIGHED,
};
