/**
 * Where an increasing function reaches a value: false position between two bounds that enclose the
 * place. Where one bound is kept twice its error is halved (the Illinois rule), so that both close in
 * faster than by halving (Dowell and Jarratt, "A modified regula falsi method", BIT 11, 1971).
 */

/** The place between `low` and `high` at which `f` is `wanted`; the nearer bound when it is not reached between them. */
export function reaching(f: (x: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [below, above] = [f(a) - wanted, f(b) - wanted];
  if (below >= 0) return a;
  if (above <= 0) return b;
  const close = 1e-14 * Math.max(Math.abs(low), Math.abs(high));
  let kept = 0;
  for (let i = 0; i < 100 && b - a > close; i += 1) {
    const guess = i % 12 === 11 ? (a + b) / 2 : b - (above * (b - a)) / (above - below);
    const x = guess > a && guess < b ? guess : (a + b) / 2;
    const off = f(x) - wanted;
    if (Math.abs(off) <= 1e-14 * Math.abs(wanted)) return x;
    if (off < 0) {
      [a, below] = [x, off];
      if (kept === -1) above /= 2;
      kept = -1;
    } else {
      [b, above] = [x, off];
      if (kept === 1) below /= 2;
      kept = 1;
    }
  }
  return (a + b) / 2;
}
