/**
 * The Tests view in a real browser, on the demo job: the substituted forest garment before and after its test print, in
 * the matrix and on the checklist; the brick that went on darkening; a reference that the target follows; a correction.
 */
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import type { OpenedPlanner, WindowSize } from "./launch.ts";
import { cellOf, keep, MILL_B, MILL_B_PAIRS, openTests, startForm, typePairs } from "./testsDesk.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

/** The page of the planner that is closed after the test. */
async function opened(size?: WindowSize): Promise<Page> {
  planner = await openTests(size);
  return planner.page;
}

/** What the checklist asks of the substituted garment. */
async function checklist(page: Page): Promise<string> {
  await page.getByRole("link", { name: "Before the run" }).click();
  await page
    .getByRole("button", { name: /Forest, Mill B.*Front/ })
    .first()
    .click();
  const pane = page.getByRole("region", { name: "Checklist of the garment" });
  await pane
    .getByText(/Test print|Target agreed/)
    .first()
    .waitFor();
  return (await pane.allInnerTexts()).join(" ").replace(/\s+/g, " ");
}

describe("the substituted forest garment", () => {
  it("is known from related prints within a wide range, and 2.6 times as dark as the approved one after its test print", async () => {
    const page = await opened();
    const approved = await cellOf(page, "Mill A");
    expect(approved.evidence).toBe("this lot");
    const before = await cellOf(page, "Mill B");
    expect(before.evidence).toBe("related prints");
    expect(before.strong / before.weak).toBeGreaterThan(3);
    await before.cell.focus();
    await page.keyboard.press("Enter");
    await page.getByText(/Of what test prints taught here, most comes from/).waitFor();
    const asked = await checklist(page);
    expect(asked).toContain("never printed in this lot");

    await page.getByRole("link", { name: "Tests", exact: true }).click();
    await startForm(page, MILL_B);
    await typePairs(page, MILL_B_PAIRS);
    const says = page.getByRole("region", { name: "What the reading says" });
    await says.getByText("8.0 darker").waitFor();
    await says.getByText(/times the change/).waitFor();
    await planner?.screenshot("tests-bench-1440");
    await keep(page);

    await expect.poll(async () => (await cellOf(page, "Mill B")).evidence).toBe("this lot");
    const known = await cellOf(page, "Mill B");
    const { darker } = await cellOf(page, "Mill A");
    expect(Math.abs(known.darker / darker - 2.6)).toBeLessThanOrEqual(0.2);
    expect(known.strong / known.weak).toBeLessThan(before.strong / before.weak / 2);
    const now = await checklist(page);
    expect(now).not.toContain("never printed in this lot");
    expect(now).toMatch(/Predicted 7\.\d darker; the target is 3\.1 darker/);
    expect(planner?.consoleMessages).toEqual([]);
    expect(planner?.foreignRequests).toEqual([]);
  });
});

describe("the record book", () => {
  it("shows that the brick polyester went on darkening, 0.9 in 72 hours", async () => {
    const page = await opened();
    await page.getByRole("tab", { name: "Record book" }).click();
    await page.getByLabel("Search by garment, ink, screen, person, day, note").fill("brick");
    await page.getByText("3 of 5 records.").waitFor();
    await page.getByRole("button", { name: /Brick/ }).last().click();
    const pane = page.getByRole("region", { name: "The record opened" });
    await pane.getByText("The same print, read 3 times").waitFor();
    await pane.getByText(/It went on darkening: .*−0\.9\sL\* in 72\sh\./).waitFor();
    expect(await pane.getByRole("img", { name: /Change against hours since printing/ }).count()).toBe(1);
  });

  it("keeps a print as the reference of its lot, with what was said then; the target follows it", async () => {
    const page = await opened();
    await startForm(page, MILL_B);
    await typePairs(page, MILL_B_PAIRS);
    await keep(page);
    await page.getByRole("button", { name: "Open it in the record book" }).click();
    const pane = page.getByRole("region", { name: "The record opened" });
    await pane.getByText("8.0 darker").waitFor();
    await pane.getByLabel("Approved by").fill("Buyer");
    await page.keyboard.press("Tab");
    await pane.getByRole("button", { name: "Keep as the approved reference" }).click();
    await pane.getByText(/^Approved by Buyer/).waitFor();
    await pane.getByText(/follows it: 8\.0 darker ± 1\.5\./).waitFor();
    const then = pane.getByRole("definition").filter({ hasText: "model version" });
    expect(await then.first().textContent()).toMatch(/^3\.3 darker, .* related prints, model version \d\.$/);
    expect(await then.last().textContent()).toMatch(/^7\.\d darker, .* this lot, model version \d\.$/);
    const { cell } = await cellOf(page, "Mill B");
    await cell.focus();
    await page.getByText(/in band, 8\.0 darker ± 1\.5/).waitFor();
  });

  it("corrects a record by a new one, and the old one stays to be seen", async () => {
    const page = await opened();
    await page.getByRole("tab", { name: "Record book" }).click();
    await page.getByRole("button", { name: /Denim/ }).click();
    await page.getByRole("button", { name: "Correct it" }).click();
    expect(await page.getByLabel("L* print of pair 1", { exact: true }).inputValue()).not.toBe("");
    await page.getByLabel("Note").fill("The lot was read on the wrong pile.");
    await page.getByRole("button", { name: "Keep this record" }).click();
    await page.getByRole("tab", { name: "Record book" }).click();
    await page.getByText("5 of 6 records.").waitFor();
    await page.getByLabel("Corrected records too").check();
    await page.getByText("corrected by a later record").waitFor();
  });
});
