/**
 * Which test prints are worth making, on the demo job in a real browser: the substituted lot comes first, a record renews
 * the plan, verdicts before the run follow it; widths, themes, targets, axe, and the list on paper.
 */
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import type { OpenedPlanner, WindowSize } from "./launch.ts";
import { tooSmall, violations, widthOf } from "./pageChecks.ts";
import { largestChroma, pageCount } from "./paper.ts";
import { keep, MILL_B, MILL_B_PAIRS, openTests, typePairs } from "./testsDesk.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

async function opened(size?: WindowSize): Promise<Page> {
  planner = await openTests(size);
  await planner.page.getByRole("table", { name: /^Test prints worth making/ }).waitFor();
  return planner.page;
}

/** The ranked tests as they read, the best first. */
async function ranked(page: Page): Promise<{ name: string; removes: number; settled: number }[]> {
  const rows = page
    .getByRole("row")
    .filter({ has: page.getByRole("button", { name: /^Record this print/ }) });
  const texts = await rows.allInnerTexts();
  return texts.map((text) => {
    const [, name = ""] = /^\d+\.\s*(.+)$/m.exec(text.replace(/^(\d+\.)\s+/, "$1 ")) ?? [];
    const [, removes = ""] = /([\d,.]+)\sEUR\s*the test/.exec(text) ?? [];
    const [, settled = ""] = /the test\s[\d.,]+\sEUR\s*(\d+)\s%/.exec(text) ?? [];
    return { name: name.trim(), removes: Number(removes.replace(",", "")), settled: Number(settled) };
  });
}

describe("test prints worth making", () => {
  it("names the substituted forest first, and what skipping it costs", async () => {
    const page = await opened();
    const tests = await ranked(page);
    expect(tests[0]?.name).toMatch(/^Forest \(Mill B\)/);
    expect(tests[0]?.removes).toBeGreaterThan(500);
    expect(tests.at(-1)?.settled).toBeGreaterThan(80);
    for (const [index, { settled, removes }] of tests.entries()) {
      expect(settled).toBeGreaterThanOrEqual(tests[index - 1]?.settled ?? 0);
      // The test costs 25.
      expect(removes).toBeGreaterThan(25);
    }
    await page.getByRole("heading", { name: /^Print these 3 first: Forest \(Mill B\), / }).waitFor();
    await page.getByText(/^Next would be .*: not worth its price\.$/).waitFor();
    const stays = page.getByRole("region", { name: "What no test can take away" });
    await stays.getByRole("listitem").filter({ hasText: "Navy (Mill A)" }).first().waitFor();
    expect(planner?.consoleMessages).toEqual([]);
    expect(planner?.foreignRequests).toEqual([]);
  });

  it("opens the bench form of the first; once recorded, the plan is renewed and it is no longer first", async () => {
    const page = await opened();
    const before = await ranked(page);
    await page.getByRole("button", { name: /^Record this print: Forest \(Mill B\), Curable clear$/ }).click();
    const lot = page.getByLabel("Garment lot");
    expect(await lot.evaluate((one: HTMLSelectElement) => one.selectedOptions[0]?.label)).toBe(MILL_B);
    await typePairs(page, MILL_B_PAIRS);
    await keep(page);
    await page.getByRole("button", { name: "See which test is worth making next" }).click();
    await page.getByRole("table", { name: /^Test prints worth making/ }).waitFor();
    await page.locator(".worth[aria-busy=false]").waitFor();
    const after = await ranked(page);
    expect(after[0]?.name).not.toMatch(/^Forest \(Mill B\)/);
    expect(after[0]!.removes).toBeLessThan(before[0]!.removes);
  });

  it("is planned anew when a price is changed where it is shown, and undo takes that back", async () => {
    const page = await opened();
    const before = await ranked(page);
    await page.getByText("What the money rests on").click();
    await page.getByLabel("Price of a test print").fill("200");
    await page.keyboard.press("Tab");
    await expect.poll(async () => (await ranked(page)).length).toBeLessThan(before.length);
    for (const { removes } of await ranked(page)) expect(removes).toBeGreaterThan(200);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => ranked(page)).toEqual(before);
  });

  it("tells before the run which garment to test, and which runs on evidence", async () => {
    const page = await opened();
    await page.getByRole("link", { name: "Before the run" }).click();
    const rowOf = (name: string) =>
      page.getByRole("row").filter({ has: page.getByRole("button", { name, exact: true }) });
    await rowOf("Blend crew tee, Forest, Mill A, Front")
      .getByText(/^Run on evidence: over 99\s% in band, expected loss 0\sEUR$/)
      .waitFor();
    await rowOf("Blend crew tee, Forest, Mill B, Front")
      .getByText(
        /^Choose a mix: the best in the matrix has \d\d\s% in band; skipping its test costs \d{3}\sEUR$/,
      )
      .waitFor();
    await rowOf("Ring-spun tee, Navy, Mill A, Front")
      .getByText(/^Find a mix: /)
      .waitFor();
    await page.getByRole("button", { name: "Blend crew tee, Forest, Mill B, Front" }).click();
    await page.getByRole("link", { name: "See the test plan" }).click();
    await page.getByRole("tab", { name: "Worth making", selected: true }).waitFor();
  });

  it.each([1440, 1024, 390])("fits %i px, and axe finds nothing", async (width) => {
    const page = await opened({ width, height: 900 });
    await page.getByText("Spare pieces and prices of the garments").click();
    await page.getByLabel("Spare pieces of Blend crew tee, Forest, Mill B, spare pieces").waitFor();
    expect(await violations(page)).toEqual([]);
    expect(await widthOf(page)).toBeLessThanOrEqual(width);
    const small = await tooSmall(page.locator(".worth").locator("button, select, input, summary, a"));
    expect(small).toEqual([]);
    await planner?.screenshot(`worth-${width}`);
  });

  it("prints as a list to be ticked on two A4 pages, in greys alone", async () => {
    const page = await opened();
    expect(await pageCount(page)).toBeLessThanOrEqual(2);
    expect(await largestChroma(page)).toBe(0);
  });
});
