// Reads a number as it was printed and says how far the true value may be from it: half a unit of its last digit.

/** Room for a true value that lies exactly on the rounding edge. */
const EDGE = 1e-12;

export function printedValue(printed: string): { value: number; tolerance: number } {
  const decimals = printed.split(".")[1]?.length ?? 0;
  return { value: Number(printed), tolerance: 0.5 * 10 ** -decimals + EDGE };
}

/** The distance from the printed value in units of what rounding explains: at most 1 where both agree. */
export function missOf(computed: number, printed: string): number {
  const { value, tolerance } = printedValue(printed);
  return Math.abs(computed - value) / tolerance;
}
