/** The server of `npm start`: only files of its folder, with the types a browser insists on, to this machine alone. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serve } from "../../scripts/serve.mjs";

interface Reply {
  readonly status: number | undefined;
  readonly type: string | undefined;
  readonly body: string;
}

/** Sends the path as it is: fetch would tidy up the dots first. */
function ask(port: number, path: string, method = "GET"): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: "127.0.0.1", port, path, method }, (response) => {
      let body = "";
      response.setEncoding("utf8");
      response.on("data", (part: string) => {
        body += part;
      });
      response.on("end", () =>
        resolve({ status: response.statusCode, type: response.headers["content-type"], body }),
      );
    });
    asked.on("error", reject);
    asked.end();
  });
}

describe("the server of the built planner", () => {
  const folder = mkdtempSync(join(tmpdir(), "tonebench-serve-"));
  const served = join(folder, "dist");
  let server: Awaited<ReturnType<typeof serve>>;

  beforeAll(async () => {
    mkdirSync(join(served, "assets"), { recursive: true });
    mkdirSync(join(folder, "dist-secret"));
    writeFileSync(join(served, "index.html"), "<p>home</p>");
    for (const name of ["a.js", "a.wasm", "a.json", "a.css", "a b.svg"]) {
      writeFileSync(join(served, "assets", name), name);
    }
    writeFileSync(join(served, "site.webmanifest"), "{}");
    writeFileSync(join(folder, "secret.txt"), "secret");
    writeFileSync(join(folder, "dist-secret", "secret.txt"), "secret");
    symlinkSync(join(folder, "secret.txt"), join(served, "link.txt"));
    server = await serve({ folder: served, port: 0 });
  });
  afterAll(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each([
    ["/", "text/html; charset=utf-8", "<p>home</p>"],
    ["/?x=/../y", "text/html; charset=utf-8", "<p>home</p>"],
    ["/assets/a.js?v=1", "text/javascript; charset=utf-8", "a.js"],
    ["/assets/a.wasm", "application/wasm", "a.wasm"],
    ["/assets/a.json", "application/json; charset=utf-8", "a.json"],
    ["/assets/a.css", "text/css; charset=utf-8", "a.css"],
    ["/assets/a%20b.svg", "image/svg+xml", "a b.svg"],
    ["/site.webmanifest", "application/manifest+json", "{}"],
  ])("serves %s as %s", async (path, type, body) => {
    expect(await ask(server.port, path)).toEqual({ status: 200, type, body });
  });

  it.each([
    "/missing.js",
    "/assets/",
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/assets/../../secret.txt",
    "/../dist-secret/secret.txt",
    "//secret.txt",
    "/link.txt",
    "/%00",
    "/%zz",
  ])("has no file at %s", async (path) => {
    const reply = await ask(server.port, path);
    expect(reply.status).toBe(404);
    expect(reply.body).not.toContain("secret");
  });

  it("answers HEAD without a body, and nothing that writes", async () => {
    expect(await ask(server.port, "/assets/a.js", "HEAD")).toMatchObject({ status: 200, body: "" });
    expect((await ask(server.port, "/", "POST")).status).toBe(405);
  });

  it("takes the next free port where its own is taken", async () => {
    const second = await serve({ folder: served, port: server.port });
    try {
      expect(second.port).toBeGreaterThan(server.port);
      expect((await ask(second.port, "/")).status).toBe(200);
    } finally {
      await second.close();
    }
  });

  it("listens on the loopback address", () => {
    expect(server.url).toBe(`http://127.0.0.1:${server.port}/`);
  });
});
