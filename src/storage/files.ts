/** Opens and saves one file through the browser's picker, with the plain upload and download as fallback. */
import { fileOpen, fileSave } from "browser-fs-access";

const ARCHIVE_TYPE = "application/json";
const ARCHIVE_EXTENSION = ".json";

/** Closing the picker without a choice is no failure. */
function isCancel(error: unknown): boolean {
  return error instanceof DOMException && error.name === "AbortError";
}

/** The chosen archive's name and text; null when the picker was closed. Rejects where it cannot be read. */
export async function openArchive(): Promise<{ readonly name: string; readonly text: string } | null> {
  try {
    const file = await fileOpen({
      description: "Tonebench job",
      mimeTypes: [ARCHIVE_TYPE],
      extensions: [ARCHIVE_EXTENSION],
    });
    return { name: file.name, text: await file.text() };
  } catch (error) {
    if (isCancel(error)) return null;
    throw error;
  }
}

/** Saves a text under a name; false when the picker was closed. Rejects where it cannot be written. */
export async function saveFile(name: string, text: string, mimeType: string): Promise<boolean> {
  const dot = name.lastIndexOf(".");
  try {
    await fileSave(new Blob([text], { type: mimeType }), {
      fileName: name,
      extensions: dot > 0 ? [name.slice(dot)] : [],
    });
    return true;
  } catch (error) {
    if (isCancel(error)) return false;
    throw error;
  }
}
