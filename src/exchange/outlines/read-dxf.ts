/**
 * The lines of a DXF file: LINE, ARC, CIRCLE, ELLIPSE, LWPOLYLINE and POLYLINE with bulges, SPLINE, and
 * blocks put in with INSERT. The groups of the file are read by the library dxf; of it only the reader is
 * used. Group codes and units: the DXF reference, "ENTITIES section" and "$INSUNITS". y points up there
 * and down here.
 */

import parser from "dxf/lib/parseString.js";
import logging from "dxf/lib/util/logger.js";
import { phrase, plural } from "../../../functions/phrase.ts";
import { enlarged, type Matrix, moved, times } from "./affine.ts";
import { type Drawing, type DrawnLine, linesOf, MOST_STROKES } from "./drawn-lines.ts";
import { type DxfEntity, figure, pathOfEntity, planeOf } from "./dxf-entities.ts";
import { plainName, roleIn } from "./names.ts";

/** Millimetres in each unit of $INSUNITS that a pattern may be drawn in. */
const UNITS: Readonly<Record<number, readonly [millimetres: number, name: string]>> = {
  1: [25.4, "inches"],
  2: [304.8, "feet"],
  4: [1, "millimetres"],
  5: [10, "centimetres"],
  6: [1000, "metres"],
  8: [25.4e-6, phrase`millionths of an inch`],
  9: [0.0254, phrase`thousandths of an inch`],
  10: [914.4, "yards"],
  13: [0.001, phrase`thousandths of a millimetre`],
  14: [100, "decimetres"],
};

interface DxfFile {
  readonly header: { readonly insUnits?: number };
  readonly blocks: readonly {
    readonly name?: string;
    readonly x?: number;
    readonly y?: number;
    readonly entities?: readonly DxfEntity[];
  }[];
  readonly entities: readonly DxfEntity[];
}

const parseString = "default" in parser ? parser.default : parser;

// The library prints on the console what it passes over; what is left out is said to the maker instead.
("default" in logging ? logging.default : logging).error = () => {};

const DEEPEST = 20;
const MOST_ENTITIES = 200_000;

/** Why the whole file is refused; caught in readDxf. */
class TooMuch extends Error {}

/** Reads the text of a DXF file, or says in a sentence why it is refused. */
export function readDxf(text: string): Drawing | { readonly refusal: string } {
  let file: DxfFile;
  try {
    file = parseString(text) as DxfFile;
  } catch {
    return { refusal: phrase`it is not a valid DXF file: its groups are not pairs of a code and a value` };
  }
  const reader = new Reader(file);
  try {
    return reader.read(text);
  } catch (reason) {
    if (reason instanceof TooMuch) return { refusal: reason.message };
    return { refusal: phrase`it is not a valid DXF file: numbers are missing in a part of it` };
  }
}

class Reader {
  readonly #file: DxfFile;
  readonly #blocks: ReadonlyMap<string, DxfFile["blocks"][number]>;
  readonly #lines: DrawnLine[] = [];
  readonly #ignored = new Map<string, number>();
  readonly #leftOut: string[] = [];
  #entities = 0;
  #splineFit = false;
  #strokes = 0;

  constructor(file: DxfFile) {
    this.#file = file;
    this.#blocks = new Map(file.blocks.map((block) => [block.name ?? "", block]));
  }

  read(text: string): Drawing {
    if (hasSplineFit(text)) this.#splineFit = true;
    const unit = UNITS[this.#file.header.insUnits ?? 0];
    this.#draw(this.#file.entities, enlarged(1, -1), "", 0);
    const known = new Set([...this.#file.entities.map(({ type }) => type), "VERTEX", "SEQEND"]);
    for (const type of namesOfEntities(text)) if (!known.has(type)) this.#count(type);
    return {
      lines: this.#lines,
      millimetres: unit?.[0] ?? null,
      size: unit
        ? phrase`The file says that it is drawn in ${unit[1]}.`
        : phrase`The file does not say in what unit it is drawn.`,
      said: this.#said(),
    };
  }

  #count(type: string): void {
    this.#ignored.set(type, (this.#ignored.get(type) ?? 0) + 1);
  }

  #draw(entities: readonly DxfEntity[], matrix: Matrix, name: string, depth: number): void {
    for (const entity of entities) {
      this.#entities += 1;
      if (this.#entities > MOST_ENTITIES)
        throw new TooMuch(
          phrase`it has more than ${MOST_ENTITIES.toLocaleString("en")} parts; cut it into several files`,
        );
      if (entity.visible === false || entity.paperSpace) this.#count("hidden");
      else if (entity.type === "INSERT") this.#insert(entity, matrix, name, depth);
      else this.#line(entity, matrix, name);
    }
  }

  #line(entity: DxfEntity, matrix: Matrix, name: string): void {
    const layer = plainName(String(entity.layer ?? ""));
    try {
      if (entity.type === "POLYLINE" && this.#splineFit)
        throw new Error(
          phrase`a POLYLINE of the file is fitted with a spline, and its spline points can't be distinguished from plain points; convert it to a SPLINE or a plain polyline`,
        );
      const path = pathOfEntity(entity);
      if (path === null) {
        this.#count(entity.type);
        return;
      }
      const role = roleIn(String(entity.layer ?? ""));
      for (const line of linesOf(path.d, times(matrix, path.matrix))) {
        this.#strokes += line.strokes.length;
        if (this.#strokes > MOST_STROKES)
          throw new TooMuch(
            phrase`it has more than ${MOST_STROKES.toLocaleString("en")} points; simplify its lines in the program it was made with`,
          );
        this.#lines.push({ ...line, name: name || layer, ...(role && { role }) });
      }
    } catch (reason) {
      if (reason instanceof TooMuch) throw reason;
      this.#leftOut.push(
        layer
          ? phrase`${entity.type} on the layer “${layer}” is left out: ${(reason as Error).message}.`
          : phrase`${entity.type} is left out: ${(reason as Error).message}.`,
      );
    }
  }

  /** A block put in, or rows and columns of it. */
  #insert(entity: DxfEntity, matrix: Matrix, name: string, depth: number): void {
    const block = this.#blocks.get(String(entity.block ?? ""));
    if (!block?.entities) {
      this.#count("INSERT");
      return;
    }
    if (depth >= DEEPEST)
      throw new TooMuch(phrase`its blocks lie more than ${DEEPEST} deep in one another, or one holds itself`);
    const of = (field: string, otherwise: number) => figure(entity, field, otherwise);
    const angle = (of("rotation", 0) * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const inside = times(
      [cos, sin, -sin, cos, 0, 0],
      times(enlarged(of("scaleX", 1), of("scaleY", 1)), moved(-(block.x ?? 0), -(block.y ?? 0))),
    );
    const rows = Math.max(1, of("rowCount", 1));
    const columns = Math.max(1, of("columnCount", 1));
    for (let row = 0; row < rows; row += 1)
      for (let column = 0; column < columns; column += 1) {
        const [across, up] = [column * of("columnSpacing", 0), row * of("rowSpacing", 0)];
        const at = moved(of("x", 0) + cos * across - sin * up, of("y", 0) + sin * across + cos * up);
        this.#draw(
          block.entities,
          times(times(matrix, planeOf(entity)), times(at, inside)),
          plainName(block.name ?? "") || name,
          depth + 1,
        );
        this.#entities += 1;
      }
  }

  #said(): string[] {
    const { size } = this.#ignored;
    const kinds = [...this.#ignored]
      .slice(0, 8)
      .map(([type, count]) => (count === 1 ? type : `${count} × ${type}`));
    const more = this.#leftOut.length - 5;
    return [
      ...this.#leftOut.slice(0, 5),
      ...(more > 0 ? [phrase`${plural(more, "# more part is", "# more parts are")} left out.`] : []),
      ...(size > 0
        ? [
            size > 8
              ? phrase`Everything but lines is ignored: ${kinds.join(", ")} and others.`
              : phrase`Everything but lines is ignored: ${kinds.join(", ")}.`,
          ]
        : []),
    ];
  }
}

/** The types of what stands in the section ENTITIES, which the library passes over when it does not know them. */
function namesOfEntities(text: string): string[] {
  const begin = text.search(/^\s*2\r?\n\s*ENTITIES\s*$/m);
  if (begin < 0) return [];
  const end = text.indexOf("ENDSEC", begin);
  const section = text.slice(begin, end < 0 ? undefined : end);
  return [...section.matchAll(/^\s*0\r?\n\s*([A-Z][A-Z0-9_]+)\s*$/gm)].map(([, type]) => type!);
}

/** Whether an old polyline is fitted with a spline (bit 4 of its flags): then the points of its frame stand among its points. */
const hasSplineFit = (text: string): boolean =>
  [...text.matchAll(/^\s*0\r?\nPOLYLINE\s*\r?\n(?:(?!\s*0\r?\n).*\r?\n.*\r?\n)*?\s*70\r?\n\s*(\d+)/gm)].some(
    ([, flags]) => (Number(flags) & 4) !== 0,
  );
