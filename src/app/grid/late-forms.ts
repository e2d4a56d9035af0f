/** The grid's menu, forms and hints, which are loaded right after the page's start. */
import { lazily } from "../faults/lazily.tsx";

export const GridForm = lazily(async () => (await import("./GridForm.tsx")).GridForm);
export const RowsAndColumns = lazily(async () => (await import("./RowsAndColumns.tsx")).RowsAndColumns);
export const TypingHelp = lazily(async () => (await import("./TypingHelp.tsx")).TypingHelp);
