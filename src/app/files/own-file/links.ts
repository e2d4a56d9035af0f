/**
 * Which file on the disk a book is saved to. The browser keeps the permission to use the file, and
 * this database keeps the handle; where there is no database a link lasts as long as the tab.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { inTime } from "../../faults/in-time.ts";
import type { OwnHandle } from "./pickers.ts";

export interface Link {
  /** The book's. */
  readonly id: string;
  readonly handle: OwnHandle;
  /** SHA-256 of the text that Ellwand last wrote to the file or read from it, in hexadecimal. */
  readonly digest: string;
  /** The revision of the book that the file holds. */
  readonly revision: number;
  /** When it was written, in milliseconds since 1970. */
  readonly at: number;
}

interface Links extends DBSchema {
  links: { key: string; value: Link };
}

const inThisTab = new Map<string, Link>();
let opening: Promise<IDBPDatabase<Links>> | null = null;

function database(): Promise<IDBPDatabase<Links>> {
  opening ??= inTime(
    openDB<Links>("ellwand-own-files", 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("links", { keyPath: "id" });
      },
    }),
    5000,
  );
  return opening;
}

export async function digestOf(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The file of a book; null when it has none. */
export async function linkOf(id: string): Promise<Link | null> {
  try {
    return (await inTime((await database()).get("links", id), 2000)) ?? inThisTab.get(id) ?? null;
  } catch {
    return inThisTab.get(id) ?? null;
  }
}

export async function keepLink(link: Link): Promise<void> {
  inThisTab.set(link.id, link);
  try {
    await (await database()).put("links", link);
  } catch {
    // The link lasts as long as this tab.
  }
}

export async function forgetLink(id: string): Promise<void> {
  inThisTab.delete(id);
  try {
    await (await database()).delete("links", id);
  } catch {
    // Where nothing can be kept there is nothing to let go of.
  }
}
