/** What a pot holds follows from its ledger alone. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { appendDilution, appendPot, appendPotEntry } from "../../src/job/edits/pots.ts";
import { addShelfItem } from "../../src/job/edits/shelf.ts";
import { dilutionToWrite, masterOfDilution } from "../../src/job/inkRoom/masters.ts";
import { pouredOf, recipeOfPots } from "../../src/job/inkRoom/poured.ts";
import type { PotEntry } from "../../src/job/potDocument.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleId, ids, time } from "./exampleDocuments.ts";
import { exampleDilution, examplePot, examplePotEntry, lineIds } from "./exampleRecords.ts";

const pot = examplePot(1);
const clear = (number: number, grams: number, change: Partial<PotEntry> = {}) =>
  examplePotEntry(number, { grams, ...change });
const master = (number: number, grams: number, change: Partial<PotEntry> = {}) =>
  examplePotEntry(number, { lineId: lineIds.master, grams, ...change });

describe("a pot's ledger", () => {
  it("gives nothing to predict with before every line was weighed", () => {
    const poured = pouredOf(pot, [clear(1, 950)]);
    expect(poured).toMatchObject({ isComplete: false, state: null, correction: null, takenOutGrams: 0 });
    expect(poured.lines.map(({ grams }) => grams)).toEqual([950, null]);
  });

  it("takes the master apart: 950 g clear and 57 g of a 10 % master are 5.7 g of black in 1,007 g", () => {
    const { state } = pouredOf(pot, [clear(1, 950), master(2, 57)]);
    expect(state?.totalGrams).toBe(1007);
    const black = state?.recipe.find(({ itemId }) => itemId === ids.black);
    expect(black?.massFraction).toBeCloseTo(5.7 / 1007, 12);
  });

  it("is corrected by the base that is missing, and right after it was added", () => {
    const over = [clear(1, 950), master(2, 57)];
    const { correction } = pouredOf(pot, over);
    // 57 g of master want 57 x 19 = 1083 g of clear: 133 g more.
    expect(correction?.ok && correction.additions).toMatchObject([{ id: lineIds.clear, grams: 133 }]);
    const added = clear(3, 133, { kind: "added" });
    expect(pouredOf(pot, [...over, added]).correction).toMatchObject({ ok: true, additions: [] });
  });

  it("is refused a correction beyond its limit, and may be after some was taken out, the recipe unchanged", () => {
    const far = [clear(1, 950), master(2, 90)];
    const before = pouredOf(pot, far);
    expect(before.correction).toMatchObject({ ok: false, code: "pot-too-big" });
    const out = examplePotEntry(3, { kind: "taken-out", lineId: null, grams: 300 });
    const after = pouredOf(pot, [...far, out]);
    expect(after.takenOutGrams).toBe(300);
    expect(after.state?.totalGrams).toBeCloseTo(740, 9);
    for (const [index, part] of (after.state?.recipe ?? []).entries()) {
      expect(part.massFraction).toBeCloseTo(before.state!.recipe[index]!.massFraction, 12);
    }
    expect(after.correction?.ok).toBe(true);
  });

  it("counts a corrected entry by its last correction, in the place of the first", () => {
    const typed = [clear(1, 95), master(2, 50), clear(3, 959, { supersedesId: clear(1, 0).id })];
    const again = clear(4, 950, { supersedesId: clear(3, 0).id });
    const { entries, state } = pouredOf(pot, [...typed, again]);
    expect(entries.map(({ grams }) => grams)).toEqual([950, 50]);
    expect(state?.totalGrams).toBe(1000);
  });

  it("that two tablets weighed counts a line once, by the later entry, and tells the other", () => {
    const { lines, doubled } = pouredOf(pot, [clear(1, 940), master(2, 50), clear(3, 950)]);
    expect(lines.map(({ grams }) => grams)).toEqual([950, 50]);
    expect(doubled.map(({ grams }) => grams)).toEqual([940]);
  });

  it("never takes out more than there is", () => {
    const out = examplePotEntry(3, { kind: "taken-out", lineId: null, grams: 9999 });
    expect(pouredOf(pot, [clear(1, 950), master(2, 50), out])).toMatchObject({
      takenOutGrams: 1000,
      state: null,
    });
  });

  it("of several pots is one recipe by their grams", () => {
    const one = pouredOf(pot, [clear(1, 950), master(2, 50)]);
    const two = pouredOf(pot, [clear(1, 950), master(2, 100)]);
    const black = recipeOfPots([one, two])?.find(({ itemId }) => itemId === ids.black);
    expect(black?.massFraction).toBeCloseTo(15 / 2050, 12);
    expect(recipeOfPots([pouredOf(pot, [])])).toBeNull();
  });

  it("holds whatever was poured: fractions sum to 1, grams to what went in less what came out", () => {
    const grams = fc.double({ min: 0.1, max: 2000, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, grams, (base, tint, more, out) => {
        const { state, takenOutGrams } = pouredOf(pot, [
          clear(1, base),
          master(2, tint),
          examplePotEntry(3, { kind: "taken-out", lineId: null, grams: out }),
          clear(4, more, { kind: "added" }),
        ]);
        expect(state?.recipe.reduce((sum, part) => sum + part.massFraction, 0)).toBeCloseTo(1, 9);
        expect(state?.totalGrams).toBeCloseTo(base + tint + more - takenOutGrams, 6);
      }),
    );
  });
});

describe("the edits of the ink room", () => {
  const documents = exampleDocuments();
  const withPot = appendPot(documents, pot);

  it("append and change nothing else, and every reference leads somewhere", () => {
    const dilution = exampleDilution(1);
    const after = appendPotEntry(appendDilution(withPot, dilution), examplePotEntry(1));
    expect(after.library).toEqual({
      ...documents.library,
      pots: [pot],
      dilutions: [dilution],
      potEntries: [examplePotEntry(1)],
    });
    expect(after.job).toBe(documents.job);
    expect(validateDocuments(after)).toEqual([]);
  });

  it.each<[string, (d: Documents) => Documents, RegExp]>([
    [
      "a pot of an ink that is not there",
      (d) => appendPot(d, examplePot(2, { baseLots: [{ itemId: exampleId(9), code: "x" }] })),
      /sheet item must exist/,
    ],
    ["a pot under a taken id", (d) => appendPot(d, pot), /new id/],
    ["a dilution under a pot's id", (d) => appendDilution(d, exampleDilution(1, { id: pot.id })), /new id/],
    [
      "an entry of no pot",
      (d) => appendPotEntry(d, examplePotEntry(1, { potId: exampleId(9) })),
      /pot must exist/,
    ],
    [
      "an entry of no line",
      (d) => appendPotEntry(d, examplePotEntry(1, { lineId: exampleId(9) })),
      /line must exist/,
    ],
    [
      "a taking out of one line",
      (d) => appendPotEntry(d, examplePotEntry(1, { kind: "taken-out" })),
      /lineId must be null/,
    ],
    [
      "a second weighing of a line",
      (d) => appendPotEntry(appendPotEntry(d, examplePotEntry(1)), examplePotEntry(2)),
      /weighed twice/,
    ],
    [
      "a correction of another pot's entry",
      (d) =>
        appendPotEntry(
          appendPot(appendPotEntry(d, examplePotEntry(1)), examplePot(2)),
          examplePotEntry(2, { potId: examplePot(2).id, supersedesId: examplePotEntry(1).id }),
        ),
      /same pot/,
    ],
    [
      "a second correction of one entry",
      (d) => {
        const once = appendPotEntry(
          appendPotEntry(d, examplePotEntry(1)),
          examplePotEntry(2, { supersedesId: examplePotEntry(1).id }),
        );
        return appendPotEntry(once, examplePotEntry(3, { supersedesId: examplePotEntry(1).id }));
      },
      /corrected already/,
    ],
  ])("refuse %s", (_name, edit, message) => {
    expect(() => edit(withPot)).toThrow(message);
  });

  it("let a typing error be corrected, also of the line that was weighed", () => {
    const once = appendPotEntry(withPot, examplePotEntry(1));
    const corrected = appendPotEntry(once, examplePotEntry(2, { supersedesId: examplePotEntry(1).id }));
    expect(corrected.library.potEntries).toHaveLength(2);
  });
});

describe("a master", () => {
  it("is put on the shelf with the part of colourant that was poured, and names its weighing", () => {
    const documents = exampleDocuments();
    const dilution = dilutionToWrite(
      documents.library.shelf,
      {
        colourantId: ids.black,
        baseId: ids.clear,
        massFraction: 0.1,
        batchGrams: 500,
        scaleStepGrams: 0.1,
        madeOn: "2026-02-10",
        expiresOn: "2026-08-10",
      },
      { id: exampleId(900), by: "A. Mixer", at: time, note: "", baseLots: [] },
    );
    expect(dilution.lines.map(({ name, grams }) => [name, grams])).toEqual([
      ["Gloss clear", 450],
      ["Black", 50],
    ]);
    const recorded = appendDilution(documents, dilution);
    const entry = (number: number, lineId: string, grams: number) =>
      examplePotEntry(number, { potId: dilution.id, lineId, grams });
    const half = pouredOf(dilution, [entry(1, ids.clear, 450)]);
    expect(() => masterOfDilution(dilution, half, exampleId(901))).toThrow(/must be weighed/);
    const poured = pouredOf(dilution, [entry(1, ids.clear, 450), entry(2, ids.black, 51)]);
    expect(poured.correction).toBeNull();
    const made = masterOfDilution(dilution, poured, exampleId(901));
    expect(made).toMatchObject({ gramsLeft: 501, dilutionId: dilution.id, madeOn: "2026-02-10" });
    expect(made.massFraction).toBeCloseTo(51 / 501, 12);
    expect(validateDocuments(addShelfItem(recorded, "masters", made))).toEqual([]);
  });
});
