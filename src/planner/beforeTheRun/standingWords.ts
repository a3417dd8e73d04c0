/** How a line stands before the run, in words. */
import { dayWords, itemName, timeWords } from "../words/checklistSentences.ts";
import { listed } from "../words/listed.ts";
import type { ItemState, RunLine } from "./runLines.ts";

export function openNames(open: readonly ItemState[]): string {
  return listed(open.map(({ item }) => itemName(item.code).toLowerCase()));
}

/** Short, for the table. */
export function standingWords({ standing, open, entries }: RunLine): string {
  const { override } = entries;
  switch (standing) {
    case "pending":
      return "predicting…";
    case "held":
      return `held by ${entries.standing?.signer ?? ""}`;
    case "released":
      return `released by ${entries.standing?.signer ?? ""}, ${dayWords(entries.standing?.at ?? "")}`;
    case "ready":
      return override === null ? "ready to release" : "ready by override";
    case "blocked":
      if (open.some(({ item }) => item.kind === "choice")) return "blocked";
      return open.length === 0 ? "not predicted" : `blocked by ${open.length}`;
  }
}

/** The state of an item in full. */
export function itemStateWords({ item, state, entry }: ItemState): string {
  const by = entry === null ? "" : `by ${entry.signer}, ${timeWords(entry.at)}`;
  switch (state) {
    case "signed":
      return `signed ${by}`;
    case "withdrawn":
      return `withdrawn ${by}`;
    case "earlier":
      return `signed for an earlier choice ${by}`;
    case "open":
      return item.blocking ? "open" : "advised";
  }
}

/** The state of an item in the table's cell. */
export function itemCellWords({ item, state }: ItemState): string {
  if (state === "earlier") return "earlier choice";
  if (state === "open") return item.blocking ? "open" : "advised";
  return state;
}

/** How many are released, and what keeps the rest, the most frequent first. */
export function summarySentences(lines: readonly RunLine[]): string[] {
  const released = lines.filter(({ standing }) => standing === "released").length;
  const rest = lines.filter(({ standing }) => standing !== "released");
  const counts = new Map<string, number>();
  const count = (name: string) => counts.set(name, (counts.get(name) ?? 0) + 1);
  for (const { open, standing, entries } of rest) {
    if (standing === "held") count("held");
    else if (standing === "ready") count("ready to release");
    else if (standing === "pending") count("being predicted");
    else if (entries.override === null || open.some(({ item }) => item.kind === "choice")) {
      for (const { item } of open)
        count(item.kind === "choice" ? "no mix yet" : itemName(item.code).toLowerCase());
    }
  }
  const parts = [...counts]
    .toSorted(([, one], [, other]) => other - one)
    .map(([name, number]) => `${name} (${number})`);
  const sentences = [`${released} of ${lines.length} released.`];
  if (parts.length > 0) sentences.push(`The rest: ${parts.join(", ")}.`);
  return sentences;
}
