/** Writes what was changed a moment after the last change, one write at a time, and says how it stands. */

export type SaveState = "saved" | "saving" | "unsaved" | "failed";

/** Long enough not to write on every keystroke, short enough not to be waited for. Invented default. */
export const AUTOSAVE_DELAY_MS = 400;

/** Changes that never pause, a long drag, are written at least this often. Invented default. */
export const AUTOSAVE_LONGEST_WAIT_MS = 2000;

/** After a refused write it is tried again this much later, and with every change. Invented default. */
export const AUTOSAVE_RETRY_MS = 5000;

export interface AutosaveOptions<State> {
  /** The state as it is now; read when a write starts, so the latest is what is written. */
  readonly read: () => State;
  readonly save: (state: State) => Promise<void>;
  /** Called when the standing changes; with the error when a write failed. */
  readonly onState: (state: SaveState, error?: unknown) => void;
  /** Where "pagehide" and "visibilitychange" are heard: the window. */
  readonly page: EventTarget;
}

export interface Autosave {
  /** To be called after every change. */
  changed(): void;
  /** Writes at once what is not written; true when all is written. */
  flush(): Promise<boolean>;
  /** Stops listening, after writing what is not written. */
  dispose(): Promise<boolean>;
}

function isFinal(error: unknown): boolean {
  return typeof error === "object" && error !== null && "code" in error && error.code === "changed-elsewhere";
}

export function createAutosave<State>({ read, save, onState, page }: AutosaveOptions<State>): Autosave {
  let dirty = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let firstUnwrittenAt: number | null = null;
  let writing: Promise<boolean> | null = null;
  let state: SaveState = "saved";

  function tell(next: SaveState, error?: unknown): void {
    if (next === state && error === undefined) return;
    state = next;
    onState(next, error);
  }

  function schedule(delayMs: number): void {
    clearTimeout(timer);
    timer = setTimeout(() => void flush(), delayMs);
  }

  /** Writes until nothing is unwritten or a write fails. */
  async function write(): Promise<boolean> {
    while (dirty) {
      dirty = false;
      firstUnwrittenAt = null;
      clearTimeout(timer);
      tell("saving");
      try {
        await save(read());
      } catch (error) {
        dirty = true;
        tell("failed", error);
        if (!isFinal(error)) schedule(AUTOSAVE_RETRY_MS);
        return false;
      }
    }
    tell("saved");
    return true;
  }

  function flush(): Promise<boolean> {
    if (writing !== null) return writing;
    // Set before the first write starts, so that whoever hears of it cannot start a second one.
    let settle: (written: boolean) => void = () => {};
    const current = new Promise<boolean>((resolve) => {
      settle = resolve;
    });
    writing = current;
    void write().then((written) => {
      writing = null;
      // What was changed after the last look at `dirty` still has to be written.
      if (written && dirty) changed();
      settle(written && !dirty);
    });
    return current;
  }

  function changed(): void {
    dirty = true;
    const now = performance.now();
    firstUnwrittenAt ??= now;
    if (writing !== null) return;
    tell("unsaved");
    schedule(Math.max(0, Math.min(AUTOSAVE_DELAY_MS, firstUnwrittenAt + AUTOSAVE_LONGEST_WAIT_MS - now)));
  }

  const onHide = () => {
    if (dirty) void flush();
  };
  page.addEventListener("pagehide", onHide);
  page.addEventListener("visibilitychange", onHide);

  return {
    changed,
    flush,
    dispose() {
      page.removeEventListener("pagehide", onHide);
      page.removeEventListener("visibilitychange", onHide);
      return flush().finally(() => clearTimeout(timer));
    },
  };
}
