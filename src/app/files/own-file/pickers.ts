/** The browser's own dialogs for files that a page may write again. Only some browsers have them. */

import { phrase } from "../../../../functions/phrase.ts";

/** A file that was chosen, with the questions that the browser asks about it. */
export interface OwnHandle extends FileSystemFileHandle {
  readonly queryPermission?: (mode: { mode: "readwrite" }) => Promise<PermissionState>;
  readonly requestPermission?: (mode: { mode: "readwrite" }) => Promise<PermissionState>;
}

interface Choice {
  readonly suggestedName?: string;
  readonly types?: readonly {
    readonly description: string;
    readonly accept: Readonly<Record<string, readonly string[]>>;
  }[];
}

interface Pickers {
  readonly showSaveFilePicker?: (choice: Choice) => Promise<OwnHandle>;
  readonly showOpenFilePicker?: () => Promise<OwnHandle[]>;
}

const pickers = (): Pickers => window as unknown as Pickers;

/** Whether this browser lets the page write into a file that the maker chose. */
export const canWriteFiles = (): boolean => pickers().showSaveFilePicker !== undefined;

/** Whether this browser gives the page a file to open that it may later ask to write. */
export const canChooseFiles = (): boolean => canWriteFiles() && pickers().showOpenFilePicker !== undefined;

/** What the picker gave; null when it was closed without a choice. */
async function chosen<T>(asked: Promise<T>): Promise<T | null> {
  try {
    return await asked;
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === "AbortError") return null;
    throw fault;
  }
}

/** Lets the maker say where a file is saved. */
export const chooseWhere = (suggestedName: string): Promise<OwnHandle | null> =>
  chosen(
    pickers().showSaveFilePicker!({
      suggestedName,
      types: [{ description: phrase`A book of Ellwand`, accept: { "application/json": [".json"] } }],
    }),
  );

/** Lets the maker choose a file of any kind to open. */
export const chooseFile = async (): Promise<OwnHandle | null> =>
  (await chosen(pickers().showOpenFilePicker!()))?.[0] ?? null;

/** Whether the page may write to a file; after a reload the browser asks the maker again. */
export async function mayWrite(handle: OwnHandle): Promise<boolean> {
  const mode = { mode: "readwrite" } as const;
  if (!handle.queryPermission || (await handle.queryPermission(mode)) === "granted") return true;
  return (await handle.requestPermission?.(mode)) === "granted";
}

/** The file that was dropped on the page, where the browser lets the page write it again. Called while the drop is handled. */
export async function droppedHandle({ dataTransfer }: DragEvent): Promise<OwnHandle | undefined> {
  const item = dataTransfer?.items[0] as
    | (DataTransferItem & { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> })
    | undefined;
  try {
    const handle = canWriteFiles() ? await item?.getAsFileSystemHandle?.() : undefined;
    return handle?.kind === "file" ? (handle as OwnHandle) : undefined;
  } catch {
    return undefined;
  }
}
