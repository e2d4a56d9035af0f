/** A drawing that is looked at before its pieces come into the book: what a worker read of it, and what the maker chooses. */

import { useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Found, Inner } from "../../exchange/outlines/find-pieces.ts";
import { plainName } from "../../exchange/outlines/names.ts";
import type { TakenPiece } from "../../exchange/outlines/piece-rows.ts";
import { MOST_BYTES, tooLarge } from "../../exchange/outlines/read-text.ts";
import { sized } from "../../exchange/outlines/scale.ts";
import type { OutlinesOrder, ReadOutlines } from "../../worker/outlines.ts";
import { outlinesClient } from "../../worker/outlines-client.ts";
import { useReading } from "../reading/use-reading.ts";
import type { Sizing } from "./sizing.ts";

/** What the maker says of one piece. */
export interface Choice {
  readonly take: boolean;
  readonly name: string;
  /** Degrees, clockwise, as it was typed. */
  readonly turn: string;
}

export interface Outlines {
  readonly found: Found | null;
  readonly refusal: string | null;
  /** Whether the file is being read, or read again. */
  readonly reading: boolean;
  /** Whether the worker has ended before it could answer. */
  readonly ended: boolean;
  /** Has another worker read the file. */
  readonly again: () => void;
  readonly inner: Inner;
  readonly setInner: (inner: Inner) => void;
  readonly choices: readonly Choice[];
  readonly choose: (piece: number, change: Partial<Choice>) => void;
  readonly sizing: Sizing;
  readonly setSizing: (change: Partial<Sizing>) => void;
}

/** The degrees that were typed; null when they are no figure. */
export function turnOf(typed: string): number | null {
  const turn = Number(typed.trim().replace(",", ".").replace("−", "-").replace(/°$/, ""));
  return Number.isFinite(turn) && Math.abs(turn) <= 360 ? turn : null;
}

const MOST = { bytes: MOST_BYTES, tooLarge };

export function useOutlines(file: File): Outlines {
  const [inner, setInner] = useState<Inner>("marks");
  const [changes, setChanges] = useState<Readonly<Record<string, Partial<Choice>>>>({});
  const [sizing, setSizing] = useState<Partial<Sizing>>({});
  const { answer, refusal, reading, ended, again, ask } = useReading<OutlinesOrder, ReadOutlines>(
    file,
    MOST,
    outlinesClient,
    (bytes) => ({ bytes, inner }),
  );
  const found = answer?.found ?? null;
  // What is shown may still be the reading before the last choice: its pieces keep the choices made for them.
  const key = (piece: number) => `${answer?.inner} ${piece}`;
  return {
    found,
    refusal,
    reading,
    ended,
    again,
    inner,
    setInner: (next) => {
      setInner(next);
      ask({ inner: next });
    },
    choices: (found?.pieces ?? []).map(({ name }, i) => ({
      take: true,
      name,
      turn: "0",
      ...changes[key(i)],
    })),
    choose: (piece, change) =>
      setChanges((now) => ({ ...now, [key(piece)]: { ...now[key(piece)], ...change } })),
    sizing: {
      by: found?.millimetres === null ? "known" : "file",
      what: "0/0",
      typed: "",
      ...sizing,
    },
    setSizing: (change) => setSizing((now) => ({ ...now, ...change })),
  };
}

/** The pieces that are taken, in the book's unit. Throws an Error with a sentence when a choice makes no sense. */
export function takenOf(found: Found, choices: readonly Choice[], factor: number): TakenPiece[] {
  const taken = found.pieces.flatMap(({ piece, said }, i): TakenPiece[] => {
    const { take, name, turn } = choices[i]!;
    if (!take) return [];
    const angle = turnOf(turn);
    if (angle === null)
      throw new Error(
        phrase`the turn of “${name}” must be degrees from -360 to 360, not “${turn.slice(0, 12)}”`,
      );
    const turned = angle % 360 === 0 ? [] : [phrase`Turned by ${angle}°.`];
    return [
      {
        name: plainName(name) || phrase`piece ${i + 1}`,
        piece: sized(piece, factor, angle),
        said: [...said, ...turned],
      },
    ];
  });
  if (taken.length === 0) throw new Error(phrase`no piece is taken: tick at least one`);
  return taken;
}
