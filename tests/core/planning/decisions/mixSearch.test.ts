// The mix search: against every subset on small cases, a textbook instance, and the rules a printer sets.
import fc from "fast-check";
import loadHighs, { type Highs } from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { withoutDearOptions } from "../../../../src/core/planning/decisions/dearOptions.ts";
import {
  type MixedIntegerProgram,
  mixProgram,
  readAssignment,
} from "../../../../src/core/planning/decisions/mixProgram.ts";
import {
  type AllowedSearch,
  allowedSearch,
  DEFAULT_MIX_SEARCH_RULES,
  type MixSearchProblem,
  type MixSearchRules,
} from "../../../../src/core/planning/decisions/mixSearch.ts";
import { type SolveProgress, solveProgram } from "../../../../src/engine/mixSolverWork.ts";
import { between } from "../../optics/between.ts";
import { bestByTrying, costOnPaper } from "./bruteForceMixes.ts";
import cap71 from "./cap71.json";
import { manyGarments } from "./manyGarments.ts";

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const SECONDS = 30;
const solve = (program: MixedIntegerProgram) => solveProgram(highs, program, SECONDS);

function allowed(problem: MixSearchProblem, rules: Partial<MixSearchRules> = {}): AllowedSearch {
  const found = allowedSearch(problem, { ...DEFAULT_MIX_SEARCH_RULES, ...rules });
  if (!found.ok) throw new Error(JSON.stringify(found.faults));
  return found.search;
}

const money = between(0, 40);
const anyProblem: fc.Arbitrary<MixSearchProblem> = fc
  .record({
    garmentCount: fc.integer({ min: 1, max: 12 }),
    mixCount: fc.integer({ min: 1, max: 7 }),
    setUpCount: fc.integer({ min: 1, max: 3 }),
  })
  .chain(({ garmentCount, mixCount, setUpCount }) =>
    fc.record({
      garments: fc.array(fc.option(between(0, 60)), { minLength: garmentCount, maxLength: garmentCount }),
      mixes: fc.array(fc.record({ openingCost: money, inStock: fc.boolean(), lowCure: fc.boolean() }), {
        minLength: mixCount,
        maxLength: mixCount,
      }),
      setUps: fc.array(fc.record({ openingCost: money, inStock: fc.boolean() }), {
        minLength: setUpCount,
        maxLength: setUpCount,
      }),
      // Null: not predicted, so not to be had.
      cells: fc.array(
        fc.option(fc.record({ inkCost: money, expectedLoss: money, chanceInBand: between(0, 1) }), {
          freq: 4,
        }),
        {
          minLength: garmentCount * mixCount * setUpCount,
          maxLength: garmentCount * mixCount * setUpCount,
        },
      ),
    }),
  )
  .map(({ garments, mixes, setUps, cells }) => ({
    garments: garments.map((unservedCost, g) => ({ id: `g${g}`, unservedCost })),
    mixes: mixes.map((mix, m) => ({ id: `m${m}`, ...mix })),
    setUps: setUps.map((setUp, s) => ({ id: `s${s}`, ...setUp })),
    options: cells.flatMap((cell, i) => {
      if (cell === null) return [];
      const g = Math.floor(i / (mixes.length * setUps.length));
      const m = Math.floor(i / setUps.length) % mixes.length;
      return [{ garmentId: `g${g}`, mixId: `m${m}`, setUpId: `s${i % setUps.length}`, ...cell }];
    }),
  }));
const anyRules: fc.Arbitrary<Partial<MixSearchRules>> = fc.record({
  atMostMixes: fc.option(fc.integer({ min: 1, max: 7 }), { nil: null }),
  stockOnly: fc.boolean(),
  lowCureOnly: fc.boolean(),
  forbiddenMixIds: fc.subarray(["m0", "m2"]),
  leastChance: fc.constantFrom(0, 0.5),
});

describe("mix search", () => {
  it("finds what trying every set of mixes and set-ups finds, on up to 12 garments and 10 mixes and set-ups", () => {
    let solved = 0;
    fc.assert(
      fc.property(anyProblem, anyRules, fc.boolean(), (problem, rules, keepsOne) => {
        const keepable = problem.mixes.find(
          ({ id, inStock, lowCure }) =>
            !rules.forbiddenMixIds?.includes(id) &&
            (inStock || rules.stockOnly !== true) &&
            (lowCure || rules.lowCureOnly !== true),
        );
        const keptMixIds = keepsOne && keepable !== undefined ? [keepable.id] : [];
        const search = allowed(problem, { ...rules, keptMixIds });
        const lean = withoutDearOptions(search);
        const solution = solve(mixProgram(lean));
        const best = bestByTrying(search);
        if (best === null) {
          expect(solution.status).toBe("infeasible");
          return;
        }
        expect(solution.status).toBe("optimal");
        const found = readAssignment(lean, solution.values);
        expect(found.cost.total).toBeCloseTo(best.cost.total, 6);
        expect(found.cost.total).toBeCloseTo(costOnPaper(search, found), 9);
        expect(solution.lowerBound).toBeCloseTo(best.cost.total, 5);
        if (search.atMostMixes !== null) expect(found.mixIds.length).toBeLessThanOrEqual(search.atMostMixes);
        solved++;
      }),
      { numRuns: 150 },
    );
    expect(solved).toBeGreaterThan(75);
  });

  // P. Van Hentenryck, The OPL Optimization Programming Language (1999), warehouse location, as CSPLib problem 034 quotes it:
  // opening cost 30, supply costs and capacities below, optimum 383.
  it("solves the warehouse location of the OPL book (CSPLib 034) to its optimum, 383, with its capacities as further rows", () => {
    const capacity = [1, 4, 2, 1, 3];
    const supplyCost = [
      [20, 24, 11, 25, 30],
      [28, 27, 82, 83, 74],
      [74, 97, 71, 96, 70],
      [2, 55, 73, 69, 61],
      [46, 96, 59, 83, 4],
      [42, 22, 29, 67, 59],
      [1, 5, 73, 59, 56],
      [10, 73, 13, 43, 96],
      [93, 35, 63, 85, 46],
      [47, 65, 55, 71, 95],
    ];
    const search = allowed({
      garments: supplyCost.map((_, store) => ({ id: `${store}`, unservedCost: null })),
      mixes: capacity.map((_, house) => ({
        id: `${house}`,
        openingCost: 30,
        inStock: true,
        lowCure: false,
      })),
      setUps: [{ id: "road", openingCost: 0, inStock: true }],
      options: supplyCost.flatMap((row, store) =>
        row.map((inkCost, house) => ({
          garmentId: `${store}`,
          mixId: `${house}`,
          setUpId: "road",
          inkCost,
          expectedLoss: 0,
          chanceInBand: 1,
        })),
      ),
    });
    const program = mixProgram(search);
    const optionsAt = search.mixes.length + search.setUps.length;
    const ofHouse = capacity.map((_, house) =>
      search.options.flatMap(({ mixId }, k) => (mixId === `${house}` ? [optionsAt + k] : [])),
    );
    const solution = solve({
      ...program,
      // With capacities a supply is no longer whole by itself.
      isInteger: new Uint8Array(program.columnCount).fill(1),
      rowCount: program.rowCount + capacity.length,
      rowLower: Float64Array.from([...program.rowLower, ...capacity.map(() => -Infinity)]),
      rowUpper: Float64Array.from([...program.rowUpper, ...capacity]),
      starts: Int32Array.from([
        ...program.starts,
        ...capacity.map((_, house) => program.indices.length + (house + 1) * supplyCost.length),
      ]),
      indices: Int32Array.from([...program.indices, ...ofHouse.flat()]),
      values: Float64Array.from([...program.values, ...ofHouse.flat().map(() => 1)]),
    });
    expect(solution.status).toBe("optimal");
    expect(solution.lowerBound).toBeCloseTo(383, 6);
    const cost = program.cost.reduce((sum, each, i) => sum + each * solution.values[i]!, 0);
    expect(cost).toBeCloseTo(383, 6);
  });
});

describe("a published instance", () => {
  it("is solved to its optimum, 932,615.750: cap71 of the OR-Library, 16 warehouses and 50 customers", () => {
    const { openingCosts, supplyCosts, optimum } = cap71;
    const search = allowed({
      garments: supplyCosts.map((_, customer) => ({ id: `${customer}`, unservedCost: null })),
      mixes: openingCosts.map((openingCost, house) => ({
        id: `${house}`,
        openingCost,
        inStock: true,
        lowCure: false,
      })),
      setUps: [{ id: "road", openingCost: 0, inStock: true }],
      options: supplyCosts.flatMap((row, customer) =>
        row.map((inkCost, house) => ({
          garmentId: `${customer}`,
          mixId: `${house}`,
          setUpId: "road",
          inkCost,
          expectedLoss: 0,
          chanceInBand: 1,
        })),
      ),
    });
    const lean = withoutDearOptions(search);
    const solution = solve(mixProgram(lean));
    expect(solution.status).toBe("optimal");
    expect(readAssignment(lean, solution.values).cost.total).toBeCloseTo(optimum, 3);
  });
});

describe("a large search", () => {
  const search = allowed(manyGarments(3, { garments: 80, mixes: 18, setUps: 2 }));

  it("is optimal with and without the options that no best plan takes, and fewer of them are solved", () => {
    const lean = withoutDearOptions(search);
    expect(lean.options.length).toBeLessThan(search.options.length);
    const all = solve(mixProgram(search));
    const few = solve(mixProgram(lean));
    expect([all.status, few.status]).toEqual(["optimal", "optimal"]);
    expect(readAssignment(lean, few.values).cost.total).toBeCloseTo(
      readAssignment(search, all.values).cost.total,
      6,
    );
  });

  it("tells how far it is, and the bounds close", () => {
    const reports: SolveProgress[] = [];
    const solution = solveProgram(highs, mixProgram(search), SECONDS, (report) => reports.push(report));
    const last = reports.at(-1)!;
    expect(last.upperBound - last.lowerBound).toBeLessThan(1e-3);
    expect(last.lowerBound).toBeCloseTo(solution.lowerBound, 3);
  });
});

describe("what the search may use", () => {
  const option = (garmentId: string, mixId: string, chanceInBand: number) => ({
    garmentId,
    mixId,
    setUpId: "s",
    inkCost: 1,
    expectedLoss: 1 - chanceInBand,
    chanceInBand,
  });
  const problem: MixSearchProblem = {
    garments: ["red", "white", "navy", "new"].map((id) => ({ id, unservedCost: null })),
    mixes: [
      { id: "clear", openingCost: 12, inStock: true, lowCure: false },
      { id: "stretch", openingCost: 12, inStock: false, lowCure: true },
    ],
    setUps: [{ id: "s", openingCost: 25, inStock: true }],
    options: [
      option("red", "clear", 0.9),
      option("white", "clear", 0.1),
      option("white", "stretch", 0.2),
      option("navy", "stretch", 0.8),
    ],
  };

  it("names the garments that nothing serves, why, and what comes nearest", () => {
    const { unservable } = allowed(problem, { stockOnly: true });
    expect(unservable.map(({ garmentId, why, nearest }) => [garmentId, why, nearest?.mixId])).toEqual([
      ["white", "chance-too-small", "stretch"],
      ["navy", "rules", "stretch"],
      ["new", "nothing-predicted", undefined],
    ]);
  });

  it("refuses rules that contradict each other by code", () => {
    const rules = { ...DEFAULT_MIX_SEARCH_RULES, keptMixIds: ["stretch"] };
    const codes = (more: Partial<MixSearchRules>) => {
      const found = allowedSearch(problem, { ...rules, ...more });
      return found.ok ? [] : found.faults.map(({ code }) => code);
    };
    expect(codes({})).toEqual([]);
    expect(codes({ forbiddenMixIds: ["stretch"] })).toEqual(["kept-and-forbidden"]);
    expect(codes({ stockOnly: true })).toEqual(["kept-not-allowed"]);
    expect(codes({ keptMixIds: ["stretch", "clear"], atMostMixes: 1 })).toEqual(["kept-more-than-allowed"]);
  });

  it("throws for what is not listed, listed twice, or no money", () => {
    const wrong = (more: Partial<MixSearchProblem>) => () => allowedSearch({ ...problem, ...more });
    expect(wrong({ options: [option("red", "gloss", 1)] })).toThrow(RangeError);
    expect(wrong({ garments: [...problem.garments, problem.garments[0]!] })).toThrow(RangeError);
    expect(wrong({ setUps: [{ id: "s", openingCost: -1, inStock: true }] })).toThrow(RangeError);
  });
});
