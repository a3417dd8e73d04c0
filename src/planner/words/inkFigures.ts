/** Amounts of ink in words: with the digits that a scale shows, in the shop's unit, never without it. */
import { shopUnits, type UnitChoice } from "../../units/shopUnits.ts";
import { format, GRAM, show, type Unit } from "../../units/unit.ts";

const GROUPED = (decimals: number) =>
  new Intl.NumberFormat("en-GB", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });

/** From here on an amount reads better in kilograms or pounds. */
const SHOWN_IN_POTS_FROM_GRAMS = 1000;
/** More digits than any scale of an ink room has. */
const MOST_DECIMALS = 4;
/** Room for the last digits of a conversion. */
const SLACK = 1e-6;

/** Digits after the point that a number needs to tell steps of this size apart. */
export function decimalsOfStep(step: number): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals++) {
    const steps = step * 10 ** decimals;
    if (Math.abs(steps - Math.round(steps)) < SLACK && Math.round(steps) >= 1) return decimals;
  }
  return MOST_DECIMALS;
}

/** A step that a scale is made with: 1, 2 or 5 of some digit. */
function isRoundStep(step: number): boolean {
  const count = Math.round(step * 10 ** decimalsOfStep(step));
  const isWhole = Math.abs(step * 10 ** decimalsOfStep(step) - count) < SLACK;
  return isWhole && [1, 2, 5].includes(count / 10 ** Math.floor(Math.log10(Math.max(count, 1))));
}

/** What the scale shows, with its digits: grams, unless its step is a round one in the shop's own unit alone. */
export function scaleUnit(stepGrams: number, units: UnitChoice): Unit {
  const { mass } = shopUnits(units);
  const shown = !isRoundStep(stepGrams) && isRoundStep(show(stepGrams, mass)) ? mass : GRAM;
  return { ...shown, decimals: decimalsOfStep(show(stepGrams, shown)) };
}

const inUnit = (grams: number, unit: Unit) =>
  `${GROUPED(unit.decimals).format(show(grams, unit))}\u00a0${unit.symbol}`;

/** "0.1 g": a step, or an amount, as the scale shows it. */
export function onScaleWords(grams: number, stepGrams: number, units: UnitChoice): string {
  return inUnit(grams, scaleUnit(stepGrams, units));
}

/** "2,310.5 g" as the scale shows it; where the shop thinks in ounces, with those behind it. */
export function scaleWords(grams: number, stepGrams: number, units: UnitChoice): string {
  const { mass } = shopUnits(units);
  const shown = scaleUnit(stepGrams, units);
  const words = inUnit(grams, shown);
  return shown.symbol === mass.symbol ? words : `${words} (${inUnit(grams, mass)})`;
}

/** "2.31 kg", "460 g": for reading, not for weighing. */
export function amountWords(grams: number, units: UnitChoice): string {
  const { mass, potMass } = shopUnits(units);
  if (Math.abs(grams) >= SHOWN_IN_POTS_FROM_GRAMS) {
    return `${GROUPED(potMass.decimals).format(show(grams / 1000, potMass))}\u00a0${potMass.symbol}`;
  }
  return `${GROUPED(mass.decimals).format(show(grams, mass))}\u00a0${mass.symbol}`;
}

/** "2.31 g": of one print, with a digit more than pots are weighed by. */
export function perPrintWords(grams: number, units: UnitChoice): string {
  const { mass } = shopUnits(units);
  return `${show(grams, mass).toFixed(mass.decimals + 1)}\u00a0${mass.symbol}`;
}

/** "425 cm²" or "65.9 in²". */
export function areaWords(areaM2: number, units: UnitChoice): string {
  return format(areaM2, shopUnits(units).area).replace(" ", "\u00a0");
}

/** A temperature as the shop reads it. */
export function temperatureWords(celsius: number, units: UnitChoice): string {
  return format(celsius, shopUnits(units).temperature).replace(" ", "\u00a0");
}

/** "0.7142 %" with as many digits as tell two weighings apart. */
export function truePercentWords(fraction: number): string {
  const percent = fraction * 100;
  const decimals = percent >= 10 ? 2 : percent >= 1 ? 3 : 4;
  return `${Number(percent.toFixed(decimals))}\u00a0%`;
}

/** "12 min". */
export function minutesWords(minutes: number): string {
  return `${Math.round(minutes)}\u00a0min`;
}
