/** Hands a PDF to the browser's own print. */

import { phrase } from "../../../functions/phrase.ts";

let frame: HTMLIFrameElement | null = null;
let address = "";

/** Takes away the frame of the last printing. */
function clear(): void {
  frame?.remove();
  frame = null;
  if (address !== "") URL.revokeObjectURL(address);
  address = "";
}

/** Resolves to whether the browser’s print is open, or the browser can’t print a PDF by itself. */
export async function printPdf(bytes: Uint8Array<ArrayBuffer>): Promise<"open" | "not possible"> {
  clear();
  // Browsers without a viewer of their own would save the file or show nothing.
  if (!navigator.pdfViewerEnabled) return "not possible";
  address = URL.createObjectURL(new Blob([bytes], { type: "application/pdf" }));
  const made = document.createElement("iframe");
  made.className = "print-frame";
  made.title = phrase`The document that is printed`;
  made.tabIndex = -1;
  frame = made;
  const loaded = new Promise<void>((resolve) =>
    made.addEventListener("load", () => resolve(), { once: true }),
  );
  made.src = address;
  document.body.append(made);
  await loaded;
  try {
    made.contentWindow!.focus();
    made.contentWindow!.print();
    return "open";
  } catch {
    // The page has no access to this viewer.
    clear();
    return "not possible";
  }
}
