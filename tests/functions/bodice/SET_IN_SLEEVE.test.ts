import fc from "fast-check";
import { expect, test } from "vitest";
import { SET_IN_SLEEVE } from "../../../functions/bodice/SET_IN_SLEEVE.ts";
import { WITH_ALLOWANCE } from "../../../functions/curves/WITH_ALLOWANCE.ts";
import { capHalves, fitCap } from "../../../functions/drafting/sleeve-cap.ts";
import { direction, distance, type Edge, type Point } from "../../../functions/geometry/strokes.ts";
import { edgePart } from "../../../functions/pieces/edges.ts";
import { edgeLength, pieceArea, readPiece } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";
import { lengthOf, spread, turn } from "../edges-measured.ts";

const { piece, refusal, step, answer } = calls(SET_IN_SLEEVE, "cm");

const SLEEVES: readonly (readonly [number, number, number, number, number])[] = [[44, 3, 34, 60, 22], [46, 1, 42, 58, 26], [40, 0, 36, 55, 20], [52, 4.5, 36, 62, 28], [30, 2, 24, 35, 17]]; // biome-ignore format: one sleeve a row

test("the cap is as long as the armhole and the ease to a millionth, as another library measures it", () => {
  for (const args of SLEEVES) {
    const [cap] = piece(...args).edges;
    expect(Math.abs(lengthOf(cap!) - (args[0]! + args[1]!))).toBeLessThan(1e-6);
  }
});

test("the cap is the armhole with its ease, its halves theirs, and the sleeve as wide as asked, of 200 random sleeves", () => {
  fc.assert(
    fc.property(
      fc.record({ armhole: spread(25, 65), ease: spread(0, 0.1), wide: spread(0.65, 0.95), front: spread(0.45, 0.53), behind: spread(0.3, 0.7) }), // biome-ignore format: one sleeve
      ({ armhole, ease, wide, front, behind }) => {
        const more = ease * armhole;
        const { edges } = piece(
          armhole,
          more,
          wide * armhole,
          60,
          20,
          "crown",
          null,
          front * armhole,
          behind,
        );
        const cap = edges[0]!;
        expect(Math.abs(lengthOf(cap) - armhole - more)).toBeLessThan(1e-6 * armhole);
        expect(lengthOf(cap.slice(2))).toBeCloseTo(front * armhole + (1 - behind) * more, 5);
        expect(cap.at(-1)!.to[0] - cap[0]!.from[0]).toBeCloseTo(wide * armhole, 9);
      },
    ),
    { seed: 20261127, numRuns: 200 },
  );
});

test("for a published one-piece sleeve, 4 in high at the cap, the same width and line give a cap within 1/4 in of 4", () => {
  // I. R. Burton and M. G. Burton, School Sewing, "One-Piece Foundation Sleeve": folded at the crown, half as wide as half the armhole and
  // 1/2 in; 4 in down to the underarm. The upper line goes straight from the crown to the underarm but for its first
  // part, level as far as 2/5 of the armhole from the underarm; the lower one passes 3/4 in below the level there, and
  // meets the underarm's level at 1/5.
  for (const armhole of [14, 15, 16, 17]) {
    const half = armhole / 2 + 0.5;
    const [begins, meets] = [half - 0.4 * armhole, half - 0.2 * armhole];
    const upper = begins + Math.hypot(half - begins, 4);
    const lower = Math.hypot(begins, 0.75) + Math.hypot(meets - begins, 4 - 0.75) + half - meets;
    const inches = calls(SET_IN_SLEEVE, "in");
    const height = inches.step("cap_height", armhole, upper + lower - armhole, 2 * half, 22, 9);
    expect(Math.abs(height - 4)).toBeLessThan(0.25);
  }
});

test("front and back of the cap each fit their part of the armhole, with their part of the ease", () => {
  const [cap] = piece(44, 3, 34, 60, 22, "crown", null, 21, 0.6).edges;
  // The crown is where the cap runs level at the top: between its second and third curve.
  expect(lengthOf(cap!.slice(0, 2))).toBeCloseTo(23 + 0.6 * 3, 6);
  expect(lengthOf(cap!.slice(2))).toBeCloseTo(21 + 0.4 * 3, 6);
  expect(cap![1]!.to).toEqual([0, 0]);
});

test("the cap grows higher as the sleeve grows narrower or the ease greater, without a jump: one solution", () => {
  const measures = fc.record({
    front: fc.double({ min: 18, max: 28, noNaN: true }),
    back: fc.double({ min: 18, max: 28, noNaN: true }),
    share: fc.double({ min: 0.65, max: 0.95, noNaN: true }),
  });
  fc.assert(
    fc.property(measures, ({ front, back, share }) => {
      const width = share * (front + back);
      const at = (f: number, b: number, w: number) => fitCap({ front: f, back: b, width: w });
      const cap = at(front, back, width);
      expect(cap.front + cap.back).toBeCloseTo(width, 9);
      expect(at(front, back, width * 0.99).height).toBeGreaterThan(cap.height);
      expect(at(front * 1.01, back * 1.01, width).height).toBeGreaterThan(cap.height);
      expect(Math.abs(at(front, back, width * (1 - 1e-7)).height - cap.height)).toBeLessThan(1e-4);
      const { front: f, back: b } = capHalves(cap);
      expect(edgeLength(f)).toBeCloseTo(front, 9);
      expect(edgeLength(b)).toBeCloseTo(back, 9);
    }),
    { seed: 20261127, numRuns: 15 },
  );
});

test("across and up, no half of a cap ever turns back, which is why it has one solution", () => {
  const { front, back } = capHalves({ height: 14, front: 16, back: 18 });
  for (const half of [front, back])
    for (const stroke of half) {
      if (stroke.kind !== "curve") throw new Error("a curve");
      for (const axis of [0, 1] as const) {
        const way = Math.sign(half.at(-1)!.to[axis] - half[0]!.from[axis]);
        const stops = [stroke.from, stroke.c1, stroke.c2, stroke.to].map((point) => way * point[axis]);
        expect(stops).toEqual(stops.toSorted((a, b) => a - b));
      }
    }
});

test("the cap is smooth all along, level at the crown and at the underarm where both seams are closed", () => {
  for (const args of SLEEVES) {
    const [cap] = piece(...args).edges;
    for (let i = 1; i < cap!.length; i += 1)
      expect(Math.abs(turn(direction(cap![i - 1]!, 1), direction(cap![i]!, 0)))).toBeLessThan(1e-9);
    for (const way of [direction(cap![0]!, 0), direction(cap![1]!, 1), direction(cap!.at(-1)!, 1)])
      expect(Math.abs(turn(way, [1, 0]))).toBeLessThan(1e-9);
  }
});

test("the front is hollowed deeper than the back, and the back is fuller", () => {
  const { front, back } = capHalves({ height: 15, front: 17, back: 17 });
  // How far each half goes below and above the straight line from underarm to crown.
  const off = (half: Edge) => {
    const [from, to] = [half[0]!.from, half.at(-1)!.to];
    const points = Array.from({ length: 400 }, (_, i) => {
      const { from: a, to: b } = edgePart(
        half,
        (edgeLength(half) * i) / 400,
        (edgeLength(half) * (i + 1)) / 400,
      )[0]!;
      return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
    });
    const signed = points.map(
      ([x, y]) =>
        ((to[1] - from[1]) * Math.abs(x - from[0]) - (y - from[1]) * Math.abs(to[0] - from[0])) /
        distance(from, to),
    );
    return { hollow: -Math.min(...signed), full: Math.max(...signed) };
  };
  const [f, b] = [off(front), off(back)];
  expect(f.hollow).toBeGreaterThan(1.3 * b.hollow);
  expect(b.full).toBeGreaterThan(1.05 * f.full);
});

test("a usual sleeve has a cap about a third of its armhole high, as common practice has it", () => {
  for (const armhole of [38, 42, 46, 50, 54]) {
    const height = step("cap_height", armhole, 0.065 * armhole, 0.77 * armhole, 60, 22);
    expect(height / (armhole / 3)).toBeGreaterThan(0.9);
    expect(height / (armhole / 3)).toBeLessThan(1.1);
  }
});

test("notches lie as far from the underarm on the cap as on the armhole, and all the ease lies between them", () => {
  const args = [44, 3, 34, 60, 22, "crown", null, 21.5, 0.55, 7, 9] as const;
  const sleeve = piece(...args);
  const [cap] = sleeve.edges;
  const places = sleeve.marks.filter(({ role }) => role === "notch").map(({ line }) => line[0]!.from);
  const at = (length: number) => edgePart(cap!, 0, length).at(-1)!.to;
  const back = 22.5;
  const notches: Point[] = [at(0.9 * 9), at(9), at(back + 0.55 * 3), at(47 - 7)];
  notches.forEach((place, i) => {
    expect(distance(places[i]!, place)).toBeLessThan(1e-9);
  });
  // From notch to notch over the crown: what is left of the armhole, and 3 cm more.
  expect(47 - 7 - 9).toBeCloseTo(44 - 7 - 9 + 3, 12);
});

test("where the seams are closed the cap has no corner at the underarm, of a narrow, a straight and a wide sleeve, with an elbow or without", () => {
  for (const wrist of [18, 34, 48])
    for (const elbow of [null, 30]) {
      const [cap, front, , back] = piece(44, 3, 34, 60, wrist, "crown", elbow).edges;
      // The angles inside the sleeve between the cap and either seam, which make a straight line together.
      const inFront = Math.PI - turn(direction(cap!.at(-1)!, 1), direction(front![0]!, 0));
      const behind = Math.PI - turn(direction(back!.at(-1)!, 1), direction(cap![0]!, 0));
      expect(inFront + behind).toBeCloseTo(Math.PI, 9);
      // Without an elbow the seam stays beside the straight line from underarm to wrist.
      if (elbow === null)
        expect(lengthOf(front!)).toBeLessThan(1.02 * distance(front![0]!.from, front!.at(-1)!.to));
    }
});

test("where no more is known 49 % of the armhole lie in front, 55 % of the ease behind, the notches a third and two fifths up", () => {
  const front = 0.49 * 44;
  const told = piece(44, 3, 34, 60, 22, "crown", null, front, 0.55, front / 3, 0.4 * (44 - front));
  const bare = piece(44, 3, 34, 60, 22);
  const places = (one: typeof bare) => [
    ...one.edges[0]!.map(({ to }) => to),
    ...one.marks.map(({ line }) => line[0]!.from),
  ];
  expect(places(bare)).toEqual(places(told).map((at) => at.map((figure) => expect.closeTo(figure, 9))));
});

test("both seams of a sleeve are equally long and closed without a corner at the elbow", () => {
  const { edges } = piece(44, 3, 34, 60, 22, "crown", 27);
  expect(edgeLength(edges[1]!)).toBeCloseTo(edgeLength(edges[3]!), 9);
  expect(Math.abs(turn(direction(edges[1]![0]!, 1), direction(edges[1]![1]!, 0)))).toBeLessThan(1e-9);
});

test("a length from the underarm leaves the cap out of it", () => {
  const height = step("cap_height", 44, 3, 34, 60, 22);
  expect(piece(44, 3, 34, 60 - height, 22, "underarm").edges.map(edgeLength)[1]).toBeCloseTo(
    step("seam", 44, 3, 34, 60, 22),
    9,
  );
});

test("a sleeve takes allowances, and its wrist a hem", () => {
  const cut = readPiece(String(calls(WITH_ALLOWANCE, "cm").answer(answer(44, 3, 34, 60, 22), 1.5, 4)));
  expect(pieceArea(cut)).toBeGreaterThan(pieceArea(piece(44, 3, 34, 60, 22)) + 4 * 22 + 1.5 * 60);
});

test("a sleeve as wide as its cap is long, one far too narrow, and one shorter than its cap are refused", () => {
  expect(refusal(44, 3, 47, 60, 22)).toMatch(
    /^bicep must be less than the cap, which is 47 cm long with its ease, not 47 cm/,
  );
  expect(refusal(44, 3, 5, 60, 5, "crown", null, 15)).toMatch(/^bicep must be more than \d/);
  expect(refusal(44, 3, 34, 14, 22)).toMatch(/^length must be more than the cap, which is 14/);
  expect(refusal(44, 3, 34, 60, 22, "crown", null, 44)).toBe(
    "front must be less than the armhole 44 cm, of which it is a part, not 44 cm",
  );
  expect(refusal(44, 3, 34, 60, 22, "crown", null, 21, 0.5, 21)).toBe(
    "front_notch must be less than 21 cm, the front of the armhole, not 21 cm",
  );
});
