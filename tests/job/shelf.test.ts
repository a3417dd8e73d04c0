/** The shelf: what is used stays, and there is one reference clear of strength 1. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import {
  addShelfItem,
  changeShelfItem,
  chooseReferenceBase,
  removeShelfItem,
} from "../../src/job/edits/shelf.ts";
import { type ShelfList, shelfItemUse } from "../../src/job/shelfItemUse.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids } from "./exampleDocuments.ts";
import { exampleDilution, exampleGoodsInCheck, exampleMaster, examplePot } from "./exampleRecords.ts";

const codes = (documents: Documents, list: ShelfList, id: string) =>
  shelfItemUse(documents, list, id).map(({ code, where, values }) => [code, where, values?.name]);

function withMasterAndPrint(): Documents {
  const documents = exampleDocuments();
  const { shelf } = documents.library;
  const master = exampleMaster(1, { colourantId: ids.red, baseId: ids.softener });
  const print = exampleTestPrint(1, {
    setUpId: ids.otherSetUp,
    recipe: [{ itemId: ids.white, massFraction: 1 }],
  });
  return {
    ...documents,
    library: { ...documents.library, shelf: { ...shelf, masters: [master] }, testPrints: [print] },
  };
}

describe("the users of a shelf item", () => {
  it.each<[ShelfList, string, string, string]>([
    ["bases", ids.clear, "used-by-mix", "job.mixes[0]"],
    ["colourants", ids.black, "used-by-mix", "job.mixes[1]"],
    ["colourants", ids.red, "used-by-master", "library.shelf.masters[0]"],
    ["colourants", ids.white, "used-by-test-print", "library.testPrints[0]"],
    ["setUps", ids.setUp, "used-by-candidate", "job.places[0].candidates[0]"],
    ["setUps", ids.otherSetUp, "used-by-test-print", "library.testPrints[0]"],
    ["meshes", ids.mesh, "used-by-set-up", "library.shelf.setUps[0]"],
    ["squeegees", ids.squeegee, "used-by-set-up", "library.shelf.setUps[0]"],
  ])("names for %s who keeps the item from being removed", (list, id, code, where) => {
    const documents = withMasterAndPrint();
    expect(codes(documents, list, id)[0]?.slice(0, 2)).toEqual([code, where]);
    expect(() => removeShelfItem(documents, list, id)).toThrow(`got ${code} ${where}`);
  });

  it("gives each by name", () => {
    expect(codes(exampleDocuments(), "bases", ids.clear).map(([, , name]) => name)).toEqual([
      "Clear",
      "Clear, a little black",
    ]);
  });

  it("are other jobs too, where they are given: each once, by its number", () => {
    const documents = exampleDocuments();
    const [mix] = documents.job.mixes;
    const recipe = [{ itemId: ids.red, massFraction: 1 }];
    const other = {
      ...documents.job,
      number: "T-9",
      mixes: [
        { ...mix!, recipe },
        { ...mix!, recipe },
      ],
    };
    const use = shelfItemUse(documents, "colourants", ids.red, [documents.job, other]);
    expect(use).toEqual([{ code: "used-by-other-job", where: "", detail: ids.red, values: { name: "T-9" } }]);
    expect(shelfItemUse(documents, "setUps", ids.otherSetUp, [other])).toEqual([]);
    expect(shelfItemUse(documents, "meshes", ids.fineMesh, [other]).map(({ code }) => code)).toEqual([
      "used-by-set-up",
    ]);
  });

  it("are pots, masters' weighings and goods-in checks: records that stay", () => {
    const documents = exampleDocuments();
    const withRecords = {
      ...documents,
      job: { ...documents.job, mixes: [], places: [] },
      library: {
        ...documents.library,
        pots: [examplePot(1)],
        dilutions: [exampleDilution(1)],
        goodsInChecks: [exampleGoodsInCheck(1)],
      },
    };
    expect(codes(withRecords, "bases", ids.clear).map(([code]) => code)).toEqual([
      "used-by-pot",
      "used-by-dilution",
      "used-by-goods-in-check",
    ]);
    expect(codes(withRecords, "colourants", ids.black).map(([code]) => code)).toEqual([
      "used-by-pot",
      "used-by-dilution",
    ]);
  });

  it("are none for an unused item, which is removed", () => {
    const documents = exampleDocuments();
    expect(codes(documents, "colourants", ids.red)).toEqual([]);
    const { colourants } = removeShelfItem(documents, "colourants", ids.red).library.shelf;
    expect(colourants.map(({ id }) => id)).toEqual([ids.black, ids.white]);
  });
});

describe("the reference clear", () => {
  it("divides every strength by its own when another base becomes it", () => {
    const { bases } = chooseReferenceBase(exampleDocuments(), ids.softener).library.shelf;
    expect(bases.map(({ reference }) => reference)).toEqual([false, true]);
    expect(bases[0]?.strength).toBeCloseTo(1 / 0.85, 12);
    expect(bases[1]?.strength).toBe(1);
  });

  it.each([
    [
      "a second one by a change",
      (d: Documents) => changeShelfItem(d, "bases", ids.softener, { reference: true, strength: 1 }),
      "only one base",
    ],
    [
      "a second one by an addition",
      (d: Documents) =>
        addShelfItem(d, "bases", { ...d.library.shelf.bases[0]!, id: exampleId(900), reference: true }),
      "only one base",
    ],
    [
      "another strength of it",
      (d: Documents) => changeShelfItem(d, "bases", ids.clear, { strength: 0.9 }),
      "must be 1; got 0.9",
    ],
    [
      "a base without strength",
      (d: Documents) =>
        chooseReferenceBase(changeShelfItem(d, "bases", ids.softener, { strength: 0 }), ids.softener),
      "above 0",
    ],
  ])("is refused as %s", (_, edit, message) => {
    expect(() => edit(exampleDocuments())).toThrow(message);
  });
});

describe("a shelf item", () => {
  it("is refused where it names a mesh, a squeegee or a colourant that is not there", () => {
    const documents = exampleDocuments();
    const setUp = documents.library.shelf.setUps[0]!;
    expect(() =>
      addShelfItem(documents, "setUps", { ...setUp, id: exampleId(900), meshId: exampleId(999) }),
    ).toThrow("mesh must exist");
    expect(() => changeShelfItem(documents, "setUps", ids.setUp, { squeegeeId: exampleId(999) })).toThrow(
      "squeegee must exist",
    );
  });

  it("is refused where a base takes the id of a colourant: recipes name items by id alone", () => {
    const documents = exampleDocuments();
    const base = { ...documents.library.shelf.bases[1]!, id: ids.black };
    expect(() => addShelfItem(documents, "bases", base)).toThrow("new id");
  });

  it("is refused where its schema refuses it", () => {
    expect(() => changeShelfItem(exampleDocuments(), "bases", ids.clear, { largestFraction: 1.2 })).toThrow(
      "bases.largestFraction",
    );
  });
});
