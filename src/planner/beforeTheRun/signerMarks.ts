/** Initials under which signers stand in the narrow cells of the table; the key below it says who is who. */
import type { RunLine } from "./runLines.ts";

function initials(name: string): string {
  return name
    .split(/[\s.-]+/)
    .map((word) => word.charAt(0).toLocaleUpperCase())
    .join("");
}

/** By signer: initials, numbered where two people would share them. */
export function signerMarks(lines: readonly RunLine[]): ReadonlyMap<string, string> {
  const marks = new Map<string, string>();
  const taken = new Set<string>();
  for (const { items } of lines) {
    for (const { state, entry } of items) {
      if (state !== "signed" || entry === null || marks.has(entry.signer)) continue;
      const wanted = initials(entry.signer) || "?";
      let mark = wanted;
      for (let number = 2; taken.has(mark); number++) mark = `${wanted}${number}`;
      taken.add(mark);
      marks.set(entry.signer, mark);
    }
  }
  return marks;
}
