/**
 * What the inner loop asks of the outside: to read and write its memory, and to make what is not there yet. Here in
 * plain TypeScript; where the loop becomes WebAssembly, simd/memory.as is built in place of this file.
 */
import type { Work } from "./room.ts";

let work: Work;
let floats: Float64Array = new Float64Array(0);
let ints: Int32Array = new Int32Array(0);
let singles: Float32Array = new Float32Array(0);

/** The program works in this memory from now on. */
export function workIn(memory: Work): void {
  work = memory;
  floats = memory.floats;
  ints = memory.ints;
  singles = memory.singles;
}

/** The list of a cell that was never asked before. */
export function fill(field: i32, cell: i32): i32 {
  const list = work.host.fill(field, cell);
  // The memory may have become larger, and with that another.
  workIn(work);
  return list;
}
/** The field of two stances that never met before. */
export function prepare(a: i32, b: i32): i32 {
  const field = work.host.prepare(a, b);
  workIn(work);
  return field;
}

export function f(at: i32): f64 {
  return floats[at >> 3]!;
}
export function setF(at: i32, value: f64): void {
  floats[at >> 3] = value;
}
export function n(at: i32): i32 {
  return ints[at >> 2]!;
}
export function setN(at: i32, value: i32): void {
  ints[at >> 2] = value;
}
/** A number in single precision. */
export function single(at: i32): f64 {
  return singles[at >> 2]!;
}

export function setBox(at: i32, left: f64, low: f64, right: f64, high: f64): void {
  const i = at >> 3;
  floats[i] = left;
  floats[i + 1] = low;
  floats[i + 2] = right;
  floats[i + 3] = high;
}

/** Whether two boxes share more than their borders. */
export function meet(a: i32, b: i32): bool {
  const i = a >> 3;
  const j = b >> 3;
  return (
    floats[i]! < floats[j + 2]! &&
    floats[i + 1]! < floats[j + 3]! &&
    floats[i + 2]! > floats[j]! &&
    floats[i + 3]! > floats[j + 1]!
  );
}

/** A number of 0 or more without its fraction. */
export function whole(x: f64): i32 {
  return x | 0;
}
export function toFloat(x: i32): f64 {
  return x;
}
/** The smaller of two whole numbers. */
export function smaller(a: i32, b: i32): i32 {
  return Math.min(a, b);
}
/** The product of two whole numbers, the lowest 32 bits of it. */
export function product(a: i32, b: i32): i32 {
  return Math.imul(a, b);
}
/** The 32 bits as a number from 0 up to 1. */
export function share(bits: i32): f64 {
  return (bits >>> 0) / 4294967296;
}
/** What `snap` gives where there is no such place, and a stance has that is not matched. */
export function missing(): f64 {
  return Number.NaN;
}
export function isMissing(x: f64): bool {
  return Number.isNaN(x);
}
