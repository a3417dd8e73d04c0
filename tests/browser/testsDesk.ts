/** What the browser tests of the Tests view do alike: open it on the demo job, fill in the bench form, look at the matrix. */
import type { Page } from "playwright-core";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";

export const WIDE = { width: 1440, height: 1000 };
export const MILL_B = "Blend crew tee, Forest, Mill B, lot BC-7708";

/**
 * Readings of the substituted garment: the demo's predictor with its stated true surprise (0.82) and its noise, as
 * scripts/demo/records.ts makes them with order 99; bare, then print.
 */
export const MILL_B_PAIRS = [
  [30.96, -14.63, 6.93, 22.93, -12.67, 6.05],
  [30.93, -14.64, 6.91, 22.81, -12.7, 6.03],
  [30.98, -14.54, 6.81, 22.95, -12.65, 6.03],
  [30.84, -14.5, 6.85, 22.91, -12.67, 6.19],
  [30.93, -14.51, 6.95, 23.13, -12.67, 6.11],
];
export const FIELDS = ["L* bare", "a* bare", "b* bare", "L* print", "a* print", "b* print"];

/** The planner on the Tests view, once the demo's records have taught. */
export async function openTests(size: WindowSize = WIDE): Promise<OpenedPlanner> {
  const planner = await openPlanner(size);
  await planner.page.getByRole("link", { name: "Tests", exact: true }).click();
  await planner.page.getByText("3 prints teach").waitFor();
  return planner;
}

export async function startForm(page: Page, lot: string): Promise<void> {
  await page.getByRole("tab", { name: "Record a print" }).click();
  await page.getByRole("button", { name: "Record a test print" }).click();
  await page.getByLabel("Garment lot").selectOption({ label: lot });
  await page.getByLabel("Mix", { exact: true }).selectOption({ label: "Curable clear" });
}

export async function typePairs(page: Page, pairs: readonly (readonly number[])[]): Promise<void> {
  for (const [index, values] of pairs.entries()) {
    if (index > 0) await page.getByRole("button", { name: "Add a pair" }).click();
    for (const [field, value] of values.entries())
      await page.getByLabel(`${FIELDS[field]} of pair ${index + 1}`, { exact: true }).fill(String(value));
  }
  await page.keyboard.press("Tab");
}

export async function keep(page: Page, hours = 4): Promise<void> {
  await page.getByLabel("Printed", { exact: true }).fill("2026-02-02T10:00");
  await page.getByLabel("Read", { exact: true }).fill(`2026-02-02T${10 + hours}:00`);
  await page.getByRole("button", { name: "Keep this record" }).click();
  await page.getByText("The record is kept.").waitFor();
}

/** Change, range and evidence of a garment under the first mix of the matrix, which is curable clear alone. */
export async function cellOf(page: Page, mill: string) {
  await page.getByRole("link", { name: "Matrix", exact: true }).click();
  const row = page.getByRole("row").filter({ hasText: "Forest" }).filter({ hasText: mill });
  await row.locator(".cell .number").first().waitFor();
  const cell = row.getByRole("gridcell").first();
  const text = (await cell.allInnerTexts()).join(" ").replace(/\s+/g, " ");
  const [, darker] = /(\d+\.\d) darker/.exec(text) ?? [];
  const [, weak, strong] = /(\d+\.\d) to (\d+\.\d)/.exec(text) ?? [];
  const evidence = /this lot|related prints|model only/.exec(text)?.[0];
  return { cell, darker: Number(darker), weak: Number(weak), strong: Number(strong), evidence };
}
