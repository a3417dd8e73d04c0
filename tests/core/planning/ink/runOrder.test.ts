// Run orders: exact against every permutation, the wishes of the press, and the honest word beyond twelve runs.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  changeBetween,
  changeTable,
  DEFAULT_CHANGE_MINUTES,
  type PressRun,
  planRunOrder,
} from "../../../../src/core/planning/ink/runOrder.ts";
import { costOf, EXACT_STOP_COUNT, shortestOrder } from "../../../../src/core/planning/ink/shortestOrder.ts";
import { between } from "../../optics/between.ts";

function* permutations(items: readonly number[]): Generator<number[]> {
  if (items.length === 0) yield [];
  for (const first of items) {
    for (const rest of permutations(items.filter((item) => item !== first))) yield [first, ...rest];
  }
}

const table = (count: number) =>
  fc.array(fc.array(between(0, 30), { minLength: count, maxLength: count }), {
    minLength: count,
    maxLength: count,
  });
const isPermutation = (order: readonly number[], count: number) =>
  [...order].sort((one, other) => one - other).every((stop, i) => stop === i) && order.length === count;

const run = (id: string, more: Partial<PressRun> = {}): PressRun => ({
  id,
  mixId: id,
  screenId: "front",
  baseFamilyId: "clear",
  lowCure: false,
  darkness: 0,
  garmentIds: [],
  ...more,
});

const anyRun: fc.Arbitrary<Omit<PressRun, "id">> = fc.record({
  mixId: fc.constantFrom("A", "B", "C", "D", "E"),
  screenId: fc.constantFrom("front", "back"),
  baseFamilyId: fc.constantFrom("clear", "matt", "white"),
  lowCure: fc.boolean(),
  darkness: fc.constantFrom(0, 0.001, 0.005, 0.01),
  garmentIds: fc.constant([]),
});

describe("the shortest order", () => {
  it("costs as little as the best of all permutations, up to seven stops of any, also lopsided, costs", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }).chain((count) => table(count)),
        (costs) => {
          let least = Infinity;
          for (const order of permutations([...costs.keys()])) least = Math.min(least, costOf(costs, order));
          const found = shortestOrder(costs);
          expect(found.proven).toBe(true);
          expect(isPermutation(found.order, costs.length)).toBe(true);
          expect(found.cost).toBeCloseTo(least, 9);
          expect(costOf(costs, found.order)).toBe(found.cost);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("is proven up to twelve stops and not beyond, where it is still an order of all stops", () => {
    expect(EXACT_STOP_COUNT).toBe(12);
    fc.assert(
      fc.property(fc.integer({ min: 11, max: 16 }).chain(table), (costs) => {
        const found = shortestOrder(costs);
        expect(found.proven).toBe(costs.length <= 12);
        expect(isPermutation(found.order, costs.length)).toBe(true);
        expect(found.cost).toBeLessThanOrEqual(costOf(costs, [...costs.keys()]) + 1e-9);
      }),
      { numRuns: 15 },
    );
  });

  it("is found beyond twelve stops where it is plain: a line of towns", () => {
    const places = Array.from({ length: 20 }, (_, i) => (i * 7) % 20);
    const costs = places.map((from) => places.map((to) => Math.abs(from - to)));
    expect(shortestOrder(costs)).toMatchObject({ cost: 19, proven: false });
  });

  it("of nothing is nothing, of one stop that stop", () => {
    expect(shortestOrder([])).toEqual({ order: [], cost: 0, proven: true });
    expect(shortestOrder([[5]])).toEqual({ order: [0], cost: 0, proven: true });
  });

  it("refuses a table that is not square or costs below 0", () => {
    expect(() => shortestOrder([[0, 1]])).toThrow("costs must be square: 1 rows; got 2 in row 0");
    const negative = [
      [0, -1],
      [1, 0],
    ];
    expect(() => shortestOrder(negative)).toThrow("costs must be >= 0 and finite; got -1");
  });
});

describe("a change on press", () => {
  const minutes = DEFAULT_CHANGE_MINUTES;
  it("is a wipe on to darker ink of one base, a wash-up to lighter, another base or another cure", () => {
    const light = run("light", { darkness: 0.001 });
    const dark = run("dark", { darkness: 0.01 });
    expect(changeBetween(light, dark, minutes)).toEqual({ ink: "wipe", screen: false, minutes: 3 });
    expect(changeBetween(dark, light, minutes)).toEqual({ ink: "wash-up", screen: false, minutes: 15 });
    const matt = run("matt", { baseFamilyId: "matt", darkness: 0.01 });
    expect(changeBetween(light, matt, minutes)).toEqual({ ink: "wash-up", screen: false, minutes: 12 });
    const low = run("low", { lowCure: true, darkness: 0.01 });
    expect(changeBetween(light, low, minutes)).toEqual({ ink: "wash-up", screen: false, minutes: 27 });
  });

  it("of the screen alone takes the screen's set-up, on top of the ink's otherwise", () => {
    const front = run("one");
    const back = run("two", { mixId: "one", screenId: "back" });
    expect(changeBetween(front, back, minutes)).toEqual({ ink: "none", screen: true, minutes: 9 });
    expect(changeBetween(front, run("three", { screenId: "back" }), minutes).minutes).toBe(12);
    expect(changeTable([front, back])[0]![0]).toEqual({ ink: "none", screen: false, minutes: 0 });
  });
});

describe("the run order", () => {
  it("goes light to dark within a base, keeps a base together and low-cure ink at an end", () => {
    const order = planRunOrder([
      run("clear 1 %", { darkness: 0.01 }),
      run("matt", { baseFamilyId: "matt" }),
      run("low", { lowCure: true, baseFamilyId: "stretch", darkness: 0.001 }),
      run("clear"),
      run("matt 0.5 %", { baseFamilyId: "matt", darkness: 0.005 }),
      run("clear 0.25 %", { darkness: 0.0025 }),
    ]);
    const { runIds } = order;
    const at = (id: string) => runIds.indexOf(id);
    expect(at("clear 0.25 %")).toBe(at("clear") + 1);
    expect(at("clear 1 %")).toBe(at("clear") + 2);
    expect(at("matt 0.5 %")).toBe(at("matt") + 1);
    expect([0, 5]).toContain(at("low"));
    expect(order).toMatchObject({ washUpCount: 2, screenChangeCount: 0, proven: true });
    expect(order.changes).toHaveLength(5);
    expect(order.minutes).toBe(order.changes.reduce((sum, change) => sum + change.minutes, 0));
  });

  it("has the fewest wash-ups of all orders, and of those the least minutes, up to seven runs", () => {
    fc.assert(
      fc.property(fc.array(anyRun, { minLength: 1, maxLength: 7 }), (parts) => {
        const runs = parts.map((part, i) => ({ ...part, id: `${i}` }));
        const changes = changeTable(runs);
        let fewest = Infinity;
        let least = Infinity;
        for (const order of permutations([...runs.keys()])) {
          let washUps = 0;
          let minutes = 0;
          for (let i = 1; i < order.length; i++) {
            const change = changes[order[i - 1]!]![order[i]!]!;
            washUps += change.ink === "wash-up" ? 1 : 0;
            minutes += change.minutes;
          }
          if (washUps < fewest || (washUps === fewest && minutes < least)) {
            fewest = washUps;
            least = minutes;
          }
        }
        const found = planRunOrder(runs);
        expect(found.washUpCount).toBe(fewest);
        expect(found.minutes).toBeCloseTo(least, 9);
        expect([...found.runIds].sort()).toEqual(runs.map((one) => one.id));
      }),
      { numRuns: 40 },
    );
  });

  it("puts light before dark among equals, and does not prove more than twelve", () => {
    const far = { wipe: 5, washUp: 5, lowCureCleaning: 0, darkToLight: 0, screenSetUp: 0 };
    const two = [run("dark", { darkness: 1, baseFamilyId: "matt" }), run("light")];
    expect(planRunOrder(two, far).runIds).toEqual(["light", "dark"]);
    const many = Array.from({ length: 13 }, (_, i) => run(`${i}`, { darkness: 13 - i }));
    const order = planRunOrder(many);
    expect(order.proven).toBe(false);
    expect(order.runIds).toEqual(many.map((one) => one.id).reverse());
    expect(planRunOrder([])).toMatchObject({ runIds: [], minutes: 0, proven: true });
  });

  it("refuses a darkness that is none and negative minutes", () => {
    expect(() => planRunOrder([run("x", { darkness: Number.NaN })])).toThrow(
      "darkness must be finite; got NaN",
    );
    expect(() => planRunOrder([], { ...DEFAULT_CHANGE_MINUTES, wipe: -1 })).toThrow(
      "wipe must be >= 0 and finite",
    );
  });
});
