/** Runs the real command as a shop would: `node scripts/plan.mjs FILE`. */
import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import { type Outcome, planHere } from "./planHere.ts";

const run = promisify(execFile);
const SCRIPT = fileURLToPath(new URL("../../scripts/plan.mjs", import.meta.url));
const DEMO = fileURLToPath(new URL("../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url));

/** A version that nothing has written yet. */
const NEWER = ARCHIVE_VERSION + 1;

/** Starting Node and the TypeScript loader takes about a second, more on a busy machine. */
const CHILD_TIMEOUT_MS = 60_000;

/** The demo: 12 lines × 7 mixes on the front, 3 lines × 2 mixes on the back. */
const DEMO_CELLS = 12 * 7 + 3 * 2;

async function plan(...args: string[]): Promise<Outcome> {
  try {
    const { stdout, stderr } = await run(process.execPath, [SCRIPT, ...args], { maxBuffer: 2 ** 26 });
    return { status: 0, stdout, stderr };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { status: code, stdout, stderr };
  }
}

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "tonebench-plan-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function spoilt(name: string, spoil: (archive: Record<string, never>) => void): Promise<string> {
  const archive = JSON.parse(await readFile(DEMO, "utf8"));
  spoil(archive);
  return textFile(name, JSON.stringify(archive));
}

async function textFile(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

describe("npm run plan on the demo job", { timeout: CHILD_TIMEOUT_MS }, () => {
  it("prints every cell as JSON and nothing else, with status 0", async () => {
    const { status, stdout, stderr } = await plan(DEMO);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const { job, viewing, rows } = JSON.parse(stdout);
    expect(job.number).toBe("VM-217");
    expect(viewing).toEqual({ illuminant: "D65", observer: "10deg" });
    expect(rows).toHaveLength(DEMO_CELLS);
    for (const row of rows) {
      expect(row.deltaL5).toBeLessThanOrEqual(row.deltaL50);
      expect(row.deltaL50).toBeLessThanOrEqual(row.deltaL95);
      expect(row.chanceInBand).toBeGreaterThanOrEqual(0);
      expect(row.chanceInBand).toBeLessThanOrEqual(1);
      expect(["this lot", "related prints", "model only"]).toContain(row.evidence);
      expect(row.printed.L - row.bare.L).toBeCloseTo(row.deltaL, 9);
    }
    const bare = rows.find((row: { lot: string }) => row.lot === "BC-2231").bare;
    // The stored reading comes back through the reconstructed spectrum.
    expect(bare.L).toBeCloseTo(30.5, 3);
    expect(bare.a).toBeCloseTo(-15, 3);
    expect(bare.b).toBeCloseTo(6.5, 3);
  });

  it("prints the same cells as CSV", async () => {
    const [json, csv] = await Promise.all([plan(DEMO), plan(DEMO, "--csv")]);
    expect({ status: csv.status, stderr: csv.stderr }).toEqual({ status: 0, stderr: "" });
    const table = Papa.parse<Record<string, string>>(csv.stdout.trimEnd(), { header: true });
    expect(table.errors).toEqual([]);
    const { rows } = JSON.parse(json.stdout);
    expect(table.data).toHaveLength(rows.length);
    table.data.forEach((line, index) => {
      expect(line.garment).toBe(rows[index].garment);
      expect(line.mix).toBe(rows[index].mix);
      expect(Number(line.delta_L)).toBeCloseTo(rows[index].deltaL, 4);
      expect(Number(line.chance_in_band)).toBeCloseTo(rows[index].chanceInBand, 4);
    });
  });
});

describe("npm run plan on bad input", () => {
  // biome-ignore lint/suspicious/noExplicitAny: a parsed archive is spoilt on purpose.
  type Spoil = (archive: any) => void;

  async function expectRefused(outcome: Outcome, ...named: string[]): Promise<void> {
    expect(outcome.stdout).toBe("");
    expect(outcome.stderr).toMatch(/^[^\n]+\n$/);
    for (const part of named) expect(outcome.stderr).toContain(part);
    expect(outcome.status).toBe(2);
  }

  it.each<[string, Spoil, string[]]>([
    ["a missing field", (a) => delete a.job.number, ["job.number", "missing-field"]],
    ["a wrong type", (a) => (a.job.places[0].widthMm = "28 cm"), ["job.places[0].widthMm", "wrong-type"]],
    [
      "a mix over 100 %",
      (a) => (a.job.mixes[1].recipe[1].massFraction = 0.5),
      ["job.mixes[1].recipe", "mix-sum"],
    ],
    [
      "an additive above its data sheet's limit",
      (a) => {
        a.job.mixes[6].recipe[0].massFraction = 0.2;
        a.job.mixes[6].recipe[1].massFraction = 0.8;
      },
      ["job.mixes[6]", "above-data-sheet-limit"],
    ],
    [
      "a colour that no cloth has",
      (a) => (a.library.garmentLots[0].bare.readings[0] = { L: 20, a: 150, b: -150 }),
      ["library.garmentLots[0]"],
    ],
    ["a newer version", (a) => (a.version = NEWER), ["version", "newer-version", String(NEWER)]],
    [
      "a line without its lot",
      (a) => a.library.garmentLots.splice(0, 1),
      ["job.lines[0].garmentLotId", "missing-reference"],
    ],
  ])("names the field of %s in one line and ends with status 2", async (name, spoil, named) => {
    await expectRefused(await planHere(await spoilt(`${name.replaceAll(/\W/g, "-")}.json`, spoil)), ...named);
  });

  it("refuses text that is not JSON, as a process of its own", { timeout: CHILD_TIMEOUT_MS }, async () => {
    await expectRefused(await plan(await textFile("text.json", "not\nJSON")), "not-json");
  });

  it("refuses a file that is not there", async () => {
    await expectRefused(await planHere(join(folder, "nowhere.json")), "nowhere.json", "cannot be read");
  });

  it("refuses a folder", async () => {
    await expectRefused(await planHere(folder), "cannot be read");
  });

  it.each([
    ["an unknown option", [DEMO, "--xml"], "--xml"],
    ["no file", [], "no file"],
    ["two files", [DEMO, DEMO], "more than one"],
  ])("refuses %s", async (_name, args, named) => {
    await expectRefused(await planHere(...args), named);
  });
});
