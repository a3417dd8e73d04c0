/** Learning with slips set aside: a record that a slip explains does not teach until someone has answered. */
import { type LearnOptions, learn } from "./learn.ts";
import type { Posterior } from "./posterior.ts";
import type { EvidenceRecord } from "./record.ts";
import { type Suspicion, suspicious } from "./suspicious.ts";

export interface WatchfulOptions extends LearnOptions {
  /** Records that someone has answered for: they teach whatever they look like. */
  readonly kept?: ReadonlySet<string>;
}

/** At most so many records are set aside by themselves; more than that is no slip but a shop the model does not fit. */
const MOST_SET_ASIDE = 20;

/**
 * `learn`, then the record that a slip explains worst is set aside and all learned anew, until none is left; at last each
 * one set aside is held against the rest again and taken back where it no longer stands out (another slip had made it
 * look so).
 */
export function learnWatchfully(
  records: readonly EvidenceRecord[],
  options: WatchfulOptions = {},
): { readonly posterior: Posterior; readonly suspicions: readonly Suspicion[] } {
  const answered = options.setAside ?? new Set<string>();
  const kept = options.kept ?? new Set<string>();
  let setAside = new Set<string>(answered);
  let posterior = learn(records, options);
  let suspicions = suspicious(posterior);
  const relearn = (): void => {
    posterior = learn(records, { ...options, setAside, from: posterior });
    suspicions = suspicious(posterior);
  };
  for (let i = 0; i < MOST_SET_ASIDE; i++) {
    const worst = suspicions.find(
      ({ slip, recordId }) => slip !== null && !setAside.has(recordId) && !kept.has(recordId),
    );
    if (worst === undefined) break;
    setAside = new Set(setAside).add(worst.recordId);
    relearn();
  }
  const explained = new Set(suspicions.filter(({ slip }) => slip !== null).map(({ recordId }) => recordId));
  const stillOut = [...setAside].filter((id) => answered.has(id) || explained.has(id));
  if (stillOut.length < setAside.size) {
    setAside = new Set(stillOut);
    relearn();
  }
  return { posterior, suspicions };
}
