/** The basic shapes of SVG as path data (W3C SVG 2, chapter 10: each shape's "equivalent path"). */
import { phrase } from "../../../functions/phrase.ts";
import { readLength } from "./svg-lengths.ts";

/** The room that percentages are of, in user units. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** An attribute or a CSS property of an element; undefined when it has none. */
export type Property = (name: string) => string | undefined;

/** Elements that draw a line. */
export const SHAPES: ReadonlySet<string> = new Set([
  "path",
  "polygon",
  "polyline",
  "line",
  "rect",
  "circle",
  "ellipse",
]);

/** A length of an element in user units, `otherwise` when it has none or it is "auto". Throws an Error with a sentence. */
export function lengthOf(
  property: Property,
  room: Room,
  name: string,
  along: "width" | "height" | "both",
  otherwise: number,
): number {
  const text = property(name);
  if (text === undefined || text.trim() === "auto") return otherwise;
  const { value, unit } = readLength(text);
  if (unit !== "%") return value;
  if (along !== "both") return value * room[along];
  // Percentages of neither direction are of the diagonal over √2 (SVG 2, 8.9).
  return value * Math.sqrt((room.width ** 2 + room.height ** 2) / 2);
}

const ACROSS = "width";
const DOWN = "height";

/** The path data of a shape; empty when it has no extent. Throws an Error with a sentence when its figures can't be read. */
export function pathData(shape: string, property: Property, room: Room): string {
  const of = (name: string, along: "width" | "height" | "both") => lengthOf(property, room, name, along, 0);
  switch (shape) {
    case "path":
      return property("d") ?? "";
    case "polygon":
    case "polyline":
      return throughPoints(property("points") ?? "", shape === "polygon");
    case "line":
      return `M ${of("x1", ACROSS)} ${of("y1", DOWN)} L ${of("x2", ACROSS)} ${of("y2", DOWN)}`;
    case "rect":
      return rectangle(property, room);
    case "circle": {
      const r = of("r", "both");
      return oval(of("cx", ACROSS), of("cy", DOWN), r, r);
    }
    default: {
      const rx = lengthOf(property, room, "rx", ACROSS, Number.NaN);
      const ry = lengthOf(property, room, "ry", DOWN, Number.NaN);
      return oval(of("cx", ACROSS), of("cy", DOWN), either(rx, ry), either(ry, rx));
    }
  }
}

/** A radius that is left out is as long as the other. */
const either = (own: number, other: number): number => (Number.isNaN(own) ? other || 0 : own);

const POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/i;

function throughPoints(text: string, closed: boolean): string {
  const figures: string[] = [];
  let rest = text.trim();
  while (rest !== "") {
    const found = POINT.exec(rest);
    if (!found) throw new Error(phrase`its points make no sense from "${rest.slice(0, 16)}" on`);
    figures.push(found[0]);
    rest = rest.slice(found[0].length).replace(/^\s*,?\s*/, "");
  }
  if (figures.length % 2 === 1)
    throw new Error(phrase`its points have ${figures.length} figures, and each point needs two`);
  if (figures.length < 4) return "";
  return `M ${figures[0]} ${figures[1]} L ${figures.slice(2).join(" ")}${closed ? " Z" : ""}`;
}

function rectangle(property: Property, room: Room): string {
  const of = (name: string, along: "width" | "height", otherwise: number) =>
    lengthOf(property, room, name, along, otherwise);
  const [x, y, w, h] = [of("x", ACROSS, 0), of("y", DOWN, 0), of("width", ACROSS, 0), of("height", DOWN, 0)];
  if (!(w > 0 && h > 0)) return "";
  const [own, other] = [of("rx", ACROSS, Number.NaN), of("ry", DOWN, Number.NaN)];
  const rx = Math.min(Math.max(0, either(own, other)), w / 2);
  const ry = Math.min(Math.max(0, either(other, own)), h / 2);
  if (rx === 0 || ry === 0) return `M ${x} ${y} H ${x + w} V ${y + h} H ${x} Z`;
  const turn = `A ${rx} ${ry} 0 0 1`;
  return [
    `M ${x + rx} ${y} H ${x + w - rx} ${turn} ${x + w} ${y + ry}`,
    `V ${y + h - ry} ${turn} ${x + w - rx} ${y + h} H ${x + rx} ${turn} ${x} ${y + h - ry}`,
    `V ${y + ry} ${turn} ${x + rx} ${y} Z`,
  ].join(" ");
}

function oval(cx: number, cy: number, rx: number, ry: number): string {
  if (!(rx > 0 && ry > 0)) return "";
  const quarter = `A ${rx} ${ry} 0 0 1`;
  return `M ${cx + rx} ${cy} ${quarter} ${cx} ${cy + ry} ${quarter} ${cx - rx} ${cy} ${quarter} ${cx} ${cy - ry} ${quarter} ${cx + rx} ${cy} Z`;
}
