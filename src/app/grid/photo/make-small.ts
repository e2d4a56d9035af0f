/**
 * Makes a small photograph of a file: decoded by the browser, drawn at no more than 320 pixels and written as
 * a JPEG of at most 40 kB. What else the file held, such as where it was taken, is left behind.
 */

import { phrase } from "../../../../functions/phrase.ts";

/** A file larger than this is refused before it is read. */
export const MOST_BYTES = 25_000_000;
const MOST_PIXELS = 320;
const MOST_WRITTEN = 40_000;
/** A picture of more pixels would take more memory than a phone has. */
const MOST_DECODED = 100_000_000;
const QUALITIES = [0.85, 0.7, 0.5, 0.3, 0.15];

export type Small = { readonly image: string } | { readonly refusal: string };

const KINDS = phrase`choose a JPEG, PNG or WebP picture`;

export async function makeSmall(file: File): Promise<Small> {
  const called = file.name.slice(0, 60) || phrase`the picture`;
  if (file.size > MOST_BYTES)
    return {
      refusal: phrase`${called} has ${Math.round(file.size / 1e6)} MB, and a photograph may have at most ${MOST_BYTES / 1e6} MB: make it smaller first`,
    };
  try {
    const head = new Uint8Array(await file.slice(0, 32).arrayBuffer());
    const kind = kindOf(head);
    if (kind === null)
      return { refusal: phrase`${called} is no photograph that can be kept in a cell: ${KINDS}` };
    if (kind === "png") {
      const view = new DataView(head.buffer);
      const pixels = view.getUint32(16) * view.getUint32(20);
      if (pixels > MOST_DECODED)
        return {
          refusal: phrase`${called} has ${Math.round(pixels / 1e6)} million pixels, and a photograph may have at most ${MOST_DECODED / 1e6} million: make it smaller first`,
        };
    }
    return { image: await drawn(file) };
  } catch {
    return { refusal: phrase`${called} can't be read as a picture: ${KINDS}` };
  }
}

/** What the first bytes of a file say it is. */
function kindOf(head: Uint8Array): "jpeg" | "png" | "webp" | null {
  const text = String.fromCharCode(...head);
  if (head.length < 24) return null;
  if (text.startsWith("\xff\xd8\xff")) return "jpeg";
  if (text.startsWith("\x89PNG\r\n\x1a\n")) return "png";
  return text.startsWith("RIFF") && text.slice(8, 12) === "WEBP" ? "webp" : null;
}

async function drawn(file: File): Promise<string> {
  const picture = await createImageBitmap(file);
  try {
    let size = MOST_PIXELS;
    for (;;) {
      const scale = Math.min(1, size / Math.max(picture.width, picture.height));
      const canvas = document.createElement("canvas");
      canvas.width = Math.max(1, Math.round(picture.width * scale));
      canvas.height = Math.max(1, Math.round(picture.height * scale));
      const pen = canvas.getContext("2d")!;
      // A JPEG has no transparency.
      pen.fillStyle = "white";
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
      for (const quality of QUALITIES) {
        const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
        if (!blob) throw new Error(phrase`no picture came of it`);
        if (blob.size <= MOST_WRITTEN) return await urlOf(blob);
      }
      size /= 2;
    }
  } finally {
    picture.close();
  }
}

const urlOf = (blob: Blob): Promise<string> =>
  new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(blob);
  });
