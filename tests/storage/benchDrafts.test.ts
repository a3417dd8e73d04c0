/** A record that is being typed is kept per job, and where nothing can be kept nothing fails. */
import { describe, expect, it } from "vitest";
import { benchDrafts } from "../../src/storage/benchDrafts.ts";

function memory(): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    key: (index) => [...kept.keys()][index] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
  };
}

describe("benchDrafts", () => {
  it("keeps one text for each job until it is taken away", () => {
    const store = memory();
    const drafts = benchDrafts(() => store);
    drafts.keep("one", "typed");
    drafts.keep("other", "else");
    expect(benchDrafts(() => store).read("one")).toBe("typed");
    drafts.keep("one", null);
    expect([drafts.read("one"), drafts.read("other")]).toEqual([null, "else"]);
  });

  it("fails at nothing where the browser keeps nothing, or no more", () => {
    const refusing = benchDrafts(() => {
      throw new Error("site data is blocked");
    });
    refusing.keep("one", "typed");
    expect(refusing.read("one")).toBeNull();
    const full = memory();
    full.setItem = () => {
      throw new Error("quota");
    };
    expect(() => benchDrafts(() => full).keep("one", "typed")).not.toThrow();
  });
});
