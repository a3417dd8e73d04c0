/** The whole story of one job, as a new user goes through it: from the demo to an export that brings everything back. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner } from "./launch.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

const SIGNER = "R. Test";
const STYLE = "Corner tee";

/** Presses Tab until `isThere` holds of the focused element; a keyboard user gets there in so many presses or not at all. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    const focused = page.locator(":focus");
    if ((await focused.count()) === 1) {
      const label = await focused.evaluate((element) => {
        const labels = (element as HTMLInputElement).labels;
        return element.getAttribute("aria-label") ?? labels?.[0]?.textContent ?? element.textContent ?? "";
      });
      if (label.trim() === name) return;
    }
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not reach ${name}`);
}

async function saved(page: Page): Promise<void> {
  await page
    .getByRole("status", { name: "Saving" })
    .filter({ hasText: /^saved$/ })
    .waitFor();
}

async function addGarmentByKeyboard(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Garments", exact: true }).press("Enter");
  await tabTo(page, "Add a garment");
  await page.keyboard.press("Enter");
  await tabTo(page, "Style");
  await page.keyboard.type(STYLE);
  await tabTo(page, "L*");
  await page.keyboard.type("38");
  await tabTo(page, "a*");
  await page.keyboard.type("-4");
  await tabTo(page, "b*");
  await page.keyboard.type("-22");
  await tabTo(page, "Add a fibre");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Shift+Tab");
  const part = page.getByRole("textbox", { name: /^Part of/ }).first();
  await part.press("ControlOrMeta+a");
  await page.keyboard.type("100");
  await page.keyboard.press("Tab");
  await tabTo(page, "Save garment");
  await page.keyboard.press("Enter");
  await page
    .getByRole("button", { name: new RegExp(STYLE) })
    .first()
    .waitFor();
}

async function addMixAndDragIt(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Matrix", exact: true }).click();
  await page.locator(".cell .number").first().waitFor();
  const columns = await page.getByRole("slider").count();
  await page.getByRole("button", { name: "Add mix" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Add mix" }).click();
  await expect.poll(() => page.getByRole("slider").count()).toBe(columns + 1);
  const slider = page.getByRole("slider").nth(columns);
  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  if (box === null) throw new Error("the slider has no place on the page");
  await page.mouse.move(box.x + 6, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 10 });
  await page.mouse.up();
}

async function signAndRelease(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Before the run", exact: true }).click();
  await page.getByRole("button", { name: new RegExp(`^${STYLE}.*Front$`) }).click();
  await page.getByLabel("Your name, for what you sign").fill(SIGNER);
  await page.keyboard.press("Tab");
  const release = page.getByRole("button", { name: /^Release the run/ });
  expect(await release.isDisabled()).toBe(true);
  const open = page.getByRole("button", { name: new RegExp(`^Sign .* as ${SIGNER}$`) });
  while ((await open.count()) > 0) await open.first().click();
  await release.click();
  await page.getByText(/^1 of \d+ released\.$/).waitFor();
}

/** What must be there again: the garment, the matrix as chosen, the release. */
async function seen(page: Page) {
  await page.getByRole("link", { name: "Matrix", exact: true }).click();
  await page.locator(".cell .number").first().waitFor();
  const tints = await page
    .getByRole("slider")
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
  const row = page.getByRole("row").filter({ hasText: STYLE });
  await row.scrollIntoViewIfNeeded();
  const chosen = await row.getByRole("gridcell").filter({ hasText: "chosen" }).allInnerTexts();
  await page.getByRole("link", { name: "Before the run", exact: true }).click();
  // The count stands at 0 until the predictions are there that a release waits for.
  const released = await page.getByText(/^[1-9]\d* of \d+ released\.$/).textContent();
  return { tints, chosen, released };
}

describe("the main job, end to end", () => {
  it("is done by a new user and is all there after a reload, and after export, wipe and import", async () => {
    planner = await openPlanner({ width: 1440, height: 1000 });
    const { page, context } = planner;
    // A browser without file pickers of its own downloads and uploads, which a test can follow.
    await context.addInitScript(() => {
      for (const picker of ["showSaveFilePicker", "showOpenFilePicker"]) {
        Reflect.deleteProperty(window, picker);
      }
    });
    await page.reload({ waitUntil: "networkidle" });

    await addGarmentByKeyboard(page);
    await addMixAndDragIt(page);
    const row = page.getByRole("row").filter({ hasText: STYLE });
    await row.scrollIntoViewIfNeeded();
    await row.getByRole("gridcell").first().focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await expect.poll(() => row.textContent()).toContain("chosen");
    await signAndRelease(page);
    await saved(page);
    const before = await seen(page);
    expect(before.chosen).toHaveLength(1);
    expect(before.released).toMatch(/^1 of/);

    await page.reload({ waitUntil: "networkidle" });
    expect(await seen(page)).toEqual(before);

    await page.getByRole("link", { name: "Jobs", exact: true }).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Export VM-217" }).click(),
    ]);
    const file = await download.path();
    expect(JSON.parse(readFileSync(file, "utf8")).job.number).toBe("VM-217");

    const wipe = await context.newCDPSession(page);
    await page.goto("about:blank");
    await wipe.send("Storage.clearDataForOrigin", {
      origin: new URL(planner.url).origin,
      storageTypes: "all",
    });
    await page.goto(planner.url, { waitUntil: "networkidle" });
    await page.locator(".cell .number").first().waitFor();
    expect(await page.getByText(STYLE).count()).toBe(0);

    await page.getByRole("link", { name: "Jobs", exact: true }).click();
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Import a job file" }).click(),
    ]);
    await chooser.setFiles(file);
    await page.getByRole("button", { name: "Replace the stored one" }).click();
    await page.getByRole("link", { name: "Matrix", exact: true }).waitFor();
    await saved(page);
    expect(await seen(page)).toEqual(before);

    expect(planner.consoleMessages).toEqual([]);
    expect(planner.foreignRequests).toEqual([]);
  });
});
