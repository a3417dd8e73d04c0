/** The bench form: what it begins with, what is missing, what becomes of it, and what a correction and a re-reading keep. */
import { describe, expect, it } from "vitest";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import {
  type BenchForm,
  correctionForm,
  EMPTY_PAIR,
  newBenchForm,
  nextForm,
  readAgainForm,
} from "../../../src/job/recordBook/benchForm.ts";
import {
  draftOfForm,
  draftPrint,
  printOfForm,
  readingsOfForm,
} from "../../../src/job/recordBook/benchPrint.ts";
import { samePrint } from "../../../src/job/recordBook/samePrint.ts";
import { formFromStored, storedForm } from "../../../src/job/recordBook/storedForm.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids, time } from "../exampleDocuments.ts";

const instrument = exampleDocuments().library.shelf.defaults.instrument;
const PAIR = { bare: { L: 30, a: -15, b: 6 }, print: { L: 27, a: -14, b: 5 } };
const NEW_ID = exampleId(0x29999);

const emptyForm = () => newBenchForm({ prints: [], instrument });
const whole = () => ({
  ...emptyForm(),
  garmentLotId: ids.lot,
  recipe: [{ itemId: ids.clear, massFraction: 1 }],
  setUpId: ids.setUp,
  pairs: [PAIR, EMPTY_PAIR],
  printedAt: time,
  readAt: time,
  operator: "A. Printer",
});
const missing = (form: ReturnType<typeof emptyForm>) => {
  const made = printOfForm(form, NEW_ID);
  return made.ok ? [] : made.problems.map(({ where }) => where);
};

describe("a new bench form", () => {
  it("has no reading, and the shop's own light where nothing was recorded yet", () => {
    const form = emptyForm();
    expect(form.pairs).toEqual([EMPTY_PAIR]);
    expect([form.illuminant, form.observer]).toEqual(["D65", "10deg"]);
    expect(missing(form)).toEqual([
      "garmentLotId",
      "recipe",
      "setUpId",
      "pairs",
      "printedAt",
      "readAt",
      "operator",
    ]);
  });

  it("offers the values of the last standing record again, the light of the last instrument's reading among them", () => {
    const { readings } = exampleTestPrint(1);
    const under = { ...readings, viewing: { illuminant: "D50", observer: "2deg" } } as typeof readings;
    const byEye = { kind: "by-eye", grade: 3, direction: "darker", light: "A", observerCount: 2 } as const;
    const prints = [
      exampleTestPrint(1, { readings: under, instrument: "Bench", cure: { filmCelsius: 150, seconds: 40 } }),
      exampleTestPrint(2, {
        readings: byEye,
        operator: "B. Reader",
        cure: { filmCelsius: 160, seconds: 60 },
      }),
    ];
    const form = newBenchForm({ prints, instrument });
    expect(form).toMatchObject({
      illuminant: "D50",
      observer: "2deg",
      instrument: "Bench",
      operator: "B. Reader",
    });
    expect(form.cure).toEqual({ filmCelsius: 160, seconds: 60 });
    expect(form.way).toBe("by-eye");
    expect(form.byEye).toEqual({ grade: null, direction: null, light: "A", observerCount: 1 });
  });
});

describe("a filled-in bench form", () => {
  it("becomes a record that the book takes; an untouched row is no pair", () => {
    const made = printOfForm(whole(), NEW_ID);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(made.print.readings).toMatchObject({ kind: "lab", pairs: [PAIR], pairCount: 1 });
    const after = appendTestPrint(exampleDocuments(), made.print);
    expect(after.library.testPrints.at(-1)).toEqual(made.print);
  });

  it("asks for the rest of a pair that is begun, and counts the whole ones meanwhile", () => {
    const begun = { ...EMPTY_PAIR, bare: { L: 31, a: null, b: null } };
    const form = { ...whole(), pairs: [PAIR, begun] };
    expect(missing(form)).toEqual(["pair"]);
    expect(draftOfForm(form).readings).toMatchObject({ pairs: [PAIR] });
  });

  it("never assumes a light, an observer or a geometry", () => {
    const form = { ...whole(), illuminant: null, observer: null, geometry: null };
    expect(missing(form)).toEqual(["illuminant", "observer", "geometry"]);
    expect(draftOfForm(form).readings).toBeNull();
  });

  it("takes a mean pair with its count and scatter, and asks for the count", () => {
    const mean = { pair: PAIR, pairCount: null, sdPairDifference: 0.3 };
    const form = { ...whole(), way: "mean" as const, mean, pieceCount: 3 };
    expect(missing(form)).toEqual(["pairCount"]);
    const read = readingsOfForm({ ...form, mean: { ...mean, pairCount: 6 } });
    expect(read).toMatchObject({
      ok: true,
      readings: { pairs: [PAIR], pairCount: 6, pieceCount: 3, sdPairDifference: 0.3 },
    });
  });

  it("asks an eye for grade and direction; grade 5, no change, has none", () => {
    const form = { ...whole(), way: "by-eye" as const };
    expect(missing(form)).toEqual(["grade"]);
    expect(missing({ ...form, byEye: { ...form.byEye, grade: 3.5 } })).toEqual(["direction"]);
    expect(readingsOfForm({ ...form, byEye: { ...form.byEye, grade: 5 } })).toMatchObject({ ok: true });
    const made = printOfForm(
      { ...form, byEye: { ...form.byEye, grade: 3.5, direction: "darker" }, instrument: "Bench" },
      NEW_ID,
    );
    expect(made).toMatchObject({ ok: true, print: { instrument: "", readings: { grade: 3.5 } } });
  });

  it("says what the schema refuses by its path", () => {
    const made = printOfForm({ ...whole(), operator: "x".repeat(121) }, NEW_ID);
    expect(made).toEqual({ ok: false, problems: [{ code: "bench-not-storable", where: "operator" }] });
  });

  it("is a print to be asked about before its times are there", () => {
    expect(draftPrint({ ...whole(), printedAt: null, readAt: null }, NEW_ID)?.garmentLotId).toBe(ids.lot);
    expect(draftPrint({ ...whole(), garmentLotId: null }, NEW_ID)).toBeNull();
  });
});

describe("a record opened again on the form", () => {
  const print = exampleTestPrint(1, { note: "Read by the window.", washCount: 2, verdict: "reference" });
  const last = { prints: [print], instrument };

  it("comes back the same as a correction, superseding it", () => {
    const made = printOfForm(correctionForm(print, last), NEW_ID);
    expect(made).toEqual({ ok: true, print: { ...print, id: NEW_ID, supersedesId: print.id } });
  });

  it("comes back the same whichever way its readings came", () => {
    const pairs = [PAIR, { ...PAIR, print: { L: 26, a: -14, b: 5 } }];
    const lab = print.readings as Extract<typeof print.readings, { kind: "lab" }>;
    const spectrum = Array.from({ length: 36 }, () => 0.2);
    const all: (typeof print.readings)[] = [
      { ...lab, pairs, pairCount: 2, pieceCount: 2 },
      { ...lab, pairCount: 8, pieceCount: 2, sdPairDifference: 0.4 },
      { kind: "by-eye", grade: 2.5, direction: "lighter", light: "D65", observerCount: 3 },
      { kind: "spectral", geometry: "45:0", pairs: [{ bare: spectrum, print: spectrum }], pieceCount: 1 },
    ];
    for (const readings of all) {
      const one = { ...print, readings, instrument: "" };
      const made = printOfForm(correctionForm(one, { prints: [one], instrument }), NEW_ID);
      expect(made, readings.kind).toMatchObject({ ok: true, print: { readings } });
    }
  });

  it("read again is the same print with open readings, and counts as that print", () => {
    const form = { ...readAgainForm(print, last), pairs: [PAIR], readAt: "2026-02-20T10:00:00Z" };
    expect(readAgainForm(print, last).pairs).toEqual([EMPTY_PAIR]);
    const made = printOfForm(form, NEW_ID);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(made.print.supersedesId).toBeNull();
    expect(samePrint([print], made.print)?.id).toBe(print.id);
    expect(samePrint([print], { ...made.print, printedAt: "2026-02-19T10:00:00Z" })).toBeNull();
  });
});

describe("a form that a tablet keeps while it sleeps", () => {
  it("comes back as it was, begun, whole, corrected or read from a file", () => {
    const print = exampleTestPrint(1);
    const spectrum = Array.from({ length: 36 }, () => 0.2);
    const fromFile = {
      kind: "spectral",
      geometry: "45:0",
      pairs: [{ bare: spectrum, print: spectrum }],
      pieceCount: 1,
    } as const;
    const last = { prints: [print], instrument };
    const forms: BenchForm[] = [
      emptyForm(),
      whole(),
      correctionForm(print, last),
      readAgainForm(print, last),
    ];
    forms.push({ ...whole(), way: "file", fromFile: { ...fromFile, pairs: [...fromFile.pairs] } });
    for (const form of forms) expect(formFromStored(storedForm(form))).toEqual(form);
  });

  it("is not offered where the text is none of this version's", () => {
    for (const text of [null, "", "{", "{}", JSON.stringify({ ...whole(), pairs: "none" })])
      expect(formFromStored(text)).toBeNull();
  });
});

describe("the next print of a row", () => {
  it("keeps set-up, mix, times and instrument, and nothing of the garment before", () => {
    const next = nextForm({ ...whole(), note: "odd", verdict: "rejected", depositGsm: 20 });
    expect(next).toMatchObject({ setUpId: ids.setUp, printedAt: time, operator: "A. Printer" });
    expect(next).toMatchObject({ garmentLotId: null, note: "", verdict: "none", depositGsm: null });
    expect(next.pairs).toEqual([EMPTY_PAIR]);
  });
});
