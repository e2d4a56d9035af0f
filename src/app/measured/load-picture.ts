/** Loads the small drawings of arguments. */
export const loadArgumentPicture = () => import("./ArgumentPicture.tsx");
