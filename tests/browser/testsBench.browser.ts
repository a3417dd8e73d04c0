/**
 * The bench form in a real browser: readings from a file, by eye, a swapped pair that is set aside; targets for a finger;
 * every part of the Tests view at three widths and in both themes under axe.
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, describe, expect, it } from "vitest";
import type { OpenedPlanner, WindowSize } from "./launch.ts";
import { tooSmall, violations, widthOf } from "./pageChecks.ts";
import { cellOf, FIELDS, keep, MILL_B, MILL_B_PAIRS, openTests, startForm, typePairs } from "./testsDesk.ts";

const TABS = [
  "Worth making",
  "Record a print",
  "Record book",
  "Garments",
  "What was learned",
  "Suspicious",
  "Goods-in checks",
];

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

/** As an instrument writes it, without a word on light, observer or geometry. */
const SILENT_FILE = `CGATS.17
NUMBER_OF_FIELDS\t4
BEGIN_DATA_FORMAT
SAMPLE_NAME\tLAB_L\tLAB_A\tLAB_B
END_DATA_FORMAT
NUMBER_OF_SETS\t${MILL_B_PAIRS.length * 2}
BEGIN_DATA
${MILL_B_PAIRS.map(([L, a, b, pL, pa, pb], i) => `bare ${i + 1}\t${L}\t${a}\t${b}\nprint ${i + 1}\t${pL}\t${pa}\t${pb}`).join("\n")}
END_DATA
`;

describe("the bench form", () => {
  it("asks what a readings file does not say, and takes its pairs once they are confirmed", async () => {
    const page = await opened();
    await startForm(page, MILL_B);
    await page.getByLabel("From a file").check();
    await page.getByLabel(/^Colour-measurement file/).setInputFiles({
      name: "millB.txt",
      mimeType: "text/plain",
      buffer: Buffer.from(SILENT_FILE),
    });
    await page.getByText("5 pairs proposed from the names: check them.").waitFor();
    const use = page.getByRole("button", { name: "Use these readings" });
    expect(await use.isDisabled()).toBe(true);
    await page.getByLabel("Light of these readings").selectOption("D65");
    await page.getByLabel("Observer of these readings").selectOption("10deg");
    await page.getByLabel("Geometry of these readings").selectOption("45:0");
    await expect.poll(() => use.isDisabled()).toBe(false);
    await use.click();
    await page.getByRole("region", { name: "What the reading says" }).getByText("8.0 darker").waitFor();
    await keep(page);
  });

  it("is filled in by keyboard alone, focus never lost, and keeps a photo that is not measured from", async () => {
    const page = await opened();
    await page.getByRole("tab", { name: "Worth making" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    const focused = () =>
      page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent);
    expect(await focused()).toBe("Garment lot");
    const until = async (label: string) => {
      for (let presses = 0; presses < 30 && (await focused()) !== label; presses++)
        await page.keyboard.press("Tab");
      expect(await focused()).toBe(label);
    };
    await page.keyboard.type("Blend crew tee, Forest, Mill B");
    await until("Mix");
    await page.keyboard.type("Curable clear");
    await until("L* bare of pair 1");
    for (const value of MILL_B_PAIRS[0] ?? []) {
      await page.keyboard.type(String(value));
      await page.keyboard.press("Tab");
    }
    await page.getByRole("region", { name: "What the reading says" }).getByText("8.0 darker").waitFor();
    await page.getByRole("button", { name: "Printed now" }).press("Enter");
    await page.getByRole("button", { name: "Read now" }).press("Space");
    const picture = await page.screenshot();
    await page
      .getByLabel("Photo, if you like")
      .setInputFiles({ name: "press.png", mimeType: "image/png", buffer: picture });
    await page.getByText("press.png, not for measurement").waitFor();
    await page.getByRole("button", { name: "Keep this record" }).press("Enter");
    expect(await page.locator(":focus").textContent()).toBe("Record a test print");
    await page.getByRole("button", { name: "Open it in the record book" }).press("Enter");
    const pane = page.getByRole("region", { name: "The record opened" });
    expect(await pane.getByRole("img", { name: "The print, as photographed: press.png" }).isVisible()).toBe(
      true,
    );
    expect(await page.locator(":focus").textContent()).toBe("Blend crew tee, Forest, Mill B, lot BC-7708");
    await pane.getByRole("button", { name: "Close" }).press("Enter");
    expect(await page.locator(":focus").textContent()).toContain("Mill B");
  });

  it("has what was typed again after a reload", async () => {
    const page = await opened();
    await startForm(page, MILL_B);
    await typePairs(page, MILL_B_PAIRS.slice(0, 2));
    await page.reload({ waitUntil: "networkidle" });
    await page.getByRole("region", { name: "What the reading says" }).getByText("8.1 darker").waitFor();
    await page.getByRole("button", { name: "Throw this form away" }).click();
    await page.reload({ waitUntil: "networkidle" });
    await page.getByRole("button", { name: "Record a test print" }).waitFor();
  });

  it("takes a print judged by eye", async () => {
    const page = await opened();
    await startForm(page, MILL_B);
    await page.getByLabel("By eye").check();
    await page.getByRole("radio", { name: "1-2", exact: true }).check();
    await page.getByRole("radio", { name: "darker" }).check();
    const says = page.getByRole("region", { name: "What the reading says" });
    await says.getByText("grade 1-2, darker").waitFor();
    await says.getByText(/the middle of what is expected is grade/).waitFor();
    await keep(page);
    await expect.poll(async () => (await cellOf(page, "Mill B")).evidence).toBe("this lot");
  });

  it("has targets of 44 px or more on a tablet", async () => {
    const page = await opened({ width: 1024, height: 800 });
    await startForm(page, MILL_B);
    const small = await tooSmall(
      page
        .locator(".tests__bench")
        .locator("button, select, input:not([type=radio]):not([type=checkbox]), label:has(> input), summary"),
    );
    expect(small).toEqual([]);
  });

  it("says that a print is lighter than its cloth, sets the swapped pair aside, and counts its correction", async () => {
    const demo = JSON.parse(readFileSync("demo-data/verrowmoor-vm-217.tonebench.json", "utf8"));
    const approved = demo.library.testPrints.find((one: { verdict: string }) => one.verdict === "reference");
    const right = approved.readings.pairs
      .slice(0, 3)
      .map(({ bare, print }: Record<"bare" | "print", { L: number; a: number; b: number }>) => [
        ...[bare.L, bare.a, bare.b],
        ...[print.L, print.a, print.b],
      ]);
    const swapped = right.map((pair: number[]) => [...pair.slice(3), ...pair.slice(0, 3)]);
    const page = await opened();
    await startForm(page, "Blend crew tee, Forest, Mill A, lot BC-2231");
    await typePairs(page, swapped);
    const says = page.getByRole("region", { name: "What the reading says" });
    await says.getByText(/lighter than the bare cloth/).waitFor();
    await says.getByText(/the other way round it would fit/).waitFor();
    await keep(page);
    await page.getByText("One record looks wrong and is set aside until somebody answers.").waitFor();
    await page.getByRole("button", { name: "See what looks wrong" }).click();
    await page.getByText(/it teaches nothing, and is still here/).waitFor();
    await page.getByRole("button", { name: "Correct it" }).click();
    for (const [index, values] of right.entries()) {
      for (const [field, value] of values.entries())
        await page.getByLabel(`${FIELDS[field]} of pair ${index + 1}`, { exact: true }).fill(String(value));
    }
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Keep this record" }).click();
    await page.getByText("4 prints teach").waitFor();
    await page.getByRole("tab", { name: "Suspicious" }).click();
    await page.getByText("No record stands out.").waitFor();
  });
});

describe("every part of the view", () => {
  it.each([1440, 1024, 390])("fits %i px, and axe finds nothing", async (width) => {
    const page = await opened({ width, height: 900 });
    await startForm(page, MILL_B);
    await typePairs(page, MILL_B_PAIRS.slice(0, 1));
    for (const tab of TABS) {
      await page.getByRole("tab", { name: tab, exact: true }).click();
      if (tab === "Worth making") await page.getByText(/^Print these 3 first/).waitFor();
      if (tab === "Record book") await page.getByRole("button", { name: /Brick/ }).first().click();
      if (tab === "Garments") await page.getByRole("img", { name: /before and after/ }).waitFor();
      expect(await violations(page), tab).toEqual([]);
      expect(await widthOf(page), tab).toBeLessThanOrEqual(width);
      await planner?.screenshot(`tests-${tab.toLowerCase().replaceAll(" ", "-")}-${width}`);
    }
  });

  it("has nothing that axe objects to in the dark theme either", async () => {
    const page = await opened();
    await page.emulateMedia({ colorScheme: "dark" });
    await startForm(page, MILL_B);
    for (const tab of TABS) {
      await page.getByRole("tab", { name: tab, exact: true }).click();
      expect(await violations(page), tab).toEqual([]);
    }
  });
});
