/** Asks the browser to keep the page's own files, so that the planner opens without a network; see scripts/offline.mjs. */

/** Written beside the page by the build. */
const WORKER = "./offline.js";

/**
 * Registers the worker once the page is up. A browser that refuses it, as in a private window, goes without.
 * @param container the browser's service workers; undefined where it has none
 */
export async function keepForOffline(
  container: Pick<ServiceWorkerContainer, "register"> | undefined,
): Promise<boolean> {
  if (container === undefined) return false;
  try {
    await container.register(WORKER);
    return true;
  } catch {
    return false;
  }
}
