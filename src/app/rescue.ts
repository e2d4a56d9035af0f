/**
 * What stands in the window when the page itself can't: a sentence, every kept book as a file, and a
 * way on. It needs nothing of the rest, for that may be what failed.
 */

import { phrase } from "../../functions/phrase.ts";

/**
 * Every text that is kept in this browser, as it is: the database's and what tabs wrote down. The
 * file can be opened as one of several books (src/book/books.ts); what is more in it is for people.
 */
async function keptTexts(): Promise<unknown> {
  const rows = async (db: IDBDatabase, name: string): Promise<unknown[]> =>
    db.objectStoreNames.contains(name) ? asked(db.transaction(name).objectStore(name).getAll()) : [];
  const written = attempt(() =>
    Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("ellwand."))),
  );
  let books: unknown[] = [];
  let shelf: unknown;
  try {
    const db = await openAsItIs("ellwand");
    if (!db) throw new Error(phrase`this browser has no books`);
    const leaves = keptBooks(await rows(db, "leaves"), await rows(db, "parts"));
    books = leaves.map(({ text }) => text);
    shelf = { list: await rows(db, "spines"), leaves };
    db.close();
  } catch (fault) {
    shelf = phrase`not read: ${String(fault)}`;
  }
  return { ellwandBooks: 1, books, shelf, written, versions: await keptVersions() };
}

interface BookText {
  readonly id: string;
  readonly text: unknown;
  readonly before: unknown;
}

/** The texts of the books; a long one is put together from its parts. */
function keptBooks(leaves: unknown[], parts: unknown[]): BookText[] {
  const texts = new Map(
    (parts as { id: string; number: number; text: string }[]).map(({ id, number, text }) => [
      `${number} ${id}`,
      text,
    ]),
  );
  return (leaves as BookText[]).map((one) => {
    const whole = (text: unknown) =>
      Array.isArray(text)
        ? text
            .map(
              (number) =>
                texts.get(`${number} ${one.id}`) ?? `\n(${phrase`a part of this text is missing`})\n`,
            )
            .join("")
        : text;
    return { ...one, text: whole(one.text), before: whole(one.before) };
  });
}

/** The earlier versions of all books with their texts, or the reason why they can't be read. A browser that has kept no version yet has no such database. */
async function keptVersions(): Promise<unknown> {
  try {
    const db = await openAsItIs("ellwand-versions");
    if (!db) return [];
    const [versions, texts] = (await Promise.all(
      ["versions", "texts"].map((name) => asked(db.transaction(name).objectStore(name).getAll())),
    )) as [{ key: string }[], { key: string; how: string; bytes: ArrayBuffer }[]];
    db.close();
    return await Promise.all(
      versions.map(async (one) => {
        const found = texts.find(({ key }) => key === one.key);
        const text = found
          ? await plainText(found).catch((fault) => phrase`not read: ${fault}`)
          : phrase`not kept`;
        return { ...one, text };
      }),
    );
  } catch (fault) {
    return phrase`not read: ${String(fault)}`;
  }
}

async function plainText({ how, bytes }: { how: string; bytes: ArrayBuffer }): Promise<string> {
  const stream = new Blob([bytes]).stream();
  const plain = how === "gzip" ? stream.pipeThrough(new DecompressionStream("gzip")) : stream;
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await new Response(plain).arrayBuffer());
}

function attempt<T>(work: () => T): T | string {
  try {
    return work();
  } catch (fault) {
    return phrase`not read: ${String(fault)}`;
  }
}

const asked = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** A database in whatever version it has; null when it is not there, and it is not made. */
function openAsItIs(name: string): Promise<IDBDatabase | null> {
  const request = indexedDB.open(name);
  let missing = false;
  request.onupgradeneeded = () => {
    missing = true;
    request.transaction?.abort();
  };
  const opened = asked(request).catch((fault) => {
    if (missing) return null;
    throw fault;
  });
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error(phrase`the browser's database does not answer`)), 6_000);
  });
  return Promise.race([opened, late]);
}

function save(text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  link.download = "ellwand-rescue.json";
  link.click();
}

function button(label: string, act: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = label;
  made.addEventListener("click", act);
  return made;
}

/** Shows the sentence and the ways on in place of the page. */
export function rescue(fault: unknown): void {
  const given = fault instanceof Error ? fault.message || fault.name : String(fault);
  const unloaded = /dynamically imported|importing a module|preload/i.test(given);
  const reason = unloaded
    ? phrase`a part of its program could not be loaded; check that the server is running, then try again (${given})`
    : given;
  const main = document.createElement("main");
  main.className = "rescue";
  const head = document.createElement("h1");
  head.textContent = phrase`Ellwand could not be shown`;
  const reasonLine = document.createElement("p");
  reasonLine.setAttribute("role", "alert");
  reasonLine.textContent = phrase`The page stopped: ${reason}. The books saved in this browser are unchanged.`;
  const done = document.createElement("p");
  done.setAttribute("role", "status");
  const ways = document.createElement("p");
  ways.className = "rescue-ways";
  ways.append(
    button(phrase`Try again`, () => location.reload()),
    button(phrase`Save everything in this browser to a file`, async () => {
      try {
        save(JSON.stringify(await keptTexts(), null, 2));
        done.textContent = phrase`Saved as ellwand-rescue.json. It can be opened under Books, in any browser where Ellwand runs.`;
      } catch (failed) {
        done.textContent = phrase`The file could not be made: ${String(failed)}`;
      }
    }),
    button(phrase`Start with a blank book`, () => {
      location.hash = "fresh";
      location.reload();
    }),
  );
  main.append(head, reasonLine, ways, done);
  document.getElementById("page")?.replaceChildren(main);
}
