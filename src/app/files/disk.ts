/** Books to and from files of this computer. Nothing leaves it. */
import { phrase } from "../../../functions/phrase.ts";
import { holdsBooks, readBooks } from "../../book/books.ts";
import { type Reading, readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";

/** More than any book can have, even if each letter takes four bytes; what is longer need not be read whole. */
const MOST_BYTES = 130_000_000;

/** A file of more bytes is read in a worker. */
const LARGE = 1_000_000;

/** A book, the texts of several books, or the reason why it can't be read. */
export async function openFile(file: File): Promise<Reading | { readonly texts: readonly string[] }> {
  try {
    if (!holdsBooks(await file.slice(0, 200).text())) {
      const part = file.slice(0, MOST_BYTES);
      if (file.size > LARGE) return await (await import("./large-file.ts")).readLarge(part, file.name);
      return readBook(await part.text());
    }
    const texts = readBooks(await file.text());
    return "reason" in texts ? texts : { texts };
  } catch {
    return {
      reason: phrase`the browser could not read it; check that the file still exists and that you may read it`,
    };
  }
}

/** The one book of a file, or the reason why it holds no book that can be read. */
export async function readOne(file: File): Promise<Reading> {
  const reading = await openFile(file);
  return "texts" in reading
    ? {
        reason: phrase`the file holds ${reading.texts.length} books; open it, and compare one of them in the list`,
      }
    : reading;
}

/** "The Squire's cloak, no. 2" → "the-squires-cloak-no-2.json". */
export function fileName(title: string, ending = ".json"): string {
  const plain = title
    .normalize("NFKD")
    .replace(/[\u0300-\u036f'’]/g, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");
  return `${plain || "book"}${ending}`;
}

/** Saves a text, or bytes, as a file; gives the file's name. */
export function saveText(text: BlobPart, name: string, type = "application/json"): string {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return name;
}

export const saveFile = (book: Book): string => saveText(writeBook(book), fileName(book.title));
