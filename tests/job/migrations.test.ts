/** Every older archive leads to today's version, one tried step at a time. */
import { describe, expect, it } from "vitest";
import { archiveText, readJobArchive } from "../../src/exchange/jobArchive.ts";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import type { Documents } from "../../src/job/documents.ts";
import { MIGRATIONS, type Migration, migrated } from "../../src/job/migrations.ts";
import { weighedDeposit } from "../../src/job/weighedDeposit.ts";
import { version1Archive } from "./version1.ts";

/** Versions whose step is tried below; whoever adds a migration adds a test and its version here. */
const TRIED: readonly number[] = [1, 2];

/** What version 1's archive is today; it must be read whole. */
function readVersion1(): Documents {
  const reading = readJobArchive(JSON.stringify(version1Archive()));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.documents;
}

const chain: readonly Migration[] = [
  { from: 1, up: ({ old, ...rest }) => ({ ...rest, middle: old }) },
  { from: 2, up: ({ middle, ...rest }) => ({ ...rest, latest: middle }) },
];

describe("the migrations", () => {
  it("lead from version 1 to today's without a gap, and each is tried by a test", () => {
    const expected = Array.from({ length: ARCHIVE_VERSION - 1 }, (_, index) => index + 1);
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(expected);
    expect(TRIED).toEqual(expected);
  });

  it("leave an archive of today as it is", () => {
    const archive = { kind: "tonebench-job", version: ARCHIVE_VERSION };
    expect(migrated(archive, ARCHIVE_VERSION)).toBe(archive);
  });

  it.each([
    [1, { version: 1, old: "value" }],
    [2, { version: 2, middle: "value" }],
    [3, { version: 3, latest: "value" }],
  ])("run every step from version %i on, in order, and say the version reached", (version, archive) => {
    expect(migrated(archive, version, chain, 3)).toEqual({ version: 3, latest: "value" });
  });

  it("refuse to skip a step that is missing", () => {
    expect(() => migrated({ version: 1 }, 1, chain.slice(1), 3)).toThrow("from version 1");
  });
});

describe("the step from version 1 to 2", () => {
  it("reads the whole archive, and what is written of it is read again", () => {
    const documents = readVersion1();
    expect(readJobArchive(archiveText(documents))).toEqual({ ok: true, documents });
  });

  it("keeps every value that was there", () => {
    const old = version1Archive();
    const { job, library } = readVersion1();
    expect(job).toMatchObject(old.job);
    expect(migrated(old, 1, MIGRATIONS, 2).job).toEqual({ ...old.job, forChildren: false });
    expect(library.garmentLots).toEqual(old.library.garmentLots);
    expect(library.shelf.meshes).toEqual(old.library.shelf.meshes);
    expect(library.shelf.bases).toMatchObject(old.library.shelf.bases);
    expect(library.shelf.colourants).toMatchObject(old.library.shelf.colourants);
    expect(library.testPrints).toMatchObject(old.library.testPrints);
    expect(library.approvals).toMatchObject(old.library.approvals);
  });

  it("makes up nothing: what nobody entered is null, empty, or what version 1 could only mean", () => {
    const { shelf, testPrints, approvals, ...lists } = readVersion1().library;
    expect(shelf.bases[0]).toMatchObject({ highestCelsius: null, hazards: null, lots: [], lowCure: true });
    expect(shelf.colourants[0]).toMatchObject({
      highestCelsius: null,
      hazards: null,
      lots: [],
      lowCure: false,
    });
    expect(shelf.setUps[0]?.flood).toBeNull();
    expect(shelf.setUps[0]?.transferFraction).toBeNull();
    expect(testPrints[0]).toMatchObject({
      actualGrams: null,
      depositGsm: null,
      halftoneFraction: 1,
      smoothed: false,
      cure: { filmCelsius: null, seconds: null },
      instrument: "",
      backing: "",
      washCount: 0,
      photo: null,
    });
    expect(testPrints[0]?.readings).toMatchObject({ pairCount: 2, pieceCount: 1, sdPairDifference: null });
    expect(testPrints[1]?.readings).toMatchObject({ pieceCount: 1 });
    expect(approvals[0]).toMatchObject({ modelVersion: "", said: null });
    const { garmentLots: _, ...added } = lists;
    expect(Object.values(added)).toEqual([[], [], [], [], []]);
  });

  it("keeps a weighed mean as a mean, the shop's spoilage as its rule, and words for a date as a note", () => {
    const { shelf } = readVersion1().library;
    expect(shelf.setUps.map(({ weighed }) => weighed?.kind)).toEqual(["mean", undefined]);
    expect(weighedDeposit(shelf.setUps[0]!.weighed!)).toMatchObject({
      meanGsm: 24,
      sdGsm: 2,
      pieceCount: 10,
    });
    expect(shelf.defaults.spoilageRule).toEqual({ code: "shop", fraction: 0.03 });
    expect(shelf.defaults).not.toHaveProperty("spoilageFraction");
    expect(shelf.masters).toMatchObject([
      { madeOn: "2026-01-12", expiresOn: null, note: "use by July", gramsLeft: null, dilutionId: null },
      { madeOn: null, expiresOn: null, note: "use by 2026-02-30" },
    ]);
  });

  it("changes nothing in an archive that says it is older than it is", () => {
    const documents = readVersion1();
    const text = JSON.stringify({ ...JSON.parse(archiveText(documents)), version: 1 });
    expect(readJobArchive(text)).toEqual({ ok: true, documents });
  });

  it("leaves what it cannot understand for the schema to refuse, and never throws", () => {
    for (const half of [{ job: 1 }, { library: [] }, { library: { shelf: { masters: [null, 3] } } }]) {
      expect(() => migrated({ ...half, version: 1 }, 1)).not.toThrow();
    }
    const archive = { ...version1Archive(), library: "gone" };
    expect(readJobArchive(JSON.stringify(archive))).toMatchObject({
      ok: false,
      problems: [{ code: "wrong-type", where: "library" }],
    });
  });
});
