/** The theme is kept from visit to visit, and where nothing can be kept it still works. */
import { describe, expect, it } from "vitest";
import { themeSetting } from "../../src/storage/themeSetting.ts";

function memory(): Storage {
  const entries = new Map<string, string>();
  return {
    getItem: (key: string) => entries.get(key) ?? null,
    setItem: (key: string, value: string) => void entries.set(key, value),
    removeItem: (key: string) => void entries.delete(key),
  } as Storage;
}

describe("themeSetting", () => {
  it("reads back what was kept, and the system's where nothing was", () => {
    const store = memory();
    const open = () => store;
    expect(themeSetting(open).read()).toBe("system");
    themeSetting(open).keep("dark");
    expect(themeSetting(open).read()).toBe("dark");
    themeSetting(open).keep("system");
    expect(themeSetting(open).read()).toBe("system");
  });

  it("takes a value it did not write for none", () => {
    const store = memory();
    store.setItem("tonebench.theme", "purple");
    expect(themeSetting(() => store).read()).toBe("system");
  });

  it("does without a store that the browser refuses", () => {
    const refusing = themeSetting(() => {
      throw new Error("blocked");
    });
    expect(refusing.read()).toBe("system");
    expect(() => refusing.keep("dark")).not.toThrow();
  });
});
