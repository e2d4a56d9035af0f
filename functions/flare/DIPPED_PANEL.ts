import { define } from "../define.ts";
import { BODY_AND_DIP, developSeam, LEVEL_BACK, seamLevel, seamSteps } from "../drafting/body-cone.ts";
import { DippedSection } from "../drafting/dipped-panel.ts";
import { drawPanel } from "../drafting/flared-panel.ts";
import { dimension } from "../drawing/shapes.ts";
import { degrees } from "../geometry/strokes.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { edgeLength, movePiece, pieceArea, turnPiece } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { between, skirt } from "../worn/skirt.ts";

/**
 * Half of a skirt section for a bodice whose waist seam dips to a point in front, in the book's
 * unit, without allowances. Edges: 1 the seam from centre back to the point, half of SEAM_GIRTH's
 * length whatever the hem; 2 centre front; 3 the hem; 4 centre back. A parallel hem lies `depth`
 * below the seam all round, measured down the body; a level one `depth` below the seam at centre
 * back. A fuller hem (`hem_length` all round, or `fullness` times the body's own) is spread evenly
 * along the seam (functions/drafting/dipped-panel.ts). Refuses a hem shorter than the body. Source: geometry.
 */
export const DIPPED_PANEL = define({
  name: "DIPPED_PANEL",
  summary:
    "Half a skirt section that fits a bodice with a pointed waist seam: its top follows the dip and keeps the seam's length.",
  source: "geometry: the cone through waist and hip, rolled out flat",
  words: "peplum basque pointed bodice dropped waist dip front V skirt section flare",
  takes: {
    ...BODY_AND_DIP,
    depth: { kind: "length", about: "from the seam down to the hem, along the body", from: 0.5, to: 200 },
    ...LEVEL_BACK,
    hem: {
      kind: "text",
      about:
        "parallel: the same depth below the seam all round; level: this depth at centre back, level from there",
      choices: ["parallel", "level"],
      otherwise: "parallel",
    },
    hem_length: { kind: "length", about: "the hem wanted, all round", from: 10, to: 5000, otherwise: null },
    fullness: {
      kind: "share",
      about: "how much fuller than the body the hem is, when hem_length is left out",
      from: 1,
      to: 10,
      otherwise: 1,
    },
    straight: {
      kind: "text",
      about: "which edge lies along the grain, centre back or centre front",
      choices: ["back", "front"],
      otherwise: "back",
    },
  },
  returns: "piece",
  usual: ["waist <= 1.1 * hip", "hip_drop <= 0.6 * waist", "front_drop <= hip_drop", "back_drop <= hip_drop"],
  alike: {
    "hip_drop, depth": "a section may end above or below the hip",
    "front_drop, depth": "the point may be longer or shorter than the section is deep",
  },
  compute(given, { step, measure }) {
    const { waist, hip, hip_drop, front_drop, back_drop, start, hem_length, fullness } = given;
    if (hem_length !== null && fullness !== 1) {
      throw new Refusal(
        phrase`fullness must be left out when hem_length is given, not ${numberText(fullness, 4)}`,
      );
    }
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    const section = new DippedSection(given, seam);
    seamSteps(step, seam, "half_seam");
    const body = measure(
      "body_hem",
      "the hem that just goes round the body, along its curve",
      2 * section.halfHem(0),
    );
    const spread = section.spreadFor(
      (hem_length ?? body * fullness) / 2,
      hem_length === null ? { name: "fullness", per: body / 2 } : { name: "hem_length", per: 0.5 },
    );
    const piece = section.piece(spread);
    const half = measure(
      "half_hem",
      "half the hem, along the curve of the piece",
      edgeLength(piece.edges[2]!),
    );
    const whole = step("hem_all_round", "2 * half_hem", 2 * half);
    step("gained", "hem_all_round - body_hem", whole - body);
    measure("front_lean", "degrees that centre front leans from centre back", degrees(section.turn(spread)));
    measure("front_depth", "from the point down to the hem at centre front", edgeLength(piece.edges[1]!));
    measure("area", "area of the half piece", pieceArea(piece));
    if (given.straight === "back") return piece;
    const [x, y] = piece.edges[1]![0]!.from;
    return turnPiece(movePiece(piece, -x, -y), degrees(section.turn(spread)));
  },
  draw({ straight, depth }, { half_seam = 0 }, piece) {
    if (typeof piece !== "object") return [];
    const inside = straight === "back" ? half_seam / 15 : -half_seam / 15;
    const [top, , , back] = piece.edges;
    const off = depth / 10;
    const [from, to] = [back![0]!.to, back![0]!.from];
    return [
      ...drawPanel(piece, [inside, depth / 10], {
        area: "area",
        top: "half_seam",
        hem: "half_hem",
        side: "front_depth",
      }),
      dimension([from[0] - off, from[1]], [to[0] - off, to[1]], { label: phrase`centre back` }),
      { kind: "note", at: top!.at(-1)!.to, text: phrase`point at centre front` },
    ];
  },
  worn(given, { half_seam = 0, hem_all_round = 0 }, lengths) {
    const { waist, hip, hip_drop, front_drop, back_drop, start, depth, hem } = given;
    const seam = developSeam(waist, hip, hip_drop, front_drop, back_drop, start);
    const drop = (share: number) => seamLevel(waist, seam, back_drop, front_drop, Math.min(share, 1 - share));
    return skirt(
      {
        waist,
        hip,
        hip_drop,
        drop,
        depth: (share) => (hem === "parallel" ? depth : back_drop + depth - drop(share)),
        round: between(2 * half_seam, hem_all_round),
      },
      lengths,
    );
  },
  examples: [
    {
      given: { waist: 76, hip: 108, hip_drop: 20, front_drop: 7, depth: 18 },
      gives: { edges: [40.39408104] },
      within: 5e-7,
      unit: "cm",
      because: "half of the seam worked by hand on the cone, 80.788162 cm all round",
    },
    {
      given: { waist: 30, hip: 42, hip_drop: 8, front_drop: 3, depth: 8, hem: "level" },
      gives: { edges: [16.040081255, 5, 21, 8] },
      within: 5e-7,
      because: "a level hem at the hip drop is half the hip; 3 in of the 8 are gone at the point",
    },
    {
      given: { waist: 70, hip: 70, hip_drop: 20, front_drop: 6, depth: 15 },
      gives: { area: 525, edges: [36, 15, 36, 15], width: 35 },
      unit: "cm",
      because: "a straight body: 35 across whatever the slope, 15 deep, the seam 17.5 plus √(17.5² + 6²)",
    },
    {
      given: { waist: 30, hip: 42, hip_drop: 8, front_drop: 3, depth: 8, hem_length: 60 },
      gives: { edges: [16.040081255, 8, 30, 8] },
      within: 1e-6,
      because: "spread to a hem of 60 in, the seam and both centre edges keep their lengths",
    },
  ],
});
