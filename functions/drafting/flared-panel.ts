/**
 * Flared panels: a strip whose hem is longer than its top lies flat as a ring sector, two arcs
 * about one centre. It is the cone of body-cone.ts with the top as the waist and the hem as the hip.
 */

import type { Take } from "../define.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline, type Shape, showing, stroke } from "../drawing/shapes.ts";
import { degrees, line, type Point } from "../geometry/strokes.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, movePiece, type Piece, pieceBounds, pieceOf, turnPiece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { developedLevel, developedPoint } from "./body-cone.ts";

/** Which part of a panel lies along the grain. */
export const STRAIGHT_GRAIN = {
  kind: "text",
  about:
    "which part lies along the grain: the middle, the left edge or the right edge; an edge may then go on the fold",
  choices: ["middle", "left", "right"],
  otherwise: "middle",
} as const satisfies Take;

const SHARES = { left: 0, middle: 0.5, right: 1 } as const;

export type StraightGrain = keyof typeof SHARES;

/** The angle of a panel in radians, 0 for a straight strip, negative when the hem is the shorter. */
export function panelAngle(top: number, hem: number, depth: number): number {
  const angle = (hem - top) / depth;
  const circles = Math.abs(angle) / (2 * Math.PI);
  if (circles > 1 + 1e-9) {
    throw new Refusal(
      (say) =>
        phrase`hem must be ${hem > top ? phrase`at most` : phrase`at least`} ${say(top + Math.sign(angle) * 2 * Math.PI * depth, depth, hem)} at a depth of ${say(depth, top + Math.sign(angle) * 2 * Math.PI * depth, hem)}, not ${say(hem, top + Math.sign(angle) * 2 * Math.PI * depth, depth)}: it needs more than one circle (${numberText(circles, 4)} of them): cut it in ${Math.ceil(circles - 1e-9)} panels and join them`,
    );
  }
  // A whole circle by a hair too much, as sums of decimals come out, is a whole circle: its sides touch.
  return Math.sign(angle) * Math.min(Math.abs(angle), 2 * Math.PI);
}

/** What the four edges of a panel are called, in drawing order. */
type EdgeNames = readonly [string, string, string, string];
export const PANEL_EDGES: EdgeNames = ["top", "right side", "hem", "left side"];

/**
 * The panel: edge 1 its top from left to right, 2 its right side downwards, 3 its hem, 4 its left
 * side. (0, 0) is where the straight grain meets the top edge.
 */
export function flaredPanel(
  top: number,
  hem: number,
  depth: number,
  straight: StraightGrain,
  names: EdgeNames = PANEL_EDGES,
): Piece {
  const angle = panelAngle(top, hem, depth);
  const corner = (level: number, share: number) => developedPoint(top, angle, level, share);
  const piece = pieceOf(
    [
      [developedLevel(top, angle, 0, 0, 1)],
      [line(corner(0, 1), corner(depth, 1))],
      [developedLevel(top, angle, depth, 1, 0)],
      [line(corner(depth, 0), corner(0, 0))],
    ],
    names,
  );
  const share = SHARES[straight];
  const [x, y] = corner(0, share);
  return share === 0 ? piece : turnPiece(movePiece(piece, -x, -y), degrees(angle * share));
}

/** What the drawn parts of a panel show, by step name. */
export interface PanelShown {
  readonly area?: string;
  readonly top?: string;
  readonly hem?: string;
  readonly side?: string;
  readonly width?: string;
  readonly length?: string;
}

/**
 * A panel of four edges drawn for a maker: outline and marks, top and hem with their lengths, the
 * right side, the cloth it takes across and along, and a grain line from `grain` downwards.
 */
export function drawPanel(piece: Piece, grain: Point, shown: PanelShown = {}): Shape[] {
  const [topName, , hemName] = piece.names;
  const { left, right, low, high } = pieceBounds(piece);
  const off = Math.max(right - left, high - low) / 14;
  const [top, side, hem] = piece.edges;
  const from = side![0]!.from;
  const to = side!.at(-1)!.to;
  const reach = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [nx, ny] = [((to[1] - from[1]) / reach) * off, ((from[0] - to[0]) / reach) * off];
  const length = edgeLength(side!);
  const straightSide = side!.length === 1 && side![0]!.kind === "line";
  return [
    ...outline(piece, showing(shown.area)),
    { kind: "edge", edge: top!, role: "seam", label: topName!, ...showing(shown.top) },
    { kind: "edge", edge: hem!, role: "seam", label: hemName!, ...showing(shown.hem) },
    ...edgeLabelsDrawn(piece, [2, 4]),
    ...(straightSide ? [dimension([from[0] + nx, from[1] + ny], [to[0] + nx, to[1] + ny], showing(shown.side))] : []),
    stroke([[grain[0], grain[1] + length * 0.2], [grain[0], grain[1] + length * 0.8]], "grain"),
    dimension([left, high + off], [right, high + off], { label: phrase`across the grain`, ...showing(shown.width) }),
    dimension([left - off, low], [left - off, high], { label: phrase`along the grain`, ...showing(shown.length) }),
  ]; // biome-ignore format: points in pairs
}

/** Where `drawPanel` puts the grain line of a flared panel: on the straight line, a little inside an edge. */
export const grainPoint = (top: number, straight: StraightGrain): Point => [
  { left: top / 20, middle: 0, right: -top / 20 }[straight],
  0,
];

/** A panel with its centre: radii and angle drawn, the sides as long as `depth`. For the arithmetic of flare. */
export function drawFlare(
  top: number,
  hem: number,
  depth: number,
  shown: { angle?: string; radius?: string; top?: string; hem?: string },
): Shape[] {
  const angle = (hem - top) / depth;
  if (Math.abs(angle) > 2 * Math.PI) {
    const text = phrase`more than a circle: ${numberText(Math.abs(angle) / (2 * Math.PI))} of them`;
    return [{ kind: "note", at: [0, 0], text }];
  }
  const piece = flaredPanel(top, hem, depth, "middle");
  const [edge, side, low, back] = piece.edges;
  const shapes: Shape[] = [
    ...outline(piece),
    { kind: "edge", edge: edge!, role: "seam", label: phrase`top`, ...showing(shown.top) },
    { kind: "edge", edge: low!, role: "seam", label: phrase`hem`, ...showing(shown.hem) },
    dimension(side![0]!.from, side![0]!.to, { label: phrase`depth` }),
  ];
  // A centre far away is not drawn: the panel would shrink to a line.
  if (Math.abs(angle) < 0.05) return shapes;
  const centre: Point = [0, -top / angle];
  const near = angle > 0 ? back![0]!.to : back![0]!.from;
  shapes.push(
    stroke([near, centre, angle > 0 ? side![0]!.from : side![0]!.to], "guide"),
    dimension(centre, back![0]!.to, { label: phrase`radius`, ...showing(shown.radius) }),
    {
      kind: "angle",
      at: centre,
      from: side![0]!.to,
      to: back![0]!.from,
      reflex: Math.abs(angle) > Math.PI,
      ...showing(shown.angle),
    },
  );
  return shapes;
}
