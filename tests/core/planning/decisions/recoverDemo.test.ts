// Recover on the demo's mill B forest: its first-off comes out about 2.6 times too dark, and the model ranks what could help.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { beliefFor } from "../../../../src/core/evidence/beliefFor.ts";
import { extend } from "../../../../src/core/evidence/extend.ts";
import { learnWatchfully } from "../../../../src/core/evidence/learnWatchfully.ts";
import type { EvidencePrint } from "../../../../src/core/evidence/record.ts";
import { planRecovery } from "../../../../src/core/planning/decisions/recover.ts";
import {
  type Printing,
  RECOVER_HALFTONES,
  type RecoverStock,
} from "../../../../src/core/planning/decisions/recoverChanges.ts";
import type { InkMix } from "../../../../src/core/prediction/inputs.ts";
import { predictPrint } from "../../../../src/core/prediction/predictPrint.ts";
import { readJobArchive } from "../../../../src/exchange/jobArchive.ts";
import { evidenceInputs } from "../../../../src/job/evidenceInputs.ts";
import { evidencePrint } from "../../../../src/job/evidencePrints.ts";
import { applicationFor, garmentFor, inkMixFor } from "../../../../src/job/predictionInputs.ts";

const DEMO = new URL("../../../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url);
const read = readJobArchive(readFileSync(DEMO, "utf8"));
if (!read.ok) throw new Error("the demo cannot be read");
const { job, library } = read.documents;
const { shelf } = library;
const place = job.places[0]!;

const baseNamed = (name: string) => shelf.bases.find((base) => base.name === name)!;
const setUpNamed = (start: string) => shelf.setUps.find(({ name }) => name.startsWith(start))!;
const black = shelf.colourants.find(({ name }) => name.toLowerCase().includes("black"))!;
const matt = baseNamed("Matt clear").id;
const curable = baseNamed("Curable clear").id;
const lot = library.garmentLots.find(({ mill, colourway, note }) => {
  return mill === "Mill B" && colourway === "Forest" && note.includes("in place of");
})!;
const cloth = garmentFor(lot, shelf);
if (!cloth.ok) throw new Error("the demo's forest cannot be predicted");

const printing: Printing = {
  baseKey: curable,
  tints: [],
  screenKey: setUpNamed("61-64").id,
  squeegeeKey: "at hand",
  strokeCount: 1,
  halftoneFraction: 1,
};
const stock = (halftoneFractions: readonly number[]): RecoverStock => ({
  bases: shelf.bases.filter(({ role }) => role === "base").map(({ id }) => ({ key: id, potReady: true })),
  colourants: [{ key: black.id, family: "black", ladder: [0, 0.001, 0.0025, 0.005, 0.01] }],
  screens: shelf.setUps.map(({ id }) => ({ key: id })),
  squeegees: [{ key: "at hand" }],
  largestStrokeCount: 1,
  halftoneFractions,
});

function printOf(p: Printing): EvidencePrint {
  const tint = p.tints.reduce((sum, { massFraction }) => sum + massFraction, 0);
  const recipe = [
    { itemId: p.baseKey, massFraction: 1 - tint },
    ...p.tints.map(({ colourantKey, massFraction }) => ({ itemId: colourantKey, massFraction })),
  ];
  const found = inkMixFor({ id: "changed", name: "changed", recipe, clothCoverFraction: null }, shelf);
  if (!found.ok) throw new Error("a change cannot be predicted");
  const setUp = shelf.setUps.find(({ id }) => id === p.screenKey)!;
  const application = applicationFor(setUp, { ...place, halftoneFraction: p.halftoneFraction }, shelf);
  return evidencePrint(lot, {
    garment: cloth.ok ? cloth.garment : never(),
    recipe,
    mix: found.mix,
    application,
    setUpId: setUp.id,
  });
}
function never(): never {
  throw new Error("unreachable");
}

const { posterior } = learnWatchfully(evidenceInputs(library).records);
const asItIs = printOf(printing);

/** The print a garment gives that reacts exp(0.82) times as strongly: a base so much stronger does the same. */
function firstOffLab() {
  const stronger: InkMix = {
    ...asItIs.mix,
    parts: asItIs.mix.parts.map((part) =>
      part.kind === "base" ? { ...part, strength: part.strength * Math.exp(0.82) } : part,
    ),
  };
  return predictPrint({
    garment: asItIs.garment.garment,
    mix: stronger,
    application: asItIs.application,
    viewing: job.viewing,
    band: place.band,
  });
}
const firstOff = firstOffLab();
const learned = extend(posterior, {
  id: "first-off",
  printKey: "first-off",
  print: asItIs,
  viewing: job.viewing,
  reading: {
    kind: "pair",
    bare: firstOff.bare,
    printed: firstOff.printed,
    pairCount: 6,
    pieceCount: 3,
    sdPairDeltaL: null,
  },
  at: "2026-02-17T09:00:00.000Z",
  washCount: 0,
});
const APPROVED_DELTA_L = -3.1;
const band = { ...place.band, deltaL: APPROVED_DELTA_L, tolerance: 1.5 };

function recover(halftoneFractions: readonly number[]) {
  return planRecovery({
    printing,
    stock: stock(halftoneFractions),
    approvedDeltaL: APPROVED_DELTA_L,
    predict: (p) => {
      const print = printOf(p);
      const { garment, mix, application } = { ...print, garment: print.garment.garment };
      const belief = beliefFor(learned, print, job.viewing);
      const { spread, warnings } = predictPrint({
        garment,
        mix,
        application,
        viewing: job.viewing,
        band,
        belief,
      });
      return {
        deltaL5: spread.p5.deltaL,
        deltaL50: spread.p50.deltaL,
        deltaL95: spread.p95.deltaL,
        chanceInBand: spread.chanceInBand,
        milkyHaze: warnings.includes("milky-haze"),
      };
    },
  });
}

describe("recovering the demo's mill B forest", () => {
  const solid = recover([]);

  it("starts from a first-off about 2.6 times as strong as the approved print", () => {
    expect(firstOff.deltaL / APPROVED_DELTA_L).toBeGreaterThan(2.4);
    expect(firstOff.deltaL / APPROVED_DELTA_L).toBeLessThan(2.8);
  });

  it("has the matt clear through a finer mesh in the best two", () => {
    const best = solid.options.slice(0, 2);
    expect(
      best.some(
        (each) => each.printing.baseKey === matt && each.screenChange && each.printing.tints.length === 0,
      ),
    ).toBe(true);
  });

  it("has the matt clear through the same screen first among what keeps the screen", () => {
    expect(solid.bestOnThisScreen?.printing).toEqual({ ...printing, baseKey: matt });
  });

  it("has the same base through the same screen last, behind the weaker base and both finer meshes alone", () => {
    expect(solid.options.at(-1)?.changes).toEqual([]);
    const alone = solid.options.flatMap(({ changes }) => (changes.length === 1 ? changes : []));
    expect(alone).toContainEqual({ kind: "base", baseKey: matt });
    for (const start of ["90-48", "120-34"]) {
      expect(alone).toContainEqual({ kind: "screen", screenKey: setUpNamed(start).id });
    }
  });

  it("has a halftone of the same base, whose reaction is known by now, first where halftones are allowed", () => {
    const { options } = recover(RECOVER_HALFTONES);
    expect(options[0]?.printing.baseKey).toBe(curable);
    expect(options[0]?.printing.halftoneFraction).toBeLessThan(1);
  });
});
