import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { archiveText, readJobArchive, writeJobArchive } from "../../src/exchange/jobArchive.ts";
import { removedShelfItems } from "../../src/exchange/removedShelfItems.ts";
import { usedLibrary } from "../../src/exchange/usedLibrary.ts";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import type { Documents } from "../../src/job/documents.ts";
import { emptyLibrary } from "../../src/job/emptyLibrary.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { arbitraryDocuments } from "./arbitraryDocuments.ts";
import { neverInPart } from "./archiveFuzz.ts";

/** Whole documents are large; this many cases take about a second. */
const RUNS = { numRuns: 60 };

const [sample] = fc.sample(arbitraryDocuments, { numRuns: 1, seed: 7 }) as [Documents];

/** The sample's archive as a plain object, to be spoilt. */
function spoilable() {
  return JSON.parse(archiveText(sample));
}

function problemsOf(archive: unknown) {
  const reading = readJobArchive(typeof archive === "string" ? archive : JSON.stringify(archive));
  return reading.ok ? [] : reading.problems;
}

describe("a job archive", () => {
  it("comes back equal when the whole library is written", () => {
    fc.assert(
      fc.property(arbitraryDocuments, (documents) => {
        expect(readJobArchive(archiveText(documents))).toEqual({ ok: true, documents });
      }),
      RUNS,
    );
  });

  it("holds the job as it is and exactly the library items that it uses", () => {
    fc.assert(
      fc.property(arbitraryDocuments, (documents) => {
        const used = usedLibrary(documents);
        expect(readJobArchive(writeJobArchive(documents))).toEqual({
          ok: true,
          documents: { job: documents.job, library: used },
        });
        // Each item is needed: without it some reference leads nowhere.
        for (const list of ["bases", "colourants", "meshes", "squeegees", "setUps"] as const) {
          used.shelf[list].forEach((_, index) => {
            const shelf = { ...used.shelf, [list]: used.shelf[list].toSpliced(index, 1) };
            const without = { job: documents.job, library: { ...used, shelf } };
            expect(validateDocuments(without)).not.toEqual([]);
          });
        }
        expect(validateDocuments({ job: documents.job, library: used })).toEqual([]);
      }),
      RUNS,
    );
  });

  it("is the same text whoever writes it, once it has been read: fields stand in the schema's order", () => {
    const rewritten = (text: string) => {
      const reading = readJobArchive(text);
      return reading.ok ? writeJobArchive(reading.documents) : "refused";
    };
    fc.assert(
      fc.property(arbitraryDocuments, (documents) => {
        const text = rewritten(writeJobArchive(documents));
        expect(text).not.toBe("refused");
        expect(rewritten(text)).toBe(text);
      }),
      RUNS,
    );
  });

  it("leaves out a lot, a mesh and a test print that no line leads to", () => {
    const lotId = "00000000-0000-4000-8000-000000000001";
    const meshId = "00000000-0000-4000-8000-000000000002";
    const printId = "00000000-0000-4000-8000-000000000003";
    const [lot] = sample.library.garmentLots;
    const [mesh] = sample.library.shelf.meshes;
    const [print] = sample.library.testPrints;
    if (!lot || !mesh || !print) throw new Error("the sample has no lot, mesh or print");
    const { library } = sample;
    const written = writeJobArchive({
      job: sample.job,
      library: {
        ...library,
        garmentLots: [...library.garmentLots, { ...lot, id: lotId }],
        testPrints: [
          ...library.testPrints,
          { ...print, id: printId, garmentLotId: lotId, supersedesId: null },
        ],
        shelf: { ...library.shelf, meshes: [...library.shelf.meshes, { ...mesh, id: meshId }] },
      },
    });
    for (const id of [lotId, meshId, printId]) expect(written).not.toContain(id);
    expect(written).toBe(writeJobArchive(sample));
  });

  it("takes along the record that a record corrects, and its lot, although no line is printed on that lot", () => {
    const lotId = "00000000-0000-4000-8000-000000000001";
    const printId = "00000000-0000-4000-8000-000000000003";
    const { job, library } = sample;
    const [lot] = library.garmentLots;
    const [print] = library.testPrints;
    if (!lot || !print) throw new Error("the sample has no lot or print");
    const elsewhere = { ...print, id: printId, garmentLotId: lotId, supersedesId: null };
    const written = readJobArchive(
      writeJobArchive({
        job,
        library: {
          ...library,
          garmentLots: [...library.garmentLots, { ...lot, id: lotId }],
          testPrints: [elsewhere, { ...print, supersedesId: printId }, ...library.testPrints.slice(1)],
        },
      }),
    );
    expect(written.ok && written.documents.library.testPrints.map(({ id }) => id)).toContain(printId);
    expect(written.ok && written.documents.library.garmentLots.map(({ id }) => id)).toContain(lotId);
  });

  it("of a job whose ink was removed from the shelf is still read, and the removal can be told", () => {
    const { library } = sample;
    // An ink of a record cannot be removed, nor can a record: the library has none, and the press log names none.
    const job = { ...sample.job, pressLog: [] };
    const shelf = { ...library.shelf, masters: [], colourants: [] };
    const gone = { job, library: { ...emptyLibrary(), garmentLots: library.garmentLots, shelf } };
    expect(readJobArchive(writeJobArchive(gone)).ok).toBe(true);
    expect(removedShelfItems(gone)).toEqual(
      job.mixes.map((mix, index) => ({
        code: "component-missing",
        where: `job.mixes[${index}].recipe[1].itemId`,
        detail: mix.recipe[1]?.itemId,
      })),
    );
  });

  it("is read with a byte order mark before it", () => {
    expect(readJobArchive(`\uFEFF${archiveText(sample)}`).ok).toBe(true);
  });
});

describe("a file that is no archive of this version", () => {
  it.each([
    ["text that is not JSON", "once upon a time", "not-json", ""],
    ["nothing", "", "not-json", ""],
    ["an archive cut in half", archiveText(sample).slice(0, 5000), "not-json", ""],
    ["another program's JSON", '{"kind":"something"}', "not-an-archive", "kind"],
    ["a list", "[]", "not-an-archive", "kind"],
    ["null", "null", "not-an-archive", "kind"],
    ["no version", '{"kind":"tonebench-job"}', "no-version", "version"],
    ["a version that is no number", '{"kind":"tonebench-job","version":"1"}', "no-version", "version"],
  ])("%s gives its own code", (_name, text, code, where) => {
    expect(problemsOf(text)).toEqual([{ code, where }]);
  });

  it("a newer version says so and which", () => {
    const archive = { ...spoilable(), version: ARCHIVE_VERSION + 1 };
    expect(problemsOf(archive)).toEqual([
      { code: "newer-version", where: "version", detail: String(ARCHIVE_VERSION + 1) },
    ]);
  });
});

describe("a spoilt archive", () => {
  it.each<[string, (archive: ReturnType<typeof spoilable>) => void, string, string]>([
    ["a missing field", (a) => delete a.job.number, "missing-field", "job.number"],
    ["an unknown field", (a) => (a.job.colour = 1), "unknown-field", "job"],
    ["a text for a number", (a) => (a.job.places[0].widthMm = "28"), "wrong-type", "job.places[0].widthMm"],
    ["a number too large", (a) => (a.job.places[0].widthMm = 1e9), "out-of-range", "job.places[0].widthMm"],
    ["an unknown light", (a) => (a.job.viewing.illuminant = "B"), "not-a-choice", "job.viewing.illuminant"],
    [
      "an unknown kind of colour",
      (a) => (a.library.garmentLots[0].bare = { kind: "swatch" }),
      "not-a-choice",
      "library.garmentLots[0].bare.kind",
    ],
    ["no id", (a) => (a.job.lines[0].id = "1"), "wrong-form", "job.lines[0].id"],
    [
      "a mix that does not sum to 1",
      (a) => (a.job.mixes[0].recipe[0].massFraction = a.job.mixes[0].recipe[0].massFraction > 0.5 ? 0 : 1),
      "mix-sum",
      "job.mixes[0].recipe",
    ],
    [
      "a blend that does not sum to 1",
      (a) => a.library.garmentLots[0].blend.push({ fibre: "nylon", massFraction: 0.3, dyed: true }),
      "blend-sum",
      "library.garmentLots[0].blend",
    ],
    [
      "a line whose lot is not there",
      (a) => (a.job.lines[0].garmentLotId = "00000000-0000-4000-8000-000000000001"),
      "missing-reference",
      "job.lines[0].garmentLotId",
    ],
    ["two lines of one id", (a) => (a.job.lines[1].id = a.job.lines[0].id), "repeated-id", "job.lines[1].id"],
  ])("%s is named with its path", (_name, spoil, code, where) => {
    const archive = spoilable();
    spoil(archive);
    expect(problemsOf(archive)).toContainEqual(expect.objectContaining({ code, where }));
  });

  it("never throws and never comes back in part, whatever is dropped, altered or cut", () => {
    fc.assert(neverInPart, { numRuns: 300 });
  });

  it("is refused wherever the text is cut", () => {
    const text = archiveText(sample).trimEnd();
    fc.assert(
      fc.property(fc.nat(text.length - 1), (length) => {
        expect(readJobArchive(text.slice(0, length)).ok).toBe(false);
      }),
    );
  });

  it("never throws on any text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readJobArchive(text).ok).toBe(false);
      }),
    );
  });
});
