/**
 * The colour of a halftone between bare cloth and solid print.
 * J. A. C. Yule & W. J. Nielsen, "The penetration of light into paper and its effect on halftone reproduction",
 * TAGA Proc. 3 (1951) 65-76 (cited from memory).
 */
import { requireFraction, requireReflectance } from "./brightener.ts";

/** n: light that enters beside a dot leaves through it. Published: 2 is the limit of full spreading in the substrate. */
export const YULE_NIELSEN_FACTOR = 2;

/**
 * R = [(1-a) Rbare^(1/n) + a Rprint^(1/n)]^n (Yule & Nielsen 1951); n = 1 is Murray-Davies. A solid (a = 1) gives
 * the print and a = 0 the bare cloth, to the last digit.
 * @param bareReflectance 0..1.5. @param printReflectance 0..1.5. @param areaFraction a, 0..1.
 * @param factor n, >= 1 and finite. @throws RangeError outside these ranges.
 */
export function halftoneReflectance(
  bareReflectance: number,
  printReflectance: number,
  areaFraction: number,
  factor: number = YULE_NIELSEN_FACTOR,
): number {
  requireReflectance("bareReflectance", bareReflectance);
  requireReflectance("printReflectance", printReflectance);
  requireFraction("areaFraction", areaFraction);
  if (!(factor >= 1 && factor < Infinity)) {
    throw new RangeError(`Yule-Nielsen factor must be >= 1 and finite; got ${factor}`);
  }
  if (areaFraction === 1) return printReflectance;
  if (areaFraction === 0) return bareReflectance;
  const open = 1 - areaFraction;
  if (factor === 2) {
    const root = open * Math.sqrt(bareReflectance) + areaFraction * Math.sqrt(printReflectance);
    return root * root;
  }
  const exponent = 1 / factor;
  return (open * bareReflectance ** exponent + areaFraction * printReflectance ** exponent) ** factor;
}
