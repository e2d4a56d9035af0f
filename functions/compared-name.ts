/** Names of pieces, edges, cloths, wearers and measurements as they are compared: capitals and spare spaces make no difference. */

export const comparedName = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

export const sameName = (a: string, b: string): boolean => comparedName(a) === comparedName(b);
