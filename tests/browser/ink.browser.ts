/**
 * The ink room in a real browser: from the matrix to printed weigh sheets, 0.7 g too much tint poured, and the
 * correction that brings it back within one step of the scale; refusal, masters, units; axe on every part.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";
import { violations, widthOf } from "./pageChecks.ts";

const DESK = { width: 1440, height: 1000 };
const WIDTHS = [DESK, { width: 1024, height: 768 }, { width: 390, height: 844 }];
const PARTS = ["Batches", "Weigh sheets", "Masters", "Run order", "Set-ups", "Cure and safety"];
/** The demo's recipe: half a percent of black in curable clear. */
const MIX = "Curable clear + 0.5 % black";
const WANTED_TINT = 0.005;
const STEP_GRAMS = 0.1;

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

/** Chooses mixes in the matrix by keyboard, then goes to the ink room. */
async function openInk(size: WindowSize, choices: readonly (readonly [row: number, column: number])[]) {
  planner = await openPlanner(DESK);
  const { page } = planner;
  await page.locator(".cell .number").first().waitFor();
  for (const [row, column] of choices) {
    await page
      .getByRole("row")
      .nth(row + 1)
      .getByRole("gridcell")
      .nth(column)
      .focus();
    await page.keyboard.press("Enter");
  }
  await page.setViewportSize(size);
  await page.getByRole("link", { name: "Ink", exact: true }).click();
  await page.getByRole("tab", { name: "Batches" }).waitFor();
  return page;
}

const openPart = (page: Page, name: string) => page.getByRole("tab", { name }).click();

async function openSheet(page: Page, mix: string, kg: string): Promise<void> {
  await page.getByRole("button", { name: `Open the weigh sheet of ${mix}` }).click();
  await page.getByLabel(/^Amount to mix/).fill(kg);
  await page.getByLabel(/^Amount to mix/).press("Enter");
}

async function startPot(page: Page, potNumber = 1): Promise<void> {
  await page.getByRole("button", { name: `Start pot ${potNumber}`, exact: true }).click();
  await page.getByLabel("Weighed by").fill("Ida Krone");
  await page.getByRole("button", { name: new RegExp(`^Start pot ${potNumber} of`) }).click();
}

async function pour(page: Page, grams: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, typed] of Object.entries(grams)) {
    await page.getByLabel(new RegExp(`^Grams of ${name}, g`)).fill(typed);
    await page.keyboard.press("Tab");
  }
  await page.getByRole("button", { name: "Record what was poured" }).click();
}

/** Grams in the pot, line by line, as the page says them. */
async function gramsInPot(page: Page): Promise<number[]> {
  const texts = await page.locator(".ink__poured .sheet__grams").allTextContents();
  return texts.map((text) => Number.parseFloat(text.replaceAll(",", "")));
}

const tintOf = ([base = 0, tint = 0]: readonly number[]) => tint / (base + tint);

const sheetCount = (pdf: Buffer) => (pdf.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? []).length;

/** The text of a PDF where the system has poppler's tool; null elsewhere. */
function textOfPdf(pdf: Buffer): string | null {
  const folder = mkdtempSync(join(tmpdir(), "tonebench-"));
  try {
    writeFileSync(join(folder, "sheet.pdf"), pdf);
    execFileSync("pdftotext", ["-layout", join(folder, "sheet.pdf"), join(folder, "sheet.txt")]);
    const text = join(folder, "sheet.txt");
    return existsSync(text) ? readFileSync(text, "utf8") : null;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
    throw error;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe("from the matrix to the press", () => {
  it("weighs a pot 0.7 g over and corrects it to the tint within one step of the scale", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await openSheet(page, MIX, "0.2");
    const sheet = page.getByRole("region", { name: "Weigh sheet of one pot" });
    expect(
      await sheet.getByText(/^One step of this scale \(0\.1\sg\) = \d\.\d\d ΔL\* on .*Navy/).count(),
    ).toBe(1);

    const pdf = await page.pdf({ format: "A4" });
    expect(sheetCount(pdf)).toBe(1);
    const text = textOfPdf(pdf);
    if (text !== null) {
      expect(text).toMatch(/1\s+Curable clear\s+199\.0\sg/);
      expect(text).toMatch(/2\s+Black\s+1\.0\sg/);
      expect(text).toMatch(/0\.5\s% Black \(of ready-made ink\)/);
      expect(text).toContain("Pot label, to cut out");
    }

    await startPot(page);
    await pour(page, { "Curable clear": "199", Black: "1.7" });
    const outcome = page.locator(".ink__outcome");
    await outcome.getByText("0.847 %").waitFor();
    await outcome.getByText(/^To bring it back to the recipe, add 139\.3\sg of Curable clear/).waitFor();
    await planner?.screenshot("ink-correction-1440");
    await page.getByRole("button", { name: /^Record what was added/ }).click();
    await outcome.getByText("every line is within a step of the scale of its share").waitFor();

    const grams = await gramsInPot(page);
    const total = grams.reduce((sum, value) => sum + value, 0);
    const [, tint = 0] = grams;
    expect(Math.abs(tint - WANTED_TINT * total)).toBeLessThanOrEqual(STEP_GRAMS);
    expect(tintOf(grams)).toBeCloseTo(WANTED_TINT, 5);

    // It is on record: there after a reload, and no undo takes it back.
    await page
      .getByRole("status", { name: "Saving" })
      .filter({ hasText: /^saved$/ })
      .waitFor();
    await page.reload({ waitUntil: "networkidle" });
    await page.locator(".ink__poured").first().waitFor();
    expect(await gramsInPot(page)).toEqual(grams);
    expect(planner?.consoleMessages).toEqual([]);
  });

  it("refuses a correction that the pot is too small for, and goes on once ink is taken out", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await openSheet(page, MIX, "0.6");
    await startPot(page);
    await pour(page, { "Curable clear": "597", Black: "9" });
    const outcome = page.locator(".ink__outcome");
    await outcome.getByText(/this pot takes no more than .*: it is refused/).waitFor();
    await page.getByRole("button", { name: /^Record what was taken out/ }).click();
    await outcome.getByText(/^To bring it back to the recipe, add/).waitFor();
    await page.getByRole("button", { name: /^Record what was added/ }).click();
    await outcome.getByText("every line is within a step of the scale of its share").waitFor();
    const grams = await gramsInPot(page);
    expect(tintOf(grams)).toBeCloseTo(WANTED_TINT, 4);
  });

  it("corrects a mistyped weighing by an entry of its own", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await openSheet(page, MIX, "0.2");
    await startPot(page);
    await pour(page, { "Curable clear": "199", Black: "10" });
    await page.getByRole("button", { name: "Correct what was typed for Black" }).click();
    await page.getByLabel(/^First weighing of Black, corrected/).fill("1");
    await page.keyboard.press("Enter");
    await page.locator(".ink__outcome").getByText("every line is within a step").waitFor();
    expect(await gramsInPot(page)).toEqual([199, 1]);
    expect(await page.getByText("in the place of a mistyped entry").count()).toBe(1);
  });

  it("prints one page a pot, and shows ounces behind the scale's grams where the shop thinks in them", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await openSheet(page, MIX, "20");
    const starts = await page.getByRole("button", { name: /^Start pot \d+$/ }).count();
    expect(starts).toBeGreaterThan(2);
    for (const format of ["A4", "Letter"])
      expect(sheetCount(await page.pdf({ format })), format).toBe(starts);
    await page.getByRole("link", { name: "Shelf", exact: true }).click();
    await openPart(page, "Defaults");
    await page.getByLabel("Mass", { exact: true }).selectOption("ounce");
    await page.getByRole("link", { name: "Ink", exact: true }).click();
    await openPart(page, "Weigh sheets");
    const amounts = await page.locator("td.sheet__grams").allTextContents();
    expect(amounts.filter((amount) => !/^[\d,.]+\sg \([\d,.]+\soz\)$/.test(amount))).toEqual([]);
  });

  it("prints the sheets of all mixes from the list of batches", async () => {
    const page = await openInk(DESK, [
      [0, 2],
      [1, 1],
      [2, 0],
    ]);
    await page.evaluate(() => {
      window.print = () => {
        window.dispatchEvent(new Event("beforeprint"));
        document.body.dataset.pages = String(document.querySelectorAll(".ink-paper__page").length);
        window.dispatchEvent(new Event("afterprint"));
      };
    });
    await page.getByRole("button", { name: "Print all weigh sheets" }).click();
    expect(await page.evaluate(() => document.body.dataset.pages)).toBe("3");
    await page.getByRole("button", { name: "Print all weigh sheets" }).waitFor();
  });

  it("prints black on white in the dark theme too, without a button", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await page.emulateMedia({ colorScheme: "dark", media: "print" });
    for (const part of [".ink h3", ".ink .ink__number", ".shell__title h1"]) {
      const ink = await page
        .locator(part)
        .first()
        .evaluate((element) => getComputedStyle(element).color);
      expect(ink, part).toBe("rgb(0, 0, 0)");
    }
    const ground = await page
      .locator(".ink")
      .evaluate((element) => getComputedStyle(element).backgroundColor);
    expect(ground).toBe("rgb(255, 255, 255)");
    expect(await page.getByRole("button", { name: /^Open the weigh sheet/ }).isVisible()).toBe(false);
  });

  it("weighs a master by a sheet of its own, and offers it once it is on the shelf", async () => {
    const page = await openInk(DESK, [[0, 2]]);
    await openPart(page, "Masters");
    await page.getByRole("button", { name: "Weigh a new master" }).click();
    const form = page.getByRole("group", { name: "New master" });
    await form.getByLabel("In base").selectOption({ label: "Curable clear" });
    await form.getByLabel("Weighed by").fill("Ida Krone");
    await form.getByRole("button", { name: "Start this master" }).click();
    const card = page.getByRole("region", { name: /^Black, 10/ }).first();
    await pour(page, { "Curable clear": "451", Black: "50" });
    await card.getByText("9.98 %").waitFor();
    await card.getByRole("button", { name: "Put it on the shelf" }).click();
    await card.getByText("It is on the shelf.").waitFor();
    await openPart(page, "Batches");
    await openSheet(page, MIX, "0.2");
    await page.getByText(/^Black is weighed as its 9\.98\S*\s% master/).waitFor();
  });
});

it.each(WIDTHS)(
  "has no violation in any part at $width px, and none is wider than the window",
  async (size) => {
    const page = await openInk(size, [
      [0, 2],
      [1, 1],
      [2, 0],
      [5, 4],
      [6, 5],
    ]);
    for (const part of PARTS) {
      await openPart(page, part);
      await page.getByRole("tab", { name: part, selected: true }).waitFor();
      expect(await violations(page), part).toEqual([]);
      expect(await widthOf(page), part).toBe(size.width);
      await planner?.screenshot(`ink-${part.toLowerCase().replaceAll(" ", "-")}-${size.width}`);
    }
    await page.getByRole("checkbox", { name: "This job is for children" }).check();
    await page.getByText(/16 CFR 1307\.3/).waitFor();
    await page.getByText(/Not legal advice/).waitFor();
    expect(await violations(page)).toEqual([]);
  },
);
