/** Which entries of an append-only list stand: those that no later one corrects. */

interface Superseding {
  readonly id: string;
  readonly supersedesId: string | null;
}

export function standing<Entry extends Superseding>(entries: readonly Entry[]): Entry[] {
  const superseded = new Set(entries.map((entry) => entry.supersedesId));
  return entries.filter((entry) => !superseded.has(entry.id));
}

/** The entries that stand, each correction where the entry stood that it corrects in the end: a log read in its order. */
export function standingInPlace<Entry extends Superseding>(entries: readonly Entry[]): Entry[] {
  const known = new Set(entries.map(({ id }) => id));
  const correctionOf = new Map(
    entries.flatMap((entry) => (entry.supersedesId === null ? [] : [[entry.supersedesId, entry] as const])),
  );
  return entries
    .filter(({ supersedesId }) => supersedesId === null || !known.has(supersedesId))
    .map((first) => {
      let entry = first;
      for (let next = correctionOf.get(entry.id); next !== undefined; next = correctionOf.get(entry.id))
        entry = next;
      return entry;
    });
}

/** The entry of that id as it is known now: its last correction where it was corrected. Null where there is none. */
export function lastCorrection<Entry extends Superseding>(
  entries: readonly Entry[],
  id: string | null,
): Entry | null {
  let found = entries.find((entry) => entry.id === id) ?? null;
  // No chain is longer than the list: in a damaged file two entries may correct each other.
  for (let steps = 0; steps < entries.length && found !== null; steps++) {
    const { id: known }: Superseding = found;
    found = entries.find(({ supersedesId }) => supersedesId === known) ?? found;
  }
  return found;
}
