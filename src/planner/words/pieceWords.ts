/** How counts of pieces read: grouped in thousands, "1 piece" and "7,200 pieces". */
const GROUPED = new Intl.NumberFormat("en-GB");

export function groupedCount(count: number): string {
  return GROUPED.format(count);
}

export function pieces(count: number): string {
  return `${GROUPED.format(count)} ${count === 1 ? "piece" : "pieces"}`;
}
