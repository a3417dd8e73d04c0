// Keeps the planner's own files on the device, so that it opens without a network. `offline.mjs` writes
// `globalThis.OFFLINE = { version, files }` before this text: one version of the page is one cache, filled as a whole
// or not at all, and nothing of one version is ever served for another but files named by their content.

const { version, files } = /** @type {{ OFFLINE: { version: string, files: string[] } }} */ (
  /** @type {unknown} */ (globalThis)
).OFFLINE;
const worker = /** @type {any} */ (self);

const PREFIX = "tonebench-";
const CACHE = PREFIX + version;
/** A page that was open while a new version came in still finds its own files. */
const KEPT_VERSION_COUNT = 2;

/** The page itself, under every address that stands for it. */
const page = new URL("index.html", worker.location.href).href;

async function fill() {
  const cache = await caches.open(CACHE);
  // Past the browser's own cache: what is kept is what the server has now.
  await cache.addAll(files.map((file) => new Request(file, { cache: "reload" })));
}

async function dropOldVersions() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(names.slice(0, Math.max(0, names.length - (KEPT_VERSION_COUNT - 1))).map(drop));
}

/** @param {string} name */
const drop = (name) => caches.delete(name);

/**
 * The page: from the network where there is one, so that a new version is seen at once; else as it was kept.
 * @param {Request} request
 */
async function pageFrom(request) {
  try {
    const answer = await fetch(request);
    if (answer.ok) return answer;
  } catch {
    // No network: the kept page.
  }
  return (await (await caches.open(CACHE)).match(page)) ?? Response.error();
}

/**
 * A file: of this version first. A page of the version before that is still open finds its own by their names, which
 * hold their content's hash.
 * @param {Request} request
 */
async function fileFrom(request) {
  const own = await (await caches.open(CACHE)).match(request);
  return own ?? (await caches.match(request)) ?? fetch(request);
}

worker.addEventListener("install", (/** @type {any} */ event) => {
  event.waitUntil(fill().then(() => worker.skipWaiting()));
});

worker.addEventListener("activate", (/** @type {any} */ event) => {
  event.waitUntil(dropOldVersions().then(() => worker.clients.claim()));
});

worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== worker.location.origin) return;
  event.respondWith(request.mode === "navigate" ? pageFrom(request) : fileFrom(request));
});
