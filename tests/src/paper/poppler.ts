/** A PDF as poppler sees it (Debian's poppler-utils), which has nothing to do with its writer nor with pdf.js. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A page in grey, its pixels from 0 (black) to 255. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

const MOST = 200 * 2 ** 20;

function poppler(command: string, args: readonly string[]): Buffer {
  const { status, stdout, stderr, error } = spawnSync(command, args, { maxBuffer: MOST });
  if (error)
    throw new Error(`${command} did not run: ${error.message}; npm test installs Debian's poppler-utils`);
  if (status !== 0 || stderr.length > 0) throw new Error(`${command}: ${stderr}`);
  return stdout;
}

/** Works on a PDF in a file of its own for as long as `act` takes. */
export function withPdf<T>(
  bytes: Uint8Array,
  act: (pdf: { text(): string; page(number: number, dpi: number): Raster }) => T,
): T {
  const folder = mkdtempSync(join(tmpdir(), "ellwand-pdf-"));
  const file = join(folder, "document.pdf");
  try {
    writeFileSync(file, bytes);
    return act({
      text: () => poppler("pdftotext", ["-layout", file, "-"]).toString("utf8"),
      page: (number, dpi) => {
        const one = String(number);
        return pgm(poppler("pdftoppm", ["-gray", "-r", String(dpi), "-f", one, "-l", one, file]));
      },
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A picture in the plain format that poppler writes: "P5", width, height, 255, then the pixels. */
function pgm(bytes: Buffer): Raster {
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString("latin1"))!;
  return { width: Number(width), height: Number(height), pixels: bytes.subarray(head.length) };
}

/**
 * The middles of the dark runs along a row (axis 0) or a column (axis 1) of pixels, weighed by
 * their darkness, in pixels from the left or upper border of the page, with how wide each is.
 */
export function darkRuns({ width, height, pixels }: Raster, axis: 0 | 1, at: number) {
  const length = axis === 0 ? width : height;
  const dark = (i: number): number => 1 - pixels[axis === 0 ? at * width + i : i * width + at]! / 255;
  const runs: { middle: number; wide: number }[] = [];
  let [sum, weighed] = [0, 0];
  for (let i = 0; i <= length; i += 1) {
    const ink = i < length ? dark(i) : 0;
    if (ink > 0.02) {
      sum += ink;
      weighed += ink * (i + 0.5);
    } else if (sum > 0) {
      runs.push({ middle: weighed / sum, wide: sum });
      [sum, weighed] = [0, 0];
    }
  }
  return runs;
}
