/**
 * A level section of the body: two half ellipses that share their width, one in front and one
 * behind. Its girth is exact: the perimeter of an ellipse by the arithmetic-geometric mean (Gauss;
 * DLMF 19.8.6 and 19.30.5).
 */

export interface Section {
  /** Half the width from side to side. */
  readonly half: number;
  /** From the middle to the front and to the back. */
  readonly front: number;
  readonly back: number;
}

/** The perimeter of an ellipse with these half axes, to the precision of the machine. */
export function ellipsePerimeter(a: number, b: number): number {
  let [x, y] = [Math.max(a, b), Math.min(a, b)];
  if (x <= 0) return 0;
  let sum = x * x - (x * x - y * y) / 2;
  for (let weight = 1, i = 0; i < 40 && Math.abs(x - y) > 1e-15 * x; i += 1, weight *= 2) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    sum -= weight * c * c;
  }
  return (2 * Math.PI * sum) / x;
}

/** The girth of a section, in the unit of its half axes. */
export const girthOf = ({ half, front, back }: Section): number =>
  (ellipsePerimeter(half, front) + ellipsePerimeter(half, back)) / 2;

/** A section of the same shape with this girth. */
export function withGirth(shape: Section, girth: number): Section {
  const k = girth / girthOf(shape);
  return { half: shape.half * k, front: shape.front * k, back: shape.back * k };
}

export const mixed = (a: Section, b: Section, share: number): Section => ({
  half: a.half + (b.half - a.half) * share,
  front: a.front + (b.front - a.front) * share,
  back: a.back + (b.back - a.back) * share,
});

/** The least section that holds both. */
export const around = (a: Section, b: Section): Section => ({
  half: Math.max(a.half, b.half),
  front: Math.max(a.front, b.front),
  back: Math.max(a.back, b.back),
});

/** A place on a section or off it: x towards the wearer's left, z towards the front. */
export type Flat = readonly [x: number, z: number];

/** The place at an angle from centre back towards the wearer's left, `out` away from the section, square to it. */
export function placeOn({ half, front, back }: Section, angle: number, out: number): Flat {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const deep = cos > 0 ? back : front;
  const [nx, nz] = [sin / half, -cos / deep];
  const long = Math.sqrt(nx * nx + nz * nz);
  return [half * sin + (nx / long) * out, -deep * cos + (nz / long) * out];
}

/**
 * The angles that part a section's girth into `count` equal lengths, from centre back; `count` + 1 of them.
 * With `quarters` each quarter is parted by itself, so that the sides lie at a quarter of the way round.
 */
export function evenAngles(section: Section, count: number, quarters = false): number[] {
  const fine = 1440;
  const along = new Float64Array(fine + 1);
  let before = placeOn(section, 0, 0);
  for (let i = 1; i <= fine; i += 1) {
    const now = placeOn(section, (2 * Math.PI * i) / fine, 0);
    along[i] = along[i - 1]! + Math.sqrt((now[0] - before[0]) ** 2 + (now[1] - before[1]) ** 2);
    before = now;
  }
  const whole = along[fine]!;
  let i = 0;
  return Array.from({ length: count + 1 }, (_, k) => {
    const quarter = Math.min(Math.floor((4 * k) / count), 3);
    const [from, to] = [along[(quarter * fine) / 4]!, along[((quarter + 1) * fine) / 4]!];
    const wanted = quarters ? from + (to - from) * ((4 * k) / count - quarter) : (whole * k) / count;
    while (i < fine - 1 && along[i + 1]! < wanted) i += 1;
    const share = (wanted - along[i]!) / (along[i + 1]! - along[i]!);
    return (2 * Math.PI * (i + share)) / fine;
  });
}
