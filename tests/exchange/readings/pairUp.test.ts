/** Which reading is the bare cloth and which the print: proposals only, and none across conditions. */
import { describe, expect, it } from "vitest";
import { pairUp, sideOf } from "../../../src/exchange/readings/pairUp.ts";
import type { ReadSample } from "../../../src/exchange/readings/readSample.ts";

const sample = (name: string, over: Partial<ReadSample> = {}): ReadSample => ({
  name,
  where: "rows[0]",
  line: 1,
  lab: { L: 50, a: 0, b: 0 },
  tristimulus: null,
  light: "D65",
  observer: "10deg",
  geometry: "45:0",
  spectrum: null,
  ...over,
});

const pairsOf = (...names: string[]) => {
  const { pairs, unpaired } = pairUp(names.map((name) => sample(name)));
  return { pairs: pairs.map(({ bare, print, from }) => [bare, print, from]), unpaired };
};

describe("pairs of readings", () => {
  it("follow the names, whatever the order", () => {
    expect(pairsOf("G03 print 1", "G04 Bare 1", "G03 bare 1", "G04 printed-1")).toEqual({
      pairs: [
        [1, 3, "names"],
        [2, 0, "names"],
      ],
      unpaired: [],
    });
  });

  it("are made in turn where one name holds several", () => {
    expect(pairsOf("navy bare", "navy bare", "navy print", "navy print").pairs).toEqual([
      [0, 2, "names"],
      [1, 3, "names"],
    ]);
  });

  it("are left open where names do not pair up evenly, rather than guessed from the order", () => {
    expect(pairsOf("navy bare", "navy print", "navy print", "other")).toEqual({
      pairs: [],
      unpaired: [0, 1, 2, 3],
    });
  });

  it("follow the order where no name says anything, and never for an odd number", () => {
    expect(pairsOf("1", "2", "3", "4").pairs).toEqual([
      [0, 1, "order"],
      [2, 3, "order"],
    ]);
    expect(pairsOf("1", "2", "3")).toEqual({ pairs: [], unpaired: [0, 1, 2] });
  });

  it("say in which condition the two are unlike", () => {
    const unlike = (over: Partial<ReadSample>) =>
      pairUp([sample("a bare"), sample("a print", over)]).pairs[0]?.unlike;
    expect(unlike({})).toBeNull();
    expect(unlike({ light: "D50" })).toBe("light");
    expect(unlike({ observer: null })).toBe("observer");
    expect(unlike({ geometry: "specular-included" })).toBe("geometry");
    expect(unlike({ lab: null, spectrum: { reflectance: [], assumptions: [] } })).toBe("kind");
  });

  it("take a name that says both sides, or neither, for neither", () => {
    expect(sideOf("bare beside print").side).toBeNull();
    expect(sideOf("Blueprint 7").side).toBeNull();
    expect(sideOf("G03_BARE_2")).toEqual({ side: "bare", stem: "g03 2" });
  });
});
