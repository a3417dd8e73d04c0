/** The mix search written as a mixed-integer linear program in matrix form, and a solution read back to an assignment. */
import { type AllowedSearch, type MixOption, optionCost } from "./mixSearch.ts";

/**
 * Minimise cost'x with rowLower <= Ax <= rowUpper and columnLower <= x <= columnUpper, A row by row (compressed): row i
 * holds `indices` and `values` from `starts[i]` to `starts[i + 1]`. Plain arrays, so that it can be handed to a worker.
 */
export interface MixedIntegerProgram {
  readonly columnCount: number;
  readonly rowCount: number;
  readonly cost: Float64Array;
  readonly columnLower: Float64Array;
  readonly columnUpper: Float64Array;
  /** 1 for a whole number. */
  readonly isInteger: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly starts: Int32Array;
  readonly indices: Int32Array;
  readonly values: Float64Array;
}

/** What the solver says of a program. */
export interface ProgramSolution {
  readonly status: "optimal" | "feasible" | "infeasible" | "none";
  /** Empty unless optimal or feasible. */
  readonly values: Float64Array;
  /** No solution can cost less. */
  readonly lowerBound: number;
}

export interface MixAssignment {
  /** One per served garment, in the garments' order. */
  readonly chosen: readonly MixOption[];
  readonly mixIds: readonly string[];
  readonly setUpIds: readonly string[];
  /** Garments that are dearer to serve than to leave out, or that nothing served. */
  readonly unservedIds: readonly string[];
  readonly cost: MixCost;
}

/** Money. */
export interface MixCost {
  readonly mixes: number;
  readonly setUps: number;
  readonly ink: number;
  readonly expectedLoss: number;
  readonly unserved: number;
  readonly total: number;
}

/** Rows as they are collected. */
class Rows {
  readonly starts = [0];
  readonly indices: number[] = [];
  readonly values: number[] = [];
  readonly lower: number[] = [];
  readonly upper: number[] = [];

  add(entries: readonly (readonly [column: number, value: number])[], lower: number, upper: number): void {
    for (const [column, value] of entries) {
      this.indices.push(column);
      this.values.push(value);
    }
    this.starts.push(this.indices.length);
    this.lower.push(lower);
    this.upper.push(upper);
  }
}

function groupBy(items: readonly number[], keyOf: (item: number) => string): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** Columns in order: mixes, set-ups, options, and garments left out where that has a price. */
function columnsOf({ mixes, setUps, options, garments }: AllowedSearch) {
  const leavable = garments.filter(({ unservedCost }) => unservedCost !== null);
  const setUpsAt = mixes.length;
  const optionsAt = setUpsAt + setUps.length;
  const leftOutAt = optionsAt + options.length;
  return { leavable, setUpsAt, optionsAt, leftOutAt, count: leftOutAt + leavable.length };
}

/**
 * The program of `search`: y_m and z_s whether mix and set-up are opened, x_k whether option k is taken, w_g whether a
 * garment is left out. Minimise sum f_m y_m + sum h_s z_s + sum c_k x_k + sum p_g w_g subject to sum_k x_k + w_g = 1 for each
 * garment, sum_{k of g, m} x_k <= y_m and sum_{k of g, s} x_k <= z_s (the strong form of Balinski 1965, from memory; see
 * Cornuejols, Nemhauser & Wolsey, "The uncapacitated facility location problem", 1990), sum y_m <= N, y_m = 1 for those kept.
 * With y and z whole numbers an optimal x can be taken whole, so only those are declared so.
 */
export function mixProgram(search: AllowedSearch): MixedIntegerProgram {
  const { garments, mixes, setUps, options, keptMixIds, atMostMixes } = search;
  const { leavable, setUpsAt, optionsAt, leftOutAt, count } = columnsOf(search);
  const cost = new Float64Array(count);
  const columnLower = new Float64Array(count);
  const columnUpper = new Float64Array(count).fill(1);
  const isInteger = new Uint8Array(count).fill(1, 0, optionsAt);
  mixes.forEach(({ id, openingCost }, m) => {
    cost[m] = openingCost;
    if (keptMixIds.has(id)) columnLower[m] = 1;
  });
  setUps.forEach(({ openingCost }, s) => {
    cost[setUpsAt + s] = openingCost;
  });
  options.forEach((option, k) => {
    cost[optionsAt + k] = optionCost(option);
  });
  const leftOutColumn = new Map<string, number>();
  leavable.forEach(({ id, unservedCost }, w) => {
    cost[leftOutAt + w] = unservedCost ?? 0;
    leftOutColumn.set(id, leftOutAt + w);
  });
  const rows = new Rows();
  const columnOfMix = new Map(mixes.map(({ id }, m) => [id, m]));
  const columnOfSetUp = new Map(setUps.map(({ id }, s) => [id, setUpsAt + s]));
  const byGarment = groupBy([...options.keys()], (k) => options[k]!.garmentId);
  for (const { id } of garments) {
    const own = byGarment.get(id) ?? [];
    const leftOut = leftOutColumn.get(id);
    const taken = own.map((k) => [optionsAt + k, 1] as const);
    rows.add(leftOut === undefined ? taken : [...taken, [leftOut, 1]], 1, 1);
    for (const [mixId, ofMix] of groupBy(own, (k) => options[k]!.mixId)) link(ofMix, columnOfMix.get(mixId)!);
    for (const [setUpId, ofSetUp] of groupBy(own, (k) => options[k]!.setUpId)) {
      link(ofSetUp, columnOfSetUp.get(setUpId)!);
    }
  }
  function link(own: readonly number[], opened: number): void {
    rows.add([...own.map((k) => [optionsAt + k, 1] as const), [opened, -1]], -Infinity, 0);
  }
  if (atMostMixes !== null) {
    rows.add(
      mixes.map((_, m) => [m, 1] as const),
      -Infinity,
      atMostMixes,
    );
  }
  return {
    columnCount: count,
    rowCount: rows.lower.length,
    cost,
    columnLower,
    columnUpper,
    isInteger,
    rowLower: Float64Array.from(rows.lower),
    rowUpper: Float64Array.from(rows.upper),
    starts: Int32Array.from(rows.starts),
    indices: Int32Array.from(rows.indices),
    values: Float64Array.from(rows.values),
  };
}

/**
 * The assignment behind a solution of `mixProgram(search)`: mixes and set-ups as opened, each garment on its cheapest open
 * option or left out where that is cheaper; its cost counted anew from the statement.
 * @throws RangeError where `values` belongs to another program, or leaves a garment unserved that has to be served.
 */
export function readAssignment(search: AllowedSearch, values: ArrayLike<number>): MixAssignment {
  const { setUpsAt, count } = columnsOf(search);
  if (values.length !== count) throw new RangeError(`values must be ${count} long; got ${values.length}`);
  const isOpen = (column: number) => values[column]! > 0.5;
  return assignmentWith(
    search,
    new Set(search.mixes.filter((_, m) => isOpen(m)).map(({ id }) => id)),
    new Set(search.setUps.filter((_, s) => isOpen(setUpsAt + s)).map(({ id }) => id)),
  );
}

/**
 * The best assignment once it is decided which mixes and set-ups are opened; those opened and used by no garment are closed
 * again unless kept.
 * @throws RangeError where a garment that has to be served has no open option.
 */
export function assignmentWith(
  search: AllowedSearch,
  openMixIds: ReadonlySet<string>,
  openSetUpIds: ReadonlySet<string>,
): MixAssignment {
  const cheapest = new Map<string, MixOption>();
  for (const option of search.options) {
    if (!openMixIds.has(option.mixId) || !openSetUpIds.has(option.setUpId)) continue;
    const best = cheapest.get(option.garmentId);
    if (best === undefined || optionCost(option) < optionCost(best)) cheapest.set(option.garmentId, option);
  }
  const chosen: MixOption[] = [];
  const unservedIds: string[] = [];
  let unserved = 0;
  for (const { id, unservedCost } of search.garments) {
    const option = cheapest.get(id);
    if (option !== undefined && optionCost(option) <= (unservedCost ?? Infinity)) chosen.push(option);
    else if (unservedCost === null) throw new RangeError(`garment ${id} has to be served and is not`);
    else {
      unservedIds.push(id);
      unserved += unservedCost;
    }
  }
  const usedMixes = new Set([...search.keptMixIds, ...chosen.map(({ mixId }) => mixId)]);
  const usedSetUps = new Set(chosen.map(({ setUpId }) => setUpId));
  return {
    chosen,
    mixIds: search.mixes.filter(({ id }) => usedMixes.has(id)).map(({ id }) => id),
    setUpIds: search.setUps.filter(({ id }) => usedSetUps.has(id)).map(({ id }) => id),
    unservedIds,
    cost: sumOfCosts(search, chosen, search.keptMixIds, unserved),
  };
}

/** Money of `chosen` with the openings of all that it uses, and of the kept mixes and garments left out besides. */
export function sumOfCosts(
  { mixes, setUps }: Pick<AllowedSearch, "mixes" | "setUps">,
  chosen: readonly MixOption[],
  keptMixIds: ReadonlySet<string> = new Set(),
  unserved = 0,
): MixCost {
  const usedMixes = new Set([...keptMixIds, ...chosen.map(({ mixId }) => mixId)]);
  const usedSetUps = new Set(chosen.map(({ setUpId }) => setUpId));
  const opened = (items: AllowedSearch["setUps"], used: ReadonlySet<string>) =>
    items.reduce((sum, { id, openingCost }) => sum + (used.has(id) ? openingCost : 0), 0);
  const parts = {
    mixes: opened(mixes, usedMixes),
    setUps: opened(setUps, usedSetUps),
    ink: chosen.reduce((sum, { inkCost }) => sum + inkCost, 0),
    expectedLoss: chosen.reduce((sum, { expectedLoss }) => sum + expectedLoss, 0),
    unserved,
  };
  const total = parts.mixes + parts.setUps + parts.ink + parts.expectedLoss + parts.unserved;
  return { ...parts, total };
}
