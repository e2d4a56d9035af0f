/** Damaged and hostile drawings: SVG and DXF files that no drawing program would write. */
import { readPiece, writePiece } from "../../../functions/pieces/piece.ts";
import { bookOfPieces } from "../../../src/exchange/outlines/piece-rows.ts";
import { readOutlines } from "../../../src/exchange/outlines/read-outlines.ts";
import { sized } from "../../../src/exchange/outlines/scale.ts";
import { define } from "../generator.ts";
import type { Random } from "../random.ts";

const FIGURES = ["0", "-0", "1", "-1", "7.5", "40", "1e-300", "1e-9", "1e9", "1e308", "1e999", "NaN", "Infinity", "--1", "1e", "", ".", "5%", "3em", "9mm"]; // biome-ignore format: a list
const TRANSFORMS = ["scale(0)", "scale(-1 1)", "matrix(1 0 0 0 0 0)", "matrix(1 2)", "rotate(1e308)", "translate(1e300 1e300)", "skewX(90)", "scale(1e-200)", "spin()", "rotate(45deg)", "none", "scale(1e150) scale(1e150)"]; // biome-ignore format: a list
const NAMES = ["=1+1", "\u202egnol", "a".repeat(5000), "&lt;script&gt;", "&#0;", "&bomb;", "__proto__", "constructor", "  ", "'; --", "😀"]; // biome-ignore format: a list
const LETTERS = "MmLlHhVvCcSsQqTtAaZz";

/** A figure of a sound drawing, now and then one that is not. */
const figure = (random: Random): string =>
  random.chance(0.02) ? random.pick(FIGURES) : String(Math.round(random.next() * 20_000) / 100);

function pathData(random: Random): string {
  if (random.chance(0.5)) {
    const count = random.pick([2, 3, 4, 12, 200]);
    const points = random.many(count, (i) => {
      const angle = (2 * Math.PI * i) / count;
      const out = 50 * (random.chance(0.3) ? random.next() : 1);
      return `${100 + out * Math.cos(angle)} ${100 + out * Math.sin(angle)}`;
    });
    return `M ${points.join(" L ")}${random.chance(0.7) ? " Z" : ""}`;
  }
  const commands = random.many(random.pick([1, 3, 8, 40]), () => {
    const letter = LETTERS[random.below(LETTERS.length)]!;
    const flags = (i: number) =>
      letter.toLowerCase() === "a" && (i === 3 || i === 4) ? "1" : figure(random);
    return `${letter} ${random.many(random.pick([0, 1, 2, 4, 6, 7]), flags).join(" ")}`;
  });
  return `M 10 10 ${commands.join(" ")}`;
}

function attributes(random: Random): string {
  const some = [
    () => `transform="${random.chance(0.5) ? random.pick(TRANSFORMS) : `rotate(${figure(random)})`}"`,
    () => `id="${random.pick([...NAMES, "a", "b", "c"])}"`,
    () =>
      `style="${random.pick(["display:none", "transform: scale(2)", "zoom: 3", "}}{{;;:::", "d: path('M0 0')"])}"`,
    () => `onclick="alert(1)"`,
    () => `data-ellwand-piece="${random.pick(["M 0 0 L 1 0 L 1 1 Z", "M 0 0 | edges", "x", ""])}"`,
    () => `viewBox="${random.many(4, () => figure(random)).join(" ")}"`,
    () => `preserveAspectRatio="${random.pick(["none", "xMaxYMin slice", "xMidYMid", "?"])}"`,
  ];
  return random.many(random.below(3), () => random.pick(some)()).join(" ");
}

function shape(random: Random, depth: number): string {
  const inside = () =>
    depth > 0 ? random.many(random.below(4), () => shape(random, depth - 1)).join("") : "";
  const own = attributes(random);
  switch (random.below(11)) {
    case 0:
      return `<g ${own}>${inside()}</g>`;
    case 1:
      return `<svg ${own} width="${figure(random)}" height="${figure(random)}">${inside()}</svg>`;
    case 2:
      return `<use ${own} href="#${random.pick(["a", "b", "c", "gone", "%"])}" x="${figure(random)}"/>`;
    case 3:
      return `<symbol ${own}>${inside()}</symbol>`;
    case 4:
      return `<rect ${own} x="${figure(random)}" y="${figure(random)}" width="${figure(random)}" height="${figure(random)}" rx="${figure(random)}"/>`;
    case 5:
      return `<ellipse ${own} cx="${figure(random)}" cy="${figure(random)}" rx="${figure(random)}" ry="${figure(random)}"/>`;
    case 6:
      return `<polygon ${own} points="${random.many(random.between(1, 12), () => figure(random)).join(random.pick([" ", ",", " , "]))}"/>`;
    case 7:
      return random.pick(["<script>alert(1)</script>", "<text>x</text>", "<style>rect{display:none}</style>", "<image href='http://example.org/x'/>", "<foreignObject><p/></foreignObject>"]); // biome-ignore format: a list
    case 8:
      return `<line ${own} x1="${figure(random)}" y1="${figure(random)}" x2="${figure(random)}" y2="${figure(random)}"/>`;
    default:
      return `<path ${own} d="${pathData(random)}"/>`;
  }
}

function svg(random: Random): string {
  const size = random.pick(['width="200mm" height="200mm"', 'width="8in"', "", 'width="100%"', `width="${figure(random)}mm" height="${figure(random)}"`]); // biome-ignore format: a list
  const entities = random.chance(0.05)
    ? '<!DOCTYPE svg [<!ENTITY bomb "&bomb;&bomb;"><!ENTITY x SYSTEM "file:///x">]>'
    : "";
  const shapes = random.many(random.pick([1, 3, 10, 60]), () => shape(random, 4)).join("\n");
  return `${entities}<svg xmlns="http://www.w3.org/2000/svg" ${size} ${attributes(random)}>${shapes}</svg>`;
}

function dxf(random: Random): string {
  const code = () => random.pick([0, 5, 8, 10, 20, 40, 41, 42, 50, 51, 62, 70, 71, 73, 210, 230, 999]);
  const entity = () => {
    const type = random.pick(["LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE", "VERTEX", "SPLINE", "INSERT", "TEXT", "constructor", "HATCH"]); // biome-ignore format: a list
    const usual = [
      10,
      figure(random),
      20,
      figure(random),
      11,
      figure(random),
      21,
      figure(random),
      40,
      figure(random),
      2,
      "a",
    ];
    const odd = random.many(random.below(6), () => [code(), figure(random)]).flat();
    return [0, type, 8, random.pick(NAMES.filter((name) => !name.includes("\n"))), ...usual, ...odd];
  };
  const entities = random.many(random.pick([1, 4, 30]), entity).flat();
  const block = [0, "BLOCK", 2, "a", 10, "0", 20, "0", ...entity(), 0, "ENDBLK"];
  const lines = [0, "SECTION", 2, "HEADER", 9, "$INSUNITS", 70, figure(random), 0, "ENDSEC", 0, "SECTION", 2, "BLOCKS", ...block, 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES", ...entities, 0, "ENDSEC", 0, "EOF"]; // biome-ignore format: the groups of a file
  return lines.join("\n");
}

/** A piece of the text lost, doubled, or another sign in its place. */
function damaged(random: Random, text: string): string {
  const at = random.below(text.length);
  const end = at + random.below(30);
  const sign = random.pick(["<", ">", "&", '"', "\u0000", "\n", "9", "]]>", "<!--", "é"]);
  return random.pick([
    text.slice(0, at),
    text.slice(0, at) + text.slice(end),
    text.slice(0, end) + text.slice(at),
    text.slice(0, at) + sign + text.slice(at + 1),
  ]);
}

export const generator = define<string>({
  name: "drawings",
  about: "damaged SVG and DXF files: sound pieces that a book keeps, or a refusal in one sentence",
  make(random) {
    const whole = random.chance(0.7) ? svg(random) : dxf(random);
    return random.chance(0.3) ? damaged(random, whole) : whole;
  },
  attempt(text) {
    const found = readOutlines(new TextEncoder().encode(text), "marks");
    if ("refusal" in found) return unsound(found.refusal);
    for (const { name, piece, said } of found.pieces) {
      if (name.length === 0 || name.length > 70 || /[\p{Cc}\p{Cf}]/u.test(name) || /^[=+@-]/.test(name))
        return `the name ${JSON.stringify(name)}`;
      const written = writePiece(piece);
      if (/NaN|Infinity/.test(written)) return `${name} has no figures: ${written.slice(0, 80)}`;
      if (writePiece(readPiece(written)).length === 0) return `${name} is not read again`;
      for (const sentence of said) if (unsound(sentence)) return unsound(sentence);
    }
    for (const sentence of found.said) if (unsound(sentence)) return unsound(sentence);
    const pieces = found.pieces.map(({ name, piece, said }) => ({
      name,
      piece: sized(piece, 0.1, 30),
      said,
    }));
    try {
      bookOfPieces("Attacked", "cm", pieces);
    } catch (reason) {
      const { message } = reason as Error;
      return /for one cell|into a cell/.test(message) ? unsound(message) : message;
    }
    return null;
  },
});

/** A sentence is one line that a person can read; what it quotes may be anything on a line. */
const unsound = (sentence: string): string | null =>
  sentence.length > 5 &&
  sentence.length < 700 &&
  !/[\n\r]/.test(sentence) &&
  !/NaN|undefined|\[object/.test(sentence.replace(/"[^"]*"|“[^”]*”/g, ""))
    ? null
    : `no sentence: ${sentence.slice(0, 300)}`;
