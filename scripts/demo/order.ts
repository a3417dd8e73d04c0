/** The demo's order: whose it is, where it is printed and with which mixes it may be; all invented. */
import { NO_MIX_RULES } from "../../src/job/edits/places.ts";
import type { Candidate, Job } from "../../src/job/jobDocument.ts";
import type { Mix } from "../../src/job/mixDocument.ts";
import { GARMENTS, garmentLine } from "./garments.ts";
import { demoId } from "./seededIds.ts";

type Parts = readonly (readonly [item: string, massFraction: number])[];

function mix(name: string, parts: Parts): Mix {
  return {
    id: demoId(`mix ${name}`),
    name,
    recipe: parts.map(([item, massFraction]) => ({ itemId: demoId(`item ${item}`), massFraction })),
    clothCoverFraction: null,
  };
}

/** A base with some ready-made black; the fractions sum to 1. */
function tinted(base: string, blackFraction: number): Mix {
  const percent = Number((blackFraction * 100).toFixed(6));
  return mix(`${base} + ${percent} % black`, [
    [base, 1 - blackFraction],
    ["Black", blackFraction],
  ]);
}

const CURABLE_CLEAR = mix("Curable clear", [["Curable clear", 1]]);
const GLOSS_CLEAR = mix("Gloss clear", [["Gloss clear", 1]]);
const MATT_CLEAR = mix("Matt clear", [["Matt clear", 1]]);
const CURABLE_QUARTER = tinted("Curable clear", 0.0025);
const CURABLE_HALF = tinted("Curable clear", 0.005);
const STRETCH_TENTH = tinted("Low-cure stretch clear", 0.001);
const SOFT_WHITE = mix("Soft white", [
  ["White", 0.5],
  ["Soft-hand additive", 0.5],
]);

/** For the darkest cloth, on which half white comes out too light. */
const SOFTER_WHITE = mix("Softer white", [
  ["White", 0.05],
  ["Soft-hand additive", 0.5],
  ["Curable clear", 0.45],
]);

function candidate(place: string, { id, name }: Mix, meshName: string): Candidate {
  return {
    id: demoId(`candidate ${place} ${name} ${meshName}`),
    mixId: id,
    setUpId: demoId(`set-up ${meshName}`),
  };
}

const FRONT: readonly Candidate[] = [
  candidate("front", CURABLE_CLEAR, "61-64"),
  candidate("front", CURABLE_QUARTER, "61-64"),
  candidate("front", CURABLE_HALF, "61-64"),
  candidate("front", GLOSS_CLEAR, "61-64"),
  candidate("front", MATT_CLEAR, "61-64"),
  candidate("front", STRETCH_TENTH, "61-64"),
  candidate("front", MATT_CLEAR, "90-48"),
];

export function demoJob(): Job {
  return {
    id: demoId("job VM-217"),
    number: "VM-217",
    customer: "Verrowmoor Outfitters",
    createdAt: "2026-02-02T09:00:00.000Z",
    forChildren: false,
    lines: GARMENTS.map(garmentLine),
    places: [
      {
        id: demoId("place front"),
        name: "Front",
        widthMm: 280,
        heightMm: 330,
        coverFraction: 0.46,
        halftoneFraction: 1,
        smoothed: false,
        band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
        candidates: [...FRONT],
        mixRules: NO_MIX_RULES,
        lineIds: null,
      },
      {
        id: demoId("place back"),
        name: "Back",
        widthMm: 200,
        heightMm: 80,
        coverFraction: 0.35,
        halftoneFraction: 1,
        smoothed: false,
        band: { deltaL: 20, tolerance: 5, hueLimit: 2 },
        candidates: [candidate("back", SOFT_WHITE, "120-34"), candidate("back", SOFTER_WHITE, "120-34")],
        mixRules: NO_MIX_RULES,
        lineIds: ["G01", "G05", "G07"].map((key) => demoId(`line ${key}`)),
      },
    ],
    mixes: [
      CURABLE_CLEAR,
      CURABLE_QUARTER,
      CURABLE_HALF,
      GLOSS_CLEAR,
      MATT_CLEAR,
      STRETCH_TENTH,
      SOFT_WHITE,
      SOFTER_WHITE,
    ],
    choices: [
      {
        lineId: demoId("line G03"),
        placeId: demoId("place front"),
        candidateId: demoId("candidate front Curable clear 61-64"),
      },
    ],
    viewing: { illuminant: "D65", observer: "10deg" },
    checklist: [],
    // Opened on any day: a day in its calendar would be over.
    runStartsOn: null,
    pressLog: [],
  };
}
