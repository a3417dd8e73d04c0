/**
 * Which mixes to make, which set-ups to use and which garment gets which pair, stated as plain data: facility location with
 * two linked kinds of facility (model.md §7). The statement says what is asked; `mixProgram.ts` writes it for a solver.
 */

/** One garment on one mix through one set-up, with its money. Pairs that were not predicted are simply not listed. */
export interface MixOption {
  readonly garmentId: string;
  readonly mixId: string;
  readonly setUpId: string;
  readonly inkCost: number;
  readonly expectedLoss: number;
  /** 0..1. */
  readonly chanceInBand: number;
}

export interface MixSearchProblem {
  readonly garments: readonly {
    readonly id: string;
    /** Money of leaving it without a print, such as what would be earned; null: it has to be served if anything can. */
    readonly unservedCost: number | null;
  }[];
  readonly mixes: readonly {
    readonly id: string;
    /** Ink change, pot and left-over, money. */
    readonly openingCost: number;
    /** Made of what is on the shelf. */
    readonly inStock: boolean;
    /** Of low-cure bases alone. */
    readonly lowCure: boolean;
  }[];
  readonly setUps: readonly {
    readonly id: string;
    /** Screen and setting up, money; 0 for one that is used anyway. */
    readonly openingCost: number;
    /** Mesh and blade at hand. */
    readonly inStock: boolean;
  }[];
  readonly options: readonly MixOption[];
}

export interface MixSearchRules {
  readonly atMostMixes: number | null;
  readonly stockOnly: boolean;
  readonly lowCureOnly: boolean;
  /** Mixes that are made whatever the search finds: a pot the customer approved. */
  readonly keptMixIds: readonly string[];
  readonly forbiddenMixIds: readonly string[];
  /** An option with a smaller chance in band does not serve its garment. */
  readonly leastChance: number;
}

/** 0.5: a print that is rather out of band than in is no proposal. Invented default. */
export const DEFAULT_MIX_SEARCH_RULES: MixSearchRules = {
  atMostMixes: null,
  stockOnly: false,
  lowCureOnly: false,
  keptMixIds: [],
  forbiddenMixIds: [],
  leastChance: 0.5,
};

export type MixSearchFault =
  | { readonly code: "kept-and-forbidden"; readonly mixId: string }
  | {
      readonly code: "kept-not-allowed";
      readonly mixId: string;
      readonly rule: "stock-only" | "low-cure-only";
    }
  | { readonly code: "kept-more-than-allowed"; readonly keptCount: number; readonly atMostMixes: number };

/** A garment that the search leaves out, before anything is solved. */
export interface UnservableGarment {
  readonly garmentId: string;
  /** Nothing was predicted for it; rules shut out all there is; nothing allowed reaches the least chance. */
  readonly why: "nothing-predicted" | "rules" | "chance-too-small";
  /** The option with the largest chance of all that were given: what would come nearest. */
  readonly nearest: MixOption | null;
}

export interface AllowedSearch {
  readonly garments: MixSearchProblem["garments"];
  readonly mixes: MixSearchProblem["mixes"];
  readonly setUps: MixSearchProblem["setUps"];
  readonly options: readonly MixOption[];
  readonly keptMixIds: ReadonlySet<string>;
  readonly atMostMixes: number | null;
  readonly unservable: readonly UnservableGarment[];
}

/** Money of an option besides openings. */
export function optionCost({ inkCost, expectedLoss }: MixOption): number {
  return inkCost + expectedLoss;
}

/**
 * The part of `problem` that `rules` leave: what is allowed, and the garments that nothing allowed serves with the reason.
 * @returns faults where the rules contradict each other.
 * @throws RangeError for an option that names what is not listed, an id listed twice, or money or a chance that cannot be.
 */
export function allowedSearch(
  problem: MixSearchProblem,
  rules: MixSearchRules = DEFAULT_MIX_SEARCH_RULES,
):
  | { readonly ok: true; readonly search: AllowedSearch }
  | { readonly ok: false; readonly faults: readonly MixSearchFault[] } {
  requireSound(problem);
  const faults = faultsOf(problem, rules);
  if (faults.length > 0) return { ok: false, faults };
  const forbidden = new Set(rules.forbiddenMixIds);
  const mixes = problem.mixes.filter(
    ({ id, inStock, lowCure }) =>
      !forbidden.has(id) && (inStock || !rules.stockOnly) && (lowCure || !rules.lowCureOnly),
  );
  const setUps = problem.setUps.filter(({ inStock }) => inStock || !rules.stockOnly);
  const mixIds = new Set(mixes.map(({ id }) => id));
  const setUpIds = new Set(setUps.map(({ id }) => id));
  const byRules = problem.options.filter(({ mixId, setUpId }) => mixIds.has(mixId) && setUpIds.has(setUpId));
  const options = byRules.filter(({ chanceInBand }) => chanceInBand >= rules.leastChance);
  const served = new Set(options.map(({ garmentId }) => garmentId));
  const allowed = new Set(byRules.map(({ garmentId }) => garmentId));
  const nearest = new Map<string, MixOption>();
  for (const option of problem.options) {
    const best = nearest.get(option.garmentId);
    if (best === undefined || option.chanceInBand > best.chanceInBand) nearest.set(option.garmentId, option);
  }
  const unservable = problem.garments
    .filter(({ id }) => !served.has(id))
    .map(({ id }): UnservableGarment => {
      const best = nearest.get(id) ?? null;
      // Something would serve it, or it has nothing left to choose from: then it is for the rules.
      const isForbidden = best !== null && (best.chanceInBand >= rules.leastChance || !allowed.has(id));
      const why = best === null ? "nothing-predicted" : isForbidden ? "rules" : "chance-too-small";
      return { garmentId: id, why, nearest: best };
    });
  const search: AllowedSearch = {
    garments: problem.garments.filter(({ id }) => served.has(id)),
    mixes,
    setUps,
    options,
    keptMixIds: new Set(rules.keptMixIds),
    atMostMixes: rules.atMostMixes,
    unservable,
  };
  return { ok: true, search };
}

function faultsOf(problem: MixSearchProblem, rules: MixSearchRules): MixSearchFault[] {
  const faults: MixSearchFault[] = [];
  for (const mixId of new Set(rules.keptMixIds)) {
    const mix = problem.mixes.find(({ id }) => id === mixId);
    if (mix === undefined) throw new RangeError(`a kept mix must be listed; got ${mixId}`);
    if (rules.forbiddenMixIds.includes(mixId)) faults.push({ code: "kept-and-forbidden", mixId });
    if (rules.stockOnly && !mix.inStock) faults.push({ code: "kept-not-allowed", mixId, rule: "stock-only" });
    if (rules.lowCureOnly && !mix.lowCure) {
      faults.push({ code: "kept-not-allowed", mixId, rule: "low-cure-only" });
    }
  }
  const { atMostMixes } = rules;
  const keptCount = new Set(rules.keptMixIds).size;
  if (atMostMixes !== null && keptCount > atMostMixes) {
    faults.push({ code: "kept-more-than-allowed", keptCount, atMostMixes });
  }
  return faults;
}

function requireSound({ garments, mixes, setUps, options }: MixSearchProblem): void {
  const idsOf = (name: string, items: readonly { readonly id: string }[]) => {
    const ids = new Set(items.map(({ id }) => id));
    if (ids.size !== items.length) throw new RangeError(`${name} must not list an id twice`);
    return ids;
  };
  const garmentIds = idsOf("garments", garments);
  const mixIds = idsOf("mixes", mixes);
  const setUpIds = idsOf("setUps", setUps);
  for (const { openingCost, id } of [...mixes, ...setUps]) requireMoney(`opening cost of ${id}`, openingCost);
  for (const { id, unservedCost } of garments) {
    if (unservedCost !== null) requireMoney(`unserved cost of ${id}`, unservedCost);
  }
  for (const { garmentId, mixId, setUpId, inkCost, expectedLoss, chanceInBand } of options) {
    if (!garmentIds.has(garmentId) || !mixIds.has(mixId) || !setUpIds.has(setUpId)) {
      throw new RangeError(`an option must name what is listed; got ${garmentId}, ${mixId}, ${setUpId}`);
    }
    requireMoney("inkCost", inkCost);
    requireMoney("expectedLoss", expectedLoss);
    if (!(chanceInBand >= 0 && chanceInBand <= 1)) {
      throw new RangeError(`chanceInBand must be in 0..1; got ${chanceInBand}`);
    }
  }
}

function requireMoney(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
}
