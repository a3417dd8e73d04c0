/** What the press log says of a line: in its order, corrections in place, the present choice apart from earlier ones. */
import { describe, expect, it } from "vitest";
import { checklistSubject } from "../../../src/job/checklistSubject.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import { firstOffBegins } from "../../../src/job/press/firstOffForm.ts";
import { meanOf } from "../../../src/job/press/firstOffReading.ts";
import { nextPoint, pressRun } from "../../../src/job/press/pressRun.ts";
import {
  newPullForm,
  pullCorrection,
  pullFromStored,
  readingsOfPull,
  storedPull,
} from "../../../src/job/press/pullForm.ts";
import type { PressEntry } from "../../../src/job/pressDocument.ts";
import { exampleDocuments, exampleTestPrint, ids, lotDraft } from "../exampleDocuments.ts";
import { examplePressEntry } from "../exampleRecords.ts";

const choice = (candidateId: string) => ({ lineId: ids.line, placeId: ids.place, candidateId });
const chosen = (candidateId = ids.candidate) => chooseCandidate(exampleDocuments(), choice(candidateId));
const subjectOf = (documents: Documents) => checklistSubject(documents, ids.line, ids.place);

const read = (...deltaL: number[]): PressEntry["readings"] => ({
  kind: "pairs",
  deltaL,
  pieceCount: deltaL.length,
});

/** The log with these entries, printed as chosen. */
function logged(documents: Documents, ...changes: Partial<PressEntry>[]): Documents {
  const subject = subjectOf(documents);
  return changes.reduce<Documents>(
    (now, change, index) => appendPressEntry(now, examplePressEntry(index + 1, { subject, ...change })),
    documents,
  );
}

const runOf = (documents: Documents) =>
  pressRun(documents, documents.job.lines[0]!, documents.job.places[0]!);
const idOf = (number: number) => examplePressEntry(number).id;

const FIRST: Partial<PressEntry> = { kind: "first-off", readings: read(-4, -4.1, -3.9, -4) };

describe("the run of a line", () => {
  it("has nothing to say before anything was read, but the band", () => {
    const run = runOf(chosen());
    expect(run.entries).toEqual([]);
    expect([run.firstOff, run.latest]).toEqual([null, null]);
    expect(run.lineBand.band.deltaL).toBe(-4);
    expect(run.referenceSd).toBe(0);
  });

  it("judges a first-off, and pulls against its level", () => {
    const run = runOf(
      logged(chosen(), FIRST, { readings: read(-4, -4.1, -4) }, { readings: read(-5.3, -5.4, -5.3, -5.4) }),
    );
    expect(run.firstOff?.verdict?.action).toBe("run");
    expect(run.points.map(({ point }) => point?.action)).toEqual(["run", "run", "adjust"]);
    expect(run.points[2]?.point?.signals).toContain("one-beyond-3-sd");
    expect(run.latest?.entry.id).toBe(idOf(3));
  });

  it("asks for a first-off after another lot or pot, and takes a new level there", () => {
    const run = runOf(
      logged(
        chosen(),
        FIRST,
        { change: "pot", readings: read(-4.4, -4.5, -4.4) },
        { readings: read(-4.4, -4.4, -4.5) },
      ),
    );
    expect(run.points.map(({ point }) => point?.action)).toEqual(["run", "first-off", "run"]);
    expect(run.points.map(({ point }) => point?.stretch)).toEqual([1, 1, 2]);
  });

  it("puts a correction where the entry stood that it corrects", () => {
    const run = runOf(
      logged(
        chosen(),
        FIRST,
        { readings: read(-9) },
        { readings: read(-4.1) },
        {
          readings: read(-3.9, -4, -4),
          supersedesId: idOf(2),
        },
      ),
    );
    expect(run.entries.map(({ entry }) => entry.id)).toEqual([idOf(1), idOf(4), idOf(3)]);
    expect(run.latest?.entry.id).toBe(idOf(3));
  });

  it("keeps entries of an earlier choice and counts none of them for this one", () => {
    const before = logged(chosen(), FIRST);
    const run = runOf(chooseCandidate(before, choice(ids.otherCandidate)));
    expect(run.entries).toHaveLength(1);
    expect(run.entries[0]?.isOfThisChoice).toBe(false);
    expect(run.entries[0]?.point).toBeNull();
    expect([run.firstOff, run.latest, run.points]).toEqual([null, null, []]);
  });

  it("leaves other lines and places alone", () => {
    expect(runOf(logged(chosen(), { ...FIRST, lineId: ids.otherLine })).entries).toEqual([]);
  });

  it("follows the approved print, and is less sure by what that one is", () => {
    const print = exampleTestPrint(1, { verdict: "reference" });
    const run = runOf(appendTestPrint(logged(chosen(), FIRST), print));
    expect(run.lineBand.band.deltaL).toBe(-3);
    expect(run.referenceSd).toBeGreaterThan(0.3);
    expect(run.firstOff?.reading?.referenceUncertainty).toBe(run.referenceSd);
  });

  it("says that a first-off's record was corrected in the book since", () => {
    const print = exampleTestPrint(1);
    const kept = logged(appendTestPrint(chosen(), print), { ...FIRST, testPrintId: print.id });
    expect(runOf(kept).firstOff?.recordCorrected).toBe(false);
    const corrected = appendTestPrint(kept, exampleTestPrint(2, { supersedesId: print.id }));
    expect(runOf(corrected).firstOff?.recordCorrected).toBe(true);
    expect(runOf(corrected).firstOff?.print?.id).toBe(exampleTestPrint(2).id);
  });

  it("says nothing of entries where the band has no width", () => {
    const documents = logged(chosen(), FIRST);
    const [place] = documents.job.places;
    const flat = { ...place!, band: { ...place!.band, tolerance: 0 } };
    const run = pressRun(
      { ...documents, job: { ...documents.job, places: [flat] } },
      documents.job.lines[0]!,
      flat,
    );
    expect(run.firstOff?.verdict).toBeNull();
    expect(run.firstOff?.point).toBeNull();
  });
});

describe("one more pull", () => {
  const documents = logged(chosen(), FIRST, { readings: read(-4, -4.1, -4) });
  const of = (...deltaL: number[]) => meanOf(read(...deltaL), lotDraft, 0);

  it("is judged with those before it", () => {
    expect(nextPoint(runOf(documents), of(-4, -4), "none", null)?.action).toBe("run");
    expect(nextPoint(runOf(documents), of(-5, -5, -5, -5), "none", null)?.action).toBe("look");
    expect(nextPoint(runOf(documents), of(-8, -8), "none", null)?.action).toBe("stop");
    expect(nextPoint(runOf(documents), of(-4.4, -4.4), "lot", null)?.action).toBe("first-off");
  });

  it("stands in the place of the pull that it corrects", () => {
    const point = nextPoint(runOf(documents), of(-4, -4), "none", idOf(2));
    expect(point?.stretch).toBe(2);
    expect(nextPoint(runOf(documents), of(-4, -4), "none", null)?.stretch).toBe(3);
  });
});

describe("the form of a pull", () => {
  it("takes pairs of L*, a mean, or a grade, and nothing half typed", () => {
    const empty = newPullForm(null);
    expect(readingsOfPull(empty)).toBeNull();
    const pairs = [
      { bare: 31, print: 27 },
      { bare: 30.5, print: null },
    ];
    expect(readingsOfPull({ ...empty, pairs, pieceCount: 5 })).toEqual({
      kind: "pairs",
      deltaL: [-4],
      pieceCount: 1,
    });
    const mean = { deltaL: -4.2, pairCount: 5 };
    expect(readingsOfPull({ ...empty, way: "mean", mean, pieceCount: 3 })).toEqual({
      kind: "mean",
      ...mean,
      pieceCount: 3,
      sdPairDifference: null,
    });
    const eye = { ...empty, way: "by-eye" as const };
    expect(readingsOfPull({ ...eye, byEye: { grade: 3, direction: null } })).toBeNull();
    expect(readingsOfPull({ ...eye, byEye: { grade: 5, direction: null } })).toMatchObject({ grade: 5 });
  });

  it("begins with way, pieces and name of the last one", () => {
    const last = examplePressEntry(1, {
      readings: { kind: "mean", deltaL: -4, pairCount: 5, pieceCount: 3, sdPairDifference: null },
    });
    expect(newPullForm(last)).toMatchObject({ way: "mean", pieceCount: 3, by: "A. Printer" });
    expect(newPullForm(last).mean).toEqual({ deltaL: null, pairCount: 5 });
  });

  it("is an entry again, to be corrected, and comes back from what a tablet kept", () => {
    const form = pullCorrection(examplePressEntry(1, { change: "pot" }));
    expect(form).toMatchObject({ way: "mean", change: "pot", supersedesId: idOf(1) });
    expect(form.mean).toEqual({ deltaL: -4.05, pairCount: 2 });
    expect(pullFromStored(storedPull(form))).toEqual(form);
    expect(pullFromStored('{"way":"pairs"}')).toBeNull();
    expect(pullFromStored("half a te")).toBeNull();
  });
});

describe("the form of a first-off", () => {
  it("begins with what is chosen, and is not begun where nothing is", () => {
    const documents = chosen(ids.otherCandidate);
    const [line, other] = documents.job.lines;
    const [place] = documents.job.places;
    expect(firstOffBegins(documents, other!, place!)).toBeNull();
    expect(firstOffBegins(documents, line!, place!)).toMatchObject({
      garmentLotId: ids.lot,
      setUpId: ids.setUp,
      recipe: documents.job.mixes[1]?.recipe,
      actualGrams: null,
      halftoneFraction: 1,
    });
  });
});
