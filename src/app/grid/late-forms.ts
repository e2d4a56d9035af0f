/** The grid's menu and forms, which are loaded right after the page's start. */
import { lazily } from "../faults/lazily.tsx";

export const GridForm = lazily(async () => (await import("./GridForm.tsx")).GridForm);
export const RowsAndColumns = lazily(async () => (await import("./RowsAndColumns.tsx")).RowsAndColumns);
