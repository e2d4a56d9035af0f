/** The garment of one call, drawn as it hangs on a figure. */
import type { Declaration } from "./define.ts";
import { type Argument, garmentOf, type Setting } from "./run.ts";
import { type Body, NO_BODY } from "./worn/body.ts";
import { type Worn, wornDrawing } from "./worn/worn-drawing.ts";

/** The garment as it hangs on a figure of these measurements; null when the function has none or the call is refused. */
export const worn = (
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  body: Body = NO_BODY,
): Worn | null => garmentOf(declaration, args, setting, body, wornDrawing);
