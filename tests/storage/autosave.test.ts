import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  AUTOSAVE_DELAY_MS,
  AUTOSAVE_LONGEST_WAIT_MS,
  AUTOSAVE_RETRY_MS,
  createAutosave,
  type SaveState,
} from "../../src/storage/autosave.ts";
import { StorageError } from "../../src/storage/storageError.ts";

/** A store of one number whose writes take as long as the test says. */
function bench() {
  const page = new EventTarget();
  const states: SaveState[] = [];
  const written: number[] = [];
  const answers: { resolve: () => void; reject: (error: unknown) => void }[] = [];
  let value = 0;
  let held = false;
  const autosave = createAutosave<number>({
    read: () => value,
    save: (state) => {
      written.push(state);
      if (!held) return Promise.resolve();
      return new Promise<void>((resolve, reject) => {
        answers.push({ resolve, reject });
      });
    },
    onState: (state) => states.push(state),
    page,
  });
  return {
    autosave,
    page,
    states,
    written,
    answers,
    hold: () => {
      held = true;
    },
    letGo: () => {
      held = false;
    },
    change: (next: number) => {
      value = next;
      autosave.changed();
    },
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("autosave", () => {
  it("writes once, a moment after the last of several changes, and says unsaved, saving, saved", async () => {
    const { change, written, states } = bench();
    change(1);
    await vi.advanceTimersByTimeAsync(AUTOSAVE_DELAY_MS - 1);
    change(2);
    await vi.advanceTimersByTimeAsync(AUTOSAVE_DELAY_MS - 1);
    expect(written).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(written).toEqual([2]);
    expect(states).toEqual(["unsaved", "saving", "saved"]);
  });

  it("writes during a drag that never pauses", async () => {
    const { change, written } = bench();
    for (let step = 1; step <= 30; step += 1) {
      change(step);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(written.length).toBeGreaterThan(0);
    expect(written[0]).toBeLessThanOrEqual(AUTOSAVE_LONGEST_WAIT_MS / 100 + 1);
  });

  it("never runs two writes at once and writes what changed during a write after it", async () => {
    const { change, written, answers, states, hold } = bench();
    hold();
    change(1);
    await vi.advanceTimersByTimeAsync(AUTOSAVE_DELAY_MS);
    change(2);
    change(3);
    await vi.advanceTimersByTimeAsync(10 * AUTOSAVE_DELAY_MS);
    expect(written).toEqual([1]);
    answers[0]?.resolve();
    await vi.advanceTimersByTimeAsync(0);
    expect(written).toEqual([1, 3]);
    expect(states.at(-1)).toBe("saving");
    answers[1]?.resolve();
    await vi.advanceTimersByTimeAsync(0);
    expect(states.at(-1)).toBe("saved");
  });

  it("runs one write at a time although the page is hidden during a write, and writes the rest after it", async () => {
    const { change, written, answers, page, hold } = bench();
    hold();
    change(1);
    page.dispatchEvent(new Event("pagehide"));
    change(2);
    page.dispatchEvent(new Event("pagehide"));
    expect(written).toEqual([1]);
    answers[0]?.resolve();
    await vi.advanceTimersByTimeAsync(0);
    expect(written).toEqual([1, 2]);
  });

  it("says failed with the error, keeps the state and tries again by itself", async () => {
    const { change, written, answers, states, hold, letGo } = bench();
    hold();
    change(1);
    await vi.advanceTimersByTimeAsync(AUTOSAVE_DELAY_MS);
    answers[0]?.reject(new Error("disk full"));
    await vi.advanceTimersByTimeAsync(0);
    expect(states.at(-1)).toBe("failed");
    letGo();
    await vi.advanceTimersByTimeAsync(AUTOSAVE_RETRY_MS);
    expect(written).toEqual([1, 1]);
    expect(states.at(-1)).toBe("saved");
  });

  it("does not write again by itself over what another tab saved", async () => {
    const { change, written, answers, states, hold } = bench();
    hold();
    change(1);
    await vi.advanceTimersByTimeAsync(AUTOSAVE_DELAY_MS);
    answers[0]?.reject(new StorageError("changed-elsewhere", "job"));
    await vi.advanceTimersByTimeAsync(10 * AUTOSAVE_RETRY_MS);
    expect(written).toEqual([1]);
    expect(states.at(-1)).toBe("failed");
  });

  it.each(["pagehide", "visibilitychange"])("writes at once on %s", (event) => {
    const { change, written, page } = bench();
    change(7);
    page.dispatchEvent(new Event(event));
    expect(written).toEqual([7]);
  });

  it("writes nothing on pagehide when nothing changed", () => {
    const { written, page } = bench();
    page.dispatchEvent(new Event("pagehide"));
    expect(written).toEqual([]);
  });

  it("flush answers true once all is written and false where a write failed", async () => {
    const { autosave, change, answers, hold } = bench();
    expect(await autosave.flush()).toBe(true);
    hold();
    change(1);
    const flushed = autosave.flush();
    answers[0]?.reject(new Error("no"));
    expect(await flushed).toBe(false);
  });

  it("loses no change that is made while it says saved", async () => {
    const page = new EventTarget();
    const written: number[] = [];
    let value = 1;
    const autosave = createAutosave<number>({
      read: () => value,
      save: async (state) => void written.push(state),
      onState: (state) => {
        if (state !== "saved" || value === 2) return;
        value = 2;
        autosave.changed();
      },
      page,
    });
    autosave.changed();
    await vi.advanceTimersByTimeAsync(10 * AUTOSAVE_DELAY_MS);
    expect(written).toEqual([1, 2]);
  });

  it("writes what is left when it is disposed of, and hears nothing afterwards", async () => {
    const { autosave, change, written, page } = bench();
    change(4);
    expect(await autosave.dispose()).toBe(true);
    expect(written).toEqual([4]);
    page.dispatchEvent(new Event("pagehide"));
    expect(written).toEqual([4]);
  });
});
