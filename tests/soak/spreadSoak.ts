// The spread of every cell of the grid against a large random reference; no cell is left out.
import { cellName, type Miss, missesOf, missText, WHOLE_GRID } from "../core/prediction/spreadGrid.ts";

/** Prints one line per cell that misses and a summary; returns how many cells miss. */
export function soakSpread(
  pointCount: number,
  seed: number,
  print: (line: string) => void,
  everyCell = false,
): number {
  let bad = 0;
  const worst = new Map<Miss["name"], { missed: number; text: string }>();
  WHOLE_GRID.forEach((cell, index) => {
    const misses = missesOf(cell, pointCount, seed + index);
    for (const miss of misses) {
      if (miss.missed > (worst.get(miss.name)?.missed ?? -1)) {
        worst.set(miss.name, { missed: miss.missed, text: missText(cell, miss) });
      }
    }
    const over = misses.filter(({ missed, allowed }) => !(missed <= allowed));
    if (over.length > 0) bad++;
    for (const miss of over) print(`  MISSES ${missText(cell, miss)}`);
    if (everyCell) {
      const short = misses.map(({ name, predicted, reference }) => {
        return `${name} ${predicted.toFixed(3)} (${(predicted - reference.value).toFixed(3)}, se ${reference.standardError.toFixed(3)})`;
      });
      print(`  ${cellName(cell)}: ${short.join("  ")}`);
    }
  });
  for (const { text } of worst.values()) print(`  worst: ${text}`);
  print(`  ${WHOLE_GRID.length - bad} of ${WHOLE_GRID.length} cells within the promise.`);
  return bad;
}
