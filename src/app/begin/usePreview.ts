/** What the answers given so far come to: figures and drawings, worked out shortly after the last key. */
import { useEffect, useState } from "react";
import { findPlace, type Place } from "../../book/address.ts";
import type { Garment } from "../../book/garment.ts";
import { type Book, typedAt } from "../../book/shape.ts";
import type { Begun } from "../../engine/begin.ts";
import { drawnAt } from "../../engine/drawn.ts";
import { Engine } from "../../engine/engine.ts";
import { type Picture, pictureOf } from "../../engine/picture.ts";
import { layDesk } from "../../lay/desk.ts";

export interface Preview {
  readonly pictures: readonly { readonly label: string; readonly picture: Picture; readonly words: string }[];
  readonly figures: readonly { readonly label: string; readonly shown: string; readonly problem: string }[];
}

/** Milliseconds after the last key. */
const PAUSE = 250;

export function usePreview(garment: Garment, begun: Begun): Preview | null {
  const [preview, setPreview] = useState<Preview | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setPreview(previewOf(garment, begun)), PAUSE);
    return () => clearTimeout(timer);
  }, [garment, begun]);
  return preview;
}

function previewOf({ draws, tells }: Garment, { book }: Begun): Preview {
  const engine = new Engine(book, layDesk);
  try {
    const placeOf = (name: string) => findPlace(book, book.names[name]!)!;
    return {
      pictures: draws.flatMap((name) => {
        const drawn = drawnAt(engine, placeOf(name));
        const label = labelIn(book, placeOf(name));
        return drawn ? [{ label, picture: pictureOf(drawn.shapes, book), words: drawn.shown }] : [];
      }),
      figures: tells.map((name) => {
        const { shown, problem } = engine.view(placeOf(name));
        return { label: labelIn(book, placeOf(name)), shown, problem: problem?.sentence ?? "" };
      }),
    };
  } finally {
    engine.destroy();
  }
}

/** What a template's row is called, in its first column. */
const labelIn = (book: Book, { page, row }: Place): string => typedAt(book, page, row, 0);
