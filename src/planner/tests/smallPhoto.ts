/** Makes a camera's picture small enough for a record: scaled down and written as JPEG until it fits. */
import { MOST_PHOTO_CHARACTERS, type TestPrint } from "../../job/recordDocument.ts";

/** Long edges tried, in pixels, largest first; 1600 shows a print well. Invented default. */
const LONG_EDGES = [1600, 1100, 700, 400];
const QUALITY = 0.8;

function drawn(image: ImageBitmap, longEdge: number): string | null {
  const scale = Math.min(1, longEdge / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const context = canvas.getContext("2d");
  if (context === null) return null;
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/jpeg", QUALITY);
}

/** The photo as a record keeps it; null where the file is no picture the browser knows. */
export async function smallPhoto(file: File): Promise<TestPrint["photo"]> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file);
  } catch {
    return null;
  }
  for (const longEdge of LONG_EDGES) {
    const dataUrl = drawn(image, longEdge);
    if (dataUrl === null || !dataUrl.startsWith("data:image/jpeg;base64,")) return null;
    if (dataUrl.length <= MOST_PHOTO_CHARACTERS)
      return { name: file.name.slice(0, 200), mediaType: "image/jpeg", dataUrl };
  }
  return null;
}
