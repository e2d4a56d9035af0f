/** Books to and from files of this computer. Nothing leaves it. */
import { type Reading, readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";

/** More than any book can have, even if each letter takes four bytes; what is longer need not be read whole. */
const MOST_BYTES = 130_000_000;

export async function openFile(file: File): Promise<Reading> {
  try {
    return readBook(await file.slice(0, MOST_BYTES).text());
  } catch {
    return { reason: "the browser could not read it; look whether it is still there and may be read" };
  }
}

/** "The Squire's cloak, no. 2" → "the-squires-cloak-no-2.json". */
export function fileName(title: string): string {
  const plain = title
    .normalize("NFKD")
    .replace(/[\u0300-\u036f'’]/g, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");
  return `${plain || "book"}.json`;
}

export function saveFile(book: Book): string {
  const url = URL.createObjectURL(new Blob([writeBook(book)], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName(book.title);
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return link.download;
}
