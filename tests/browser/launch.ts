/**
 * Opens the built planner in a real Chromium, and watches for what no page of ours may do: say anything on the
 * console, fail, or ask another host for something.
 */
import { existsSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { builtFolder } from "../../scripts/build.mjs";
import { findChromium } from "../../scripts/chromium.mjs";
import { serve } from "../../scripts/serve.mjs";

export const screenshotFolder = join(dirname(fileURLToPath(import.meta.url)), "screenshots");

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

export interface OpenedPlanner {
  readonly page: Page;
  /** Holds the storage: a second page made from it sees the same saved jobs. */
  readonly context: BrowserContext;
  /** Where the planner is served; ends in a slash. */
  readonly url: string;
  /** Everything said on the console and every uncaught error, of the page and its workers, as "type: text". */
  readonly consoleMessages: readonly string[];
  /** Addresses asked for at any other origin. */
  readonly foreignRequests: readonly string[];
  /** Writes screenshots/NAME.png and gives its path. */
  screenshot(name: string): Promise<string>;
  /** Ends the server alone: from here on there is no network for the page. */
  stopServing(): Promise<void>;
  close(): Promise<void>;
}

/** A Chromium without a window; the caller closes it. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error("no Chromium: run `node scripts/chromium.mjs`");
  return chromium.launch({
    executablePath,
    chromiumSandbox: false,
    args: [
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** The planner as dist/ has it, in a fresh browser profile at a port of its own. Close it when done. */
export async function openPlanner(size: WindowSize): Promise<OpenedPlanner> {
  if (!existsSync(join(builtFolder, "index.html")))
    throw new Error("dist/ is not built: run `npm run build`");
  return openFolder(builtFolder, size);
}

/** As openPlanner, for any built folder. */
export async function openFolder(folder: string, size: WindowSize): Promise<OpenedPlanner> {
  const server = await serve({ folder, port: 0 });
  const browser = await launchBrowser().catch(async (error: unknown) => {
    await server.close();
    throw error;
  });
  let isServing = true;
  const stopServing = async () => {
    if (isServing) await server.close();
    isServing = false;
  };
  const close = async () => {
    await browser.close();
    await stopServing();
  };
  try {
    const context = await browser.newContext({ viewport: size, locale: "en-GB", timezoneId: "UTC" });
    const watched = watch(context, new URL(server.url).origin);
    const page = await context.newPage();
    await page.goto(server.url, { waitUntil: "networkidle" });
    const screenshot = async (name: string) => {
      mkdirSync(screenshotFolder, { recursive: true });
      const path = join(screenshotFolder, `${name}.png`);
      await page.screenshot({ path });
      return path;
    };
    return { page, context, url: server.url, ...watched, screenshot, stopServing, close };
  } catch (error) {
    await close();
    throw error;
  }
}

function watch(context: BrowserContext, origin: string) {
  const consoleMessages: string[] = [];
  const foreignRequests: string[] = [];
  context.on("console", (message) => consoleMessages.push(`${message.type()}: ${message.text()}`));
  context.on("weberror", (webError) => consoleMessages.push(`uncaught: ${webError.error().message}`));
  context.on("request", (request) => {
    const address = new URL(request.url());
    // Both are made inside the page and reach no network.
    if (address.protocol === "data:" || address.protocol === "blob:") return;
    if (address.origin !== origin) foreignRequests.push(request.url());
  });
  return { consoleMessages, foreignRequests };
}
