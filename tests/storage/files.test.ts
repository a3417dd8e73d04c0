import { afterEach, describe, expect, it, vi } from "vitest";

const picker = vi.hoisted(() => ({ fileOpen: vi.fn(), fileSave: vi.fn() }));
vi.mock("browser-fs-access", () => picker);

const { openArchive, saveFile } = await import("../../src/storage/files.ts");

const closed = () => new DOMException("The user aborted a request.", "AbortError");

afterEach(() => vi.resetAllMocks());

describe("opening and saving a file", () => {
  it("gives the chosen file's name and text", async () => {
    picker.fileOpen.mockResolvedValue(new File(["{}"], "job.json"));
    expect(await openArchive()).toEqual({ name: "job.json", text: "{}" });
  });

  it("saves the text under the name, with the name's extension", async () => {
    picker.fileSave.mockResolvedValue(null);
    expect(await saveFile("a.tonebench.json", "text", "application/json")).toBe(true);
    const [blob, options] = picker.fileSave.mock.calls[0] ?? [];
    expect(await blob.text()).toBe("text");
    expect(blob.type).toBe("application/json");
    expect(options).toEqual({ fileName: "a.tonebench.json", extensions: [".json"] });
  });

  it("takes a picker closed without a choice for no choice, not for a failure", async () => {
    picker.fileOpen.mockRejectedValue(closed());
    picker.fileSave.mockRejectedValue(closed());
    expect(await openArchive()).toBeNull();
    expect(await saveFile("a.json", "", "application/json")).toBe(false);
  });

  it("passes on every other failure", async () => {
    picker.fileOpen.mockRejectedValue(new DOMException("no", "NotReadableError"));
    picker.fileSave.mockRejectedValue(new DOMException("full", "QuotaExceededError"));
    await expect(openArchive()).rejects.toThrow("no");
    await expect(saveFile("a.json", "", "application/json")).rejects.toThrow("full");
  });
});
