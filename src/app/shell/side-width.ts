/** How wide the side is: a share of the window in hundredths, remembered in this browser. */
import { recall, remember } from "../files/storage.ts";

export const LEAST = 22;
export const MOST = 65;
export const USUAL = 34;
const KEY = "ellwand.side";

export const within = (share: number): number => Math.min(MOST, Math.max(LEAST, share));

export function rememberedSide(): number {
  const share = Number(recall("localStorage", KEY) ?? USUAL);
  return Number.isFinite(share) ? within(share) : USUAL;
}

export const rememberSide = (share: number): boolean => remember("localStorage", KEY, String(share));

/** Gives the side of the page this width, at first the remembered one. */
export function setSideWidth(share = rememberedSide()): void {
  document.documentElement.style.setProperty("--side", `${share}vw`);
}
