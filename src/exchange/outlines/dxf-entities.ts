/** The entities of a DXF file that are lines, as path data in the file's own coordinates, y upwards (DXF reference, "ENTITIES section"). */

import bezier from "dxf/lib/util/toPiecewiseBezier.js";
import { phrase } from "../../../functions/phrase.ts";
import { enlarged, type Matrix, UNCHANGED } from "./affine.ts";

/** An entity as the library dxf gives it. */
export interface DxfEntity {
  readonly type: string;
  readonly layer?: string;
  readonly visible?: boolean;
  readonly paperSpace?: number;
  readonly extrusionZ?: number;
  readonly [field: string]: unknown;
}

/** Path data and the map that places them. */
export interface DxfPath {
  readonly d: string;
  readonly matrix: Matrix;
}

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

const toPiecewiseBezier = "default" in bezier ? bezier.default : bezier;

const FULL = 2 * Math.PI;

/** The line of an entity; null when it is not a line. Throws an Error with a sentence when its figures make no line. */
export function pathOfEntity(entity: DxfEntity): DxfPath | null {
  switch (entity.type) {
    case "LINE": {
      const { start, end } = entity as unknown as { start: Vertex; end: Vertex };
      return { d: `M ${pair(start)} L ${pair(end)}`, matrix: UNCHANGED };
    }
    case "ARC":
      return inItsPlane(entity, circular(entity, figure(entity, "startAngle"), figure(entity, "endAngle")));
    case "CIRCLE":
      return inItsPlane(entity, circular(entity, 0, FULL));
    case "ELLIPSE":
      return elliptical(entity);
    case "LWPOLYLINE":
      return inItsPlane(entity, polyline(entity));
    case "POLYLINE":
      if (entity.polygonMesh || entity.polyfaceMesh) return null;
      return inItsPlane(entity, polyline(entity));
    case "SPLINE":
      return { d: spline(entity), matrix: UNCHANGED };
    default:
      return null;
  }
}

/** A part whose plane is seen from behind is drawn mirrored. */
export const planeOf = ({ extrusionZ = 1 }: DxfEntity): Matrix => enlarged(extrusionZ < 0 ? -1 : 1, 1);

const inItsPlane = (entity: DxfEntity, d: string): DxfPath => ({ d, matrix: planeOf(entity) });

/** A figure of an entity. Throws an Error with a sentence when it is missing. */
export function figure(entity: DxfEntity, field: string, otherwise?: number): number {
  const value = entity[field] ?? otherwise;
  if (typeof value !== "number" || !Number.isFinite(value))
    throw new Error(phrase`a figure of it is missing`);
  return value;
}

function pair({ x, y }: Vertex): string {
  if (!Number.isFinite(x) || !Number.isFinite(y)) throw new Error(phrase`a figure of it is missing`);
  return `${x} ${y}`;
}

function circular(entity: DxfEntity, start: number, end: number): string {
  const [x, y, r] = [figure(entity, "x"), figure(entity, "y"), figure(entity, "r")];
  if (!(r > 0)) throw new Error(phrase`its radius is not above 0`);
  return round(start, end, (angle) => `${x + r * Math.cos(angle)} ${y + r * Math.sin(angle)}`, r);
}

/** Arcs of a circle counter-clockwise from one angle to another, in as many parts as pin their centre down. */
function round(start: number, end: number, at: (angle: number) => string, radius: number): string {
  const turn = end - start - FULL * Math.floor((end - start) / FULL) || FULL;
  const parts = Math.max(1, Math.ceil(turn / (Math.PI / 2) - 1e-9));
  const arcs = Array.from(
    { length: parts },
    (_, i) => `A ${radius} ${radius} 0 0 1 ${at(start + (turn * (i + 1)) / parts)}`,
  );
  const whole = turn > FULL - 1e-9;
  if (whole) arcs[parts - 1] = `A ${radius} ${radius} 0 0 1 ${at(start)}`;
  return `M ${at(start)} ${arcs.join(" ")}${whole ? " Z" : ""}`;
}

/** Drawn on a circle of radius 1, which the map makes the ellipse. */
function elliptical(entity: DxfEntity): DxfPath {
  const [mx, my] = [figure(entity, "majorX"), figure(entity, "majorY")];
  const ratio = figure(entity, "axisRatio") * ((entity.extrusionZ ?? 1) < 0 ? -1 : 1);
  const d = round(
    figure(entity, "startAngle", 0),
    figure(entity, "endAngle", FULL),
    (angle) => `${Math.cos(angle)} ${Math.sin(angle)}`,
    1,
  );
  return { d, matrix: [mx, my, -my * ratio, mx * ratio, figure(entity, "x"), figure(entity, "y")] };
}

/** A bulge is the tangent of a quarter of the arc's angle, above 0 counter-clockwise. */
function polyline(entity: DxfEntity): string {
  const vertices = entity.vertices as readonly Vertex[];
  if (vertices.length < 2) throw new Error(phrase`it has fewer than two points`);
  const closed = entity.closed === true;
  const steps = vertices.slice(0, closed ? undefined : -1).map((from, i) => {
    const to = vertices[(i + 1) % vertices.length]!;
    const bulge = from.bulge ?? 0;
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    if (Math.abs(bulge) < 1e-12 || chord === 0) return `L ${pair(to)}`;
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    return `A ${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} ${pair(to)}`;
  });
  return `M ${pair(vertices[0]!)} ${steps.join(" ")}${closed ? " Z" : ""}`;
}

/** A spline of degree 1, 2 or 3 as its Bézier curves, exactly: knots are put in until each span is one curve. */
function spline(entity: DxfEntity): string {
  const degree = figure(entity, "degree", 3);
  const weights = (entity.weights ?? []) as readonly number[];
  const points = entity.controlPoints as readonly Vertex[];
  const knots = entity.knots as readonly number[];
  if (points.length === 0)
    throw new Error(phrase`it has only points that it passes through; convert it to control points`);
  if (weights.some((weight) => Math.abs(weight - weights[0]!) > 1e-9 * Math.abs(weights[0]!)))
    throw new Error(
      phrase`it is a rational spline, which has no cubic curve that equals it; convert it to arcs`,
    );
  if (degree !== 1 && degree !== 2 && degree !== 3)
    throw new Error(phrase`it is of degree ${degree}, and at most 3 is read`);
  if (points.length <= degree || points.length > 2000 || knots.length !== points.length + degree + 1)
    throw new Error(phrase`its points and knots do not go together`);
  let curves: readonly Vertex[];
  try {
    curves = toPiecewiseBezier(degree + 1, points, knots).controlPoints;
  } catch {
    throw new Error(phrase`its knots do not begin and end at its ends`);
  }
  const letter = ["", "L", "Q", "C"][degree];
  return `M ${pair(curves[0]!)} ${letter} ${curves.slice(1).map(pair).join(" ")}`;
}
