/** How large the reader has set the browser's type. What the page measures in pixels itself, such as the grid's rows, is multiplied by it. */

/** The size of the page's type, 1 where the browser is as it comes: 16 pixels. */
export const TEXT_SIZE =
  typeof document === "undefined"
    ? 1
    : Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;
