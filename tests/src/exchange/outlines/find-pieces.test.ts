import { describe, expect, test } from "vitest";
import { edgeLength, writePiece } from "../../../../functions/pieces/piece.ts";
import { drawnLength, factorOfFile, sized } from "../../../../src/exchange/outlines/scale.ts";
import { foundIn, refusalOf, svg, textsOf } from "./drawings.ts";

const lengths = (text: string) => {
  const found = foundIn(text);
  const factor = factorOfFile(found, "mm") ?? 1;
  return found.pieces.map(({ piece }) =>
    piece.edges.map((edge) => Number((edgeLength(edge) * factor).toFixed(3))),
  );
};

describe("edges", () => {
  test("begin at the corner nearest to the upper left and go clockwise on paper, however the line was drawn", () => {
    const corners = ["0 0", "30 0", "30 20", "0 20"];
    for (const order of [corners, [...corners].reverse(), [...corners.slice(2), ...corners.slice(0, 2)]])
      expect(lengths(svg(`<polygon points="${order.join(" ")}"/>`))).toEqual([[30, 20, 30, 20]]);
  });

  test("a neckline of 200 short lines is one edge, and so is a curve of several", () => {
    const arc = Array.from({ length: 201 }, (_, i) => {
      const angle = Math.PI - (i / 200) * Math.PI;
      return `${30 + 20 * Math.cos(angle)} ${20 * Math.sin(angle)}`;
    });
    const [edges] = lengths(svg(`<polygon points="0 0 ${arc.join(" ")} 60 0 60 50 0 50"/>`));
    expect(edges).toHaveLength(6);
    expect(edges![1]).toBeCloseTo(20 * Math.PI, 2);
    const [curved] = lengths(svg('<path d="M 0 0 C 10 8 20 8 30 0 S 50 -8 60 0 V 40 H 0 Z"/>'));
    expect(curved).toHaveLength(4);
  });

  test("a notch of 3 mm is no corner of a seam", () => {
    const found = foundIn(svg('<path d="M 0 0 H 200 L 201.5 3 L 203 0 H 400 V 400 H 0 Z"/>'));
    expect(found.pieces[0]!.piece.edges).toHaveLength(4);
  });

  test("a line without corners is one edge", () => {
    expect(lengths(svg('<rect width="30" height="20" rx="5"/><circle cx="60" cy="60" r="10"/>'))).toEqual([
      [100 - 40 + Number((10 * Math.PI).toFixed(3))],
      [Number((20 * Math.PI).toFixed(3))],
    ]);
  });
});

describe("lines become outlines", () => {
  test("an outline whose ends nearly meet is closed, and the gap is said", () => {
    const found = foundIn(svg('<path id="cuff" d="M 0 0 H 40 V 20 H 0 V 0.5"/>'));
    expect(found.pieces[0]!.said).toEqual(["The gap between its ends, 0.5 mm, is closed."]);
    expect(textsOf(found)).toEqual(["M 0 0 L 40 0 L 40 20 L 0 20 L 0 0 Z"]);
  });

  test("an outline that stands open is left out, and its gap is said", () => {
    const sentence = refusalOf(svg('<path id="cuff" d="M 0 0 H 40 V 20 H 0 V 5"/>'));
    expect(sentence).toBe(
      "no closed outline was found in it. An open line “cuff” outside the pieces is left out: its ends are 5 mm apart.",
    );
  });

  test("loose lines are joined round their outside, in whatever order and direction; lines across are marks", () => {
    const found = foundIn(
      svg(
        '<line x1="0" y1="0" x2="40" y2="0"/><line x1="0" y1="30" x2="0.02" y2="0"/><path d="M 0 30 C 10 35 30 35 40 30"/>' +
          '<line x1="40" y1="0" x2="40" y2="30"/><line id="fold" x1="40" y1="0" x2="0" y2="30"/><line x1="40" y1="30" x2="44" y2="30"/>',
      ),
    );
    expect(textsOf(found)).toEqual([
      "M 0.02 0 L 40 0 L 40 30 C 30 35 10 35 0 30 L 0.02 0 Z M 40 0 L 0 30 | fold",
    ]);
    expect(found.pieces[0]!.said).toEqual([
      "It is joined from 4 lines.",
      "The widest gap between them, 0.02 mm, is closed.",
      "An open line inside it is a mark.",
    ]);
    expect(found.said).toEqual(["An open line outside the pieces is left out: its ends are 4 mm apart."]);
  });

  test("two outlines of loose lines that meet in a point, or hang on one line, are two pieces", () => {
    const lines = (points: readonly string[]) =>
      points.map((from, i) => `<path d="M ${from} L ${points[(i + 1) % points.length]}"/>`).join("");
    const left = lines(["0 0", "20 0", "20 20", "0 20"]);
    expect(foundIn(svg(left + lines(["20 20", "40 20", "40 50", "20 50"]))).pieces).toHaveLength(2);
    const bridged = foundIn(
      svg(`${left + lines(["50 20", "70 20", "70 50", "50 50"])}<path d="M 20 20 L 50 20"/>`),
    );
    expect(bridged.pieces).toHaveLength(2);
    expect(bridged.said).toEqual(["An open line outside the pieces is left out: its ends are 30 mm apart."]);
  });

  test("lines that lie on one another, and hundreds that begin at one point, count once and end soon", () => {
    const sides = ["M 0 0 H 40", "M 40 0 V 30", "M 40 30 H 0", "M 0 30 V 0"]
      .map((d) => `<path d="${d}"/>`)
      .join("");
    const twice = foundIn(svg(sides + sides));
    expect(textsOf(twice)).toEqual(["M 0 0 L 40 0 L 40 30 L 0 30 L 0 0 Z"]);
    expect(twice.said).toEqual(["4 lines are drawn twice and count once."]);
    const rays = Array.from(
      { length: 500 },
      (_, i) => `M 60 60 L ${60 + 20 * Math.cos(i / 80)} ${60 + 20 * Math.sin(i / 80)}`,
    );
    const { pieces, said } = foundIn(svg(`${sides}<path d="${rays.join(" ")}"/>`));
    expect(pieces).toHaveLength(1);
    expect(said).toEqual([
      "500 open lines outside the pieces are left out; the ends of the longest are 20 mm apart.",
    ]);
  });

  test("the two halves of a piece, with their ends and their lengths in common, are joined", () => {
    const halves = '<path d="M 10 30 H 110 V 130"/><path d="M 110 130 H 10 V 30"/>';
    const square = foundIn(svg(halves));
    expect(square.said).toEqual([]);
    expect(textsOf(square)).toEqual(["M 0 0 L 100 0 L 100 100 L 0 100 L 0 0 Z"]);
    const hood =
      '<path d="M 0 0 Q 25 -40 50 -20 Q 75 -40 100 0"/><path d="M 0 0 Q 25 40 50 20 Q 75 40 100 0"/>';
    expect(foundIn(svg(hood)).pieces).toHaveLength(1);
  });

  test("an outline that crosses itself is left out, with the place", () => {
    const found = foundIn(
      svg('<rect width="9" height="9"/><path id="hood" d="M 20 20 L 60 60 L 60 20 L 20 50 Z"/>'),
    );
    expect(found.pieces).toHaveLength(1);
    expect(found.said).toEqual([
      "“hood” is left out: it crosses itself, 17.1 mm from its left and 17.1 mm from its top; draw it without the crossing.",
    ]);
  });

  test("an outline of more than 5,000 points is left out, and what is drawn twice counts once", () => {
    const wave = Array.from({ length: 3000 }, (_, i) => `L ${i / 40} ${i % 2 ? 50 : 50.01}`).join(" ");
    const back = Array.from({ length: 3000 }, (_, i) => `L ${75 - i / 40} ${i % 2 ? 80 : 80.01}`).join(" ");
    const same = '<rect width="9" height="9"/>';
    const found = foundIn(svg(`${same}${same}<path id="long" d="M 0 50 ${wave} ${back} Z"/>`));
    expect(found.pieces).toHaveLength(1);
    expect(found.said.join(" ")).toMatch(/“long” is left out: it has 6,0\d\d points, more than 5,000/);
    expect(found.said).toContain("A line is drawn twice and counts once.");
  });
});

describe("lines inside a piece", () => {
  const drawing = svg(
    '<rect id="front" width="60" height="80"/><circle id="pocket" cx="20" cy="20" r="8"/><circle id="button" cx="20" cy="20" r="2"/>' +
      '<path id="grain" d="M 30 10 V 70"/><path id="notch" d="M 58 40 H 61"/>',
  );
  test("are marks on it, with the role that their names say", () => {
    const found = foundIn(drawing);
    expect(found.pieces.map(({ name, piece }) => [name, piece.marks.map(({ role }) => role)])).toEqual([
      ["front", ["placement", "placement", "grain", "notch"]],
    ]);
    expect(found.pieces[0]!.said).toEqual([
      "2 closed lines inside it are marks, not holes.",
      "2 open lines inside it are marks.",
    ]);
  });

  test("are pieces too when that is asked for", () => {
    expect(foundIn(drawing, "pieces").pieces.map(({ name }) => name)).toEqual(["front", "pocket", "button"]);
  });
});

test("a rectangle as large as the page is the paper, unless it is the only outline", () => {
  const paper = '<rect width="100%" height="100%" fill="white"/>';
  const found = foundIn(svg(`${paper}<rect id="cuff" x="10" y="10" width="30" height="20"/>`));
  expect(found.pieces.map(({ name }) => name)).toEqual(["cuff"]);
  expect(found.said).toEqual(["A rectangle as large as the page is taken for the paper and left out."]);
  expect(textsOf(foundIn(svg(paper)))).toEqual(["M 0 0 L 100 0 L 100 100 L 0 100 L 0 0 Z"]);
});

test("one known length sizes the whole drawing: an edge, its width, its height, or one unit", () => {
  const found = foundIn(
    svg('<rect x="5" y="5" width="20" height="30"/><rect x="45" y="5" width="10" height="10"/>', ""),
  );
  expect(found.millimetres).toBeNull();
  expect(drawnLength(found, { of: "edge", piece: 0, edge: 1 })).toBe(30);
  expect(drawnLength(found, { of: "width" })).toBe(50);
  expect(drawnLength(found, { of: "height" })).toBe(30);
  expect(drawnLength(found, { of: "unit" })).toBe(1);
  const { edges } = sized(found.pieces[1]!.piece, 60 / 30);
  expect(edges.map(edgeLength)).toEqual([20, 20, 20, 20]);
});

test("the coordinates of a piece are written without the dust of calculating, and no point moves by a visible length", () => {
  const path = '<path transform="rotate(30 3 4) translate(0.1 0.2)" d="M 0 0 L 20.1 0 A 30 30 0 0 1 20.1 30.3 C 15 33 5 29 0 30.3 Z"/>';
  const found = foundIn(svg(path)).pieces[0]!.piece;
  for (const turn of [0, 30, 90, 180, 270, 330])
    for (const factor of [1, 0.1, 1 / 25.4]) {
      const made = sized(found, factor, turn);
      const figures = writePiece(made).match(/-?[\d.]+(?:e-?\d+)?/g)!;
      for (const figure of figures) expect(figure, `${turn}°`).toMatch(/^-?\d+(\.\d{1,6})?$/);
      expect(figures).not.toContain("-0");
      // The lengths of its edges are those of the drawing.
      made.edges.forEach((edge, i) => {
        expect(Math.abs(edgeLength(edge) - edgeLength(found.edges[i]!) * factor)).toBeLessThan(1e-5);
      });
    }
  const square = sized(foundIn(svg('<rect width="20" height="30"/>', "")).pieces[0]!.piece, 0.1, 90);
  expect(writePiece(square)).toBe("M 3 0 L 3 2 L 0 2 L 0 0 L 3 0 Z");
}); // biome-ignore format: a path

test("a piece turned for its grain keeps its edges and lies at the upper left again", () => {
  const found = foundIn(svg('<rect width="20" height="30"/>'));
  const turned = sized(found.pieces[0]!.piece, factorOfFile(found, "mm")!, 90);
  expect(turned.edges.map((edge) => Number(edgeLength(edge).toFixed(6)))).toEqual([20, 30, 20, 30]);
  expect(turned.edges[0]![0]!.from.map((x) => Number(x.toFixed(6)) + 0)).toEqual([30, 0]);
});
