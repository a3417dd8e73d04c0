/** Which entries of an append-only list stand: those that no later one corrects. */

interface Superseding {
  readonly id: string;
  readonly supersedesId: string | null;
}

export function standing<Entry extends Superseding>(entries: readonly Entry[]): Entry[] {
  const superseded = new Set(entries.map((entry) => entry.supersedesId));
  return entries.filter((entry) => !superseded.has(entry.id));
}
