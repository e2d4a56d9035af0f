/** A PDF read back by a reader that has nothing to do with its writer (pdf.js): lines and words in millimetres. */
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

type Point = readonly [x: number, y: number];

export interface DrawnPath {
  /** Runs of points; curves are chords, 64 to each curve. */
  readonly runs: readonly (readonly Point[])[];
  readonly width: number;
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly DrawnPath[];
  readonly text: string;
}

const NO_LINES = { fnArray: [] as number[], argsArray: [] as unknown[][] };

const MM = 25.4 / 72;
const CHORDS = 64;

/** With `words` alone no lines are read, which takes most of the time. */
export async function readPdf(bytes: Uint8Array, { words = false } = {}): Promise<ReadPage[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const pdf = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [, , wide, tall] = page.view as [number, number, number, number];
    const { fnArray, argsArray } = words ? NO_LINES : await page.getOperatorList();
    const { items } = await page.getTextContent();
    const text = items.map((item) => ("str" in item ? item.str : "")).join("\n");
    let now = { matrix: [1, 0, 0, 1, 0, 0], width: 1 };
    const kept: (typeof now)[] = [];
    const paths: DrawnPath[] = [];
    fnArray.forEach((code, i) => {
      const args = argsArray[i];
      if (code === OPS.save) kept.push({ ...now });
      else if (code === OPS.restore) now = kept.pop()!;
      else if (code === OPS.setLineWidth) now.width = args[0];
      else if (code === OPS.transform) {
        const [a, b, c, d, e, f] = args as number[];
        const [A, B, C, D, E, F] = now.matrix as [number, number, number, number, number, number];
        now.matrix = [
          ...[A * a! + C * b!, B * a! + D * b!, A * c! + C * d!, B * c! + D * d!],
          ...[A * e! + C * f! + E, B * e! + D * f! + F],
        ];
      } else if (code === OPS.constructPath && args[0] === OPS.stroke) {
        const [A, B, C, D, E, F] = now.matrix as [number, number, number, number, number, number];
        const place = (x: number, y: number): Point => [
          (A * x + C * y + E) * MM,
          (tall - (B * x + D * y + F)) * MM,
        ];
        paths.push({ runs: runsOf(args[1][0], place), width: now.width * Math.hypot(A, B) * MM });
      }
    });
    pages.push({ width: wide * MM, height: tall * MM, paths, text });
  }
  await task.destroy();
  return pages;
}

/** Path data of pdf.js: 0 move, 1 line, 2 curve, 4 close, each with its coordinates. */
function runsOf(data: ArrayLike<number>, place: (x: number, y: number) => Point): Point[][] {
  const runs: Point[][] = [];
  let at: Point = [0, 0];
  for (let i = 0; i < data.length; ) {
    const code = data[i]!;
    const n = (k: number) => data[i + k]!;
    if (code === 0) {
      at = [n(1), n(2)];
      runs.push([place(...at)]);
    } else if (code === 1) {
      at = [n(1), n(2)];
      runs.at(-1)!.push(place(...at));
    } else if (code === 2) {
      const [p, q, r, s] = [at, [n(1), n(2)], [n(3), n(4)], [n(5), n(6)]] as [Point, Point, Point, Point];
      for (let k = 1; k <= CHORDS; k += 1) {
        const t = k / CHORDS;
        const along = (axis: 0 | 1) =>
          (1 - t) ** 3 * p[axis] +
          3 * (1 - t) ** 2 * t * q[axis] +
          3 * (1 - t) * t ** 2 * r[axis] +
          t ** 3 * s[axis];
        runs.at(-1)!.push(place(along(0), along(1)));
      }
      at = s;
    } else if (code === 4) runs.at(-1)!.push(runs.at(-1)![0]!);
    i += code === 4 ? 1 : code === 2 ? 7 : 3;
  }
  return runs;
}
