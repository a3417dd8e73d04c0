/** Everything the planner stores or opens, in one object: what main.tsx hands to the planner. */
import { openArchive, saveFile } from "./files.ts";
import { askToPersist } from "./persistence.ts";
import { connect, type TonebenchDatabase, tonebenchDatabase } from "./tonebenchDatabase.ts";

export type BrowserStorage = Pick<
  TonebenchDatabase,
  "loadLibrary" | "loadJob" | "loadJobs" | "listJobs" | "save" | "deleteJob" | "lastJobId" | "setLastJobId"
> & {
  askToPersist(): Promise<boolean>;
  openArchive: typeof openArchive;
  saveFile: typeof saveFile;
};

/** Opens the browser's database. Rejects where the browser has none, as in some private windows. */
export async function openBrowserStorage(): Promise<BrowserStorage> {
  const database = tonebenchDatabase(await connect());
  return {
    ...database,
    askToPersist: () => askToPersist(database, globalThis.navigator?.storage),
    openArchive,
    saveFile,
  };
}
