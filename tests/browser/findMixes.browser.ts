/** The mix search in a real browser on the demo job: real workers and solver, the proposal used, undone and kept; axe. */
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";
import { violations, widthOf } from "./pageChecks.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

async function openSearch(size: WindowSize): Promise<Page> {
  planner = await openPlanner(size);
  const { page } = planner;
  await page.getByRole("link", { name: "Matrix" }).click();
  await page.locator(".cell .number").first().waitFor();
  await page.getByRole("button", { name: "Find mixes" }).click();
  return page;
}

const panel = (page: Page) => page.getByRole("region", { name: "Find mixes, Front" });
const press = (page: Page, name: string) => panel(page).getByRole("button", { name, exact: true }).click();
const headline = (page: Page) => panel(page).getByRole("heading", { level: 3 });
const inUse = (page: Page) => panel(page).getByText("in use", { exact: true }).count();
const chosenCells = (page: Page) =>
  page.locator(".matrix__cell").getByText("chosen", { exact: true }).count();

async function search(page: Page): Promise<void> {
  await press(page, "Start the search");
  await headline(page).waitFor();
}

describe("the mix search on the demo", () => {
  const size = { width: 1440, height: 1000 };

  it("serves all twelve garments, proven the cheapest, in fewer mixes than garments", async () => {
    const page = await openSearch(size);
    await search(page);
    const words = (await headline(page).textContent()) ?? "";
    expect(words).toMatch(/^\d+ mixes through \d set-ups? serves? 12 of 12 garments$/);
    expect(Number.parseInt(words, 10)).toBeLessThan(12);
    expect(await panel(page).getByText("Nothing can be cheaper under these rules.").count()).toBe(1);
    expect(
      await panel(page)
        .getByRole("button", { name: /^Use this for / })
        .count(),
    ).toBe(11);
    // What the customer approved is chosen as it was approved: no search has a say in that.
    expect(
      await panel(page)
        .getByText(/^1 unchanged: .*Forest/)
        .count(),
    ).toBe(1);
    // The matrix stays in sight beneath.
    expect(await page.locator(".matrix__cell .number").first().isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(size.height);
    expect(await violations(page)).toEqual([]);
    await planner?.screenshot("find-mixes-1440");
    expect(planner?.consoleMessages).toEqual([]);
    expect(planner?.foreignRequests).toEqual([]);
  });

  it("chooses nothing until it is used, is undone in one step, used again, and kept over a reload", async () => {
    const page = await openSearch(size);
    await search(page);
    const before = await chosenCells(page);
    expect(await inUse(page)).toBe(0);
    await press(page, "Use this proposal");
    await expect.poll(() => inUse(page)).toBe(11);
    await press(page, "Undo this");
    await expect.poll(() => inUse(page)).toBe(0);
    expect(await chosenCells(page)).toBe(before);
    expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
    await press(page, "Use this proposal");
    await expect.poll(() => inUse(page)).toBe(11);
    const columns = await page.getByRole("slider").count();
    await page
      .getByRole("status", { name: "Saving" })
      .filter({ hasText: /^saved$/ })
      .waitFor();
    await page.reload({ waitUntil: "networkidle" });
    await page.locator(".cell .number").first().waitFor();
    expect(await page.getByRole("slider").count()).toBe(columns);
    // Searched anew, there is nothing left to change.
    await page.getByRole("button", { name: "Find mixes" }).click();
    await search(page);
    expect(
      await panel(page)
        .getByRole("button", { name: /^Use this for / })
        .count(),
    ).toBe(0);
    expect(await panel(page).getByText("All that is proposed is chosen.").count()).toBe(1);
  });

  it("is stopped, and searches again under other rules", async () => {
    const page = await openSearch(size);
    await press(page, "Start the search");
    await press(page, "Stop the search");
    expect(await panel(page).getByText("Stopped. Nothing was changed.").count()).toBe(1);
    const most = panel(page).getByRole("textbox", { name: "At most … mixes" });
    await most.fill("3");
    await most.press("Enter");
    await press(page, "Search again");
    await headline(page).waitFor();
    expect(await headline(page).textContent()).toMatch(/^[1-3] mix/);
    await panel(page).getByRole("checkbox", { name: "Only what is in stock" }).check();
    expect(
      await panel(page)
        .getByText(/Changed since: the rules\./)
        .count(),
    ).toBe(1);
    expect(await panel(page).getByRole("button", { name: "Use this proposal" }).count()).toBe(0);
    expect(await violations(page)).toEqual([]);
  });
});

describe("the mix search on small screens", () => {
  it.each([
    { width: 1024, height: 768 },
    { width: 390, height: 844 },
  ])("fits $width px and is clean to axe in the dark theme too", async (size) => {
    const page = await openSearch(size);
    await search(page);
    expect(await widthOf(page)).toBe(size.width);
    expect(await violations(page)).toEqual([]);
    await page.getByRole("combobox", { name: "Theme" }).selectOption("dark");
    expect(await violations(page)).toEqual([]);
    await planner?.screenshot(`find-mixes-${size.width}`);
  });
});
