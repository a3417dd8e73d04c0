/** A signature counts for one lot, recipe and set-up; the ledger is read, never changed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checklistSubject, currentEntries } from "../../src/job/checklistSubject.ts";
import type { Documents } from "../../src/job/documents.ts";
import { appendChecklistEntry } from "../../src/job/edits/checklist.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { changeLine, duplicateLine } from "../../src/job/edits/lines.ts";
import { changeCandidateSetUp, changeMix, setTint } from "../../src/job/edits/mixes.ts";
import { changePlace, setBand } from "../../src/job/edits/places.ts";
import { changeShelfItem } from "../../src/job/edits/shelf.ts";
import { type ChecklistEntry, checklistEntrySchema } from "../../src/job/jobDocument.ts";
import { MOST_COMPONENTS } from "../../src/job/mixDocument.ts";
import { exampleDocuments, exampleEntry, exampleId, ids } from "./exampleDocuments.ts";

function chosen(documents = exampleDocuments()): Documents {
  return chooseCandidate(documents, {
    lineId: ids.line,
    placeId: ids.place,
    candidateId: ids.otherCandidate,
  });
}

const subject = (documents: Documents) => checklistSubject(documents, ids.line, ids.place);

describe("the subject of a signature", () => {
  it.each<[string, (documents: Documents) => Documents]>([
    [
      "another candidate",
      (d) => chooseCandidate(d, { lineId: ids.line, placeId: ids.place, candidateId: ids.candidate }),
    ],
    ["no candidate", (d) => chooseCandidate(d, { lineId: ids.line, placeId: ids.place, candidateId: null })],
    ["another lot", (d) => changeLine(d, ids.line, { garmentLotId: ids.otherLot })],
    ["another tint", (d) => setTint(d, ids.otherMix, ids.black, 0.006)],
    ["another set-up", (d) => changeCandidateSetUp(d, ids.place, ids.otherCandidate, ids.otherSetUp)],
    ["another mesh in the set-up", (d) => changeShelfItem(d, "setUps", ids.setUp, { meshId: ids.fineMesh })],
    ["another number of strokes", (d) => changeShelfItem(d, "setUps", ids.setUp, { strokeCount: 2 })],
    ["another halftone", (d) => changePlace(d, ids.place, { halftoneFraction: 0.5 })],
    ["smoothing", (d) => changePlace(d, ids.place, { smoothed: true })],
  ])("changes with %s", (_, edit) => {
    expect(subject(edit(chosen()))).not.toBe(subject(chosen()));
  });

  it.each<[string, (documents: Documents) => Documents]>([
    [
      "a tint dragged away and back",
      (d) => setTint(setTint(d, ids.otherMix, ids.black, 0.3), ids.otherMix, ids.black, 0.005),
    ],
    ["a component of nothing", (d) => setTint(d, ids.otherMix, ids.red, 0)],
    [
      "the order of the recipe",
      (d) => changeMix(d, ids.otherMix, { recipe: d.job.mixes[1]!.recipe.toReversed() }),
    ],
    ["the name of the mix", (d) => changeMix(d, ids.otherMix, { name: "Renamed" })],
    ["the target band", (d) => setBand(d, ids.place, { deltaL: -3, tolerance: 1, hueLimit: 2 })],
    ["another line", (d) => duplicateLine(d, ids.line, { lineId: exampleId(900), lotId: exampleId(901) })],
  ])("does not change with %s", (_, edit) => {
    expect(subject(edit(chosen()))).toBe(subject(chosen()));
  });

  it("fits into an entry for the longest recipe there can be", () => {
    const documents = chosen();
    const base = documents.library.shelf.bases[0]!;
    const bases = Array.from({ length: MOST_COMPONENTS }, (_, i) => ({ ...base, id: exampleId(1000 + i) }));
    const recipe = bases.map(({ id }) => ({ itemId: id, massFraction: 1 / MOST_COMPONENTS }));
    const { shelf } = documents.library;
    const wide = {
      ...documents,
      library: { ...documents.library, shelf: { ...shelf, bases: [...shelf.bases, ...bases] } },
    };
    const entry = exampleEntry(1, { subject: subject(changeMix(wide, ids.otherMix, { recipe })) });
    expect(checklistEntrySchema.safeParse(entry).success).toBe(true);
  });

  it("is refused for a line or a place that does not exist", () => {
    expect(() => checklistSubject(chosen(), exampleId(999), ids.place)).toThrow("line must exist");
    expect(() => checklistSubject(chosen(), ids.line, exampleId(999))).toThrow("place must exist");
  });
});

const HERE = "here";
const BEFORE = "before";

function current(...changes: Partial<ChecklistEntry>[]) {
  const documents = changes.reduce<Documents>(
    (d, change, index) => appendChecklistEntry(d, exampleEntry(index, { subject: HERE, ...change })),
    exampleDocuments(),
  );
  return currentEntries(documents.job, ids.line, ids.place, HERE);
}

const line = (action: ChecklistEntry["action"], change: Partial<ChecklistEntry> = {}) => ({
  action,
  itemCode: null,
  note: "reason",
  ...change,
});

describe("the present entries", () => {
  it("hold the latest signature of each item", () => {
    const { signed } = current({ signer: "A" }, { itemCode: "lot-checked", signer: "B" }, { signer: "C" });
    expect([...signed].map(([code, { signer }]) => [code, signer])).toEqual([
      ["wash-test", "C"],
      ["lot-checked", "B"],
    ]);
  });

  it("drop a signature that was withdrawn, until it is given again", () => {
    const withdrawn = current({}, { action: "withdraw" });
    expect([withdrawn.signed.size, withdrawn.withdrawn.size]).toEqual([0, 1]);
    const again = current({}, { action: "withdraw" }, {});
    expect([again.signed.size, again.withdrawn.size]).toEqual([1, 0]);
  });

  it("list a signature for another subject apart, and only while nothing newer is said here", () => {
    const stale = current({ subject: BEFORE });
    expect([stale.signed.size, stale.stale.length]).toEqual([0, 1]);
    expect(current({ subject: BEFORE }, {}).stale).toEqual([]);
    expect(current({ subject: BEFORE }, {}, { action: "withdraw" }).stale).toEqual([]);
    expect(current({ subject: BEFORE }, { subject: BEFORE, action: "withdraw" }).stale).toEqual([]);
  });

  it("count a signature again when the choice comes back to what was signed", () => {
    const { signed, stale } = current({}, { subject: BEFORE });
    expect([signed.size, stale.length]).toEqual([1, 0]);
  });

  it("ignore other lines and other places", () => {
    const { job } = appendChecklistEntry(
      exampleDocuments(),
      exampleEntry(1, { lineId: ids.otherLine, subject: HERE }),
    );
    expect(currentEntries(job, ids.line, ids.place, HERE).signed.size).toBe(0);
    expect(currentEntries(job, ids.otherLine, exampleId(999), HERE).signed.size).toBe(0);
  });

  it("stand as the latest of release and hold says", () => {
    expect(current()).toMatchObject({ standing: null, isReleased: false, isHeld: false });
    expect(current(line("release"))).toMatchObject({ isReleased: true, isHeld: false });
    expect(current(line("release"), line("hold"))).toMatchObject({ isReleased: false, isHeld: true });
    expect(current(line("hold"), line("release"))).toMatchObject({ isReleased: true, isHeld: false });
  });

  it("do not release for another subject, but say that it was", () => {
    const { isReleased, staleRelease } = current(line("release", { subject: BEFORE }));
    expect([isReleased, staleRelease?.subject]).toEqual([false, BEFORE]);
    expect(current(line("release", { subject: BEFORE }), line("hold")).staleRelease).toBeNull();
  });

  it("end an override with a hold or another subject, and keep it visible", () => {
    expect(current(line("override")).override).not.toBeNull();
    const held = current(line("override"), line("hold"));
    expect([held.override, held.overrides.length]).toEqual([null, 1]);
    const elsewhere = current(line("override", { subject: BEFORE }));
    expect([elsewhere.override, elsewhere.overrides.length]).toEqual([null, 1]);
  });

  it("never count an item as signed and withdrawn, or signed and stale, at once", () => {
    const change = fc.record({
      action: fc.constantFrom("sign" as const, "withdraw" as const),
      itemCode: fc.constantFrom("a", "b"),
      subject: fc.constantFrom(HERE, BEFORE, "elsewhere"),
    });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 20 }), (changes) => {
        const { signed, withdrawn, stale } = current(...changes);
        for (const code of ["a", "b"]) {
          const here = changes.filter((one) => one.itemCode === code && one.subject === HERE).at(-1);
          expect(signed.has(code)).toBe(here?.action === "sign");
          expect(withdrawn.has(code)).toBe(here?.action === "withdraw");
          expect(signed.has(code) && stale.some((entry) => entry.itemCode === code)).toBe(false);
        }
      }),
    );
  });
});
