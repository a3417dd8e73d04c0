/** Why a write was refused although the browser would have taken it. */
export class StorageError extends Error {
  readonly code: "changed-elsewhere";

  /** @param where the document that another tab saved in the meantime: "library" or "job" */
  constructor(code: "changed-elsewhere", where: "library" | "job") {
    super(`${code}: ${where}`);
    this.name = "StorageError";
    this.code = code;
  }
}
