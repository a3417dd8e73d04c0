/** The goods-in form: begins with the job's substitution, becomes a check that the book takes, or says what is missing. */
import { describe, expect, it } from "vitest";
import { appendGoodsInCheck } from "../../../src/job/edits/records.ts";
import { anyBandOfPrint, bandOfPrint } from "../../../src/job/recordBook/bandOfPrint.ts";
import { goodsInOfForm, newGoodsInForm } from "../../../src/job/recordBook/goodsInForm.ts";
import { exampleDocuments, exampleId, ids, time } from "../exampleDocuments.ts";

const signed = { id: exampleId(0x49999), by: "A. Printer", at: time };

describe("the goods-in form", () => {
  it("begins with the lots of a substitution that nobody has checked", () => {
    const documents = exampleDocuments();
    const lines = documents.job.lines.map((line, index) =>
      index === 0 ? { ...line, substitutedForLotId: ids.otherLot } : line,
    );
    const form = newGoodsInForm({ ...documents, job: { ...documents.job, lines } });
    expect([form.approvedLotId, form.arrivingLotId]).toEqual([ids.otherLot, lines[0]?.garmentLotId]);
    expect([form.approvedChange, form.arrivingChange]).toEqual([null, null]);
  });

  it("names all that is missing, one lot twice too", () => {
    const form = { ...newGoodsInForm(exampleDocuments()), approvedLotId: ids.lot, arrivingLotId: ids.lot };
    const made = goodsInOfForm(form, { ...signed, by: " " });
    expect(made.ok ? [] : made.problems.map(({ where }) => where)).toEqual([
      "sameLot",
      "baseId",
      "approvedChange",
      "arrivingChange",
      "by",
    ]);
  });

  it("becomes a check of its own that the book takes", () => {
    const documents = exampleDocuments();
    const form = {
      ...newGoodsInForm(documents),
      approvedLotId: ids.lot,
      arrivingLotId: ids.otherLot,
      baseId: ids.clear,
      approvedChange: -3,
      arrivingChange: -7.5,
    };
    const made = goodsInOfForm(form, signed);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(appendGoodsInCheck(documents, made.check).library.goodsInChecks).toEqual([made.check]);
  });
});

describe("the target that a print is held against", () => {
  const clear = [{ itemId: ids.clear, massFraction: 1 }];

  it("is that of the place where its lot is printed; a lot that is printed nowhere has none of its own", () => {
    const documents = exampleDocuments();
    const [place] = documents.job.places;
    expect(bandOfPrint(documents, ids.lot, clear)).toEqual(place?.band);
    const elsewhere = exampleId(0x19999);
    expect(bandOfPrint(documents, elsewhere, clear)).toBeNull();
    expect(anyBandOfPrint(documents, elsewhere, clear)).toEqual(place?.band);
    const nowhere = { ...documents, job: { ...documents.job, places: [] } };
    expect(anyBandOfPrint(nowhere, ids.lot, clear).tolerance).toBeGreaterThan(20);
  });
});
