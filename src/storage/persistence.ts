/** Asks the browser, once, not to clear our database by itself when the disk fills up. */

/** Where the answer is kept: the database's settings. */
export interface AskedOnce {
  setting(key: string): Promise<string | null>;
  setSetting(key: string, value: string): Promise<void>;
}

const ASKED_KEY = "askedToPersist";

/**
 * Whether the storage is persistent. The browser is asked the first time only: some show a question.
 *
 * @param manager the browser's storage manager; undefined where it has none
 */
export async function askToPersist(
  memory: AskedOnce,
  manager: Pick<StorageManager, "persist" | "persisted"> | undefined,
): Promise<boolean> {
  if (manager === undefined) return false;
  if (await manager.persisted()) return true;
  if ((await memory.setting(ASKED_KEY)) !== null) return false;
  const granted = await manager.persist();
  await memory.setSetting(ASKED_KEY, granted ? "granted" : "refused");
  return granted;
}
