/** What browser tests ask of paper: how many A4 pages a view prints on, and whether it needs any colour. */
import type { Page } from "playwright-core";

/** Page objects of a PDF, which Chromium writes uncompressed. */
export async function pageCount(page: Page): Promise<number> {
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  return [...pdf.matchAll(/\/Type\s*\/Page\b/g)].length;
}

/** The largest difference between two channels of any pixel of the view as it is printed. */
export async function largestChroma(page: Page): Promise<number> {
  await page.emulateMedia({ media: "print" });
  const picture = (await page.screenshot({ fullPage: true })).toString("base64");
  await page.emulateMedia({ media: null });
  // Decoded on a blank page: the planner's own allows no picture from a data address.
  const blank = await page.context().newPage();
  const chroma = await blank.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = Object.assign(document.createElement("canvas"), {
      width: image.width,
      height: image.height,
    });
    const drawing = canvas.getContext("2d");
    drawing?.drawImage(image, 0, 0);
    const pixels = drawing?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
    let largest = 0;
    for (let at = 0; at < pixels.length; at += 4) {
      const [r = 0, g = 0, b = 0] = pixels.subarray(at, at + 3);
      largest = Math.max(largest, Math.max(r, g, b) - Math.min(r, g, b));
    }
    return largest;
  }, picture);
  await blank.close();
  return chroma;
}
