/**
 * A PDF that is drawn in millimetres from the upper left corner of each page. The writer (pdfkit)
 * and the type (DejaVu Sans: fractions and every Latin letter) are loaded with the first document.
 */
import { arcCurves, type Subpath } from "../../functions/geometry/path.ts";
import type { Stroke } from "../../functions/geometry/strokes.ts";
import type { Ink } from "./pattern-sheet.ts";

const POINTS = 72 / 25.4;

export interface TextManner {
  readonly size: number;
  readonly align?: "left" | "middle";
  readonly bold?: boolean;
  /** The text is made smaller until it is at most this wide. */
  readonly within?: number;
}

export interface PdfDocument {
  /** Begins a page of this size. */
  page(width: number, height: number): void;
  /** Draws lines; x and y are added to every place. */
  ink(ink: Ink, x: number, y: number): void;
  line(x1: number, y1: number, x2: number, y2: number, width: number, dashes?: readonly number[]): void;
  box(x: number, y: number, width: number, height: number, line: number): void;
  /** A filled rectangle; 0 is black, 1 is white. */
  shade(x: number, y: number, width: number, height: number, grey: number): void;
  /** A line of words, y at its foot. */
  text(text: string, x: number, y: number, manner: TextManner): void;
  /** How wide a line of words is. */
  measure(text: string, size: number, bold?: boolean): number;
  /** What is drawn until `unclip` is seen only inside this rectangle. */
  clip(x: number, y: number, width: number, height: number): void;
  unclip(): void;
  /** Letters that the type does not have: they stand as empty boxes. */
  missing(): string[];
  bytes(): Promise<Uint8Array>;
}

/** `day` is the day that the document says it was made on. */
export async function newDocument(title: string, day: Date): Promise<PdfDocument> {
  const [{ default: Writer }, regular, bold] = await Promise.all([
    import("pdfkit"),
    import("dejavu-fonts-ttf/ttf/DejaVuSans.ttf?inline"),
    import("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?inline"),
  ]);
  const doc = new Writer({
    autoFirstPage: false,
    margin: 0,
    font: null as unknown as string,
    info: { Title: title, Creator: "Ellwand", Producer: "Ellwand", CreationDate: day },
  });
  doc.registerFont("regular", fontBytes(regular.default));
  doc.registerFont("bold", fontBytes(bold.default));
  const chunks: Uint8Array[] = [];
  doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise<void>((resolve, reject) => {
    doc.on("end", resolve);
    doc.on("error", reject);
  });
  const lacking = new Set<string>();

  const stroke = (width: number, dashes: readonly number[] = []) => {
    doc.lineWidth(width).lineJoin("round").strokeColor("black");
    if (dashes.length > 0) doc.dash(dashes[0]!, { space: dashes[1] ?? dashes[0]! });
    if (dashes.length > 2) doc.addContent(`[${dashes.join(" ")}] 0 d`);
    doc.stroke();
    if (dashes.length > 0) doc.undash();
  };
  const choose = (text: string, size: number, isBold: boolean) => {
    doc.font(isBold ? "bold" : "regular").fontSize(size);
    const { font } = (doc as unknown as { _font: { font: FontFile } })._font;
    for (const letter of text) if (!font.hasGlyphForCodePoint(letter.codePointAt(0)!)) lacking.add(letter);
  };
  return {
    page(width, height) {
      doc.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      doc.scale(POINTS);
    },
    ink({ subpaths, width, dashes, filled }, x, y) {
      for (const subpath of subpaths) trace(doc, subpath, x, y);
      if (filled) doc.fill("black");
      else stroke(width, dashes);
    },
    line(x1, y1, x2, y2, width, dashes) {
      doc.moveTo(x1, y1).lineTo(x2, y2);
      stroke(width, dashes);
    },
    box(x, y, width, height, line) {
      doc.rect(x, y, width, height);
      stroke(line);
    },
    shade(x, y, width, height, grey) {
      const part = Math.round(grey * 255);
      doc.rect(x, y, width, height).fill([part, part, part]);
    },
    text(text, x, y, { size, align = "left", bold: isBold = false, within = Infinity }) {
      choose(text, size, isBold);
      const wide = doc.widthOfString(text);
      const small = Math.min(1, within / wide) * size;
      doc.fontSize(small).fillColor("black");
      const left = align === "middle" ? x - (wide * small) / size / 2 : x;
      doc.text(text, left, y, { lineBreak: false, baseline: "alphabetic" });
    },
    measure(text, size, isBold = false) {
      choose(text, size, isBold);
      return doc.widthOfString(text);
    },
    clip(x, y, width, height) {
      doc.save().rect(x, y, width, height).clip();
    },
    unclip: () => void doc.restore(),
    missing: () => [...lacking],
    async bytes() {
      doc.end();
      await ended;
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      return whole;
    },
  };
}

interface FontFile {
  hasGlyphForCodePoint(code: number): boolean;
}

/** Arcs become curves over at most 15 degrees, which stray less than a ten-millionth of the radius. */
const MOST_ARC = Math.PI / 12;

interface Path {
  moveTo(x: number, y: number): unknown;
  lineTo(x: number, y: number): unknown;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): unknown;
  closePath(): unknown;
}

function trace(doc: Path, { start, edges, closed }: Subpath, x: number, y: number): void {
  const draw = (one: Stroke): void => {
    if (one.kind === "arc") for (const curve of arcCurves(one, MOST_ARC)) draw(curve);
    else if (one.kind === "line") doc.lineTo(one.to[0] + x, one.to[1] + y);
    else {
      const [c1, c2, to] = [one.c1, one.c2, one.to];
      doc.bezierCurveTo(c1[0] + x, c1[1] + y, c2[0] + x, c2[1] + y, to[0] + x, to[1] + y);
    }
  };
  doc.moveTo(start[0] + x, start[1] + y);
  for (const one of edges.flat()) draw(one);
  if (closed) doc.closePath();
}

/** The bytes of a data address. */
function fontBytes(address: string): Uint8Array<ArrayBuffer> {
  const letters = atob(address.slice(address.indexOf(",") + 1));
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}
