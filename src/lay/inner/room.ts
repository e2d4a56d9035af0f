/**
 * The memory of one search and the inner loop that works in it, here in plain TypeScript. simd-room.ts has the same as
 * WebAssembly.
 */
import { HEADER } from "./layout.ts";
import { workIn } from "./memory.ts";
import * as plain from "./program.ts";

/** The functions of program.ts as they are called from outside. */
export interface Program {
  /** The next random number, from 0 up to 1. */
  random(): number;
  /** Moves item i to the best place found; it stays when none is better. */
  move(i: number): void;
  /** Weighted loss of item i at a place; breaks off as soon as it reaches `limit`. */
  judge(i: number, stance: number, cloth: number, x: number, y: number, limit: number): number;
  /** What the next places that are judged are compared with: everything, or what is near a place. */
  lookEverywhere(i: number): void;
  lookNear(i: number, stance: number, x: number, y: number, reach: number): void;
  /** Puts an item down; overlaps are not counted again until `settle`. */
  put(i: number, stance: number, cloth: number, x: number, y: number): void;
  /** Counts the losses of item i with all others anew. */
  settle(i: number): void;
  /** Sets the bounds for a stance on a cloth; false, or 0, when it does not fit at all. */
  range(stance: number, cloth: number): boolean | number;
  /** The nearest x and y in these bounds; x on the repeat where the stance is matched, NaN where no x does. */
  snap(stance: number, x: number): number;
  clampY(y: number): number;
  /** Depth of an offset in a field, 0 outside. */
  depth(field: number, x: number, y: number): number;
}

/** What the inner loop asks for when it meets something for the first time. */
export interface Host {
  /** Makes the list of a cell and returns its address. */
  fill(field: number, cell: number): number;
  /** Makes the field of two stances and returns its address. */
  prepare(a: number, b: number): number;
}

/** The memory as three arrays over the same bytes. */
export interface Work {
  readonly floats: Float64Array;
  readonly ints: Int32Array;
  readonly singles: Float32Array;
  readonly host: Host;
}

/** Addresses are whole numbers of 32 bits with a sign. */
const MOST = 2 ** 31 - 65536;

export abstract class Room implements Work {
  floats = new Float64Array(0);
  ints = new Int32Array(0);
  singles = new Float32Array(0);
  abstract readonly program: Program;
  private used = HEADER;

  constructor(readonly host: Host) {}

  /** So many bytes, all 0, at an address that 16 divides. */
  allocate(size: number): number {
    const at = this.used;
    if (at + size > MOST) throw new RangeError("The search needs more than 2 GB of memory.");
    this.used = (at + size + 15) & ~15;
    if (this.used > this.floats.byteLength) this.view(this.enlarged(this.used));
    return at;
  }

  protected view(buffer: ArrayBuffer): void {
    this.floats = new Float64Array(buffer);
    this.ints = new Int32Array(buffer);
    this.singles = new Float32Array(buffer);
  }

  /** The memory with what it has held so far, of this size or larger. */
  protected abstract enlarged(size: number): ArrayBuffer;
}

/** A room whose inner loop is plain TypeScript. */
export class PlainRoom extends Room {
  readonly program: Program;

  constructor(host: Host) {
    super(host);
    this.view(new ArrayBuffer(HEADER));
    this.program = inTurn(this);
  }

  protected enlarged(size: number): ArrayBuffer {
    const buffer = new ArrayBuffer(2 * size);
    new Float64Array(buffer).set(this.floats);
    return buffer;
  }
}

/** The plain program works for many searches: with each call it is given the memory of the one that calls. */
function inTurn(room: Work): Program {
  const turn =
    <Given extends number[], Answer>(work: (...given: Given) => Answer) =>
    (...given: Given): Answer => {
      workIn(room);
      return work(...given);
    };
  return {
    random: turn(plain.random),
    move: turn(plain.move),
    judge: turn(plain.judge),
    lookEverywhere: turn(plain.lookEverywhere),
    lookNear: turn(plain.lookNear),
    put: turn(plain.put),
    settle: turn(plain.settle),
    range: turn(plain.range),
    snap: turn(plain.snap),
    clampY: turn(plain.clampY),
    depth: turn(plain.depth),
  };
}
