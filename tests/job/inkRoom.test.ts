/** The ink room is made of what the documents say, batch by batch; amounts against plain arithmetic. */
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import { chosenPrint } from "../../src/job/chosenPrint.ts";
import type { Documents } from "../../src/job/documents.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { changeJob } from "../../src/job/edits/job.ts";
import { changeMix } from "../../src/job/edits/mixes.ts";
import { appendPot, appendPotEntry } from "../../src/job/edits/pots.ts";
import { changeDefaults, changeShelfItem } from "../../src/job/edits/shelf.ts";
import { inkRoomOf } from "../../src/job/inkRoom/inkRoomOf.ts";
import { potToWrite } from "../../src/job/inkRoom/potToWrite.ts";
import { weighingErrorsOf } from "../../src/job/inkRoom/weighingErrors.ts";
import type { Mix } from "../../src/job/mixDocument.ts";
import type { PotEntry } from "../../src/job/potDocument.ts";
import { exampleId, time } from "./exampleDocuments.ts";

const TODAY = "2026-02-20";
const demo = demoDocuments();

function mixNamed(documents: Documents, name: string): Mix {
  const mix = documents.job.mixes.find((one) => one.name === name);
  if (mix === undefined) throw new RangeError(`the demo has no mix ${name}`);
  return mix;
}

/** The demo with one candidate of each place chosen for lines by their position. */
function choosing(
  placeIndex: number,
  lineIndices: readonly number[],
  mixName: string,
  setUpIndex = 0,
): Documents {
  const place = demo.job.places[placeIndex]!;
  const mix = mixNamed(demo, mixName);
  const fits = place.candidates.filter(({ mixId }) => mixId === mix.id);
  const candidateId = fits[setUpIndex]!.id;
  const unchosen: Documents = { ...demo, job: { ...demo.job, choices: [] } };
  return lineIndices.reduce((documents, index) => {
    const lineId = demo.job.lines[index]!.id;
    return chooseCandidate(documents, { lineId, placeId: place.id, candidateId });
  }, unchosen);
}

const HALF = "Curable clear + 0.5 % black";
const tinted = choosing(0, [0, 2, 3], HALF);
const roomOf = (documents: Documents) => inkRoomOf(documents, { today: TODAY });
const batchOf = (documents: Documents) => roomOf(documents).batches[0]!;

describe("the ink room", () => {
  it("counts only chosen mixes, and names the garments without a choice", () => {
    const room = roomOf(tinted);
    expect(room.batches.map(({ mixName }) => mixName)).toEqual([HALF]);
    expect(room.unchosen).toHaveLength(12 - 3 + 3);
    expect(room.refused).toEqual([]);
  });

  it("is empty and calm where nothing is chosen", () => {
    const room = roomOf({ ...demo, job: { ...demo.job, choices: [] } });
    expect(room.batches).toEqual([]);
    expect(room.runs).toMatchObject({ inOrder: [], minutes: 0, washUpCount: 0, proven: true });
  });

  it("mixes for the chosen garments, their spoilage, what stays behind and the screen", () => {
    const batch = batchOf(tinted);
    // G01 900, G03 300, G04 2,100 pieces; 28 x 33 cm at 46 %; 24 g/m2 weighed with ink of the same density; 2 % spoiled.
    expect(batch.uses).toHaveLength(1);
    expect(batch.uses[0]).toMatchObject({ pieceCount: 3300, spoilageFraction: 0.02, spoiledPieceCount: 66 });
    const gramsPerPrint = 0.28 * 0.33 * 0.46 * 24;
    expect(batch.uses[0]?.mixedGramsPerPrint).toBeCloseTo(gramsPerPrint, 9);
    expect(batch.uses[0]?.expectedGramsPerPrint).toBeCloseTo(gramsPerPrint, 9);
    expect(batch.size.batchGrams).toBeCloseTo(3300 * 1.02 * gramsPerPrint * 1.1 + 400, 6);
    // 4177 g fill 3.48 litres at 1.2 g/cm3: one pot of five litres, filled to 70 % at most.
    expect(batch.pots).toMatchObject({ potCount: 1, sizeName: "5 litres" });
  });

  it("mixes for all that the mesh holds until a set-up was weighed, and expects six tenths of it on the cloth", () => {
    const batch = batchOf(choosing(1, [0], "Soft white"));
    const [use] = batch.uses;
    expect(use?.deposit.weighed).toBeNull();
    expect(use!.mixedGramsPerPrint / use!.expectedGramsPerPrint).toBeCloseTo(1 / 0.6, 9);
  });

  it("weighs on the finest scale that carries the pot, base first, the tint as the master of the same base", () => {
    const batch = batchOf(tinted);
    // 4177 g are too much for the 3 kg scale.
    expect(batch.scale?.id).toBe("gram");
    const small = inkRoomOf(tinted, { today: TODAY, wishes: { [batch.mixId]: { batchGrams: 1000 } } })
      .batches[0]!;
    expect(small.scale?.id).toBe("tenth-gram");
    expect(small.sheet).toMatchObject({ ok: true });
    // 5 g of black are 50 steps of 0.1 g: neat.
    expect(small.sheet?.ok && small.sheet.lines.map(({ name, grams }) => [name, grams])).toEqual([
      ["Curable clear", 995],
      ["Black", 5],
    ]);
    const tiny = inkRoomOf(tinted, { today: TODAY, wishes: { [batch.mixId]: { batchGrams: 400 } } })
      .batches[0]!;
    expect(tiny.sheet?.ok && tiny.sheet.lines.map(({ name, grams }) => [name, grams])).toEqual([
      ["Curable clear", 380],
      ["Black, 10 % in Curable clear", 20],
    ]);
  });

  it("takes a wish for a form, a pot and a scale, and says what is in the way", () => {
    const { mixId } = batchOf(tinted);
    const black = demo.library.shelf.colourants.find(({ name }) => name === "Black")!;
    const weak = demo.library.shelf.masters.find(({ massFraction }) => massFraction === 0.02)!;
    const wishes = {
      [mixId]: { scaleId: "tenth-gram", potSizeId: "five-litres", weighAs: { [black.id]: weak.id } },
    };
    const batch = inkRoomOf(tinted, { today: TODAY, wishes }).batches[0]!;
    // 0.5 % of 4177 g as a 2 % master are a quarter of the batch: more than the 410 g left, on a scale for 3 kg.
    expect(batch.notices.map(({ code }) => code)).toEqual(["scale-overloaded", "master-runs-out"]);
    expect(batch.notices[1]?.figures).toMatchObject({ gramsLeft: 410 });
    expect(batch.notices[1]?.figures.neededGrams).toBeCloseTo(batch.batchGrams / 4, 0);
  });

  it("offers no master past its day, and says so", () => {
    const room = inkRoomOf(tinted, { today: "2026-08-01", wishes: {} });
    expect(room.masters.map(({ state }) => state)).toEqual(["expired", "expired"]);
    expect(room.batches[0]?.notices.filter(({ code }) => code === "master-expired")).toHaveLength(2);
  });

  it("has no sheet without scales or pots, and still counts the ink", () => {
    for (const change of [{ scales: [] }, { potSizes: [] }]) {
      const batch = batchOf(changeDefaults(tinted, change));
      expect(batch.sheet).toBeNull();
      expect(batch.size.batchGrams).toBeGreaterThan(4000);
    }
  });

  it("refuses a mix whose ink left the shelf, by name and place", () => {
    const { shelf } = tinted.library;
    const colourants = shelf.colourants.filter(({ name }) => name !== "Black");
    const room = roomOf({ ...tinted, library: { ...tinted.library, shelf: { ...shelf, colourants } } });
    expect(room.batches).toEqual([]);
    expect(room.refused).toMatchObject([{ mixName: HALF, problems: [{ code: "component-missing" }] }]);
  });

  it("inherits cure, heat limit and hazards from what was entered, and names the part where nothing was", () => {
    const { restrictions } = batchOf(tinted);
    expect(restrictions.cureCelsius.value).toBe(160);
    expect(restrictions.highestCelsius.value).toBe(190);
    expect(restrictions.hazards.value).toEqual([]);
    const black = demo.library.shelf.colourants.find(({ name }) => name === "Black")!;
    const unknown = batchOf(changeShelfItem(tinted, "colourants", black.id, { hazards: null }));
    expect(unknown.restrictions.hazards).toMatchObject({ value: null, missingItemIds: [black.id] });
  });

  it("is used by the earliest day among the lots it is taken from and the masters in it", () => {
    const big = batchOf(tinted);
    expect(big.lots.map(({ name, chosen }) => [name, chosen?.code])).toEqual([["Curable clear", "CC-2511"]]);
    expect(big.restrictions.expiresOn.amongEntered).toBe("2026-07-12");
    const neat = inkRoomOf(tinted, { today: TODAY, wishes: { [big.mixId]: { batchGrams: 1000 } } })
      .batches[0]!;
    expect(neat.lots.map(({ name, chosen }) => [name, chosen?.code])).toEqual([
      ["Curable clear", "CC-2511"],
      ["Black", "BK-2510"],
    ]);
    expect(neat.restrictions.expiresOn.amongEntered).toBe("2026-12-03");
  });

  it("knows soft white: how much white, which cloth bleeds into it, light before dark", () => {
    const both = choosing(1, [0, 4, 6], "Soft white");
    const room = roomOf({
      ...both,
      job: { ...both.job, choices: [...both.job.choices, ...tinted.job.choices] },
    });
    const white = room.batches.find(({ kind }) => kind === "white")!;
    expect(white.white).toEqual({ massFraction: 0.5, clothCoverFraction: null });
    // G01 is all cotton; G05 and G07 hold dyed polyester.
    expect(white.uses[0]?.lines.map(({ dyeMigration }) => dyeMigration === null)).toEqual([
      true,
      false,
      false,
    ]);
    expect(room.runs.inOrder.map(({ mixName }) => mixName)).toEqual(["Soft white", HALF]);
    expect(room.runs.inOrder[0]?.change).toBeNull();
    expect(room.runs.inOrder[1]?.change).toMatchObject({ ink: "wash-up", screen: true });
    expect(room.runs.proven).toBe(true);
  });

  it("washes up between a white and a clear of the same base: what is left of white veils dark cloth", () => {
    const both = choosing(1, [4], "Softer white");
    const room = roomOf({
      ...both,
      job: { ...both.job, choices: [...both.job.choices, ...tinted.job.choices] },
    });
    expect(room.runs.inOrder.map(({ mixName }) => mixName)).toEqual(["Softer white", HALF]);
    expect(room.runs.inOrder[1]?.change).toMatchObject({ ink: "wash-up" });
  });

  it("cites limits for a children's product and for no other", () => {
    expect(roomOf(tinted).childrensLines).toEqual([]);
    const codes = roomOf(changeJob(tinted, { forChildren: true })).childrensLines.map(({ code }) => code);
    expect(codes).toContain("us-phthalates");
    expect(codes).toContain("not-legal-advice");
  });

  it("says what one step of the scale does, the most sensitive garment first", () => {
    const errors = weighingErrorsOf(tinted, batchOf(tinted));
    expect(errors).toHaveLength(3);
    const steps = errors.map(({ error }) => error.oneStepDeltaL);
    expect(steps).toEqual(steps.toSorted((one, other) => other - one));
    expect(steps[0]).toBeGreaterThan(0);
    expect(Math.abs(errors[0]!.error.roundingDeltaL)).toBeLessThanOrEqual(steps[0]!);
  });
});

describe("a pot of the batch", () => {
  const written = potToWrite(tinted, batchOf(tinted), {
    id: exampleId(1),
    by: "A. Mixer",
    at: time,
    note: "",
    potNumber: 1,
  });
  const [clear, black] = written.lines;
  const entry = (
    number: number,
    lineId: string | null,
    grams: number,
    change: Partial<PotEntry> = {},
  ): PotEntry => ({
    id: exampleId(100 + number),
    potId: written.id,
    kind: "weighed",
    lineId,
    grams,
    by: "A. Mixer",
    at: time,
    note: "",
    supersedesId: null,
    ...change,
  });
  const withPot = appendPot(tinted, written);
  const poured = appendPotEntry(
    appendPotEntry(withPot, entry(1, clear!.id, clear!.grams)),
    entry(2, black!.id, black!.grams + 7),
  );

  it("is written as its sheet says, with lots, limit and day", () => {
    expect(written).toMatchObject({
      recipeVersion: 1,
      potNumber: 1,
      potCount: 1,
      scaleStepGrams: 1,
      hazards: [],
    });
    expect(written.lines.map(({ name }) => name)).toEqual(["Curable clear", "Black, 10 % in Curable clear"]);
    expect(written.baseLots.map(({ code }) => code)).toEqual(["CC-2511"]);
    expect(written.expiresOn).toBe("2026-07-12");
  });

  it("is predicted by what was poured, once every line is weighed", () => {
    const source = (documents: Documents) => batchOf(documents).trueRecipe.source;
    expect(source(tinted)).toBe("sheet");
    expect(source(appendPotEntry(withPot, entry(1, clear!.id, clear!.grams)))).toBe("sheet");
    const { trueRecipe } = batchOf(poured);
    expect(trueRecipe.source).toBe("poured");
    const total = clear!.grams + black!.grams + 7;
    const tint = trueRecipe.recipe.find(({ itemId }) => itemId === black!.contents[0]!.itemId)!;
    expect(tint.massFraction).toBeCloseTo((0.1 * (black!.grams + 7)) / total, 12);
  });

  it("is what the chosen print is predicted with, as wanted before and with what is in it afterwards", () => {
    const line = tinted.job.lines[0]!;
    const place = tinted.job.places[0]!;
    const inkOf = (documents: Documents) => {
      const print = chosenPrint(documents, line, place);
      if (print.kind !== "ready") throw new RangeError("the demo's first line has a mix that can be printed");
      const at = print.itemKeys.indexOf(black!.contents[0]!.itemId);
      return print.mix.parts[at]!.massFraction;
    };
    expect(inkOf(withPot)).toBe(0.005);
    const total = clear!.grams + black!.grams + 7;
    expect(inkOf(poured)).toBeCloseTo((0.1 * (black!.grams + 7)) / total, 12);
  });

  it("that was mixed by another recipe is told, counts no more, and the next one has the next version", () => {
    const [base, tint] = mixNamed(tinted, HALF).recipe;
    const recipe = [
      { ...base!, massFraction: 0.99 },
      { ...tint!, massFraction: 0.01 },
    ];
    const batch = batchOf(changeMix(poured, batchOf(poured).mixId, { recipe }));
    expect(batch.notices.map(({ code }) => code)).toContain("recipe-changed");
    expect(batch.recipeVersion).toBe(2);
    expect(batch.trueRecipe.source).toBe("sheet");
  });

  it("cannot be written beyond the batch's count, nor without a sheet", () => {
    const record = { id: exampleId(2), by: "", at: time, note: "" };
    expect(() => potToWrite(tinted, batchOf(tinted), { ...record, potNumber: 2 })).toThrow(/potNumber/);
    const noScale = changeDefaults(tinted, { scales: [] });
    expect(() => potToWrite(noScale, batchOf(noScale), { ...record, potNumber: 1 })).toThrow(/sheet/);
  });
});
