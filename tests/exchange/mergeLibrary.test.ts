import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeLibrary } from "../../src/exchange/mergeLibrary.ts";
import type { Documents } from "../../src/job/documents.ts";
import { LEDGER_NAMES } from "../../src/job/libraryDocument.ts";
import { libraryReferenceProblems } from "../../src/job/validateLibrary.ts";
import { arbitraryDocuments } from "./arbitraryDocuments.ts";

const RUNS = { numRuns: 40 };
const [one, two] = fc.sample(arbitraryDocuments, { numRuns: 2, seed: 11 }) as [Documents, Documents];

describe("merging libraries", () => {
  it("with itself changes nothing and reports nothing", () => {
    fc.assert(
      fc.property(arbitraryDocuments, ({ library }) => {
        const merged = mergeLibrary(library, structuredClone(library));
        expect(merged.library).toEqual(library);
        expect(merged.kept).toEqual([]);
      }),
      RUNS,
    );
  });

  it("keeps every item of both, in order, and every reference leads somewhere", () => {
    fc.assert(
      fc.property(arbitraryDocuments, arbitraryDocuments, (ours, theirs) => {
        const { library } = mergeLibrary(ours.library, theirs.library);
        expect(library.garmentLots).toEqual([...ours.library.garmentLots, ...theirs.library.garmentLots]);
        for (const name of LEDGER_NAMES) {
          expect(library[name]).toEqual([...ours.library[name], ...theirs.library[name]]);
        }
        expect(library.shelf.defaults).toEqual(ours.library.shelf.defaults);
        expect(libraryReferenceProblems(library)).toEqual([]);
      }),
      RUNS,
    );
  });

  it("done twice is the same as done once", () => {
    const once = mergeLibrary(one.library, two.library).library;
    expect(mergeLibrary(once, two.library).library).toEqual(once);
  });

  it("keeps the shop's own of a differing item and says which", () => {
    const incoming = structuredClone(one.library);
    const [mesh] = incoming.shelf.meshes;
    const [print] = incoming.testPrints;
    if (!mesh || !print) throw new Error("the sample has no mesh or print");
    mesh.name = "other name";
    print.note = "rewritten";
    const merged = mergeLibrary(one.library, incoming);
    expect(merged.library).toEqual(one.library);
    expect(merged.kept).toEqual([
      { code: "kept-own", where: "library.shelf.meshes", detail: mesh.id },
      { code: "kept-own", where: "library.testPrints", detail: print.id },
    ]);
  });

  it("takes a second clear that claims to be the reference of all strengths as an ordinary base, and says so", () => {
    const [base] = one.library.shelf.bases;
    if (!base) throw new Error("the sample has no base");
    const ours = {
      ...one.library,
      shelf: { ...one.library.shelf, bases: [{ ...base, reference: true }] },
    };
    const other = { ...base, id: "00000000-0000-4000-8000-000000000001", reference: true };
    const theirs = { ...ours, shelf: { ...ours.shelf, bases: [other] } };
    const { library, kept } = mergeLibrary(ours, theirs);
    expect(library.shelf.bases).toEqual([...ours.shelf.bases, { ...other, reference: false }]);
    expect(kept).toEqual([
      {
        code: "second-reference-clear",
        where: "library.shelf.bases",
        detail: other.id,
        values: { name: other.name },
      },
    ]);
    const empty = { ...ours, shelf: { ...ours.shelf, bases: [] } };
    expect(mergeLibrary(empty, theirs)).toMatchObject({ library: { shelf: { bases: [other] } }, kept: [] });
  });
});
