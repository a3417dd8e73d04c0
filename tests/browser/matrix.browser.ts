/** The matrix in a real browser, on the demo job: real predictions, real keys, a real drag, axe, many rows, paper. */
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";
import { violations, widthOf } from "./pageChecks.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

const CHANGE = /^(?:\d+\.\d (?:darker|lighter)|no change)$/;

async function openMatrix(size: WindowSize): Promise<Page> {
  planner = await openPlanner(size);
  const { page } = planner;
  await page.getByRole("link", { name: "Matrix" }).click();
  await page.locator(".cell .number").first().waitFor();
  return page;
}

const cellAt = (page: Page, row: number, column: number) =>
  page
    .getByRole("row")
    .nth(row + 1)
    .getByRole("gridcell")
    .nth(column);
const changeAt = async (page: Page, row: number, column: number) =>
  (await cellAt(page, row, column).locator(".number").textContent()) ?? "";

/** How much of a canvas is painted, and in how many tones. */
const paintedTones = (page: Page, row: number, column: number) =>
  cellAt(page, row, column)
    .locator("canvas")
    .evaluate((canvas: HTMLCanvasElement) => {
      const pixels = canvas.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      const tones = new Set<string>();
      for (let at = 0; at < pixels.length; at += 4) {
        if (pixels[at + 3] === 255) tones.add(`${pixels[at]} ${pixels[at + 1]} ${pixels[at + 2]}`);
      }
      return tones.size;
    });

describe("the matrix at 1440 px", () => {
  const size = { width: 1440, height: 1000 };

  it("predicts every cell of the demo: a change, a range, a chance, an evidence word, a painted cloth", async () => {
    const page = await openMatrix(size);
    const changes = await page.locator(".matrix__cell .number").allInnerTexts();
    expect(changes).toHaveLength(12 * 7);
    expect(changes.filter((words) => !CHANGE.test(words))).toEqual([]);
    expect(await page.locator(".matrix__cell", { hasText: "in band" }).count()).toBe(12 * 7);
    expect(await paintedTones(page, 3, 0)).toBeGreaterThan(40);
    // The fact the tool is for: the approved lot and its substitute, much the same colour, and both polyester deepen.
    expect(await changeAt(page, 2, 0)).toMatch(/darker/);
    // Grid and details scroll in themselves; the page does not.
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(size.height);
    await planner?.screenshot("matrix-1440");
    expect(planner?.consoleMessages).toEqual([]);
  });

  it("is walked with the arrow keys, Enter chooses, and the place survives a reload", async () => {
    const page = await openMatrix(size);
    await cellAt(page, 0, 0).focus();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    expect(await cellAt(page, 1, 1).evaluate((cell) => cell === document.activeElement)).toBe(true);
    await page.keyboard.press("Enter");
    expect(await cellAt(page, 1, 1).textContent()).toContain("chosen");
    await page
      .getByRole("status", { name: "Saving" })
      .filter({ hasText: /^saved$/ })
      .waitFor();
    await page.waitForFunction(() => location.hash.includes("mix="));
    await page.reload({ waitUntil: "networkidle" });
    await page.locator(".cell .number").first().waitFor();
    expect(await cellAt(page, 1, 1).textContent()).toContain("chosen");
    expect(await cellAt(page, 1, 1).getAttribute("data-looked-at")).not.toBeNull();
  });

  it("follows a dragged tint: the column darkens while the pointer is down, its neighbours stay, one undo", async () => {
    const page = await openMatrix(size);
    const before = await changeAt(page, 4, 1);
    const neighbour = await changeAt(page, 4, 0);
    const slider = page.getByRole("slider").nth(1);
    const box = await slider.boundingBox();
    if (box === null) throw new Error("the slider has no place on the page");
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width * 0.27, y);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.6, y, { steps: 12 });
    await page.mouse.move(box.x + box.width * 0.9, y, { steps: 12 });
    await expect.poll(() => changeAt(page, 4, 1)).not.toBe(before);
    const during = Number.parseFloat(await changeAt(page, 4, 1));
    expect(during).toBeGreaterThan(Number.parseFloat(before) + 2);
    expect(await changeAt(page, 4, 0)).toBe(neighbour);
    await page.mouse.up();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => changeAt(page, 4, 1)).toBe(before);
    expect(await page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
  });

  it("shows the details of the cell with charts, shares and figures", async () => {
    const page = await openMatrix(size);
    await cellAt(page, 3, 0).click();
    const pane = page.getByRole("region", { name: "The cell looked at" });
    await pane.getByRole("img", { name: /^Change against black/ }).waitFor();
    await pane.getByRole("img", { name: /^Reflectance against wavelength/ }).waitFor();
    expect(await pane.getByRole("heading", { level: 2 }).textContent()).toBe(
      "Blend crew tee, Forest, Mill B",
    );
    const shares = await pane.locator(".spread-parts__share").allInnerTexts();
    const sum = shares.reduce(
      (total, share) => total + Number.parseInt(share.replace("under 1", "0"), 10),
      0,
    );
    // Each of up to eight shares is rounded.
    expect(Math.abs(sum - 100)).toBeLessThanOrEqual(4);
    expect(await pane.getByRole("row", { name: /^bare/ }).textContent()).toMatch(/30\.9/);
  });

  it("has nothing that axe objects to, with the panels and the dialog open or closed", async () => {
    const page = await openMatrix(size);
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: /^target/ }).click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: /^light/ }).click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Add mix" }).click();
    await page.getByRole("button", { name: "Add a tint" }).click();
    expect(await violations(page)).toEqual([]);
  });

  it("keeps contrast and surround in the dark theme", async () => {
    const page = await openMatrix(size);
    await page.getByRole("combobox", { name: "Theme" }).selectOption("dark");
    expect(await violations(page)).toEqual([]);
    const ground = await page
      .locator(".matrix__row-head")
      .first()
      .evaluate((head) => getComputedStyle(head).backgroundColor);
    expect(ground).toBe("rgb(158, 158, 158)");
    await planner?.screenshot("matrix-1440-dark");
  });

  it("prints a table of all garments and mixes", async () => {
    const page = await openMatrix(size);
    await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
    await page.emulateMedia({ media: "print" });
    const table = page.getByRole("table");
    expect(await table.getByRole("row").count()).toBe(13);
    expect(await table.locator(".paper__change").allInnerTexts()).toHaveLength(12 * 7);
    expect(await page.locator(".paper").evaluate((paper) => getComputedStyle(paper).color)).toBe(
      "rgb(0, 0, 0)",
    );
  });
});

describe("the matrix at 1024 px", () => {
  it("opens the details as a sheet from below that leaves a row of the grid in sight, and closes it", async () => {
    const page = await openMatrix({ width: 1024, height: 768 });
    await planner?.screenshot("matrix-1024");
    const pane = page.getByRole("region", { name: "The cell looked at" });
    expect(await pane.count()).toBe(0);
    await page.getByRole("button", { name: "Show details" }).click();
    const box = await pane.boundingBox();
    expect(box?.y ?? 0).toBeGreaterThan(300);
    expect(await cellAt(page, 0, 0).locator(".number").isVisible()).toBe(true);
    expect(await violations(page)).toEqual([]);
    await planner?.screenshot("matrix-1024-details");
    await pane.getByRole("button", { name: "Close" }).click();
    expect(await pane.count()).toBe(0);
    expect(await cellAt(page, 0, 0).evaluate((cell) => cell === document.activeElement)).toBe(true);
  });
});

describe("the matrix at 390 px", () => {
  it("shows one garment with its mixes to swipe, and nothing that axe objects to", async () => {
    const page = await openMatrix({ width: 390, height: 844 });
    expect(await page.getByRole("grid").count()).toBe(0);
    await page.getByRole("button", { name: "Next garment" }).click();
    expect(await page.getByRole("status").filter({ hasText: "2 of 12" }).count()).toBe(1);
    const mixes = page.getByRole("list", { name: "Mixes" });
    const wider = await mixes.evaluate((list) => list.scrollWidth > list.clientWidth);
    expect(wider).toBe(true);
    expect(await widthOf(page)).toBe(390);
    await mixes.getByRole("button", { name: "Choose" }).first().click();
    expect(await mixes.getByRole("listitem").first().textContent()).toContain("chosen");
    expect(await violations(page)).toEqual([]);
    await planner?.screenshot("matrix-390");
    await mixes.getByRole("button", { name: "Show details" }).first().click();
    await page.getByRole("img", { name: /^Change against black/ }).waitFor();
    expect(await violations(page)).toEqual([]);
    await planner?.screenshot("matrix-390-details");
  });
});
