/** Every older archive leads to today's version, one tried step at a time. */
import { describe, expect, it } from "vitest";
import { archiveText, readJobArchive } from "../../src/exchange/jobArchive.ts";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import type { Documents } from "../../src/job/documents.ts";
import { MIGRATIONS, type Migration, migrated } from "../../src/job/migrations.ts";
import { weighedDeposit } from "../../src/job/weighedDeposit.ts";
import { version1Archive } from "./version1.ts";
import { version2Archive } from "./version2.ts";

/** Versions whose step is tried below; whoever adds a migration adds a test and its version here. */
const TRIED: readonly number[] = [1, 2];

/** What an older archive is today; it must be read whole. */
function readToday(archive: object): Documents {
  const reading = readJobArchive(JSON.stringify(archive));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.documents;
}

const readVersion1 = () => readToday(version1Archive());
const readVersion2 = () => readToday(version2Archive());

const SAID = {
  deltaL: -4,
  p5: -6,
  p95: -3,
  chanceInBand: 0.8,
  evidence: "model only" as const,
  expectedLoss: null,
  modelVersion: "2",
};

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

describe("the step from version 2 to 3", () => {
  it("reads the whole archive, and what is written of it is read again", () => {
    const documents = readVersion2();
    expect(readJobArchive(archiveText(documents))).toEqual({ ok: true, documents });
  });

  it("keeps every value that was there, and every list but the job's and the shelf's as it was", () => {
    const old = version2Archive();
    const { job, library } = readVersion2();
    expect(job).toMatchObject(old.job);
    expect(library).toMatchObject(old.library);
    const { shelf: _, ...records } = old.library;
    expect(library).toEqual({ ...records, shelf: library.shelf });
  });

  it("makes up nothing: no rule, no spare piece, no start, an empty log, nothing said", () => {
    const { job } = readVersion2();
    expect(job.lines.map(({ sparePieceCount }) => sparePieceCount)).toEqual([null, null]);
    expect(job.places[0]?.mixRules).toEqual({
      atMostMixes: null,
      stockOnly: false,
      lowCureOnly: false,
      exactTints: false,
      keptRecipes: [],
      forbiddenRecipes: [],
    });
    expect(job.checklist.map(({ said }) => said)).toEqual([null, null]);
    expect([job.runStartsOn, job.pressLog]).toEqual([null, []]);
  });

  it("has every ink in stock, a press that costs nothing yet, and pieces owed in full", () => {
    const { bases, colourants, defaults } = readVersion2().library.shelf;
    expect([...bases, ...colourants].map(({ inStock }) => inStock)).toEqual([true, true]);
    expect(defaults.prices).toEqual({ ...version2Archive().library.shelf.defaults.prices, pressHour: 0 });
    expect(defaults.liableFraction).toBe(1);
    expect(defaults.testing).toEqual({ perDay: null, restDays: 1, pieceCount: 2, pairCount: 4 });
  });

  it("changes nothing in an archive that says it is older than it is", () => {
    const { job, library } = readVersion2();
    const { shelf } = library;
    const documents: Documents = {
      job: {
        ...job,
        lines: job.lines.map((line) => ({ ...line, sparePieceCount: 4 })),
        places: job.places.map((place) => ({
          ...place,
          mixRules: { ...place.mixRules, atMostMixes: 3, forbiddenRecipes: ["a"] },
        })),
        checklist: job.checklist.map((entry) => ({ ...entry, said: SAID })),
        runStartsOn: "2026-03-02",
      },
      library: {
        ...library,
        shelf: {
          ...shelf,
          bases: shelf.bases.map((base) => ({ ...base, inStock: false })),
          colourants: shelf.colourants.map((colourant) => ({ ...colourant, inStock: false })),
          defaults: {
            ...shelf.defaults,
            prices: { ...shelf.defaults.prices, pressHour: 60 },
            liableFraction: 0.5,
            testing: { perDay: 4, restDays: 2, pieceCount: 3, pairCount: 6 },
          },
        },
      },
    };
    const text = JSON.stringify({ ...JSON.parse(archiveText(documents)), version: 2 });
    expect(readJobArchive(text)).toEqual({ ok: true, documents });
  });

  it("leaves what it cannot understand for the schema to refuse, and never throws", () => {
    const halves = [
      { job: 1 },
      { job: { lines: [null, 3], places: {}, checklist: "gone" } },
      { library: [] },
      { library: { shelf: { bases: 2, colourants: [[]], defaults: { prices: null } } } },
    ];
    for (const half of halves) expect(() => migrated({ ...half, version: 2 }, 2)).not.toThrow();
    const archive = { ...version2Archive(), library: "gone" };
    expect(readJobArchive(JSON.stringify(archive))).toMatchObject({
      ok: false,
      problems: [{ code: "wrong-type", where: "library" }],
    });
  });
});
