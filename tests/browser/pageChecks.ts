/** What every view has to hold in a browser, as lists that are empty where it does: accessibility, width, targets. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Locator, Page } from "playwright-core";

/** What axe finds, with the elements it finds it at. */
export async function violations(page: Page): Promise<string[]> {
  const found = await new AxeBuilder({ page }).analyze();
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(" | ")}`);
}

/** The width that the page takes: more than the window's where something sticks out. */
export const widthOf = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth);

/** Texts of the visible targets among `targets` that are lower than a finger needs: 44 px, less what a browser rounds. */
export const tooSmall = (targets: Locator): Promise<(string | null)[]> =>
  targets.evaluateAll((all) =>
    all
      .filter((one) => one.getBoundingClientRect().height > 0)
      .filter((one) => one.getBoundingClientRect().height < 43.5)
      .map((one) => one.textContent),
  );
