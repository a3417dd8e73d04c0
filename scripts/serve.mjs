// Serves a built folder to this machine alone: the server behind `npm start` and the browser tests.
import { createReadStream } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, sep } from "node:path";
import { pipeline } from "node:stream";

const LOOPBACK = "127.0.0.1";
const LAST_PORT = 65535;

/** @type {Record<string, string>} */
const contentTypes = {
  ".css": "text/css; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".ico": "image/x-icon",
  ".jpg": "image/jpeg",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".pdf": "application/pdf",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".webp": "image/webp",
  ".woff2": "font/woff2",
};

/**
 * Serves `folder` at `port` (0: any free one) or, where that is taken, at the next free port.
 * @param {{ folder: string, port: number }} options
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>}
 */
export async function serve({ folder, port }) {
  const root = await realpath(folder);
  const server = createServer((request, response) => {
    answer(root, request, response).catch(() => {
      if (!response.headersSent) sendText(response, 500, "The server failed.");
    });
  });
  const ownPort = await listen(server, port);
  return {
    url: `http://${LOOPBACK}:${ownPort}/`,
    port: ownPort,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/**
 * @param {import("node:http").Server} server
 * @param {number} port
 * @returns {Promise<number>}
 */
function listen(server, port) {
  return new Promise((resolve, reject) => {
    /** @param {NodeJS.ErrnoException} error */
    const refused = (error) => {
      if (error.code !== "EADDRINUSE" || port >= LAST_PORT) reject(error);
      else listen(server, port + 1).then(resolve, reject);
    };
    server.once("error", refused);
    server.listen(port, LOOPBACK, () => {
      server.off("error", refused);
      const address = server.address();
      resolve(address !== null && typeof address === "object" ? address.port : port);
    });
  });
}

/**
 * @param {string} root
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 */
async function answer(root, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.setHeader("Allow", "GET, HEAD");
    return sendText(response, 405, "Only GET and HEAD are answered.");
  }
  const file = await fileFor(root, request.url ?? "/");
  if (file === undefined) return sendText(response, 404, "No such file.");
  response.writeHead(200, {
    "Content-Type": contentTypes[extname(file.path)] ?? "application/octet-stream",
    "Content-Length": file.byteCount,
    "Cache-Control": "no-cache",
    "X-Content-Type-Options": "nosniff",
  });
  if (request.method === "HEAD") response.end();
  // A reader that leaves midway is no fault of ours: pipeline closes the file, and there is nobody left to tell.
  else pipeline(createReadStream(file.path), response, () => {});
}

/**
 * The file that an address names, or nothing where it names none inside `root`, links followed.
 * @param {string} root
 * @param {string} address
 */
async function fileFor(root, address) {
  try {
    const path = decodeURIComponent(address.split(/[?#]/)[0] ?? "/");
    if (path.includes("\0")) return undefined;
    let real = await realpath(join(root, path));
    if ((await stat(real)).isDirectory()) real = await realpath(join(real, "index.html"));
    if (!real.startsWith(root + sep)) return undefined;
    const found = await stat(real);
    return found.isFile() ? { path: real, byteCount: found.size } : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {import("node:http").ServerResponse} response
 * @param {number} status
 * @param {string} sentence
 */
function sendText(response, status, sentence) {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8" });
  response.end(`${sentence}\n`);
}
