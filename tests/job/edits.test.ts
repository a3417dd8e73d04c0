/** What holds after any edits, and what single ones promise. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { appendChecklistEntry } from "../../src/job/edits/checklist.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { newJob, setRunStartsOn } from "../../src/job/edits/job.ts";
import {
  addLine,
  changeGarmentLot,
  changeLine,
  duplicateLine,
  removeLine,
} from "../../src/job/edits/lines.ts";
import { addCandidate, moveCandidate, removeCandidate } from "../../src/job/edits/mixes.ts";
import { changePlace, NO_MIX_RULES, newPlace, removePlace, setMixRules } from "../../src/job/edits/places.ts";
import { appendPressEntry } from "../../src/job/edits/press.ts";
import { jobSchema } from "../../src/job/jobDocument.ts";
import { librarySchema } from "../../src/job/libraryDocument.ts";
import { MIX_SUM_TOLERANCE } from "../../src/job/mixDocument.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleEntry, exampleId, ids, lotDraft, time } from "./exampleDocuments.ts";
import { examplePressEntry } from "./exampleRecords.ts";
import { arbitraryDraw, randomEdits, withDraw } from "./randomEdits.ts";

function deepFrozen<Value>(value: Value): Value {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFrozen);
  }
  return value;
}

const chosen = (documents: Documents) =>
  chooseCandidate(documents, { lineId: ids.line, placeId: ids.place, candidateId: ids.candidate });

describe("any sequence of edits", () => {
  it("keeps the schema, every reference, unique ids and recipes that sum to 1, and changes nothing it was given", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(fc.array(arbitraryDraw, { minLength: 1, maxLength: 40, size: "max" }), (draws) => {
        let documents = deepFrozen(exampleDocuments());
        draws.forEach((draw, step) => {
          const next = deepFrozen(withDraw(documents, draw, step));
          if (next !== documents) seen.add(draw.edit);
          documents = next;
          expect(jobSchema.safeParse(documents.job).success).toBe(true);
          expect(librarySchema.safeParse(documents.library).success).toBe(true);
          expect(validateDocuments(documents)).toEqual([]);
          for (const mix of documents.job.mixes) {
            const sum = mix.recipe.reduce((total, part) => total + part.massFraction, 0);
            expect(Math.abs(sum - 1)).toBeLessThanOrEqual(MIX_SUM_TOLERANCE);
          }
        });
      }),
    );
    // The property says something about every edit only if every edit was drawn and did something.
    expect([...seen].sort()).toEqual(Object.keys(randomEdits).sort());
  });

  it("keeps every lot, sign-off, press entry and record", () => {
    const signed = appendPressEntry(
      appendChecklistEntry(exampleDocuments(), exampleEntry(1)),
      examplePressEntry(1),
    );
    fc.assert(
      fc.property(fc.array(arbitraryDraw, { minLength: 1, maxLength: 30, size: "max" }), (draws) => {
        const after = draws.reduce(withDraw, signed);
        expect(after.job.checklist).toBe(signed.job.checklist);
        expect(after.job.pressLog).toBe(signed.job.pressLog);
        for (const { id } of signed.library.garmentLots) {
          expect(after.library.garmentLots.some((lot) => lot.id === id)).toBe(true);
        }
      }),
    );
  });
});

describe("lines", () => {
  it("keeps a duplicate's lot apart: changing one leaves the other as it is", () => {
    const copyId = exampleId(900);
    const copyLotId = exampleId(901);
    const copied = duplicateLine(chosen(exampleDocuments()), ids.line, { lineId: copyId, lotId: copyLotId });
    expect(copied.job.lines.map((line) => line.id)).toEqual([ids.line, copyId, ids.otherLine]);
    const changed = changeGarmentLot(copied, copyLotId, { colourway: "Navy" });
    const colourway = (id: string) => changed.library.garmentLots.find((lot) => lot.id === id)?.colourway;
    expect([colourway(ids.lot), colourway(copyLotId)]).toEqual(["Forest", "Navy"]);
  });

  it("chooses nothing for a duplicate, and prints it where the original is printed", () => {
    const only = changePlace(chosen(exampleDocuments()), ids.place, { lineIds: [ids.line] });
    const copied = duplicateLine(only, ids.line, { lineId: exampleId(900), lotId: exampleId(901) });
    expect(copied.job.choices).toEqual(only.job.choices);
    expect(copied.job.places[0]?.lineIds).toEqual([ids.line, exampleId(900)]);
  });

  it("removes a line with its choices and leaves its lot for other jobs", () => {
    const removed = removeLine(chosen(exampleDocuments()), ids.line);
    expect(removed.job.lines.map((line) => line.id)).toEqual([ids.otherLine]);
    expect(removed.job.choices).toEqual([]);
    expect(removed.library.garmentLots).toHaveLength(2);
  });

  it("leaves a place with no line rather than with all lines when its last line goes", () => {
    const only = changePlace(exampleDocuments(), ids.place, { lineIds: [ids.line] });
    expect(removeLine(only, ids.line).job.places[0]?.lineIds).toEqual([]);
  });

  it.each([
    [
      "a line that does not exist",
      (d: Documents) => changeLine(d, exampleId(999), { note: "" }),
      /line must exist/,
    ],
    [
      "a lot that does not exist",
      (d: Documents) => changeLine(d, ids.line, { garmentLotId: exampleId(999) }),
      /lot must/,
    ],
    [
      "half a spare piece",
      (d: Documents) => changeLine(d, ids.line, { sparePieceCount: 0.5 }),
      /line\.sparePieceCount/,
    ],
    ["a negative price", (d: Documents) => changeLine(d, ids.line, { piecePrice: -1 }), /line\.piecePrice/],
    [
      "a blend that does not sum to 1",
      (d: Documents) =>
        changeGarmentLot(d, ids.lot, { blend: [{ fibre: "cotton", massFraction: 0.9, dyed: true }] }),
      /lot\.blend is refused: blend-sum/,
    ],
    [
      "an id that is taken",
      (d: Documents) => addLine(d, { lineId: ids.line, lotId: exampleId(999), lot: lotDraft }),
      /new id/,
    ],
  ])("refuses %s", (_, edit, message) => {
    expect(() => edit(exampleDocuments())).toThrow(message);
  });
});

describe("candidates", () => {
  it.each([
    [0, [ids.otherCandidate, ids.candidate]],
    [1, [ids.candidate, ids.otherCandidate]],
  ])("stands at index %i after it was moved there", (toIndex, order) => {
    const moved = moveCandidate(exampleDocuments(), ids.place, ids.otherCandidate, toIndex);
    expect(moved.job.places[0]?.candidates.map((candidate) => candidate.id)).toEqual(order);
  });

  it("refuses an index outside the row", () => {
    expect(() => moveCandidate(exampleDocuments(), ids.place, ids.candidate, 2)).toThrow("0..1; got 2");
  });

  it("takes a mix away with its last candidate only, and the choices on the candidate", () => {
    const start = chosen(exampleDocuments());
    const mix = start.job.mixes[0]!;
    const shared = addCandidate(start, ids.place, {
      candidateId: exampleId(900),
      mix,
      setUpId: ids.otherSetUp,
    });
    expect(shared.job.mixes).toHaveLength(2);
    const once = removeCandidate(shared, ids.place, ids.candidate);
    expect(once.job.choices).toEqual([]);
    expect(once.job.mixes.map(({ id }) => id)).toContain(ids.mix);
    const twice = removeCandidate(once, ids.place, exampleId(900));
    expect(twice.job.mixes.map(({ id }) => id)).toEqual([ids.otherMix]);
  });

  it("refuses another recipe under the id of a mix of the job", () => {
    const documents = exampleDocuments();
    const mix = { ...documents.job.mixes[0]!, name: "Another" };
    expect(() =>
      addCandidate(documents, ids.place, { candidateId: exampleId(900), mix, setUpId: ids.setUp }),
    ).toThrow("mix must have a new id");
  });
});

describe("choices and places", () => {
  it("holds one choice per line and place, and none after null", () => {
    const again = chooseCandidate(chosen(exampleDocuments()), {
      lineId: ids.line,
      placeId: ids.place,
      candidateId: ids.otherCandidate,
    });
    expect(again.job.choices).toEqual([
      { lineId: ids.line, placeId: ids.place, candidateId: ids.otherCandidate },
    ]);
    const none = chooseCandidate(again, { lineId: ids.line, placeId: ids.place, candidateId: null });
    expect(none.job.choices).toEqual([]);
  });

  it("drops the choice of a line that is no longer printed there, and refuses a new one", () => {
    const elsewhere = changePlace(chosen(exampleDocuments()), ids.place, { lineIds: [ids.otherLine] });
    expect(elsewhere.job.choices).toEqual([]);
    expect(() => chosen(elsewhere)).toThrow("printed at the place");
  });

  it("removes a place with its candidates' mixes and its choices", () => {
    const { job } = removePlace(chosen(exampleDocuments()), ids.place);
    expect([job.places, job.mixes, job.choices]).toEqual([[], [], []]);
  });
});

describe("the rules of the mix search", () => {
  it("are set at one place, and a place starts without any", () => {
    const documents = exampleDocuments();
    const rules = { ...NO_MIX_RULES, atMostMixes: 2, forbiddenRecipes: ["a recipe"] };
    const { job } = setMixRules(documents, ids.place, rules);
    expect(job).toEqual({ ...documents.job, places: [{ ...documents.job.places[0], mixRules: rules }] });
    expect(newPlace(exampleId(6), "Back").mixRules).toEqual(NO_MIX_RULES);
  });

  it.each([
    ["no mix at all", { atMostMixes: 0 }],
    ["part of a mix", { atMostMixes: 1.5 }],
    ["a recipe without a name", { keptRecipes: [""] }],
  ])("are refused with %s", (_, change) => {
    expect(() => setMixRules(exampleDocuments(), ids.place, { ...NO_MIX_RULES, ...change })).toThrow(
      "mixRules.",
    );
  });
});

describe("jobs and sign-offs", () => {
  it("has a day on which the run starts once somebody says it, and none after null", () => {
    const started = setRunStartsOn(exampleDocuments(), "2026-03-02");
    expect(started.job).toEqual({ ...exampleDocuments().job, runStartsOn: "2026-03-02" });
    expect(setRunStartsOn(started, null)).toEqual(exampleDocuments());
    expect(() => setRunStartsOn(started, "2026-02-30")).toThrow("job.runStartsOn");
  });

  it("starts a job empty, with a place where one is asked for", () => {
    const start = { id: exampleId(5), number: "T-2", customer: "", createdAt: time };
    expect(newJob(start).places).toEqual([]);
    expect(newJob({ ...start, placeId: exampleId(6) }).places).toEqual([newPlace(exampleId(6), "Front")]);
    expect(() => newJob({ ...start, number: "" })).toThrow("job.number");
  });

  it.each([
    ["an override without a reason", { action: "override", itemCode: null, note: " " }, "reason"],
    ["a signature for no item", { action: "sign", itemCode: null }, "name an item"],
    ["a release of one item", { action: "release", itemCode: "wash-test" }, "must be null"],
    ["a signature without a name", { signer: "" }, "entry.signer"],
    ["a time that is none", { at: "yesterday" }, "entry.at"],
    ["a line that does not exist", { lineId: exampleId(999) }, "line must exist"],
  ] as const)("refuses %s", (_, change, message) => {
    expect(() => appendChecklistEntry(exampleDocuments(), exampleEntry(1, change))).toThrow(message);
  });

  it("refuses to enter one entry twice", () => {
    const once = appendChecklistEntry(exampleDocuments(), exampleEntry(1));
    expect(() => appendChecklistEntry(once, exampleEntry(1))).toThrow("new id");
  });
});
