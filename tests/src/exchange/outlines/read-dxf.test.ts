import { describe, expect, test } from "vitest";
import { pieceArea } from "../../../../functions/pieces/piece.ts";
import { dxf, foundIn, refusalOf, textsOf } from "./drawings.ts";

const vertices = (...points: readonly (readonly [number, number, number?])[]) =>
  points.flatMap(([x, y, bulge]) => [10, x, 20, y, ...(bulge === undefined ? [] : [42, bulge])]);
const line = (x1: number, y1: number, x2: number, y2: number) => [
  "LINE",
  8,
  "0",
  10,
  x1,
  20,
  y1,
  11,
  x2,
  21,
  y2,
];
const box = vertices([0, 0], [20, 0], [20, 30], [0, 30]);

describe("the lines of a DXF file", () => {
  test("a polyline with a bulge of 1 ends in a half circle", () => {
    // The DXF reference, LWPOLYLINE, group 42: a bulge is the tangent of a quarter of the arc's angle.
    const found = foundIn(
      dxf([["LWPOLYLINE", 8, "Front", 70, 1, ...vertices([0, 0, 1], [10, 0], [10, 20], [0, 20])]]),
    );
    // y points up in the file: the half circle below the line from (0, 0) to (10, 0) lies at the foot of the piece.
    expect(textsOf(found)).toEqual([
      "M 0 0 L 10 0 A 0 0 0 0 0 10 20 5 5 0 0 1 5 25 5 5 0 0 1 0 20 0 0 0 0 0 0 0 Z",
    ]);
    expect(found.pieces[0]!.name).toBe("Front");
    expect(found.size).toBe("The file says that it is drawn in millimetres.");
  });

  test("an old POLYLINE is read as the new one", () => {
    const old = [
      ["POLYLINE", 8, "A", 66, 1, 70, 1],
      ...[
        [0, 0],
        [20, 0],
        [20, 30],
        [0, 30],
      ].map(([x, y]) => ["VERTEX", 8, "A", 10, x!, 20, y!]),
      ["SEQEND"],
    ];
    expect(textsOf(foundIn(dxf(old)))).toEqual(
      textsOf(foundIn(dxf([["LWPOLYLINE", 8, "A", 70, 1, ...box]]))),
    );
  });

  test("loose lines and arcs are joined; arcs go counter-clockwise in degrees", () => {
    const slot = dxf([
      line(0, 0, 30, 0),
      line(30, 10, 0, 10),
      ["ARC", 8, "0", 10, 30, 20, 5, 40, 5, 50, 270, 51, 90],
      ["ARC", 8, "0", 10, 0, 20, 5, 40, 5, 50, 90, 51, 270],
    ]);
    const { pieces } = foundIn(slot);
    expect(pieces).toHaveLength(1);
    expect(pieceArea(pieces[0]!.piece)).toBeCloseTo(300 + 25 * Math.PI, 9);
  });

  test("circles, ellipses and splines have their true areas", () => {
    const area = (...entity: (string | number)[]) => pieceArea(foundIn(dxf([entity])).pieces[0]!.piece);
    expect(area("CIRCLE", 8, "0", 10, 5, 20, 5, 40, 3)).toBeCloseTo(9 * Math.PI, 9);
    expect(area("ELLIPSE", 8, "0", 10, 5, 20, 5, 11, 3, 21, 4, 40, 0.5, 41, 0, 42, 2 * Math.PI)).toBeCloseTo(
      12.5 * Math.PI,
      5,
    );
    // Two cubic spans through a doubled knot, and the same as one spline whose knots are single.
    const cubic = (points: readonly (readonly [number, number])[], knots: readonly number[]) =>
      area("SPLINE", 8, "0", 70, 1, 71, 3, ...knots.flatMap((knot) => [40, knot]), ...vertices(...points));
    const once = cubic(
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 0],
      ],
      [0, 0, 0, 0, 1, 2, 2, 2, 2],
    );
    // de Boor's algorithm at the middle knot splits it into these two curves.
    const apart = cubic(
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [7.5, 7.5],
        [5, 10],
        [0, 10],
        [0, 0],
      ],
      [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2],
    );
    expect(once).toBeCloseTo(apart, 9);
    expect(once).toBeGreaterThan(50);
  });

  test("units come from $INSUNITS and are asked for when it does not say them", () => {
    const wide = (units: number) =>
      foundIn(dxf([["LWPOLYLINE", 8, "0", 70, 1, ...box]], { units })).millimetres;
    expect([1, 2, 4, 5, 6].map(wide)).toEqual([25.4, 304.8, 1, 10, 1000]);
    expect([0, 3, 99].map(wide)).toEqual([null, null, null]);
  });

  test("a block is put in, turned and enlarged, and gives the piece its name", () => {
    const blocks = [
      ["BLOCK", 8, "0", 2, "Sleeve", 70, 0, 10, 1, 20, 1],
      ["LWPOLYLINE", 8, "1", 70, 1, ...box],
      ["ENDBLK"],
    ];
    const { pieces } = foundIn(
      dxf([["INSERT", 8, "0", 2, "Sleeve", 10, 100, 20, 0, 41, 2, 42, 2, 50, 90]], { blocks }),
    );
    expect(pieces.map(({ name }) => name)).toEqual(["Sleeve"]);
    expect(pieceArea(pieces[0]!.piece)).toBeCloseTo(4 * 600, 9);
  });

  test("what is no line is ignored and said", () => {
    const { said } = foundIn(
      dxf([
        ["LWPOLYLINE", 8, "0", 70, 1, ...box],
        ["TEXT", 8, "0", 1, "cut 2"],
        ["TEXT", 8, "0", 1, "fold"],
        ["LEADER", 8, "0"],
        [...line(0, 0, 5, 5), 60, 1],
      ]),
    );
    expect(said).toEqual(["Everything but lines is ignored: 2 × TEXT, hidden, LEADER."]);
  });
});

describe("bad DXF files are refused, or their parts left out, in a sentence", () => {
  const good = ["LWPOLYLINE", 8, "good", 70, 1, ...box];
  test("parts", () => {
    const parts: readonly (readonly [(string | number)[], RegExp])[] = [
      [
        ["ARC", 8, "x", 10, 3, 20, 3, 50, 0, 51, 90],
        /ARC on the layer “x” is left out: a figure of it is missing/,
      ],
      [["CIRCLE", 8, "0", 10, 0, 20, 0, 40, -1], /radius is not above 0/],
      [["SPLINE", 8, "0", 70, 0, 71, 3, 11, 0, 21, 0, 11, 5, 21, 5], /only points that it passes through/],
      [
        [
          "SPLINE",
          71,
          2,
          ...[0, 0, 0, 1, 1, 1].flatMap((k) => [40, k]),
          ...[1, 0.5, 1].flatMap((w) => [41, w]),
          ...vertices([0, 0], [5, 5], [9, 0]),
        ],
        /rational spline/,
      ],
      [
        [
          "SPLINE",
          71,
          3,
          ...[0, 1, 2, 3, 4, 5, 6, 7].flatMap((k) => [40, k]),
          ...vertices([0, 0], [5, 5], [9, 0], [9, 9]),
        ],
        /knots do not begin and end at its ends/,
      ],
      [["POLYLINE", 8, "0", 66, 1, 70, 4], /fitted with a spline/],
    ];
    for (const [part, sentence] of parts) {
      const { pieces, said } = foundIn(dxf([good, part]));
      expect(pieces).toHaveLength(1);
      expect(said.join(" ")).toMatch(sentence);
    }
  });

  test("four arcs of an ellipse over one another, two of them pulled wide, have no outline and stop nothing", () => {
    const arc = [
      ["BLOCK", 2, "a"],
      ["ELLIPSE", 10, 112.86, 20, 132.77, 11, 64.29, 21, 110.91, 40, 22.8, 41, 88.79],
      ["ENDBLK"],
    ];
    const copies = [
      ["INSERT", 10, 180.22, 2, "a"],
      ["INSERT", 2, "a", 42, 106.39],
      ["INSERT", 10, 180.68, 2, "a"],
      ["INSERT", 2, "a"],
    ];
    expect(refusalOf(dxf(copies, { blocks: arc, units: 0 }))).toMatch(/^no closed outline/);
  });

  test("files", () => {
    const loop = [["BLOCK", 2, "a", 10, 0, 20, 0], ["INSERT", 2, "a", 10, 0, 20, 0], ["ENDBLK"]];
    expect(refusalOf(dxf([["INSERT", 2, "a", 10, 0, 20, 0]], { blocks: loop }))).toMatch(/one holds itself/);
    const many = [["BLOCK", 2, "b", 10, 0, 20, 0], line(0, 0, 1, 1), ["ENDBLK"]];
    expect(
      refusalOf(dxf([["INSERT", 2, "b", 10, 0, 20, 0, 70, 30000, 71, 30000]], { blocks: many })),
    ).toMatch(/more than/);
    expect(refusalOf(dxf([["TEXT", 8, "0", 1, "cut 2"]]))).toMatch(
      /^no closed outline was found in it; it draws no line\./,
    );
    expect(refusalOf("0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n20\n5\n0\nENDSEC")).toMatch(
      /^it is not a valid DXF file/,
    );
  });
});
