/** The small drawing of an argument that is being typed: of the first of those that may be meant and have one. */
import { useLayoutEffect } from "react";
import { argumentDrawing } from "./arguments.ts";
import { Measured } from "./Measured.tsx";

interface Props {
  /** The function. */
  readonly name: string;
  readonly meant: readonly { readonly name: string }[];
  /** Called when another drawing is shown: what stands around it may have to move. */
  readonly onShown: () => void;
}

export function ArgumentPicture({ name, meant, onShown }: Props) {
  const drawing = meant.map((one) => argumentDrawing(name, one.name)).find((one) => one !== null);
  useLayoutEffect(() => {
    if (drawing) onShown();
  }, [drawing, onShown]);
  return drawing ? <Measured drawing={drawing} /> : null;
}
