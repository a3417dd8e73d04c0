/** Names and words that were typed before, to be offered again: each once, the latest first, none empty. */
export function typedBefore(texts: readonly string[]): string[] {
  return [...new Set(texts.filter((text) => text !== ""))].toReversed();
}
