/** The shelf in a real browser, on the demo's shelf: edits that last, units that change nothing, every tab under axe. */
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";
import { violations, widthOf } from "./pageChecks.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

/** Each tab with an item that is opened in it. */
const TABS = [
  ["Bases", "Curable clear"],
  ["Colourants", "Navy"],
  ["Masters", /Black, 10/],
  ["Meshes", "61-64"],
  ["Squeegees", "70/90/70"],
  ["Set-ups", "61-64, one stroke"],
  ["Defaults", null],
] as const;

async function openShelf(size: WindowSize): Promise<Page> {
  planner = await openPlanner(size);
  await planner.page.getByRole("link", { name: "Shelf" }).click();
  await planner.page.getByRole("tab", { name: "Bases" }).waitFor();
  return planner.page;
}

async function openEach(page: Page, look: (tab: string) => Promise<void>): Promise<void> {
  for (const [tab, item] of TABS) {
    await page.getByRole("tab", { name: tab }).click();
    if (item !== null) {
      await page.getByRole("button", { name: item, exact: true }).first().click();
      await page.getByRole("group", { name: item, exact: true }).first().waitFor();
    }
    await look(tab);
  }
}

describe("the shelf", () => {
  it.each([1440, 1024, 390])("fits %i px in every tab, and axe finds nothing", async (width) => {
    const page = await openShelf({ width, height: 900 });
    await openEach(page, async (tab) => {
      expect(await widthOf(page), tab).toBe(width);
      expect(await violations(page), tab).toEqual([]);
      await planner?.screenshot(`shelf-${width}-${tab.toLowerCase()}`);
    });
    expect(planner?.consoleMessages).toEqual([]);
  });

  it("finds nothing with axe in the dark theme, with a refusal and a new item open", async () => {
    const page = await openShelf({ width: 1440, height: 900 });
    await page.getByLabel("Theme").selectOption("dark");
    await page.getByRole("button", { name: "Curable clear", exact: true }).click();
    await page.getByRole("button", { name: "Remove Curable clear" }).click();
    await page.getByRole("alert").getByText("Curable clear stays: it is in use.").waitFor();
    await page.getByRole("button", { name: "Add a base" }).click();
    expect(await violations(page)).toEqual([]);
  });

  it("keeps an edit and a unit over a reload, and shows the same film in Fahrenheit", async () => {
    const page = await openShelf({ width: 1440, height: 900 });
    await page.getByRole("button", { name: "Matt clear", exact: true }).click();
    const strength = page.getByLabel("Wet-out strength");
    await strength.fill("0.55");
    await strength.press("Enter");
    await page.getByRole("tab", { name: "Defaults" }).click();
    await page.getByLabel("Temperature").selectOption("fahrenheit");
    await page.getByRole("status", { name: "Saving" }).getByText("saved", { exact: true }).waitFor();
    await page.reload({ waitUntil: "networkidle" });
    // The list that stood open is part of the address.
    await page.getByRole("tab", { name: "Defaults", selected: true }).waitFor();
    await page.getByRole("tab", { name: "Bases" }).click();
    await page.getByRole("button", { name: "Matt clear", exact: true }).click();
    expect(await page.getByLabel("Wet-out strength").inputValue()).toBe("0.55");
    expect(await page.getByLabel("Film temperature, °F", { exact: true }).inputValue()).toBe("320");
  });

  it("adds an item with the keyboard alone, from the tab to the name", async () => {
    const page = await openShelf({ width: 1440, height: 900 });
    await page.getByRole("tab", { name: "Bases" }).focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.keyboard.type("Slow clear");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("group", { name: "Slow clear" }).waitFor();
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe("Slow clear");
  });
});
