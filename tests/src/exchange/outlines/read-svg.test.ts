import { describe, expect, test } from "vitest";
import { edgeLength, pieceArea, pieceBounds } from "../../../../functions/pieces/piece.ts";
import { readTransform, times } from "../../../../src/exchange/outlines/affine.ts";
import { intoRoom, readLength, readViewBox } from "../../../../src/exchange/outlines/svg-lengths.ts";
import { foundIn, refusalOf, svg, textsOf } from "./drawings.ts";

describe("W3C SVG 2", () => {
  test("transforms nest as the standard's example has it: translate(50,90), rotate(-45), translate(130,160)", () => {
    // The standard gives (0.707 -0.707 0.707 0.707 255.03 111.21), worked with the rounded 0.707.
    const one = readTransform("translate(50,90) , rotate(-45)   translate(130 160)");
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the standard's own figures
    [0.707, -0.707, 0.707, 0.707, 255.03, 111.21].forEach((figure, i) => {
      expect(Math.abs(one[i]! - figure)).toBeLessThan(0.05);
    });
    const nested = ["translate(50,90)", "rotate(-45)", "translate(130,160)"].map(readTransform);
    nested.reduce(times).forEach((figure, i) => {
      expect(figure).toBeCloseTo(one[i]!, 12);
    });
  });

  test("a view box of 1500 × 1000 fills a room of 300 × 200 at a fifth of its size", () => {
    const box = readViewBox("0 0 1500 1000");
    expect(intoRoom(box, 300, 200, "none")).toEqual([0.2, 0, 0, 0.2, 0, 0]);
    // The standard's second room, 150 × 200, stretches the drawing where nothing keeps its proportions.
    expect(intoRoom(box, 150, 200, "none")).toEqual([0.1, 0, 0, 0.2, 0, 0]);
    expect(intoRoom(box, 150, 200, "xMinYMin meet")).toEqual([0.1, 0, 0, 0.1, 0, 0]);
    expect(intoRoom(box, 150, 200, "")).toEqual([0.1, 0, 0, 0.1, 0, 50]);
    expect(intoRoom(box, 150, 200, "xMaxYMax slice")).toEqual([0.2, 0, 0, 0.2, -150, 0]);
  });

  test("an inch is 96 px, 72 pt, 6 pc, 2.54 cm, 25.4 mm and 101.6 Q", () => {
    for (const inch of ["1in", "96px", "72pt", "6pc", "2.54cm", "25.4mm", "101.6Q", "96"])
      expect(readLength(inch).value).toBeCloseTo(96, 10);
    expect(readLength("50%")).toEqual({ value: 0.5, unit: "%" });
    for (const text of ["3em", "wide", "", "1e999mm"]) expect(() => readLength(text)).toThrow();
  });
});

describe("the lines of a drawing", () => {
  test("each basic shape is the path that the standard gives it", () => {
    const found = foundIn(
      svg(
        '<rect id="plain" x="1" y="1" width="8" height="6"/><rect id="round" x="20" width="10" height="8" rx="2"/>' +
          '<circle id="ring" cx="40" cy="20" r="5"/><ellipse id="oval" cx="60" cy="20" rx="6" ry="4"/>' +
          '<polygon id="gore" points="0,40 10,40 14,60,-4,60"/><polyline id="open" points="30 40 40 40 40 50 30 50 30 40"/>',
      ),
    );
    expect(found.pieces.map(({ name }) => name)).toEqual(["plain", "round", "ring", "oval", "gore", "open"]);
    const millimetre = found.millimetres!;
    const [plain, round, ring, oval, gore, open] = found.pieces.map(
      ({ piece }) => pieceArea(piece) * millimetre ** 2,
    ) as [number, number, number, number, number, number];
    expect(plain).toBeCloseTo(48, 9);
    expect(round).toBeCloseTo(80 - (4 - Math.PI) * 4, 9);
    expect(ring).toBeCloseTo(25 * Math.PI, 9);
    expect(oval).toBeCloseTo(24 * Math.PI, 6);
    expect(gore).toBeCloseTo(280, 9);
    expect(open).toBeCloseTo(100, 9);
    // Circular arcs stay arcs.
    expect(found.pieces[2]!.piece.edges.flat().map(({ kind }) => kind)).toEqual(["arc", "arc", "arc", "arc"]);
    expect(found.pieces[1]!.piece.edges.flat().filter(({ kind }) => kind === "arc")).toHaveLength(4);
  });

  test("an ellipse of 2 m strays by less than a hundredth of a millimetre", () => {
    const { pieces, millimetres } = foundIn(
      svg(
        '<ellipse cx="1500" cy="1500" rx="1000" ry="400" transform="rotate(20 1500 1500)"/>',
        'width="3000mm" height="3000mm"',
      ),
    );
    const turn = (20 * Math.PI) / 180;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const { piece, at } = pieces[0]!;
    let most = 0;
    for (const stroke of piece.edges.flat()) {
      expect(stroke.kind).toBe("curve");
      if (stroke.kind !== "curve") continue;
      for (let i = 0; i <= 50; i += 1) {
        const t = i / 50;
        const s = 1 - t;
        const [x, y] = [0, 1].map(
          (axis) =>
            (s ** 3 * stroke.from[axis]! +
              3 * s * s * t * stroke.c1[axis]! +
              3 * s * t * t * stroke.c2[axis]! +
              t ** 3 * stroke.to[axis]! +
              at[axis]!) *
              millimetres! -
            1500 * millimetres!,
        ) as [number, number];
        // Back on the circle of radius 1, at the scale of the longer radius.
        const away = Math.abs(
          Math.hypot(
            (cos * x + sin * y) / (1000 * millimetres!),
            (-sin * x + cos * y) / (400 * millimetres!),
          ) - 1,
        );
        most = Math.max(most, away * 1000 * millimetres!);
      }
    }
    expect(most).toBeLessThan(0.0001);
  });

  test("a quadratic curve is raised to a cubic one exactly", () => {
    const [text] = textsOf(foundIn(svg('<path d="M 0 0 Q 30 0 30 30 L 0 30 Z"/>')));
    expect(text).toContain("C 20 0 30 10 30 30");
  });

  test("groups, view boxes, nested drawings, symbols and use place a square of 10 mm", () => {
    const square = '<rect id="s" width="10" height="10"/>';
    const ways = {
      group: `<g transform="scale(2)"><g transform="translate(3,4) rotate(90)"><rect width="5" height="5"/></g></g>`,
      nested: '<svg x="5" y="5" width="20" height="40" viewBox="0 0 2 4"><rect width="1" height="1"/></svg>',
      narrow: '<svg width="20" height="40" viewBox="0 0 4 4"><rect width="2" height="2"/></svg>',
      symbol:
        '<symbol id="y" viewBox="0 0 4 4"><rect width="2" height="2"/></symbol><use href="#y" x="7" width="20" height="20"/>',
      used: `<defs>${square}</defs><use xlink:href="#s" x="30" transform="rotate(30)"/>`,
      skewed: '<rect width="10" height="10" transform="skewX(30) skewX(-30)"/>',
      style: '<rect style="width:10px; height:10px; transform: rotate(45deg) translateX(3px)"/>',
      percent: '<rect width="10%" height="10%"/>',
    };
    for (const [way, content] of Object.entries(ways)) {
      const { pieces, millimetres } = foundIn(svg(content));
      expect(pieces, way).toHaveLength(1);
      expect(Math.sqrt(pieceArea(pieces[0]!.piece)) * millimetres!, way).toBeCloseTo(10, 9);
      expect(edgeLength(pieces[0]!.piece.edges[0]!) * millimetres!, way).toBeCloseTo(10, 9);
    }
  });

  test("a mirrored piece keeps its arcs, on the other side", () => {
    const [text] = textsOf(
      foundIn(svg('<path transform="matrix(-1 0 0 1 50 0)" d="M 0 0 A 10 10 0 0 1 10 10 L 0 10 Z"/>')),
    );
    expect(text).toBe("M 10 0 L 10 10 L 0 10 A 10 10 0 0 1 10 0 Z");
  });
});

describe("the size of a drawing", () => {
  const wide = (attributes: string) => {
    const found = foundIn(svg('<rect width="50" height="50"/>', attributes));
    const { left, right } = pieceBounds(found.pieces[0]!.piece);
    return found.millimetres === null ? found.size : (right - left) * found.millimetres;
  };
  test("comes from width, height and viewBox", () => {
    expect(wide('width="10cm" height="10cm" viewBox="0 0 100 100"')).toBeCloseTo(50, 9);
    expect(wide('width="4in" viewBox="0 0 100 50"')).toBeCloseTo(50.8, 9);
    expect(wide('height="2in" viewBox="0 0 100 50"')).toBeCloseTo(50.8, 9);
    expect(wide('width="200mm" height="100mm" viewBox="0 0 100 100"')).toBeCloseTo(50, 9);
    expect(wide('width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"')).toBeCloseTo(
      100,
      9,
    );
    expect(wide('width="100mm" height="100mm"')).toBeCloseTo((50 * 25.4) / 96, 9);
    expect(wide('width="96px" height="96px"')).toBeCloseTo((50 * 25.4) / 96, 9);
    expect(wide('style="width:72pt" viewBox="0 0 100 100"')).toBeCloseTo(12.7, 9);
  });

  test("is asked for when the file does not say it", () => {
    for (const attributes of [
      "",
      'viewBox="0 0 100 100"',
      'width="800" height="600"',
      'width="100%" viewBox="0 0 9 9"',
    ])
      expect(wide(attributes), attributes).toBe("The file does not say how large it is.");
  });

  test("says when pixels stand for it and when the drawing is stretched", () => {
    expect(foundIn(svg('<rect width="5" height="5"/>', 'width="50px" height="50px"')).size).toMatch(
      /96 px are an inch/,
    );
    const stretched = svg(
      '<rect width="5" height="5"/>',
      'width="2in" height="1in" viewBox="0 0 1 1" preserveAspectRatio="none"',
    );
    expect(foundIn(stretched).said).toEqual([
      "The file stretches its drawing more in one direction than in the other, and so it was read.",
    ]);
  });
});

describe("what is no line", () => {
  test("is ignored, and said in one sentence for each kind", () => {
    const { pieces, said } = foundIn(
      svg(
        '<rect width="10" height="10" onload="alert(1)" clip-path="url(#c)"/><text>Front</text><text>Back</text>' +
          '<image href="https://example.org/x.png"/><script>alert(1)</script><style>.a { fill: red }</style>' +
          '<use href="other.svg#x"/><g display="none"><rect width="3" height="3"/></g><g style="display:none"><path d="M0 0h9v9z"/></g>' +
          '<g visibility="hidden"><rect width="3" height="3"/><rect id="seen" visibility="visible" x="20" width="3" height="3"/></g>' +
          '<foreignObject><p>no</p></foreignObject><clipPath id="c"><rect width="2" height="2"/></clipPath><animate/>',
      ),
    );
    expect(pieces.map(({ name }) => name)).toEqual(["piece 1", "seen"]);
    expect(said).toEqual([
      "2 scripts are ignored, and not run.",
      "A clip path or mask is ignored: what they cover is read whole.",
      "2 texts are ignored: a text has no outline.",
      "A picture is ignored, and not fetched.",
      "The style sheet of the file is ignored.",
      "A reference to another file is ignored, and not fetched.",
      "3 hidden parts are left out.",
      "A foreign part is ignored.",
      "An animation is ignored: lines are read as they stand at first.",
    ]);
  });

  test("a style sheet that may move lines is said to", () => {
    const { said } = foundIn(
      svg('<style>rect { transform: scale(2) }</style><rect width="10" height="10"/>'),
    );
    expect(said).toEqual([
      "The style sheet of the file is ignored, and it may move or hide lines: compare the pieces with the drawing.",
    ]);
  });
});

test("names come from title, label and id, are safe in a cell, and count when they come twice", () => {
  const rect = (x: number, attributes: string, content = "") =>
    `<rect x="${x}" width="5" height="5" ${attributes}>${content}</rect>`;
  const { pieces } = foundIn(
    svg(
      rect(0, 'id="a"', "<title>Front &amp; back</title>") +
        rect(10, 'id="rect17" xmlns:k="k" k:label="Sleeve"') +
        rect(20, 'id="path1234"') +
        `<g id="cuff">${rect(30, "")}${rect(40, "")}</g>` +
        rect(50, 'id="=HYPERLINK(1)"') +
        rect(60, `aria-label="&#10;&#x202e;${"long ".repeat(60)}"`),
    ),
  );
  expect(pieces.map(({ name }) => name)).toEqual([
    "Front & back",
    "Sleeve",
    "piece 3",
    "cuff",
    "cuff 2",
    "HYPERLINK(1)",
    `${"long ".repeat(12).trim()}`,
  ]);
});

describe("bad drawings are refused in one sentence", () => {
  const nested = (deep: number) => `${"<g>".repeat(deep)}<rect width="5" height="5"/>${"</g>".repeat(deep)}`;
  const uses = Array.from(
    { length: 30 },
    (_, i) => `<g id="u${i + 1}"><use href="#u${i}"/><use href="#u${i}"/></g>`,
  );
  test.each([
    ["no XML", "<svg><g></svg>", /XML is wrong at line 1/],
    ["another XML", "<rss></rss>", /first element is rss, not svg/],
    ["nothing", "", /it is empty/],
    ["no drawing", "waist 26", /neither an SVG nor a DXF/],
    ["no lines", svg("<text>Front</text>"), /no closed outline was found/],
    ["a PDF", "%PDF-1.7", /it is a PDF/],
    ["a view box without area", svg("<rect/>", 'viewBox="0 0 0 9"'), /has no area/],
    ["a view box of words", svg("<rect/>", 'viewBox="a b c d"'), /it has four figures/],
    ["a width of 0", svg("<rect/>", 'width="0mm" height="9mm"'), /not above 0/],
    ["a unit of the letter", svg("<rect/>", 'width="30em" height="9mm"'), /whose size the file does not say/],
    ["200 groups in one another", svg(nested(300)), /more than 200 deep/],
    ["use that doubles 30 times", svg(`<g id="u0"/>${uses.join("")}`), /more than 200,000 elements/],
    ["100,001 points", svg(`<path d="M0 0${" h1 v1".repeat(50_001)}z"/>`), /more than 100,000 points/],
  ])("%s", (_, text, sentence) => {
    const refusal = refusalOf(text);
    expect(refusal).toMatch(sentence);
    expect(refusal.length).toBeLessThan(300);
    expect(refusal).not.toMatch(/[\n\r]/);
  });

  test("one bad line is left out and the others are read", () => {
    const good = '<rect id="good" width="10" height="10"/>';
    const bad = {
      '<path id="p" d="M 0 0 L 5 NaN Z"/>': /The path of “p” is left out: its path data make no sense/,
      '<path d="M 0 0 L 1e400 5 5 5 Z"/>': /A path is left out/,
      '<rect width="3" height="3" transform="scale(0)"/>': /its transform presses it flat/,
      '<rect width="3" height="3" transform="scale(NaN)"/>': /the transform "scale\(NaN\)" can't be read/,
      '<rect width="3" height="3" transform="spin(4)"/>': /can't be read/,
      '<rect width="3" height="3" style="transform-origin: 9px 9px"/>': /moved by "transform-origin"/,
      '<polygon points="1 2 3"/>': /each point needs two/,
      '<path d="M 10 10 A 59.69 1e8 4.31 1 1 147.39 27.62 Z"/>': /reaches farther than 100,000,000 units/,
      '<use href="#gone"/>': /repeats what the file does not have/,
      '<g id="loop"><use href="#loop"/></g>': /repeats itself without end/,
    };
    for (const [content, sentence] of Object.entries(bad)) {
      const { pieces, said } = foundIn(svg(good + content));
      expect(
        pieces.map(({ name }) => name),
        content,
      ).toEqual(["good"]);
      expect(said.join(" "), content).toMatch(sentence);
    }
  });

  test("entities of the file are never put in", () => {
    const bomb = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY x SYSTEM "file:///etc/passwd">]>`;
    const { pieces } = foundIn(`${bomb}${svg('<rect id="&b;&x;" width="5" height="5"/>')}`);
    expect(pieces[0]!.name).toBe("b;&x;");
  });

  test("a file of 100 MB is refused before it is read", () => {
    expect(refusalOf(new Uint8Array(100_000_000))).toBe(
      "it has 100 MB, and the most is 20 MB; leave pictures out of it, or cut it into parts",
    );
  });
});
