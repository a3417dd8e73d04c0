/** The units a shop chose, by what is measured. */
import {
  CELSIUS,
  FAHRENHEIT,
  GRAM,
  GSM,
  INCH,
  KILOGRAM,
  LITRE,
  MILLIMETRE,
  OUNCE,
  OUNCE_PER_SQUARE_YARD,
  PER_CM,
  PER_INCH,
  POUND,
  SQUARE_CM,
  SQUARE_INCH,
  type Unit,
  US_GALLON,
} from "./unit.ts";

/** As the shop's defaults store it. */
export interface UnitChoice {
  readonly temperature: "celsius" | "fahrenheit";
  readonly length: "mm" | "inch";
  readonly threadCount: "per-cm" | "per-inch";
  readonly mass: "gram" | "ounce";
}

export interface ShopUnits {
  readonly temperature: Unit;
  readonly length: Unit;
  readonly area: Unit;
  readonly threadCount: Unit;
  readonly mass: Unit;
  /** For pots and prices: kilograms beside grams, pounds beside ounces. */
  readonly potMass: Unit;
  readonly potVolume: Unit;
  readonly massPerArea: Unit;
}

export function shopUnits(choice: UnitChoice): ShopUnits {
  const metricMass = choice.mass === "gram";
  return {
    temperature: choice.temperature === "celsius" ? CELSIUS : FAHRENHEIT,
    length: choice.length === "mm" ? MILLIMETRE : INCH,
    area: choice.length === "mm" ? SQUARE_CM : SQUARE_INCH,
    threadCount: choice.threadCount === "per-cm" ? PER_CM : PER_INCH,
    mass: metricMass ? GRAM : OUNCE,
    potMass: metricMass ? KILOGRAM : POUND,
    potVolume: metricMass ? LITRE : US_GALLON,
    massPerArea: metricMass ? GSM : OUNCE_PER_SQUARE_YARD,
  };
}
