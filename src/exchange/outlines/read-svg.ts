/**
 * The lines of an SVG file (W3C SVG 2), without a browser: shapes, groups, transforms, view boxes, nested
 * drawings, and `use` of what stands in the same file. Nothing is run, nothing is fetched; what is not a
 * line is counted and said.
 */
import { phrase } from "../../../functions/phrase.ts";
import { ROLES, type Role } from "../../../functions/pieces/piece.ts";
import { type Matrix, moved, times } from "./affine.ts";
import { type Drawing, type DrawnLine, linesOf, MOST_STROKES } from "./drawn-lines.ts";
import { Ignored } from "./ignored.ts";
import { plainName, roleIn } from "./names.ts";
import { MOST_ELEMENTS, readElements, type SvgElement } from "./svg-elements.ts";
import { intoRoom, readViewBox } from "./svg-lengths.ts";
import { pageOf } from "./svg-page.ts";
import { lengthOf, type Property, pathData, type Room, SHAPES } from "./svg-shapes.ts";
import { isHidden, propertyOf, transformOf } from "./svg-style.ts";

/** What an element gets from those it stands in. */
interface Around {
  readonly matrix: Matrix;
  readonly room: Room;
  readonly name: string;
  readonly visible: boolean;
  /** The elements that `use` has led through, the last one first. */
  readonly used: readonly SvgElement[];
  readonly depth: number;
}

const DEEPEST = 200;

/** Why the whole file is refused; caught in readSvg. */
class TooMuch extends Error {}

/** Reads an SVG file's text, or says in a sentence why it is refused. */
export function readSvg(text: string): Drawing | { readonly refusal: string } {
  const root = readElements(text);
  if ("refusal" in root) return root;
  const reader = new Reader(root);
  try {
    return reader.read();
  } catch (reason) {
    return { refusal: (reason as Error).message };
  }
}

class Reader {
  readonly #root: SvgElement;
  readonly #lines: DrawnLine[] = [];
  readonly #ignored = new Ignored();
  readonly #byId = new Map<string, SvgElement>();
  #elements = 0;
  #strokes = 0;

  constructor(root: SvgElement) {
    this.#root = root;
  }

  read(): Drawing {
    this.#index(this.#root, 0);
    const { matrix, room, millimetres, size, page, isStretched } = pageOf(this.#root);
    if (isStretched) this.#ignored.note("stretched");
    this.#children(this.#root, { matrix, room, name: "", visible: true, used: [], depth: 0 });
    return { lines: this.#lines, millimetres, size, page, said: this.#ignored.sentences() };
  }

  /** Notes every id before the lines are read, since `use` may name what comes later. */
  #index(element: SvgElement, depth: number): void {
    this.#count(depth);
    const id = element.attribute("id");
    if (id !== undefined && !this.#byId.has(id)) this.#byId.set(id, element);
    for (const child of element.children) this.#index(child, depth + 1);
  }

  #count(depth: number): void {
    this.#elements += 1;
    if (depth > DEEPEST)
      throw new TooMuch(phrase`its groups lie more than ${DEEPEST} deep in one another; ungroup them`);
    // Once for the ids, once for the lines.
    if (this.#elements > 2 * MOST_ELEMENTS)
      throw new TooMuch(
        phrase`it has more than ${MOST_ELEMENTS.toLocaleString("en")} elements; cut it into parts`,
      );
  }

  #children(element: SvgElement, around: Around): void {
    for (const child of element.children) this.#draw(child, around);
  }

  #draw(element: SvgElement, around: Around): void {
    this.#count(around.depth);
    const { name } = element;
    if (this.#ignored.element(element)) return;
    const isGroup = name === "g" || name === "a" || name === "switch" || name === "svg" || name === "use";
    if (!isGroup && !SHAPES.has(name)) return;
    const property = propertyOf(element);
    if (isHidden(property)) {
      this.#ignored.note("hidden");
      return;
    }
    if (element.attribute("data-ellwand") === "aid") return;
    const visibility = property("visibility")?.trim();
    const visible =
      visibility === undefined || visibility === "inherit" ? around.visible : visibility === "visible";
    const own = nameOf(element);
    const title = plainName(own);
    const inside = { ...around, visible, name: title || around.name, depth: around.depth + 1 };
    try {
      const matrix = times(around.matrix, transformOf(element, property));
      if (isGroup) {
        this.#group(element, property, { ...inside, matrix });
        return;
      }
      if (!visible) {
        this.#ignored.note("hidden");
        return;
      }
      this.#shape(element, property, { ...inside, matrix }, own);
    } catch (reason) {
      if (reason instanceof TooMuch) throw reason;
      this.#ignored.leaveOut(name, title || around.name, (reason as Error).message);
    }
  }

  #group(element: SvgElement, property: Property, around: Around): void {
    if (element.name === "svg") {
      this.#nested(element, property, around, property);
      return;
    }
    if (element.name === "use") {
      this.#use(element, property, around);
      return;
    }
    if (element.name !== "switch") {
      this.#children(element, around);
      return;
    }
    // The first branch that is not foreign to SVG (SVG 2, 5.9).
    const first = element.children.find(
      (child) =>
        (SHAPES.has(child.name) || child.name === "g" || child.name === "svg" || child.name === "use") &&
        child.attribute("requiredExtensions") === undefined,
    );
    if (first) this.#draw(first, around);
  }

  /** A drawing within the drawing; `sized` says how large it is, which for a symbol is the element that uses it. */
  #nested(element: SvgElement, property: Property, around: Around, sized: Property): void {
    const { room } = around;
    const isSymbol = element.name === "symbol";
    const [x, y] = isSymbol
      ? [0, 0]
      : [lengthOf(property, room, "x", "width", 0), lengthOf(property, room, "y", "height", 0)];
    const width = lengthOf(
      sized,
      room,
      "width",
      "width",
      lengthOf(property, room, "width", "width", room.width),
    );
    const height = lengthOf(
      sized,
      room,
      "height",
      "height",
      lengthOf(property, room, "height", "height", room.height),
    );
    if (!(width > 0 && height > 0)) return;
    const text = property("viewBox");
    const box = text === undefined ? null : readViewBox(text);
    const placed = times(around.matrix, moved(x, y));
    this.#children(element, {
      ...around,
      matrix: box
        ? times(placed, intoRoom(box, width, height, property("preserveAspectRatio") ?? ""))
        : placed,
      room: box ?? { width, height },
    });
  }

  #use(element: SvgElement, property: Property, around: Around): void {
    const link = element.attribute("href") ?? element.attribute("xlink:href") ?? "";
    if (!link.startsWith("#")) {
      this.#ignored.note("outside");
      return;
    }
    const target = this.#byId.get(decoded(link.slice(1)));
    if (!target) {
      this.#ignored.leaveOut("use", around.name, phrase`it repeats what the file does not have`);
      return;
    }
    if (around.used.includes(target)) {
      this.#ignored.leaveOut("use", around.name, phrase`it repeats itself without end`);
      return;
    }
    const { room } = around;
    const [x, y] = [lengthOf(property, room, "x", "width", 0), lengthOf(property, room, "y", "height", 0)];
    const placed = { ...around, matrix: times(around.matrix, moved(x, y)), used: [target, ...around.used] };
    if (target.name !== "symbol" && target.name !== "svg") {
      this.#draw(target, placed);
      return;
    }
    const own = propertyOf(target);
    if (isHidden(own)) {
      this.#ignored.note("hidden");
      return;
    }
    this.#nested(
      target,
      own,
      { ...placed, matrix: times(placed.matrix, transformOf(target, own)) },
      property,
    );
  }

  #shape(element: SvgElement, property: Property, around: Around, own: string): void {
    const drawn = linesOf(pathData(element.name, property, around.room), around.matrix);
    const isMark = element.attribute("data-ellwand") === "line";
    const piece = element.attribute("data-ellwand-piece");
    const ownRole = isMark ? roleOfClass(element) : undefined;
    const role = ownRole ?? roleIn(own) ?? roleIn(element.attribute("class") ?? "");
    for (const line of drawn) {
      this.#strokes += line.strokes.length;
      if (this.#strokes > MOST_STROKES)
        throw new TooMuch(
          phrase`it has more than ${MOST_STROKES.toLocaleString("en")} points; simplify its lines in the program it was made with`,
        );
      this.#lines.push({
        ...line,
        // What Ellwand wrote has one piece, and its name is the file's.
        name: piece === undefined ? around.name : plainName(nameOf(this.#root)),
        ...(role && { role }),
        ...(piece !== undefined && { piece }),
        ...(isMark && { isAid: true }),
      });
    }
  }
}

/** An id as a link writes it: "%20" for a space. */
function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

const roleOfClass = (element: SvgElement): Role | undefined => {
  const words = (element.attribute("class") ?? "").split(/\s+/);
  return ROLES.find((role) => words.includes(role));
};

/** What the file calls an element: its title, its label, or its id. */
function nameOf(element: SvgElement): string {
  const title = element.children.find(({ name }) => name === "title")?.text.trim();
  const label = Object.entries(element.attributes).find(([name]) =>
    /^(?:[^:]+:|aria-)label$/.test(name),
  )?.[1];
  return title || label || element.attribute("id") || "";
}
