/**
 * A PDF that is drawn in millimetres from the upper left corner of each page. The writer (pdfkit)
 * and the type (DejaVu Sans: fractions and every Latin letter) are loaded with the first document.
 */
import type { DrawnSheet, Mark } from "./marks.ts";
import type { Ink } from "./pattern-sheet.ts";
import { trace } from "./trace.ts";

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
  /** The sheets so far with everything on them, for a preview. */
  sheets(): readonly DrawnSheet[];
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

  const choose = (text: string, size: number, isBold: boolean) => {
    doc.font(isBold ? "bold" : "regular").fontSize(size);
    const { font } = (doc as unknown as { _font: { font: FontFile } })._font;
    for (const letter of text) if (!font.hasGlyphForCodePoint(letter.codePointAt(0)!)) lacking.add(letter);
  };
  const sheets: (DrawnSheet & { readonly marks: Mark[] })[] = [];
  const put = (mark: Mark) => {
    sheets.at(-1)!.marks.push(mark);
    paint(doc, mark);
  };
  return {
    page(width, height) {
      doc.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      doc.scale(POINTS);
      sheets.push({ width, height, marks: [] });
    },
    ink: (ink, x, y) => put({ is: "ink", ink, x, y }),
    line: (x1, y1, x2, y2, width, dashes = []) =>
      put({ is: "line", from: [x1, y1], to: [x2, y2], width, dashes }),
    box: (x, y, width, height, line) => put({ is: "box", x, y, width, height, line }),
    shade: (x, y, width, height, grey) => put({ is: "shade", x, y, width, height, grey }),
    text(text, x, y, { size, align = "left", bold = false, within = Infinity }) {
      choose(text, size, bold);
      const whole = doc.widthOfString(text);
      const part = Math.min(1, within / whole);
      const wide = whole * part;
      put({ is: "text", text, x: align === "middle" ? x - wide / 2 : x, y, size: part * size, bold, wide });
    },
    measure(text, size, isBold = false) {
      choose(text, size, isBold);
      return doc.widthOfString(text);
    },
    clip: (x, y, width, height) => put({ is: "clip", x, y, width, height }),
    unclip: () => put({ is: "unclip" }),
    sheets: () => sheets,
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

/** Draws a mark on the last page of the PDF. */
function paint(doc: PDFKit.PDFDocument, mark: Mark): void {
  const stroke = (width: number, dashes: readonly number[] = []) => {
    doc.lineWidth(width).lineJoin("round").strokeColor("black");
    if (dashes.length > 0) doc.dash(dashes[0]!, { space: dashes[1] ?? dashes[0]! });
    if (dashes.length > 2) doc.addContent(`[${dashes.join(" ")}] 0 d`);
    doc.stroke();
    if (dashes.length > 0) doc.undash();
  };
  switch (mark.is) {
    case "ink": {
      const { subpaths, width, dashes, filled } = mark.ink;
      for (const subpath of subpaths) trace(doc, subpath, mark.x, mark.y);
      if (filled) doc.fill("black");
      else stroke(width, dashes);
      return;
    }
    case "line":
      doc.moveTo(...mark.from).lineTo(...mark.to);
      stroke(mark.width, mark.dashes);
      return;
    case "box":
      doc.rect(mark.x, mark.y, mark.width, mark.height);
      stroke(mark.line);
      return;
    case "shade": {
      const part = Math.round(mark.grey * 255);
      doc.rect(mark.x, mark.y, mark.width, mark.height).fill([part, part, part]);
      return;
    }
    case "text":
      doc
        .font(mark.bold ? "bold" : "regular")
        .fontSize(mark.size)
        .fillColor("black");
      doc.text(mark.text, mark.x, mark.y, { lineBreak: false, baseline: "alphabetic" });
      return;
    case "clip":
      doc.save().rect(mark.x, mark.y, mark.width, mark.height).clip();
      return;
    case "unclip":
      doc.restore();
      return;
    default:
      mark satisfies never;
  }
}

interface FontFile {
  hasGlyphForCodePoint(code: number): boolean;
}

/** The bytes of a data address. */
function fontBytes(address: string): Uint8Array<ArrayBuffer> {
  const letters = atob(address.slice(address.indexOf(",") + 1));
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}
