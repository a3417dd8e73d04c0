// Which entries of an append-only list stand, and what an entry is known as now.
import { describe, expect, it } from "vitest";
import { lastCorrection, standing, standingInPlace } from "../../src/job/standing.ts";

const entry = (id: string, supersedesId: string | null = null) => ({ id, supersedesId });
const idsOf = (entries: readonly { readonly id: string }[]) => entries.map(({ id }) => id).join("");

describe("an append-only list", () => {
  const log = [entry("a"), entry("b"), entry("c", "a"), entry("d"), entry("e", "c")];

  it("keeps what no later entry corrects, in its order", () => {
    expect(idsOf(standing(log))).toBe("bde");
  });

  it("can be read with each correction where the entry stood that it corrects", () => {
    expect(idsOf(standingInPlace(log))).toBe("ebd");
  });

  it("knows an entry as its last correction, and nothing by an id that it does not have", () => {
    expect(lastCorrection(log, "a")).toEqual(entry("e", "c"));
    expect(lastCorrection(log, "d")).toEqual(entry("d"));
    expect(lastCorrection(log, "z")).toBeNull();
    expect(lastCorrection(log, null)).toBeNull();
  });

  it("comes to an end where two entries of a damaged file correct each other", () => {
    const ring = [entry("a", "b"), entry("b", "a")];
    expect(["a", "b"]).toContain(lastCorrection(ring, "a")?.id);
    expect(standing(ring)).toEqual([]);
    expect(standingInPlace(ring)).toEqual([]);
  });
});
