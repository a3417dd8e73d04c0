// Recover: what is offered, in which order, and what is said along with it, against a made-up print of plain arithmetic.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  DEFAULT_RECOVER_RULE,
  planRecovery,
  type RecoverOption,
  type RecoverPrediction,
  rankOptions,
} from "../../../../src/core/planning/decisions/recover.ts";
import {
  changeSets,
  type Printing,
  RECOVER_HALFTONES,
  type RecoverStock,
  singleChanges,
  withChanges,
} from "../../../../src/core/planning/decisions/recoverChanges.ts";
import { effortOf } from "../../../../src/core/planning/decisions/recoverEffort.ts";
import { normalCumulative } from "../../../../src/core/prediction/normalDistribution.ts";
import { between } from "../../optics/between.ts";

const printing: Printing = {
  baseKey: "clear",
  tints: [{ colourantKey: "black", massFraction: 0.0025 }],
  screenKey: "61",
  squeegeeKey: "soft",
  strokeCount: 1,
  halftoneFraction: 1,
};
const stock: RecoverStock = {
  bases: [
    { key: "clear", potReady: true },
    { key: "matt", potReady: true },
    { key: "gloss", potReady: false },
  ],
  colourants: [
    { key: "black", family: "black", ladder: [0, 0.001, 0.0025, 0.005] },
    { key: "white", family: "white", ladder: [0, 0.01] },
  ],
  screens: [{ key: "61" }, { key: "90" }],
  squeegees: [{ key: "soft" }, { key: "hard" }],
  largestStrokeCount: 2,
  halftoneFractions: [],
};
const STRENGTH: Record<string, number> = { clear: 0.85, matt: 0.6, gloss: 1 };
const REACH: Record<string, number> = { "61": 1, "90": 0.7 };

/** Plain arithmetic in place of the model: every part scales the effect; wrong by the factor `reaction`. */
const madeUp =
  (reaction: number) =>
  (p: Printing): RecoverPrediction => {
    const film = REACH[p.screenKey]! * 1.2 ** (p.strokeCount - 1) * (p.squeegeeKey === "hard" ? 0.9 : 1);
    const tint = p.tints.reduce(
      (sum, { colourantKey, massFraction }) =>
        sum + massFraction * (colourantKey === "white" ? -200 : 400) * film,
      0,
    );
    const deltaL50 = -(4 * reaction * STRENGTH[p.baseKey]! * film + tint) * p.halftoneFraction;
    const sd = 0.1 + 0.08 * Math.abs(deltaL50);
    const chanceInBand = normalCumulative((-2.5 - deltaL50) / sd) - normalCumulative((-5.5 - deltaL50) / sd);
    return { deltaL5: deltaL50 - 1.64 * sd, deltaL50, deltaL95: deltaL50 + 1.64 * sd, chanceInBand };
  };
const plan = (reaction: number, more: Partial<RecoverStock> = {}) =>
  planRecovery({
    printing,
    stock: { ...stock, ...more },
    approvedDeltaL: -4,
    predict: madeUp(reaction),
  });

const option = (chanceInBand: number, distance: number, minutes: number): RecoverOption => ({
  changes: [],
  printing,
  prediction: { deltaL5: -1, deltaL50: 0, deltaL95: 1, chanceInBand },
  distance,
  minutes,
  cost: 0,
  screenChange: false,
  cautions: [],
});

describe("changes", () => {
  it("are each thing in stock but what is in use, and pairs of two different things", () => {
    const singles = singleChanges(printing, stock);
    // 2 bases, 3 blacks, 1 white, 1 stroke, 1 squeegee, 1 screen.
    expect(singles).toHaveLength(9);
    const pairs = changeSets(printing, stock).filter((set) => set.length === 2);
    // 36 pairs of 9, less 1 of the bases and 3 of the blacks.
    expect(pairs).toHaveLength(32);
    expect(changeSets(printing, stock)).toHaveLength(1 + 9 + 32);
  });

  it("offer halftones only where they are allowed, and leave a tint out at 0", () => {
    const more = { ...stock, halftoneFractions: RECOVER_HALFTONES };
    expect(singleChanges(printing, more)).toHaveLength(9 + 4);
    expect(withChanges(printing, [{ kind: "tint", colourantKey: "black", massFraction: 0 }]).tints).toEqual(
      [],
    );
  });

  it("take longer where ink is washed up than where tint is stirred in, and longest where a screen is made", () => {
    const more = effortOf(printing, [{ kind: "tint", colourantKey: "black", massFraction: 0.005 }], stock);
    const less = effortOf(printing, [{ kind: "tint", colourantKey: "black", massFraction: 0.001 }], stock);
    const ready = effortOf(
      printing,
      [
        { kind: "base", baseKey: "matt" },
        { kind: "tint", colourantKey: "black", massFraction: 0 },
      ],
      stock,
    );
    const half = effortOf(printing, [{ kind: "halftone", halftoneFraction: 0.7 }], stock);
    expect(more.minutes).toBe(8);
    expect(less.minutes).toBe(25);
    expect(ready.minutes).toBe(15);
    expect(half).toEqual({ minutes: 99, cost: 124 });
    expect(effortOf(printing, [], stock)).toEqual({ minutes: 0, cost: 0 });
  });
});

describe("rankOptions", () => {
  it("counts chances within 0.05 as equal, then takes the nearer, then the quicker", () => {
    const far = option(0.9, 1, 5);
    const near = option(0.86, 0.3, 60);
    const quick = option(0.87, 0.35, 10);
    const unlikely = option(0.84, 0, 0);
    expect(rankOptions([unlikely, far, near, quick], DEFAULT_RECOVER_RULE)).toEqual([
      quick,
      near,
      far,
      unlikely,
    ]);
  });

  it("never puts a chance behind one that is smaller by more than counts as equal", () => {
    const anyOption = fc.tuple(between(0, 1), between(0, 5), between(0, 100));
    fc.assert(
      fc.property(fc.array(anyOption, { maxLength: 30 }), (figures) => {
        const ranked = rankOptions(
          figures.map((figure) => option(...figure)),
          DEFAULT_RECOVER_RULE,
        );
        expect(ranked).toHaveLength(figures.length);
        ranked.forEach((later, i) => {
          for (const earlier of ranked.slice(0, i)) {
            expect(later.prediction.chanceInBand - earlier.prediction.chanceInBand).toBeLessThanOrEqual(
              0.05 + 1e-9,
            );
          }
        });
      }),
    );
  });
});

describe("planRecovery", () => {
  it("puts the changes that keep the screen first where one of them suffices, whatever a screen could do better", () => {
    const { options, bestOnThisScreen, sufficesOnThisScreen } = plan(1.6);
    expect(sufficesOnThisScreen).toBe(true);
    expect(options[0]).toBe(bestOnThisScreen);
    expect(options[0]?.screenChange).toBe(false);
  });

  it("turns to another screen where none of them does, and still names the best of them", () => {
    const { options, bestOnThisScreen, sufficesOnThisScreen } = plan(2.6, { largestStrokeCount: 1 });
    expect(sufficesOnThisScreen).toBe(false);
    expect(options[0]?.screenChange).toBe(true);
    expect(bestOnThisScreen?.screenChange).toBe(false);
    expect(bestOnThisScreen?.printing.baseKey).toBe("matt");
  });

  it("finds a print that is too light as well: stronger base, more tint or strokes", () => {
    const { options } = plan(0.4);
    const best = options[0]!;
    expect(best.prediction.deltaL50).toBeLessThan(madeUp(0.4)(printing).deltaL50);
    expect(best.prediction.chanceInBand).toBeGreaterThan(0.8);
  });

  it("warns of milky haze wherever white is added, or the prediction shows it", () => {
    const { options } = plan(2.6);
    const whitened = options.filter(({ changes }) =>
      changes.some((change) => change.kind === "tint" && change.colourantKey === "white"),
    );
    expect(whitened.length).toBeGreaterThan(0);
    expect(whitened.every(({ cautions }) => cautions.includes("milky-haze"))).toBe(true);
    const hazy = planRecovery({
      printing,
      stock,
      approvedDeltaL: -4,
      predict: (p) => ({ ...madeUp(1)(p), milkyHaze: true }),
    });
    expect(hazy.options.every(({ cautions }) => cautions.includes("milky-haze"))).toBe(true);
  });

  it("leaves out what is refused, and pairs that one of their changes alone does as well as", () => {
    const refused = planRecovery({
      printing,
      stock,
      approvedDeltaL: -4,
      predict: (p) => (p.baseKey === "gloss" ? null : madeUp(1.6)(p)),
    });
    expect(refused.options.some((each) => each.printing.baseKey === "gloss")).toBe(false);
    const { options, predictedCount } = plan(1.6);
    expect(predictedCount).toBe(42);
    expect(options.length).toBeLessThan(predictedCount);
    options.forEach(({ changes }, i) => {
      if (changes.length < 2) return;
      const alone = options.slice(0, i).filter((each) => each.changes.length === 1);
      expect(alone.some((each) => changes.includes(each.changes[0]!))).toBe(false);
    });
  });

  it("ends with printing on as it is, alone where nothing helps", () => {
    expect(plan(1.6).options.at(-1)?.changes).toEqual([]);
    const right = planRecovery({
      printing,
      stock,
      approvedDeltaL: -4,
      predict: (_, changes) => ({
        deltaL5: -5,
        deltaL50: -4 - changes.length,
        deltaL95: -3,
        chanceInBand: changes.length === 0 ? 0.9 : 0.5,
      }),
    });
    expect(right.options).toHaveLength(1);
    expect(right.bestOnThisScreen).toBeNull();
  });

  it("measures the distance in colour where both colours are known", () => {
    const { options } = planRecovery({
      printing,
      stock,
      approvedDeltaL: -4,
      predict: (p) => ({ ...madeUp(1)(p), deltaE00FromApproved: 1.25 }),
    });
    expect(options.every(({ distance }) => distance === 1.25)).toBe(true);
  });
});
