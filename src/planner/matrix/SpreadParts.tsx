/** What the spread is made of: each unknown's share of the variance, as bars with words and figures. */
import type { Spread } from "../../core/prediction/prediction.ts";
import { SPREAD_WORDS } from "../words/predictionSentences.ts";

/** More bars than this are not read; the small ones are added up. */
const SHOWN_COUNT = 7;

interface Part {
  readonly words: string;
  readonly share: number;
}

/** Shares of the variance, largest first, the small ones together; they sum to 1. */
export function spreadParts(sources: Spread["sources"]): Part[] {
  const total = sources.reduce((sum, { sdDeltaL }) => sum + sdDeltaL ** 2, 0);
  if (total === 0) return [];
  const parts = sources.map(({ source, sdDeltaL }) => ({
    words: SPREAD_WORDS[source],
    share: sdDeltaL ** 2 / total,
  }));
  if (parts.length <= SHOWN_COUNT + 1) return parts;
  const rest = parts.slice(SHOWN_COUNT);
  return [
    ...parts.slice(0, SHOWN_COUNT),
    { words: `${rest.length} others`, share: rest.reduce((sum, { share }) => sum + share, 0) },
  ];
}

export function SpreadParts({ sources }: { readonly sources: Spread["sources"] }) {
  const parts = spreadParts(sources);
  if (parts.length === 0) return <p>Nothing that is known to vary moves this print.</p>;
  const largest = Math.max(...parts.map(({ share }) => share));
  return (
    <dl className="spread-parts">
      {parts.map(({ words, share }) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>
            <span className="spread-parts__track" aria-hidden="true">
              <span className="spread-parts__bar" style={{ width: `${(share / largest) * 100}%` }} />
            </span>
            <span className="spread-parts__share">
              {share < 0.005 ? "under 1" : Math.round(share * 100)}&nbsp;%
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
