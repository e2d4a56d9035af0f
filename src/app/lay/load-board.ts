/** Loads the board on which a lay is shown. */
export const loadLayBoard = () => import("./LayBoard.tsx");
