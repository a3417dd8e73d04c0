/** The garments in a real browser: axe, one sheet of paper in black and white, and cloth told in a wide gamut. */
import type { Page } from "playwright-core";
import { afterEach, expect, it } from "vitest";
import { type OpenedPlanner, openPlanner, type WindowSize } from "./launch.ts";
import { violations, widthOf } from "./pageChecks.ts";

let planner: OpenedPlanner | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
});

async function openGarments(size: WindowSize): Promise<Page> {
  planner = await openPlanner(size);
  const { page } = planner;
  await page.getByRole("link", { name: "Garments" }).click();
  await page.getByRole("table").waitFor();
  return page;
}

/** Sheets of a PDF: its page objects. */
const sheetCount = (pdf: Buffer) => (pdf.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? []).length;

/** Tones that a cloth's canvas is painted in, and what its channels stand for. */
const clothOf = (page: Page, row: number) =>
  page
    .locator(".cloth canvas")
    .nth(row)
    .evaluate((canvas: HTMLCanvasElement) => {
      const context = canvas.getContext("2d");
      const { data, colorSpace } = context?.getImageData(0, 0, canvas.width, canvas.height) ?? {};
      const tones = new Set<number>();
      for (let at = 0; at < (data?.length ?? 0); at += 4) {
        if (data?.[at + 3] === 255)
          tones.add(((data[at] ?? 0) << 16) | ((data[at + 1] ?? 0) << 8) | (data[at + 2] ?? 0));
      }
      const attributes = context?.getContextAttributes();
      return { toneCount: tones.size, colorSpace: attributes?.colorSpace ?? colorSpace };
    });

it.each([
  { width: 1440, height: 1000 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
])("is drawn as knit and has no violation at $width px", async (size) => {
  const page = await openGarments(size);
  // Before the cloth is read back, which the browser remarks on.
  expect(planner?.consoleMessages).toEqual([]);
  await expect.poll(async () => (await clothOf(page, 0)).toneCount).toBeGreaterThan(20);
  expect((await clothOf(page, 0)).colorSpace).toBe("srgb");
  expect(await violations(page)).toEqual([]);
  expect(await widthOf(page)).toBe(size.width);
  await planner?.screenshot(`garments-${size.width}`);
});

it("prints the demo's garments on one sheet, A4 or letter, upright or not, as text without a picture", async () => {
  const page = await openGarments({ width: 1440, height: 1000 });
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ format });
    expect(sheetCount(pdf), format).toBe(1);
    expect(pdf.toString("latin1"), format).not.toMatch(/\/Subtype\s*\/Image/);
  }
  // Back from the printer the view is the screen's again.
  await page.locator(".cloth canvas").first().waitFor();
});

it("tells a wide screen Display P3, and sRGB again where the window is moved to another", async () => {
  const page = await openGarments({ width: 1440, height: 1000 });
  const session = await page.context().newCDPSession(page);
  const emulate = (value: string) =>
    session.send("Emulation.setEmulatedMedia", { features: [{ name: "color-gamut", value }] });
  await emulate("p3");
  await expect.poll(async () => (await clothOf(page, 7)).colorSpace).toBe("display-p3");
  await expect.poll(async () => (await clothOf(page, 7)).toneCount).toBeGreaterThan(20);
  await emulate("srgb");
  await expect.poll(async () => (await clothOf(page, 7)).colorSpace).toBe("srgb");
});
