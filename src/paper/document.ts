/**
 * A PDF that is drawn in millimetres from the upper left corner of each page. The writer (pdfkit)
 * and the type (DejaVu Sans: fractions and every Latin letter) are loaded with the first document.
 */
import type { DrawnSheet, Mark } from "./marks.ts";
import type { Ink } from "./pattern-sheet.ts";
import { wordsFromLeft } from "./reading-order.ts";
import type { Tile } from "./tiles.ts";
import { trace } from "./trace.ts";

const POINTS = 72 / 25.4;

export interface TextManner {
  readonly size: number;
  readonly align?: "left" | "middle" | "right";
  readonly bold?: boolean;
  /** The text is made smaller until it is at most this wide. */
  readonly within?: number;
}

/** Says how wide a line of words is, in millimetres. */
export interface Letters {
  measure(text: string, size: number, bold?: boolean): number;
}

/** A sheet of paper that is laid out and not yet drawn. Its number and the number of sheets are known only when it is drawn. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** Which part of a large drawing the sheet shows, if it shows one. */
  readonly tile?: Tile;
  draw(doc: PdfDocument, number: number, of: number): void;
}

export interface PdfDocument extends Letters {
  /** Begins a page of the size of the sheet. */
  page(sheet: Omit<Sheet, "draw">): void;
  /** Draws lines; x and y are added to every place. */
  ink(ink: Ink, x: number, y: number): void;
  line(x1: number, y1: number, x2: number, y2: number, width: number, dashes?: readonly number[]): void;
  box(x: number, y: number, width: number, height: number, line: number): void;
  /** A filled rectangle; 0 is black, 1 is white. */
  shade(x: number, y: number, width: number, height: number, grey: number): void;
  /** A line of words, y at its foot. */
  text(text: string, x: number, y: number, manner: TextManner): void;
  /** What is drawn until `unclip` is seen only inside this rectangle. */
  clip(x: number, y: number, width: number, height: number): void;
  unclip(): void;
  /** The signs for which the typeface has no letter; `□` is drawn instead. Control signs are given by their number: "U+0007". */
  missing(): string[];
  /** The sheets so far with everything on them, for a preview. */
  sheets(): readonly DrawnSheet[];
  bytes(): Promise<Uint8Array<ArrayBuffer>>;
}

/** `day` is the day that the document says it was made on. */
export async function newDocument(title: string, day: Date): Promise<PdfDocument> {
  const [{ default: Writer }, { regular, bold }] = await Promise.all([import("pdfkit"), typeFaces()]);
  const doc = new Writer({
    autoFirstPage: false,
    margin: 0,
    font: null as unknown as string,
    info: { Title: title, Creator: "Ellwand", Producer: "Ellwand", CreationDate: day },
  });
  // A viewer's print does not fit the pages to the paper unless it is asked to (ISO 32000-1, table 150).
  const { _root: catalog } = doc as unknown as { _root: { data: Record<string, unknown> } };
  catalog.data.ViewerPreferences = doc.ref({ PrintScaling: "None" });
  doc.registerFont("regular", regular);
  doc.registerFont("bold", bold);
  const chunks: Uint8Array[] = [];
  doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise<void>((resolve, reject) => {
    doc.on("end", resolve);
    doc.on("error", reject);
  });
  const lacking = new Set<string>();

  const choose = (size: number, bold: boolean) => doc.font(bold ? "bold" : "regular").fontSize(size);
  const has = (letter: string): boolean => {
    const { font } = (doc as unknown as { _font: { font: FontFile } })._font;
    return font.hasGlyphForCodePoint(letter.codePointAt(0)!);
  };
  /** The text as the chosen type can show it. */
  const drawable = (text: string): string =>
    [...text.replace(UNSEEN, "").replace(SPACES, " ")]
      .map((letter) => {
        const isFormless = FORMLESS.test(letter);
        if (!isFormless && has(letter)) return letter;
        lacking.add(isFormless ? signNumber(letter) : letter);
        return "□";
      })
      .join("");
  const sheets: (DrawnSheet & { readonly marks: Mark[] })[] = [];
  const put = (mark: Mark) => {
    sheets.at(-1)!.marks.push(mark);
    paint(doc, mark);
  };
  return {
    page({ width, height, tile }) {
      doc.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      doc.scale(POINTS);
      sheets.push({ width, height, tile, marks: [] });
    },
    ink: (ink, x, y) => put({ is: "ink", ink, x, y }),
    line: (x1, y1, x2, y2, width, dashes = []) =>
      put({ is: "line", from: [x1, y1], to: [x2, y2], width, dashes }),
    box: (x, y, width, height, line) => put({ is: "box", x, y, width, height, line }),
    shade: (x, y, width, height, grey) => put({ is: "shade", x, y, width, height, grey }),
    text(asked, x, y, { size, align = "left", bold = false, within = Infinity }) {
      choose(size, bold);
      const text = drawable(asked);
      if (text === "" || within <= 0) return;
      const whole = doc.widthOfString(text);
      const part = Math.min(1, within / whole);
      const wide = whole * part;
      const left = x - { left: 0, middle: 0.5, right: 1 }[align] * wide;
      const words = wordsFromLeft(text);
      if (!words) put({ is: "text", text, x: left, y, size: part * size, bold, wide });
      let at = left;
      for (const word of words ?? []) {
        const long = part * doc.widthOfString(word);
        if (word !== "") put({ is: "text", text: word, x: at, y, size: part * size, bold, wide: long });
        at += long + part * doc.widthOfString(" ");
      }
    },
    measure(text, size, isBold = false) {
      choose(size, isBold);
      return doc.widthOfString(drawable(text));
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

/** Signs that only steer how others are read: joiners, marks of direction, variants, soft hyphens. */
const UNSEEN = /[\p{Cf}]|\p{Variation_Selector}/gu;
const SPACES = /[\t\n\r\u00a0\u2028\u2029\u202f]/g;
const FORMLESS = /[\p{Cc}\p{Cs}\p{Co}\p{Cn}]/u;

const signNumber = (letter: string): string =>
  `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;

interface FontFile {
  hasGlyphForCodePoint(code: number): boolean;
}

/** The type of every document, as the bytes of its two font files. */
export async function typeFaces() {
  const [regular, bold] = await Promise.all([
    import("dejavu-fonts-ttf/ttf/DejaVuSans.ttf?inline"),
    import("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?inline"),
  ]);
  return { regular: fontBytes(regular.default), bold: fontBytes(bold.default) };
}

/** The bytes of a data address. */
function fontBytes(address: string): Uint8Array<ArrayBuffer> {
  const known = fonts.get(address);
  if (known) return known;
  const letters = atob(address.slice(address.indexOf(",") + 1));
  const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
  fonts.set(address, bytes);
  return bytes;
}

const fonts = new Map<string, Uint8Array<ArrayBuffer>>();
