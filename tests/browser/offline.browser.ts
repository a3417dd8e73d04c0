/** Without a network the planner still opens, as one version; with one, a rebuilt planner is there at the next reload. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterEach, expect, it } from "vitest";
import { builtFolder } from "../../scripts/build.mjs";
import { keptFiles, writeOfflineWorker } from "../../scripts/offline.mjs";
import { type OpenedPlanner, openFolder, openPlanner } from "./launch.ts";

const SIZE = { width: 1440, height: 1000 };

let planner: OpenedPlanner | undefined;
let copy: string | undefined;

afterEach(async () => {
  await planner?.close();
  planner = undefined;
  if (copy !== undefined) rmSync(copy, { recursive: true, force: true });
  copy = undefined;
});

/** Until the worker of the page's present version has kept everything and serves it. */
async function untilKept(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (registration.installing !== null || registration.waiting !== null) {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    while (navigator.serviceWorker.controller === null) {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  });
}

const keptVersions = (page: Page) => page.evaluate(() => caches.keys());

it("opens after a reload without a network, every view of it, the job as it was saved", async () => {
  planner = await openPlanner(SIZE);
  const { page } = planner;
  await page.locator(".cell .number").first().waitFor();
  await untilKept(page);
  await planner.stopServing();
  await expect(page.evaluate(() => fetch("./never-kept.txt"))).rejects.toThrow();
  await page.reload();
  await page.locator(".cell .number").first().waitFor();
  // Views that were never opened with a network are there too.
  for (const name of ["Garments", "Before the run", "Shelf", "Jobs"]) {
    await page.getByRole("link", { name, exact: true }).click();
    await page.getByRole("heading", { level: 2, name: new RegExp(`^${name}`) }).waitFor();
  }
  await page.getByRole("link", { name: "VM-217" }).waitFor();
  expect(planner.foreignRequests).toEqual([]);
});

it("shows a rebuilt planner at the next reload, and keeps that one whole", async () => {
  copy = mkdtempSync(join(tmpdir(), "tonebench-"));
  cpSync(builtFolder, copy, { recursive: true });
  planner = await openFolder(copy, SIZE);
  const { page } = planner;
  await page.locator(".cell .number").first().waitFor();
  await untilKept(page);
  const [first] = await keptVersions(page);

  rebuild(copy, "rebuilt once");
  await page.reload();
  expect(await generation(page)).toBe("rebuilt once");
  await untilKept(page);
  expect(await keptVersions(page)).toHaveLength(2);

  rebuild(copy, "rebuilt twice");
  await page.reload();
  await untilKept(page);
  // The one before stays for a page that is still open; the oldest goes.
  await expect.poll(() => keptVersions(page)).toHaveLength(2);
  expect(await keptVersions(page)).not.toContain(first);

  await planner.stopServing();
  await page.reload();
  expect(await generation(page)).toBe("rebuilt twice");
  await page.locator(".cell .number").first().waitFor();
});

it("keeps the page, its scripts and its demo job, and not the picture of the README", () => {
  const files = keptFiles(builtFolder);
  for (const part of ["index.html", /^assets\/index-.*\.js$/, /Worker.*\.js$/, /tonebench.*\.json$/]) {
    expect(files.some((file) => (typeof part === "string" ? file === part : part.test(file)))).toBe(true);
  }
  expect(files).not.toContain("matrix.png");
  expect(files).not.toContain("offline.js");
});

/** Another page in the place of the first, as a build leaves it: the page's words changed, the worker's version with them. */
function rebuild(folder: string, words: string): void {
  const page = join(folder, "index.html");
  const html = readFileSync(page, "utf8");
  writeFileSync(
    page,
    html.replace(/<html lang="en-GB"[^>]*>/, `<html lang="en-GB" data-generation="${words}">`),
  );
  writeOfflineWorker(folder);
}

const generation = (page: Page) => page.evaluate(() => document.documentElement.dataset.generation);
