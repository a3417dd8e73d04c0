/** The demo's shelf: every number invented; strengths and haze are the model's starting values. */
import type { Base, Colourant, Master, Mesh, SetUp, Shelf, Squeegee } from "../../src/job/shelfDocument.ts";
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

function base(entry: BaseEntry): Base {
  const lowCure = entry.name === "Low-cure stretch clear";
  return {
    id: demoId(`item ${entry.name}`),
    ...entry,
    reference: entry.name === "Gloss clear",
    closedFraction: 0.02,
    lowCure,
    densityGramsPerCm3: CLEAR_GRAMS_PER_CM3,
    cure: lowCure ? LOW_CURE : NORMAL_CURE,
  };
}

function colourant(name: string, optics: Colourant["optics"], densityGramsPerCm3: number): Colourant {
  return {
    id: demoId(`item ${name}`),
    name,
    strengthDefinition: "ready-made-ink",
    optics,
    largestFraction: 1,
    densityGramsPerCm3,
    cure: NORMAL_CURE,
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
  };
}

function mesh(name: string, threadsPerCm: number, threadUm: number, screensAtHand: number): Mesh {
  return { id: demoId(`mesh ${name}`), name, threadsPerCm, threadUm, thicknessUm: null, screensAtHand };
}

function squeegee(name: string, shoreA: readonly number[], hard: boolean): Squeegee {
  return { id: demoId(`squeegee ${name}`), name, shoreA: [...shoreA], hard };
}

/** One stroke with the 70/90/70 blade; weighed to a deposit, or estimated where nothing was weighed. */
function setUp(meshName: string, weighedUm: number | null): SetUp {
  return {
    id: demoId(`set-up ${meshName}`),
    name: `${meshName}, one stroke`,
    meshId: demoId(`mesh ${meshName}`),
    squeegeeId: demoId("squeegee 70/90/70"),
    strokeCount: 1,
    weighed:
      weighedUm === null
        ? null
        : {
            meanGsm: Number((weighedUm * CLEAR_GRAMS_PER_CM3).toFixed(6)),
            sdGsm: Number((weighedUm * CLEAR_GRAMS_PER_CM3 * 0.08).toFixed(6)),
            pieceCount: 10,
            densityGramsPerCm3: CLEAR_GRAMS_PER_CM3,
          },
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
    setUps: [setUp("61-64", 20), setUp("90-48", 11.6), setUp("120-34", null)],
    defaults: {
      shopName: "Ostrelle Print Room",
      currency: "EUR",
      units: { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" },
      instrument: { viewing: { illuminant: "D65", observer: "10deg" }, geometry: "45:0" },
      tintLadder: [0, 0.001, 0.0025, 0.005, 0.01],
      testAboveCount: 144,
      prices: { print: 0.39, polyesterSurcharge: 0.25, screen: 25, inkChange: 12, testPrint: 25 },
      spoilageFraction: 0.02,
      refusedFraction: 0.7,
    },
  };
}
