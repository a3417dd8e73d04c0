/**
 * Keeps what is being typed beside the press, per job: a tablet that sleeps drops its page, and with it all that is only
 * in memory. In local storage and not in the database, because it is no document yet.
 */

const KEY = "tonebench.bench.";

export interface BenchDrafts {
  /** The text kept for a job; null where there is none. */
  read(jobId: string): string | null;
  /** Null takes it away. */
  keep(jobId: string, text: string | null): void;
}

/** @param open gives the store; it may throw, or be full: the draft then lasts as long as the page. */
export function benchDrafts(open: () => Storage): BenchDrafts {
  return {
    read(jobId) {
      try {
        return open().getItem(KEY + jobId);
      } catch {
        return null;
      }
    },
    keep(jobId, text) {
      try {
        if (text === null) open().removeItem(KEY + jobId);
        else open().setItem(KEY + jobId, text);
      } catch {
        // A photo may be more than the store takes; the draft is then as safe as the page.
      }
    },
  };
}
