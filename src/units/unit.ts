/**
 * Shows stored SI values in the unit a shop likes and reads what it types back into SI.
 *
 * Showing never touches the stored value: a unit switch changes the view only. Stored are degrees Celsius,
 * millimetres, threads per centimetre, grams, kilograms and grams per square metre.
 */
import {
  CM_PER_INCH,
  CM3_PER_US_GALLON,
  FAHRENHEIT_AT_FREEZING,
  FAHRENHEIT_PER_CELSIUS,
  GRAMS_PER_OUNCE,
  GSM_PER_OUNCE_PER_SQUARE_YARD,
  KG_PER_POUND,
  MM_PER_INCH,
  SQUARE_M_PER_SQUARE_INCH,
} from "./factors.ts";

export interface Unit {
  /** The unit as it stands after a number on the screen. */
  readonly symbol: string;
  /** Digits after the point that a shop would write. */
  readonly decimals: number;
  readonly fromStored: (stored: number) => number;
  readonly toStored: (shown: number) => number;
}

function unit(symbol: string, decimals: number, storedPerShown: number): Unit {
  return {
    symbol,
    decimals,
    fromStored: (stored) => stored / storedPerShown,
    toStored: (shown) => shown * storedPerShown,
  };
}

export const CELSIUS: Unit = unit("°C", 0, 1);
export const FAHRENHEIT: Unit = {
  symbol: "°F",
  decimals: 0,
  fromStored: (celsius) => celsius * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_FREEZING,
  toStored: (fahrenheit) => (fahrenheit - FAHRENHEIT_AT_FREEZING) / FAHRENHEIT_PER_CELSIUS,
};
export const MILLIMETRE: Unit = unit("mm", 0, 1);
export const INCH: Unit = unit("in", 2, MM_PER_INCH);
/** Areas are stored in square metres. */
export const SQUARE_CM: Unit = unit("cm²", 0, 1e-4);
export const SQUARE_INCH: Unit = unit("in²", 1, SQUARE_M_PER_SQUARE_INCH);
export const PER_CM: Unit = unit("threads/cm", 0, 1);
/** Fewer centimetres than inches in a length, so more threads: n per inch are n / 2.54 per cm. */
export const PER_INCH: Unit = unit("threads/in", 0, 1 / CM_PER_INCH);
export const GRAM: Unit = unit("g", 1, 1);
export const OUNCE: Unit = unit("oz", 2, GRAMS_PER_OUNCE);
export const KILOGRAM: Unit = unit("kg", 2, 1);
export const POUND: Unit = unit("lb", 2, KG_PER_POUND);
/** Volumes are stored in cubic centimetres. */
export const LITRE: Unit = unit("l", 2, 1000);
export const US_GALLON: Unit = unit("US gal", 2, CM3_PER_US_GALLON);
export const GSM: Unit = unit("g/m²", 1, 1);
export const OUNCE_PER_SQUARE_YARD: Unit = unit("oz/yd²", 2, GSM_PER_OUNCE_PER_SQUARE_YARD);

/** The stored value in a unit, unrounded. */
export function show(stored: number, shownIn: Unit): number {
  return shownIn.fromStored(stored);
}

/** The stored value as text in a unit, rounded for reading only, with its symbol. */
export function format(stored: number, shownIn: Unit, decimals = shownIn.decimals): string {
  return `${formatNumber(stored, shownIn, decimals)} ${shownIn.symbol}`;
}

/** As `format`, without the symbol. A zero has no sign. */
export function formatNumber(stored: number, shownIn: Unit, decimals = shownIn.decimals): string {
  const text = show(stored, shownIn).toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A number as people type it: a comma or a point before the decimals, a sign, spaces around. */
const TYPED_NUMBER = /^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** What was typed, in SI; null where it is not a number. The unit's own symbol after it is allowed. */
export function parse(typed: string, shownIn: Unit): number | null {
  const trimmed = typed.trim();
  const bare = trimmed.endsWith(shownIn.symbol) ? trimmed.slice(0, -shownIn.symbol.length) : trimmed;
  const text = bare.trim().replace("\u2212", "-");
  if (!TYPED_NUMBER.test(text)) return null;
  return shownIn.toStored(Number(text.replace(",", ".")));
}

/**
 * The stored value after an edit of its text: the old one, bit for bit, where the text still is what the old
 * value shows, so that leaving a field never rounds what is stored; null where it is not a number.
 */
export function parseEdit(
  typed: string,
  stored: number,
  shownIn: Unit,
  decimals = shownIn.decimals,
): number | null {
  const value = parse(typed, shownIn);
  if (value === null) return null;
  return value === parse(formatNumber(stored, shownIn, decimals), shownIn) ? stored : value;
}
