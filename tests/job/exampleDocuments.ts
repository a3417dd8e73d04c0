/** A small invented job for tests: two lines, one place, two candidates that share a mix's base, a full shelf. */
import type { Documents } from "../../src/job/documents.ts";
import type { GarmentLotDraft } from "../../src/job/edits/lines.ts";
import { NO_MIX_RULES } from "../../src/job/edits/places.ts";
import { emptyLibrary } from "../../src/job/emptyLibrary.ts";
import type { ChecklistEntry } from "../../src/job/jobDocument.ts";
import type { TestPrint } from "../../src/job/recordDocument.ts";
import type { Base, Colourant } from "../../src/job/shelfDocument.ts";

/** A UUID that says which one it is. */
export function exampleId(number: number): string {
  return `00000000-0000-4000-8000-${number.toString(16).padStart(12, "0")}`;
}

export const ids = {
  job: exampleId(1),
  lot: exampleId(10),
  otherLot: exampleId(11),
  line: exampleId(20),
  otherLine: exampleId(21),
  place: exampleId(30),
  mix: exampleId(40),
  otherMix: exampleId(41),
  candidate: exampleId(50),
  otherCandidate: exampleId(51),
  clear: exampleId(60),
  softener: exampleId(61),
  black: exampleId(70),
  white: exampleId(71),
  red: exampleId(72),
  mesh: exampleId(80),
  fineMesh: exampleId(81),
  squeegee: exampleId(82),
  setUp: exampleId(83),
  otherSetUp: exampleId(84),
};

export const time = "2026-02-17T09:30:00Z";
const cure = { filmCelsius: null, seconds: null, note: "" };

/** What bases and colourants have alike. */
const ink = () => ({
  inStock: true,
  largestFraction: 1,
  lowCure: false,
  cure,
  highestCelsius: null,
  hazards: null,
  lots: [],
  pricePerKg: null,
});

function base(id: string, name: string, change: Partial<Base> = {}): Base {
  return {
    ...ink(),
    id,
    name,
    role: "base",
    strength: 1,
    reference: false,
    hazePerUm: 0,
    closedFraction: 0.02,
    densityGramsPerCm3: 1.15,
    ...change,
  };
}

function colourant(id: string, name: string, optics: Colourant["optics"]): Colourant {
  return { ...ink(), id, name, strengthDefinition: "ready-made-ink", optics, densityGramsPerCm3: 1.2 };
}

export const lotDraft: GarmentLotDraft = {
  style: "Heavy tee",
  colourway: "Forest",
  mill: "Mill A",
  country: "",
  lot: "A-1",
  blend: [
    { fibre: "cotton", massFraction: 0.5, dyed: true },
    { fibre: "polyester", massFraction: 0.5, dyed: true },
  ],
  yarn: "spun",
  finish: "none",
  heather: false,
  bleeds: false,
  bare: {
    kind: "readings",
    viewing: { illuminant: "D65", observer: "10deg" },
    geometry: "45:0",
    readings: [
      { L: 30, a: -15, b: 6 },
      { L: 31, a: -15, b: 7 },
    ],
  },
  note: "",
};

const line = {
  quantities: [
    { size: "S", count: 10 },
    { size: "M", count: 20 },
  ],
  suppliedBy: "shop" as const,
  piecePrice: 3,
  substitutedForLotId: null,
  sparePieceCount: null,
  note: "",
};

export function exampleDocuments(): Documents {
  const { defaults } = emptyLibrary().shelf;
  return {
    job: {
      id: ids.job,
      number: "T-1",
      customer: "Invented Outfitters",
      createdAt: time,
      forChildren: false,
      lines: [
        { ...line, id: ids.line, garmentLotId: ids.lot },
        { ...line, id: ids.otherLine, garmentLotId: ids.otherLot },
      ],
      places: [
        {
          id: ids.place,
          name: "Front",
          widthMm: 280,
          heightMm: 330,
          coverFraction: 0.5,
          halftoneFraction: 1,
          smoothed: false,
          band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
          candidates: [
            { id: ids.candidate, mixId: ids.mix, setUpId: ids.setUp },
            { id: ids.otherCandidate, mixId: ids.otherMix, setUpId: ids.setUp },
          ],
          mixRules: NO_MIX_RULES,
          lineIds: null,
        },
      ],
      mixes: [
        {
          id: ids.mix,
          name: "Clear",
          recipe: [
            { itemId: ids.clear, massFraction: 0.8 },
            { itemId: ids.softener, massFraction: 0.2 },
          ],
          clothCoverFraction: null,
        },
        {
          id: ids.otherMix,
          name: "Clear, a little black",
          recipe: [
            { itemId: ids.clear, massFraction: 0.995 },
            { itemId: ids.black, massFraction: 0.005 },
          ],
          clothCoverFraction: null,
        },
      ],
      choices: [],
      viewing: { illuminant: "D65", observer: "10deg" },
      checklist: [],
      runStartsOn: null,
      pressLog: [],
    },
    library: {
      shelf: {
        bases: [
          base(ids.clear, "Gloss clear", { reference: true }),
          base(ids.softener, "Soft-hand additive", {
            role: "additive",
            strength: 0.85,
            largestFraction: 0.5,
          }),
        ],
        colourants: [
          colourant(ids.black, "Black", { kind: "black" }),
          colourant(ids.white, "White", { kind: "white" }),
          colourant(ids.red, "Warm red", {
            kind: "masstone",
            masstone: { kind: "hex", hex: "#a02020" },
            strengthPerUm: 0.5,
          }),
        ],
        masters: [],
        meshes: [
          {
            id: ids.mesh,
            name: "61-64",
            threadsPerCm: 61,
            threadUm: 64,
            thicknessUm: null,
            screensAtHand: 4,
          },
          {
            id: ids.fineMesh,
            name: "120-34",
            threadsPerCm: 120,
            threadUm: 34,
            thicknessUm: 55,
            screensAtHand: 2,
          },
        ],
        squeegees: [{ id: ids.squeegee, name: "70/90/70", shoreA: [70, 90, 70], hard: false }],
        setUps: [
          {
            id: ids.setUp,
            name: "61-64, one stroke",
            meshId: ids.mesh,
            squeegeeId: ids.squeegee,
            strokeCount: 1,
            flood: null,
            transferFraction: null,
            weighed: { kind: "mean", meanGsm: 23, sdGsm: 1, pieceCount: 10, densityGramsPerCm3: 1.15 },
          },
          {
            id: ids.otherSetUp,
            name: "120-34, one stroke",
            meshId: ids.fineMesh,
            squeegeeId: ids.squeegee,
            strokeCount: 1,
            flood: null,
            transferFraction: null,
            weighed: null,
          },
        ],
        defaults,
      },
      garmentLots: [
        { ...lotDraft, id: ids.lot },
        { ...lotDraft, id: ids.otherLot, mill: "Mill B", lot: "B-7" },
      ],
      testPrints: [],
      approvals: [],
      goodsInChecks: [],
      slipAnswers: [],
      pots: [],
      dilutions: [],
      potEntries: [],
    },
  };
}

export function exampleEntry(number: number, change: Partial<ChecklistEntry> = {}): ChecklistEntry {
  return {
    id: exampleId(0x10000 + number),
    lineId: ids.line,
    placeId: ids.place,
    action: "sign",
    itemCode: "wash-test",
    subject: "subject",
    signer: "A. Printer",
    at: time,
    note: "",
    said: null,
    ...change,
  };
}

export function exampleTestPrint(number: number, change: Partial<TestPrint> = {}): TestPrint {
  return {
    id: exampleId(0x20000 + number),
    garmentLotId: ids.lot,
    recipe: [{ itemId: ids.clear, massFraction: 1 }],
    actualGrams: null,
    setUpId: ids.setUp,
    depositGsm: null,
    halftoneFraction: 1,
    smoothed: false,
    cure: { filmCelsius: null, seconds: null },
    printedAt: time,
    readAt: time,
    operator: "A. Printer",
    readings: {
      kind: "lab",
      viewing: { illuminant: "D65", observer: "10deg" },
      geometry: "45:0",
      pairs: [{ bare: { L: 30, a: -15, b: 6 }, print: { L: 27, a: -14, b: 5 } }],
      pairCount: 1,
      pieceCount: 1,
      sdPairDifference: null,
    },
    instrument: "",
    backing: "",
    washCount: 0,
    verdict: "none",
    note: "",
    photo: null,
    supersedesId: null,
    ...change,
  };
}
