/**
 * The library of a shop that has entered nothing: empty lists, and defaults that have to be something.
 * Every figure here is an invented default that the shop replaces on its shelf; prices start at nothing.
 */
import { DEFAULT_LIABLE_SHARE, DEFAULT_REFUSED_SHARE } from "../core/planning/decisions/expectedLoss.ts";
import { SCREEN_WET_GRAMS } from "../core/planning/ink/batchSize.ts";
import { USUAL_POT_SIZES } from "../core/planning/ink/pots.ts";
import { DEFAULT_CHANGE_MINUTES } from "../core/planning/ink/runOrder.ts";
import type { Library } from "./libraryDocument.ts";
import type { Scale, StoredPotSize } from "./shopDefaultsDocument.ts";

/** A fine and a coarse scale (invented): the two steps that ink rooms are often seen with, common practice, no source. */
const STARTING_SCALES: readonly Scale[] = [
  { id: "tenth-gram", name: "0.1 g scale", stepGrams: 0.1, maxGrams: null },
  { id: "gram", name: "1 g scale", stepGrams: 1, maxGrams: null },
];

/** A day's rest and four pairs on two pieces (common practice, no source); the number per day is the shop's to enter. */
const STARTING_TESTING = { perDay: null, restDays: 1, pieceCount: 2, pairCount: 4 };

const POT_NAMES: Readonly<Record<string, string>> = {
  quart: "US quart",
  litre: "1 litre",
  gallon: "US gallon",
  "five-litres": "5 litres",
  "five-gallons": "5 US gallons",
};

/** The core's selection of usual pots, named. */
function startingPots(): StoredPotSize[] {
  return USUAL_POT_SIZES.map(({ id, volumeCm3 }) => ({ id, name: POT_NAMES[id] ?? id, volumeCm3 }));
}

export function emptyLibrary(): Library {
  return {
    shelf: {
      bases: [],
      colourants: [],
      masters: [],
      meshes: [],
      squeegees: [],
      setUps: [],
      defaults: {
        shopName: "",
        currency: "",
        units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
        // D65/10 degrees and 45:0 are usual on textile instruments (common practice, no source).
        instrument: { viewing: { illuminant: "D65", observer: "10deg" }, geometry: "45:0" },
        tintLadder: [0, 0.001, 0.0025, 0.005, 0.01],
        testAboveCount: 144,
        prices: { print: 0, polyesterSurcharge: 0, screen: 0, inkChange: 0, testPrint: 0, pressHour: 0 },
        spoilageRule: { code: "shop", fraction: 0.02 },
        refusedFraction: DEFAULT_REFUSED_SHARE,
        liableFraction: DEFAULT_LIABLE_SHARE,
        testing: { ...STARTING_TESTING },
        scales: STARTING_SCALES.map((scale) => ({ ...scale })),
        potSizes: startingPots(),
        screenWetGrams: SCREEN_WET_GRAMS,
        changeMinutes: { ...DEFAULT_CHANGE_MINUTES },
        priorScales: null,
        columnMatchings: [],
      },
    },
    garmentLots: [],
    testPrints: [],
    approvals: [],
    goodsInChecks: [],
    slipAnswers: [],
    pots: [],
    dilutions: [],
    potEntries: [],
  };
}
