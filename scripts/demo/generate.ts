/** Makes demo-data/ anew: `npm run demo`. */
import { mkdir, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { archiveText } from "../../src/exchange/jobArchive.ts";
import { demoDocuments } from "./demoDocuments.ts";
import { demoReadme } from "./demoReadme.ts";

export const ARCHIVE_FILE = "verrowmoor-vm-217.tonebench.json";

/** Every file of demo-data/ by name, as text. */
export function demoFiles(): Readonly<Record<string, string>> {
  return { [ARCHIVE_FILE]: archiveText(demoDocuments()), "README.md": demoReadme() };
}

export async function generate(): Promise<void> {
  const folder = new URL("../../demo-data/", import.meta.url);
  await mkdir(folder, { recursive: true });
  for (const [name, text] of Object.entries(demoFiles())) {
    await writeFile(fileURLToPath(new URL(name, folder)), text);
  }
}
