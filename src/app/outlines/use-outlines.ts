/** A drawing that is looked at before its pieces come into the book: what was read, and what the maker chooses of it. */
import { useEffect, useMemo, useState } from "react";
import type { Found, Inner } from "../../exchange/outlines/find-pieces.ts";
import { plainName } from "../../exchange/outlines/names.ts";
import type { TakenPiece } from "../../exchange/outlines/piece-rows.ts";
import { readOutlines } from "../../exchange/outlines/read-outlines.ts";
import { MOST_BYTES, tooLarge } from "../../exchange/outlines/read-text.ts";
import { sized } from "../../exchange/outlines/scale.ts";
import { reasonOf } from "../faults/in-time.ts";
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

export function useOutlines(file: File): Outlines {
  const [bytes, setBytes] = useState<Uint8Array | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [inner, setInner] = useState<Inner>("marks");
  const [changes, setChanges] = useState<Readonly<Record<string, Partial<Choice>>>>({});
  const [sizing, setSizing] = useState<Partial<Sizing>>({});
  useEffect(() => {
    let gone = false;
    const read = async () => {
      if (file.size > MOST_BYTES) return setFault(tooLarge(file.size));
      const content = new Uint8Array(await file.arrayBuffer());
      // The dialog is painted before a long drawing is read.
      await new Promise((done) => setTimeout(done, 30));
      if (!gone) setBytes(content);
    };
    read().catch((reason) => !gone && setFault(reasonOf(reason)));
    return () => {
      gone = true;
    };
  }, [file]);
  const reading = useMemo(() => (bytes ? readOutlines(bytes, inner) : null), [bytes, inner]);
  const found = reading && "pieces" in reading ? reading : null;
  const key = (piece: number) => `${inner} ${piece}`;
  return {
    found,
    refusal: fault ?? (reading && "refusal" in reading ? reading.refusal : null),
    inner,
    setInner,
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
      throw new Error(`the turn of “${name}” must be degrees from -360 to 360, not “${turn.slice(0, 12)}”`);
    const turned = angle % 360 === 0 ? [] : [`Turned by ${angle}°.`];
    return [
      {
        name: plainName(name) || `piece ${i + 1}`,
        piece: sized(piece, factor, angle),
        said: [...said, ...turned],
      },
    ];
  });
  if (taken.length === 0) throw new Error("no piece is taken: tick at least one");
  return taken;
}
