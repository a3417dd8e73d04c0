/** The watch over console and network sees what it is there to see: a planted page does everything forbidden. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type OpenedPlanner, openFolder } from "./launch.ts";

const badPage = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bad</title>
<link rel="icon" href="data:,"></head><body><script>
console.log("a word");
new Worker(URL.createObjectURL(new Blob(["console.warn('from a worker')"])));
fetch("http://127.0.0.1:9/elsewhere").catch(() => {});
setTimeout(() => { throw new Error("planted"); });
</script></body></html>`;

describe("the watch over a page", () => {
  let folder: string;
  let opened: OpenedPlanner;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), "tonebench-page-"));
    writeFileSync(join(folder, "index.html"), badPage);
    opened = await openFolder(folder, { width: 390, height: 800 });
  });
  afterEach(async () => {
    await opened?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("hears the page, its workers and its uncaught errors", () => {
    expect(opened.consoleMessages).toContain("log: a word");
    expect(opened.consoleMessages).toContain("warning: from a worker");
    expect(opened.consoleMessages).toContain("uncaught: planted");
  });

  it("sees a request to another origin, on this machine or not", () => {
    expect(opened.foreignRequests).toEqual(["http://127.0.0.1:9/elsewhere"]);
  });
});
