// Run rules: their published run length, and what they see of a drift, a new lot and a run that is out of band.
import { describe, expect, it } from "vitest";
import { judgePulls, type Pull, runSignals } from "../../../../src/core/planning/decisions/runRule.ts";
import { seededRandom } from "../../prediction/seededRandom.ts";

const band = { deltaL: -4, tolerance: 1.5 };
const pull = (i: number, mean: number, change: Pull["change"] = "none"): Pull => ({
  id: `${i}`,
  mean,
  standardUncertainty: 0.15,
  change,
});

describe("runSignals", () => {
  // Champ & Woodall, Technometrics 29 (1987) 393, table of exact average run lengths, no shift: 91.75 (from memory).
  it("raises a false alarm once in 91.75 pulls on average, as Champ & Woodall 1987 give for the four rules together", () => {
    const random = seededRandom(19870429);
    const runs = 6000;
    const lengths = Array.from({ length: runs }, () => {
      const recent: number[] = [];
      let length = 0;
      do {
        recent.push(random.normal());
        if (recent.length > 8) recent.shift();
        length++;
      } while (runSignals(recent).length === 0);
      return length;
    });
    const mean = lengths.reduce((sum, length) => sum + length, 0) / runs;
    const sd = Math.sqrt(lengths.reduce((sum, length) => sum + (length - mean) ** 2, 0) / (runs - 1));
    expect(Math.abs(mean - 91.75)).toBeLessThan((3 * sd) / Math.sqrt(runs));
  });

  it("sees each pattern by the last pull, on its side alone", () => {
    expect(runSignals([0, 3.1])).toContain("one-beyond-3-sd");
    expect(runSignals([-2.5, 0, -2.1])).toEqual(["two-of-three-beyond-2-sd"]);
    expect(runSignals([2.5, 0, -2.1])).toEqual([]);
    expect(runSignals([1.2, 1.3, 0, 1.4, 1.1])).toEqual(["four-of-five-beyond-1-sd"]);
    expect(runSignals(Array<number>(8).fill(0.3))).toEqual(["eight-on-one-side"]);
    expect(runSignals(Array<number>(7).fill(0.3))).toEqual([]);
    expect(runSignals([3.1, 0.2])).toEqual([]);
    expect(runSignals([])).toEqual([]);
  });
});

describe("judgePulls", () => {
  it("lets a steady run go on and looks for the cause of a drift while it is still in band", () => {
    const steady = judgePulls(
      [-4, -4.1, -3.9, -4.05].map((mean, i) => pull(i, mean)),
      band,
    );
    expect(steady.map(({ action }) => action)).toEqual(["run", "run", "run", "run"]);
    const drifting = judgePulls(
      [-4, -4.4, -4.7, -4.9, -5.1].map((mean, i) => pull(i, mean)),
      band,
    );
    expect(drifting.at(-1)?.action).toBe("look");
    expect(drifting.at(-1)?.signals.length).toBeGreaterThan(0);
  });

  it("adjusts near a limit and stops beyond it, drift or none", () => {
    expect(judgePulls([pull(0, -5.45)], band)[0]?.action).toBe("adjust");
    expect(judgePulls([pull(0, -5.6)], band)[0]?.action).toBe("stop");
  });

  it("begins anew at a change: a new lot is a first-off, a new shift only a new level", () => {
    const points = judgePulls([pull(0, -4), pull(1, -5, "lot"), pull(2, -5), pull(3, -4.2, "shift")], band);
    expect(points.map(({ action }) => action)).toEqual(["run", "first-off", "run", "run"]);
    expect(points.map(({ stretch }) => stretch)).toEqual([1, 1, 2, 1]);
    expect(points[2]?.fromLevel).toBe(0);
  });
});
