// The command's decisions on the demo: which mixes, which test prints, how to recover. plan.test.ts runs the real process.
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { planHere } from "./planHere.ts";

const DEMO = fileURLToPath(new URL("../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url));

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "tonebench-decide-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The demo with the mill B forest chosen as its approved sister is printed. */
async function withForest(): Promise<string> {
  const archive = JSON.parse(await readFile(DEMO, "utf8"));
  const line = archive.job.lines.find(
    (one: { substitutedForLotId: string | null }) => one.substitutedForLotId !== null,
  );
  archive.job.choices.push({ ...archive.job.choices[0], lineId: line.id });
  const path = join(folder, "forest.json");
  await writeFile(path, JSON.stringify(archive));
  return path;
}

describe("npm run plan on the demo job", () => {
  it("finds mixes for the front, proven, and prints the same garments as CSV", async () => {
    const json = await planHere(DEMO, "--mixes", "--place", "front");
    const csv = await planHere(DEMO, "--mixes", "--place", "front", "--csv");
    expect({ status: json.status, stderr: json.stderr }).toEqual({ status: 0, stderr: "" });
    const found = JSON.parse(json.stdout);
    expect(found).toMatchObject({ job: "VM-217", place: "Front", proven: true, gapFraction: 0 });
    expect(found.changes.length + found.unchanged + found.unserved.length).toBe(12);
    const rows = Papa.parse<Record<string, string>>(csv.stdout.trimEnd(), { header: true });
    expect(rows.errors).toEqual([]);
    expect(rows.data).toHaveLength(found.changes.length + found.unserved.length);
    expect(rows.data[0]).toMatchObject({ garment: found.changes[0].garment, mix: found.changes[0].to.mix });
  });

  it("names the mill B forest as the first test print to make", async () => {
    const { status, stdout } = await planHere(DEMO, "--tests", "--today", "2026-02-20", "--csv");
    expect(status).toBe(0);
    const [first] = Papa.parse<Record<string, string>>(stdout.trimEnd(), { header: true }).data;
    expect(first).toMatchObject({ rank: "1", lot: "BC-7708" });
    expect(Number(first!.risk_removed)).toBeGreaterThan(5 * Number(first!.cost));
  });

  it("ranks what helps a first-off that came out 7.9 darker", async () => {
    const forest = await withForest();
    const { status, stdout, stderr } = await planHere(
      forest,
      "--recover",
      "-7.9",
      "--line",
      "BC-7708",
      "--place",
      "front",
      "--pairs",
      "6",
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const { options, unexplained, bestOnThisScreen } = JSON.parse(stdout);
    expect(unexplained).toBeNull();
    expect(options.at(-1)).toMatchObject({ changes: [] });
    expect(options.at(-1).deltaL50).toBeCloseTo(-7.9, 6);
    expect(
      options
        .slice(0, 2)
        .some(
          ({ recipe, screenChange }: { recipe: string; screenChange: boolean }) =>
            recipe === "Matt clear" && screenChange,
        ),
    ).toBe(true);
    expect(options[bestOnThisScreen - 1].changes).toEqual(["Matt clear"]);
  });

  it.each([
    ["a place that the job lacks", ["--mixes", "--place", "sleeve"]],
    ["two places and none named", ["--mixes"]],
    ["a line that nothing is called", ["--recover", "-7.9", "--line", "no such shirt", "--place", "front"]],
    ["a line without a chosen mix", ["--recover", "-7.9", "--line", "BC-7708", "--place", "front"]],
    ["lines of one name", ["--recover", "-7.9", "--line", "forest", "--place", "front"]],
  ])("ends with status 2 and one line for %s", async (_what, args) => {
    const { status, stdout, stderr } = await planHere(DEMO, ...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(/^plan: [^\n]+\n$/);
  });
});
