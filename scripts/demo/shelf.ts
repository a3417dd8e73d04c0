/** The demo's shelf: every number invented; strengths and haze are the model's starting values. */
import type {
  Base,
  Colourant,
  InkLot,
  Master,
  Mesh,
  SetUp,
  Shelf,
  Squeegee,
} from "../../src/job/shelfDocument.ts";
import { demoId } from "./seededIds.ts";

const CURE_NOTE = "Example. Use the temperature and time of your ink maker's data sheet.";

/** 24 g/m² of film is 20 µm at this density; invented. */
const CLEAR_GRAMS_PER_CM3 = 1.2;
const WHITE_GRAMS_PER_CM3 = 1.5;

const NORMAL_CURE = { filmCelsius: 160, seconds: 60, note: CURE_NOTE };
const LOW_CURE = { filmCelsius: 130, seconds: 60, note: CURE_NOTE };

interface BaseEntry {
  readonly name: string;
  readonly role: Base["role"];
  readonly strength: number;
  readonly hazePerUm: number;
  readonly largestFraction: number;
  readonly pricePerKg: number;
}

const BASES: readonly BaseEntry[] = [
  { name: "Gloss clear", role: "base", strength: 1, hazePerUm: 0, largestFraction: 1, pricePerKg: 11 },
  { name: "Curable clear", role: "base", strength: 0.85, hazePerUm: 0, largestFraction: 1, pricePerKg: 10 },
  { name: "Matt clear", role: "base", strength: 0.6, hazePerUm: 0.0001, largestFraction: 1, pricePerKg: 12 },
  {
    name: "Low-cure stretch clear",
    role: "base",
    strength: 0.9,
    hazePerUm: 0.00003,
    largestFraction: 1,
    pricePerKg: 14,
  },
  {
    name: "Extender base",
    role: "base",
    strength: 0.9,
    hazePerUm: 0.0001,
    largestFraction: 1,
    pricePerKg: 8,
  },
  { name: "Halftone base", role: "base", strength: 1, hazePerUm: 0, largestFraction: 1, pricePerKg: 9 },
  {
    name: "Curable reducer",
    role: "reducer",
    strength: 0.6,
    hazePerUm: 0,
    largestFraction: 0.1,
    pricePerKg: 13,
  },
  {
    name: "Soft-hand additive",
    role: "additive",
    strength: 0.85,
    hazePerUm: 0,
    largestFraction: 0.5,
    pricePerKg: 12,
  },
];

/** Entered for some, as in any shop; what is not here was not entered. */
const HAZARDS: Readonly<Record<string, string[]>> = {
  "Gloss clear": [],
  "Curable clear": [],
  Black: [],
  White: [],
  "Low-cure stretch clear": ["Example: may irritate the skin. Use your ink maker's safety data sheet."],
};

/** Deliveries in stock; what is not here has none entered. */
const LOT_CODES: Readonly<Record<string, string>> = {
  "Gloss clear": "GC-2509",
  "Curable clear": "CC-2511",
  "Matt clear": "MC-2510",
  "Low-cure stretch clear": "LS-2512",
  "Soft-hand additive": "SH-2510",
  Black: "BK-2510",
  White: "WH-2511",
};

function lotsOf(name: string): InkLot[] {
  const code = LOT_CODES[name];
  if (code === undefined) return [];
  const id = demoId(`lot ${code}`);
  return [{ id, code, receivedOn: "2025-12-03", expiresOn: "2026-12-03", note: "" }];
}

function base(entry: BaseEntry): Base {
  const lowCure = entry.name === "Low-cure stretch clear";
  return {
    id: demoId(`item ${entry.name}`),
    ...entry,
    reference: entry.name === "Gloss clear",
    closedFraction: 0.02,
    inStock: true,
    lowCure,
    densityGramsPerCm3: CLEAR_GRAMS_PER_CM3,
    cure: lowCure ? LOW_CURE : NORMAL_CURE,
    highestCelsius: lowCure ? 150 : 190,
    hazards: HAZARDS[entry.name] ?? null,
    lots: lotsOf(entry.name),
  };
}

function colourant(name: string, optics: Colourant["optics"], densityGramsPerCm3: number): Colourant {
  return {
    id: demoId(`item ${name}`),
    name,
    strengthDefinition: "ready-made-ink",
    optics,
    inStock: true,
    largestFraction: 1,
    lowCure: false,
    densityGramsPerCm3,
    cure: NORMAL_CURE,
    highestCelsius: 190,
    hazards: HAZARDS[name] ?? null,
    lots: lotsOf(name),
    pricePerKg: 15,
  };
}

/** A colourant known by its masstone, read under D65 and the 10° observer, 45:0. */
function tint(name: string, masstone: readonly [number, number, number], strengthPerUm: number): Colourant {
  const [L, a, b] = masstone;
  return colourant(
    name,
    {
      kind: "masstone",
      masstone: {
        kind: "readings",
        viewing: { illuminant: "D65", observer: "10deg" },
        geometry: "45:0",
        readings: [{ L, a, b }],
      },
      strengthPerUm,
    },
    CLEAR_GRAMS_PER_CM3,
  );
}

function master(massFraction: number): Master {
  return {
    id: demoId(`master black ${massFraction}`),
    colourantId: demoId("item Black"),
    baseId: demoId("item Curable clear"),
    massFraction,
    madeOn: "2026-01-12",
    expiresOn: "2026-07-12",
    gramsLeft: massFraction === 0.1 ? 260 : 410,
    dilutionId: demoId(`dilution black ${massFraction}`),
    note: "",
  };
}

function mesh(name: string, threadsPerCm: number, threadUm: number, screensAtHand: number): Mesh {
  return { id: demoId(`mesh ${name}`), name, threadsPerCm, threadUm, thicknessUm: null, screensAtHand };
}

function squeegee(name: string, shoreA: readonly number[], hard: boolean): Squeegee {
  return { id: demoId(`squeegee ${name}`), name, shoreA: [...shoreA], hard };
}

/** One stroke with the 70/90/70 blade; weighed to a deposit, or estimated where nothing was weighed. */
function setUp(meshName: string, weighed: SetUp["weighed"]): SetUp {
  return {
    id: demoId(`set-up ${meshName}`),
    name: `${meshName}, one stroke`,
    meshId: demoId(`mesh ${meshName}`),
    squeegeeId: demoId("squeegee 70/90/70"),
    strokeCount: 1,
    flood: "light",
    transferFraction: null,
    weighed,
  };
}

/** Ten garments with a solid patch of 0.05 m² and 1.2 g of ink on it in the mean: 24 g/m², 20 µm. */
function weighedPieces(): SetUp["weighed"] {
  const inkCentigrams = [106, 110, 113, 117, 120, 122, 125, 128, 129, 130];
  return {
    kind: "pieces",
    pieces: inkCentigrams.map((ink, index) => {
      const before = 15_240 + 37 * index;
      return { beforeGrams: before / 100, afterGrams: (before + ink) / 100 };
    }),
    printedAreaM2: 0.05,
    scaleStepGrams: 0.01,
    densityGramsPerCm3: CLEAR_GRAMS_PER_CM3,
    weighedAt: "2026-01-07T15:10:00.000Z",
  };
}

/** Worked out on paper before: only the mean and its spread are known. */
function weighedMean(meanUm: number): SetUp["weighed"] {
  const gsm = (um: number) => Number((um * CLEAR_GRAMS_PER_CM3).toFixed(6));
  return {
    kind: "mean",
    meanGsm: gsm(meanUm),
    sdGsm: gsm(meanUm * 0.08),
    pieceCount: 10,
    densityGramsPerCm3: CLEAR_GRAMS_PER_CM3,
  };
}

export function demoShelf(): Shelf {
  return {
    bases: BASES.map(base),
    colourants: [
      colourant("Black", { kind: "black" }, CLEAR_GRAMS_PER_CM3),
      tint("Navy", [22, 4, -24], 0.5),
      tint("Warm red", [46, 58, 38], 0.35),
      tint("Forest", [32, -24, 12], 0.45),
      colourant("White", { kind: "white" }, WHITE_GRAMS_PER_CM3),
    ],
    masters: [master(0.1), master(0.02)],
    meshes: [
      mesh("61-64", 61, 64, 6),
      mesh("77-55", 77, 55, 4),
      mesh("90-48", 90, 48, 4),
      mesh("120-34", 120, 34, 2),
    ],
    squeegees: [squeegee("70/90/70", [70, 90, 70], false), squeegee("75 single", [75], false)],
    setUps: [setUp("61-64", weighedPieces()), setUp("90-48", weighedMean(11.6)), setUp("120-34", null)],
    defaults: {
      shopName: "Ostrelle Print Room",
      currency: "EUR",
      units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
      instrument: { viewing: { illuminant: "D65", observer: "10deg" }, geometry: "45:0" },
      tintLadder: [0, 0.001, 0.0025, 0.005, 0.01],
      testAboveCount: 144,
      prices: {
        print: 0.39,
        polyesterSurcharge: 0.25,
        screen: 25,
        inkChange: 12,
        testPrint: 25,
        pressHour: 60,
      },
      spoilageRule: { code: "shop", fraction: 0.02 },
      refusedFraction: 0.7,
      liableFraction: 1,
      testing: { perDay: 4, restDays: 1, pieceCount: 2, pairCount: 6 },
      scales: [
        { id: "tenth-gram", name: "Bench scale, 0.1 g", stepGrams: 0.1, maxGrams: 3000 },
        { id: "gram", name: "Floor scale, 1 g", stepGrams: 1, maxGrams: 30_000 },
      ],
      potSizes: [
        { id: "litre", name: "1 litre", volumeCm3: 1000 },
        { id: "five-litres", name: "5 litres", volumeCm3: 5000 },
      ],
      screenWetGrams: 400,
      changeMinutes: { wipe: 3, washUp: 12, lowCureCleaning: 15, darkToLight: 3, screenSetUp: 9 },
      priorScales: null,
      columnMatchings: [],
    },
  };
}
