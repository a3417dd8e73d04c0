/** Every older archive leads to today's version, one tried step at a time. */
import { describe, expect, it } from "vitest";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import { MIGRATIONS, type Migration, migrated } from "../../src/job/migrations.ts";

/** Versions whose step is tried below; whoever adds a migration adds a test and its version here. */
const TRIED: readonly number[] = [];

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
