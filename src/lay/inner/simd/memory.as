/** What the inner loop asks of the outside, as WebAssembly: ../memory.ts says what each function is for. */
@external("host", "fill")
export declare function fill(field: i32, cell: i32): i32;
@external("host", "prepare")
export declare function prepare(a: i32, b: i32): i32;

@inline
export function f(at: i32): f64 {
  return load<f64>(at);
}
@inline
export function setF(at: i32, value: f64): void {
  store<f64>(at, value);
}
@inline
export function n(at: i32): i32 {
  return load<i32>(at);
}
@inline
export function setN(at: i32, value: i32): void {
  store<i32>(at, value);
}

@inline
export function setBox(at: i32, left: f64, low: f64, right: f64, high: f64): void {
  v128.store(at, f64x2.replace_lane(f64x2.splat(left), 1, low));
  v128.store(at, f64x2.replace_lane(f64x2.splat(right), 1, high), 16);
}

@inline
export function meet(a: i32, b: i32): bool {
  return i64x2.all_true(
    v128.and(
      f64x2.lt(v128.load(a), v128.load(b, 16)),
      f64x2.gt(v128.load(a, 16), v128.load(b)),
    ),
  );
}

@inline
export function whole(x: f64): i32 {
  return i32(x);
}
@inline
export function toFloat(x: i32): f64 {
  return f64(x);
}
@inline
export function smaller(a: i32, b: i32): i32 {
  return min<i32>(a, b);
}
@inline
export function product(a: i32, b: i32): i32 {
  return a * b;
}
@inline
export function share(bits: i32): f64 {
  return f64(u32(bits)) / 4294967296;
}
@inline
export function missing(): f64 {
  return NaN;
}
@inline
export function isMissing(x: f64): bool {
  return isNaN(x);
}
