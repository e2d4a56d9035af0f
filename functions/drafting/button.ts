/** Buttons that go through a slit or a loop: it must open as far as the button is round. */
import type { Take } from "../define.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

export const BUTTON_SHAPE = {
  kind: "text",
  about: "flat, or a ball, which needs only its diameter",
  choices: ["flat", "ball"],
  otherwise: "flat",
} as const satisfies Take;

export interface Button {
  readonly diameter: number;
  readonly thickness: number;
  readonly shape: "flat" | "ball";
}

/** The rule of the girth below. */
export const BUTTON_GIRTH_RULE = 'IF(shape = "ball"; PI() * diameter; 2 * (diameter + thickness))';

/** Round the button where it is widest. */
export function buttonGirth({ diameter, thickness, shape }: Button): number {
  if (shape === "flat") return 2 * (diameter + thickness);
  if (thickness > 0)
    throw new Refusal(phrase`thickness must be left out for a ball, which needs only its diameter`);
  return Math.PI * diameter;
}
